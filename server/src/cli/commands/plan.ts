import { isDay } from '../../measure/calendar.ts';
import { planCalendar } from '../../publish/plan-calendar.ts';
import { MOST_OVENS, ovenNames, planFacts } from '../../publish/plan-facts.ts';
import { planHtml } from '../../publish/plan-html.ts';
import { planText } from '../../publish/plan-text.ts';
import { readAwake, readClock } from '../../recipe/plan/clock-text.ts';
import type { GivenMinutes } from '../../recipe/plan/from-recipe.ts';
import { planOf } from '../../recipe/plan/plan.ts';
import { type Awake, EVERYDAY } from '../../recipe/plan/task.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readMany, snapshotOf } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { whereIn } from '../where.ts';

export const plan: Command = {
  name: 'plan',
  usage:
    'FILE… --serve 19:30 [--date DAY] [--minutes LINE=MINUTES,…] [--ovens N] [--share-oven] [--cooks N] [--awake 06:00-23:00] [--format text|json|html|ics] [--stdin --stdin-name NAME]',
  summary:
    'the day planned backwards from the hour it is eaten: what begins when, what clashes, what may be done before',
  options: {
    ...INPUT_OPTIONS,
    serve: 'value',
    date: 'value',
    minutes: 'value',
    ovens: 'value',
    'share-oven': 'flag',
    cooks: 'value',
    awake: 'value',
    format: 'value',
  },
  examples: [
    'quern plan roast.quern gratin.quern --serve 19:30',
    'quern plan tart.quern --serve 16:00 --minutes 12=10,14=5',
    'quern plan roast.quern gratin.quern --serve 19:30 --minutes roast.quern:9=5 --ovens 2',
    'quern plan roast.quern --serve 13:00 --date 2026-12-25 --format ics > christmas.ics',
  ],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', ['text', 'json', 'html', 'ics'], 'text');
    const serve = serveOf(options);
    const date = dateOf(options);
    const awake = awakeOf(options);
    const [count, pairsOfHands] = [countOf(options, 'ovens'), countOf(options, 'cooks') ?? 1];
    const houses = housesFor(io);
    if (options.rest.length === 0 && !options.flags.has('stdin'))
      throw new UsageError('name the recipes, or give the text of one with --stdin');
    const snapshots = (await readMany(options, io, houses)).map((input) => ({
      shown: input.shown,
      snapshot: snapshotOf(input, houses),
    }));
    for (const { shown, snapshot } of snapshots) {
      if (!snapshot.isWhole)
        throw new UsageError(`\`${shown}\` builds on what is not there: \`quern check\` says what is missing`);
    }
    const [first] = snapshots;
    if (first === undefined) return 0;
    const ovens = ovenNames(first.snapshot.house.world, count);
    const kitchen = { ovens: ovens.length, pairsOfHands, sharesOven: options.flags.has('share-oven'), serve, awake };
    const given = givenMinutes(options, snapshots, io);
    const recipes = snapshots.map(({ snapshot }, i) => ({
      recipe: snapshot.whole.recipe,
      given: given[i] ?? new Map(),
      puts: true,
    }));
    const facts = planFacts(
      planOf(recipes, kitchen),
      snapshots.map(({ shown, snapshot }) => ({
        recipe: snapshot.whole.recipe,
        file: shown,
        sayLine: sayLineIn(shown, snapshot, snapshots.length > 1, io),
      })),
      { serve, date, ovens },
    );
    if (format === 'html') io.document(planHtml(facts));
    else if (format === 'ics') io.document(planCalendar(facts, io.today()));
    else io.out(format === 'json' ? `${JSON.stringify(facts, null, 2)}\n` : planText(facts));
    return 0;
  },
};

function serveOf({ values: { serve } }: Options): number {
  if (serve === undefined) throw new UsageError('say when it is eaten: --serve 19:30');
  const minute = readClock(serve);
  if (minute === undefined) throw new UsageError(`--serve is a time of the day such as 19:30, not \`${serve}\``);
  return minute;
}

function dateOf({ values: { date } }: Options): string | null {
  if (date !== undefined && !isDay(date)) throw new UsageError(`--date is a day such as 2026-09-14, not \`${date}\``);
  return date ?? null;
}

function awakeOf({ values: { awake } }: Options): Awake {
  if (awake === undefined) return EVERYDAY;
  const read = readAwake(awake);
  if (read === undefined) throw new UsageError(`--awake is a time of the day such as 06:00-23:00, not \`${awake}\``);
  return read;
}

function countOf({ values }: Options, name: string): number | undefined {
  const value = values[name];
  if (value === undefined) return undefined;
  const count = Number(value);
  if (!Number.isInteger(count) || count < 1 || count > MOST_OVENS)
    throw new UsageError(`--${name} is a number from 1 to ${MOST_OVENS}, not \`${value}\``);
  return count;
}

interface Shown {
  readonly shown: string;
  readonly snapshot: Snapshot;
}

/** `line 7`, `line 7 of tart.quern` where there are several. */
function sayLineIn(shown: string, snapshot: Snapshot, many: boolean, io: Io): (line: number) => string {
  const say = whereIn(snapshot, io);
  return (line) => {
    const own = say(line);
    return many && snapshot.whole.writtenFrom?.lines[line]?.origin.kind !== 'base' ? `${own} of ${shown}` : own;
  };
}

/** `12=10,tart.quern:8=5`, by recipe and by the line of the whole of it, from 0. */
function givenMinutes({ values: { minutes } }: Options, all: readonly Shown[], io: Io): readonly GivenMinutes[] {
  const given = all.map(() => new Map<number, number>());
  for (const each of minutes?.split(',') ?? []) {
    const [, file, line, min] = /^\s*(?:(.+):)?(\d+)=(\d+(?:\.\d+)?)\s*$/.exec(each) ?? [];
    if (line === undefined || min === undefined)
      throw new UsageError(`--minutes is a list such as 12=10 or tart.quern:12=10, not \`${each}\``);
    if (file === undefined && all.length > 1)
      throw new UsageError(`--minutes says the file too where there are several: \`${all[0]?.shown}:${each.trim()}\``);
    const found = all.flatMap(({ shown, snapshot }, i) =>
      linesNamed(snapshot, file ?? shown, shown, Number(line), io).map((at) => ({ i, at })),
    );
    const [first] = found;
    if (first === undefined)
      throw new UsageError(`--minutes: there is no line ${line} in \`${file ?? all[0]?.shown}\``);
    for (const { i, at } of found) given[i]?.set(at, Number(min));
  }
  return given;
}

/** The lines of the whole recipe, from 0, that the file's line is, from 1. */
function linesNamed(
  { whole, document }: Snapshot,
  file: string,
  shown: string,
  line: number,
  io: Io,
): readonly number[] {
  const lines = whole.writtenFrom?.lines;
  if (lines === undefined) return file === shown && line >= 1 && line <= document.lines.length ? [line - 1] : [];
  return lines.flatMap(({ origin }, at) => {
    const of = origin.kind === 'base' ? io.shown(origin.path) : shown;
    return of === file && origin.line === line - 1 ? [at] : [];
  });
}
