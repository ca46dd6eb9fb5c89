/** Knows the plan of a day as plain text. */
import type { MinutesFrom } from '../recipe/plan/plan-task.ts';
import type { PlanFacts, PlanPreheat, PlanStep } from './plan-facts.ts';
import {
  AT_LEAST,
  aheadText,
  askedText,
  clashText,
  dayText,
  heatText,
  lengthOf,
  NOT_ALL_TRIED,
  namedStep,
  ovenName,
  planSummary,
  putText,
  wayOutText,
} from './plan-words.ts';

export function planText(facts: PlanFacts): string {
  return `${[
    [`For ${facts.serve}: ${facts.recipes.join(', ')}`, planSummary(facts), ...planNotes(facts)].join('\n'),
    table(planRows(facts)),
    ...planLists(facts).map(([title, lines]) => [title, ...lines.map((line) => `  ${line}`)].join('\n')),
    facts.note,
  ].join('\n\n')}\n`;
}

const planNotes = (facts: PlanFacts): readonly string[] => [
  ...[putText(facts) ?? []].flat(),
  ...(facts.at_least ? [AT_LEAST] : []),
  ...(facts.best ? [] : [NOT_ALL_TRIED]),
];

/** What stands below the table, each list with its title. */
function planLists(facts: PlanFacts): readonly (readonly [string, readonly string[]])[] {
  const lists: readonly (readonly [string, readonly string[]])[] = [
    ['Clashes', facts.clashes.map((clash) => clashText(facts, clash))],
    ['What would help', facts.ways_out.map((way) => wayOutText(facts, way))],
    ['On days before', facts.ahead.map((ahead) => aheadText(facts, ahead))],
    [
      'Asked: give each with --minutes LINE=MINUTES, or write it into the step',
      facts.asked.map((asked) => askedText(facts, asked)),
    ],
  ];
  return lists.filter(([, lines]) => lines.length > 0);
}

interface PlanRow {
  readonly from: string;
  readonly to: string;
  readonly days_before: number;
  /** On the longest way. */
  readonly critical: boolean;
  /** `hands`, `oven 220 °C`, `waiting` */
  readonly who: string;
  readonly what: string;
  /** Index in `steps`; null of what is done to an oven. */
  readonly step: number | null;
  /** `20 min`, `asked`; empty for a moment that takes none. */
  readonly long: string;
}

/** All that is done, in the order of time: steps, and what is done to ovens. */
function planRows(facts: PlanFacts): readonly PlanRow[] {
  const rows = [
    ...facts.preheats.map((each) => ({ min: each.from.min, row: preheatRow(facts, each) })),
    ...facts.steps.flatMap((step, i) => [
      { min: step.from.min, row: stepRow(facts, step, i) },
      ...turnRows(facts, step),
    ]),
  ];
  return [
    ...rows.sort((a, b) => a.min - b.min).map(({ row }) => row),
    { ...ASIDE, from: facts.serve, what: 'It is eaten' },
  ];
}

const ASIDE: PlanRow = { from: '', to: '', days_before: 0, critical: false, who: '', what: '', step: null, long: '' };

const preheatRow = (facts: PlanFacts, { from, to, oven, ...heat }: PlanPreheat): PlanRow => ({
  ...ASIDE,
  from: from.at,
  to: to.at,
  days_before: from.days_before,
  who: 'by itself',
  what: `Light ${ovenName(facts, oven)}: ${heatText(heat)}`,
  long: lengthOf(to.min - from.min),
});

function stepRow(facts: PlanFacts, step: PlanStep, i: number): PlanRow {
  const { from, to, minutes, critical } = step;
  const many = step.minutes_from === 'unsaid' && minutes > 0 ? 'at least ' : '';
  return {
    from: from.at,
    to: minutes === 0 ? '' : to.at,
    days_before: from.days_before,
    critical,
    who: who(facts, step),
    what: namedStep(facts, step),
    step: i,
    long: minutes === 0 ? 'asked' : `${many}${lengthOf(minutes)}${FROM[step.minutes_from]?.(step) ?? ''}`,
  };
}

/** What is not said by the step itself. */
const FROM: Partial<Record<MinutesFrom, (step: PlanStep) => string>> = {
  head: () => ', by the head',
  put: () => ', put here',
  estimate: ({ estimate_min: range }) => (range === null ? '' : `, likely; ${range[0]} to ${range[1]}`),
};

function who(facts: PlanFacts, { oven, oven_turns: [first], hands, spent }: PlanStep): string {
  if (first !== undefined)
    return `${facts.ovens.length > 1 && oven !== null ? (facts.ovens[oven] ?? 'oven') : 'oven'} ${heatText(first)}`;
  return hands ? 'hands' : spent === 'cooking' ? 'on the heat' : 'waiting';
}

/** `Turn the oven to 160 °C`, while something is in there. */
const turnRows = (facts: PlanFacts, { oven, oven_turns: turns }: PlanStep): readonly { min: number; row: PlanRow }[] =>
  turns.slice(1).map((turn) => ({
    min: turn.min,
    row: {
      ...ASIDE,
      from: turn.at,
      days_before: turn.days_before,
      who: 'hands',
      what: `Turn ${ovenName(facts, oven)} to ${heatText(turn)}`,
    },
  }));

function table(rows: readonly PlanRow[]): string {
  const width = Math.max(...rows.map(({ who }) => who.length));
  let day = -1;
  return rows
    .flatMap(({ from, to, days_before: days, critical, who, what, long }) => {
      const head = days === day || (day === -1 && days === 0) ? [] : [dayText(days)];
      day = days;
      const when = to === '' ? from.padEnd(11) : `${from}-${to}`;
      return [
        ...head,
        `${when} ${critical ? '*' : ' '} ${who.padEnd(width)}  ${what}${long === '' ? '' : ` (${long})`}`,
      ];
    })
    .concat(rows.some(({ critical }) => critical) ? ['* the longest way: what is late there is late at the table'] : [])
    .join('\n');
}
