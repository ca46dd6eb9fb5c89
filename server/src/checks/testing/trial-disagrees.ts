import { listGrams } from '../../edits/set-amount.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { HeatReading, TimeReading } from '../../recipe/heat.ts';
import { type Ingredient, weighQuantity } from '../../recipe/ingredient.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { changedSince, factsOf, isOutsideFood, type Trial } from '../../recipe/trials.ts';
import { baseForm, verbClass } from '../../recipe/verbs.ts';
import { capital, sameName, wordsOf } from '../../recipe/words.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { type Given, overParts } from '../over-parts.ts';
import { trialsOf } from './trials-read.ts';

interface Values {
  readonly what: 'time' | 'temperature' | 'amount' | 'weight';
  /** `Bake`, `the centre`, `caster sugar`, `the oven`. */
  readonly of: string;
  readonly written: string;
  readonly measured: string;
  readonly date: string;
  readonly trialAt: Place;
  /** What to write in the place of the finding. */
  readonly write?: string;
  readonly ingredient?: { readonly part: number; readonly ingredient: Ingredient; readonly grams: number };
}

/** A time, weight or amount within this share of what is written agrees. Common practice, no source. */
const TIME_SLACK = 0.15;
const AMOUNT_SLACK = 0.05;
const TEMPERATURE_SLACK_C = 3;
/** What a dish may lose in the oven, uncovered (USDA Agriculture Handbook 102, from memory: up to 40 % for meat, 3 to 22 % for bakes). */
const MOST_LOSS = 0.42;

export default defineCheck<Values>({
  code: 'trial-disagrees',
  title: 'A trial measured something else than the recipe says',
  family: 'testing',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The latest trial's lines against the recipe: \`took 52 min to bake\` against the time of the step that bakes, \`reached 71 C in the centre\` against the temperature that is promised there, \`used 36 g water\` against the list, \`weighed 900 g out of the oven\` against the mass of the ingredients less what a dish can lose.

**Why it matters.** A recipe promises what the kitchen has measured. Where the two differ, the next cook follows the page and gets something else.

**What to do.** Write what was measured, or a range over the trials that agree. **Silent** within 15 % of a time, 5 % of an amount and 3 °C, where no step says anything to compare with, for a temperature of the oven, the fridge or the room, for a line that was changed since the trial tested it, and for older trials than the latest.`,
  *find({ recipe, outline }) {
    const trials = trialsOf(outline);
    const latest = trials.at(-1);
    if (latest === undefined) return;
    // What was changed since is not what the trial cooked: that is `untested-change`'s to say.
    const since = latest.tested === undefined ? [] : changedSince(factsOf(recipe), latest.tested);
    const changed = new Set(since.map((f) => `${f.part}:${f.line}`));
    for (const found of [
      ...times(recipe, latest, trials),
      ...temperatures(recipe, latest),
      ...amounts(recipe, latest),
    ]) {
      if (!changed.has(`${found.at.part}:${found.at.line}`)) yield found;
    }
    if (changed.size === 0) yield* weights(recipe, latest);
  },
  say: ({ what, of, written, measured, date, trialAt, write }) => ({
    message: {
      time: `${of}: ${written} is written, and it took ${measured} on ${date}${write === measured ? '' : `, ${write} over the trials that agree`}. Write what was measured.`,
      temperature: `${written} is promised in ${of}, and it reached ${measured} on ${date}. Write what was measured, or cook it on.`,
      amount: `${written} ${of} is listed, and ${measured} was used on ${date}. Write what was used.`,
      weight: `The ingredients weigh ${written}, and ${measured} came out of ${of} on ${date}: a dish cannot gain, and seldom loses over 40 %. Mend the list, or the trial.`,
    }[what],
    related: [{ at: trialAt, message: 'The trial measured it here.' }],
  }),
  fix: ({ write, ingredient }, { recipe }, at) => {
    if (write !== undefined)
      return [{ title: `Write ${write}`, effect: 'amounts', edits: [replaceSpan(at.line, at, write)] }];
    if (ingredient === undefined) return [];
    const listed = listGrams(recipe, ingredient.part, ingredient.ingredient, ingredient.grams);
    return listed === undefined
      ? []
      : [{ title: `Write ${listed.written} ${ingredient.ingredient.name}`, effect: 'amounts', edits: listed.edits }];
  },
  examples: {
    good: [
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-09-14\n  took    11 min to toast\n  verdict keep\n',
      'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10-12 min until golden.\n\ntrial 2026-08-01\n  took    25 min to toast\n\ntrial 2026-09-14\n  took    12 min to toast\n  used    205 g rolled oats\n',
    ],
    bad: [
      {
        text: 'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 35-40 min until golden.\n#                      ^^^^^^^^^ trial-disagrees *: it took 52 min\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        after: {
          'Write 52 min':
            'recipe Cake\n  oven    160 C\n  200 g     rolled oats\n  do Bake the oats for 52 min until golden.\n\ntrial 2026-09-14 by Ines\n  took    52 min to bake\n',
        },
      },
      {
        text: 'recipe Dough\n  200 g     plain flour\n  20 g      water\n# "20 g" trial-disagrees *: 36 g was used\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        after: {
          'Write 36 g water':
            'recipe Dough\n  200 g     plain flour\n  36 g      water\n  do Mix the flour with the water.\n\ntrial 2026-09-14\n  used    36 g water\n',
        },
      },
    ],
  },
});

interface TimeAt {
  readonly part: Part;
  readonly step: Step;
  readonly t: TimeReading;
}

interface HeatAt {
  readonly part: Part;
  readonly step: Step;
  readonly h: HeatReading;
}

type TimesIn = (recipe: Recipe) => readonly Given<readonly TimeAt[]>[];

/** By verb; there are only as many as there are verbs of the kitchen. */
const TIMES = new Map<string | undefined, TimesIn>();

/** The times of a verb in the steps; those that no verb stands before where none is given. */
function timesOf(verb: string | undefined): TimesIn {
  let times = TIMES.get(verb);
  if (times === undefined) {
    times = overParts((part) => timesIn(part, verb));
    TIMES.set(verb, times);
  }
  return times;
}

function timesIn(part: Part, verb: string | undefined): readonly TimeAt[] | undefined {
  let times: TimeAt[] | undefined;
  for (const step of part.steps)
    for (const t of step.times) {
      if (t.verb !== verb) continue;
      times ??= [];
      times.push({ part, step, t });
    }
  return times;
}

/** Temperatures promised in the food. */
const heatIn = overParts((part): readonly HeatAt[] | undefined => {
  let heat: HeatAt[] | undefined;
  for (const step of part.steps)
    for (const h of step.heat)
      if (h.role === 'food' && h.verbClass !== 'cooling') {
        heat ??= [];
        heat.push({ part, step, h });
      }
  return heat;
});

/** The first of those nearest. */
function nearestOf<T>(
  given: readonly Given<readonly T[]>[],
  far: (reading: T) => number,
): { readonly reading: T; readonly away: number } | undefined {
  let nearest: { readonly reading: T; readonly away: number } | undefined;
  for (const { value } of given)
    for (const reading of value) {
      const away = far(reading);
      if (nearest === undefined || away < nearest.away) nearest = { reading, away };
    }
  return nearest;
}

function* times(recipe: Recipe, latest: Trial, trials: readonly Trial[]): Generator<Found<Values>> {
  for (const { at, duration, verb } of latest.took) {
    const named = verb === undefined ? undefined : baseForm(wordsOf(verb.text)[0] ?? '');
    // No step has a time of what is no verb of the kitchen.
    if (named !== undefined && verbClass(named) === undefined) continue;
    const found = nearestOf(timesOf(named)(recipe), ({ t: { node } }) =>
      distanceOf(duration.lowMin, { low: node.lowMin, high: node.highMin }),
    );
    if (found === undefined || found.away <= TIME_SLACK * found.reading.t.node.highMin) continue;
    const { reading: nearest } = found;
    const { node } = nearest.t;
    const text = textAt(recipe, nearest.part.index, nearest.step.line, node);
    const others = trials.flatMap((t) =>
      t.took
        .filter((o) => o.verb !== undefined && baseForm(wordsOf(o.verb.text)[0] ?? '') === named)
        .map((o) => o.duration.lowMin),
    );
    const agreeing = others.filter((m) => Math.abs(m - duration.lowMin) <= TIME_SLACK * duration.lowMin);
    const measured = minutesText({ low: duration.lowMin, high: duration.highMin });
    const write = minutesText({
      low: Math.min(...agreeing, duration.lowMin),
      high: Math.max(...agreeing, duration.highMin),
    });
    yield {
      at: { part: nearest.part.index, line: nearest.step.line, start: node.start, end: node.end },
      values: {
        what: 'time',
        of: capital(nearest.t.verb ?? 'it'),
        written: text,
        measured,
        date: latest.date,
        trialAt: { line: at, start: duration.start, end: duration.end },
        write,
      },
    };
  }
}

function* temperatures(recipe: Recipe, latest: Trial): Generator<Found<Values>> {
  for (const { at, temperature, celsius, place } of latest.reached) {
    // What the oven, the fridge or the room had is not what the food had.
    if (isOutsideFood(place)) continue;
    const found = nearestOf(heatIn(recipe), ({ h }) => distanceOf(celsius.low, h.celsius));
    if (found === undefined || found.away <= TEMPERATURE_SLACK_C) continue;
    const { reading: nearest } = found;
    const { node } = nearest.h;
    yield {
      at: { part: nearest.part.index, line: nearest.step.line, start: node.start, end: node.end },
      values: {
        what: 'temperature',
        of: place?.text ?? 'the food',
        written: textAt(recipe, nearest.part.index, nearest.step.line, node),
        measured: `${trimmed(temperature.lowDegrees, 1)} ${temperature.unit}`,
        date: latest.date,
        trialAt: { line: at, start: temperature.start, end: temperature.end },
        // A lower figure is not written for the cook: it may not be safe.
        ...(celsius.low > nearest.h.celsius.high && {
          write: `${trimmed(temperature.lowDegrees, 1)} ${temperature.unit}`,
        }),
      },
    };
  }
}

function* amounts(recipe: Recipe, latest: Trial): Generator<Found<Values>> {
  for (const { at, amount, name, part: inPart } of latest.used) {
    const wanted = wordsOf(name.text);
    for (const { part, value: names } of namesIn(recipe)) {
      if (inPart !== undefined && !sameName(part.head.name, inPart.text)) continue;
      const ingredient = part.head.ingredients[names.findIndex((words) => endsWith(words, wanted))];
      const listed = ingredient?.node.amount;
      if (ingredient === undefined || amount.kind !== 'measured' || listed?.kind !== 'measured') continue;
      const used = weighQuantity(amount.quantity, ingredient.match, recipe.world);
      const { weighed } = ingredient;
      if (!used.known || !weighed.known) break;
      const grams = (used.grams.low + used.grams.high) / 2;
      if (distanceOf(grams, weighed.grams) <= AMOUNT_SLACK * weighed.grams.high) break;
      yield {
        at: { part: part.index, line: ingredient.line, start: listed.start, end: listed.end },
        values: {
          what: 'amount',
          of: ingredient.name,
          written: textAt(recipe, part.index, ingredient.line, listed),
          measured: `${gramsText(grams)} g`,
          date: latest.date,
          trialAt: { line: at, start: amount.start, end: amount.end },
          ingredient: { part: part.index, ingredient, grams },
        },
      };
      break;
    }
  }
}

function* weights(recipe: Recipe, latest: Trial): Generator<Found<Values>> {
  if (!latest.weighed.some(isOutOfOven)) return;
  const heads = recipe.parts.map((p) => p.head);
  if (heads.some((h) => !h.massG.complete || h.nominal)) return;
  const mass = { low: heads.reduce((s, h) => s + h.massG.low, 0), high: heads.reduce((s, h) => s + h.massG.high, 0) };
  for (const weighedIn of latest.weighed) {
    const { at, amount, outOf } = weighedIn;
    if (!isOutOfOven(weighedIn)) continue;
    const weighed = weighQuantity(amount.quantity, { kind: 'unknown', near: [] }, recipe.world);
    if (!weighed.known || (weighed.grams.low <= mass.high * 1.02 && weighed.grams.high >= mass.low * (1 - MOST_LOSS)))
      continue;
    const place = { line: at, start: amount.start, end: amount.end };
    const written =
      gramsText(mass.low) === gramsText(mass.high)
        ? `${gramsText(mass.low)} g`
        : `${gramsText(mass.low)} to ${gramsText(mass.high)} g`;
    yield {
      at: place,
      values: {
        what: 'weight',
        of: outOf?.text ?? 'the oven',
        written,
        measured: `${gramsText(weighed.grams.low)} g`,
        date: latest.date,
        trialAt: place,
      },
    };
  }
}

const isOutOfOven = ({ amount, outOf }: Trial['weighed'][number]): boolean =>
  amount.unit !== undefined && wordsOf(outOf?.text ?? '').includes('oven');

/** The words of every name on a part's list. */
const namesIn = overParts(({ head: { ingredients } }) =>
  ingredients.length === 0 ? undefined : ingredients.map((i) => wordsOf(i.name)),
);

function endsWith(words: readonly string[], end: readonly string[]): boolean {
  // No name is meant by no words.
  if (end.length === 0) return words.length === 0;
  for (let i = 1; i <= end.length; i++) if (words[words.length - i] !== end[end.length - i]) return false;
  return true;
}

const distanceOf = (value: number, { low, high }: Range): number =>
  value < low ? low - value : value > high ? value - high : 0;

function textAt(recipe: Recipe, part: number, line: number, span: Span): string {
  return recipe.parts[part]?.head.source.lines[line]?.text.slice(span.start, span.end) ?? '';
}

/** `52 min`, `5 h 30 min`, `1.5-2 h`: in hours where minutes would be many. */
function minutesText({ low, high }: Range): string {
  if (low < MANY_MINUTES || !Number.isInteger(low) || !Number.isInteger(high))
    return low === high ? `${trimmed(low, 1)} min` : `${trimmed(low, 1)}-${trimmed(high, 1)} min`;
  if (low !== high) return `${trimmed(low / 60, 2)}-${trimmed(high / 60, 2)} h`;
  return low % 60 === 0 ? `${low / 60} h` : `${Math.floor(low / 60)} h ${low % 60} min`;
}

const MANY_MINUTES = 120;
