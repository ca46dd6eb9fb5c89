import type { Range } from '../../measure/quantity.ts';
import type { PlaceKind } from '../../prose/event.ts';
import { ownDegrees } from '../../recipe/journey/degrees.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Part } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { CAUTION, groupOf } from './limits.ts';

interface Values {
  readonly said: string;
}

/** Flesh and egg are read between these, and what lies cooler or hotter is a room, or an oven (judgement). */
const READ_C: Range = { low: 36, high: 110 };
/** Where it is said where food lies, a figure up to here is of that place. */
const PLACE_C = 56;
/** By a figure up to here that is nowhere said raw food is understood. */
const INFERRED_C: Range = { low: 36, high: 90 };

export default defineCheck<Values>({
  code: 'unread-temperature',
  title: 'Nobody can say of what a temperature is',
  family: 'safety',
  severity: 'info',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** In a part with raw meat, fish or egg: a temperature at which such food is done or not (${READ_C.low} to ${READ_C.high} °C), of which neither the words beside it nor what lies there tell whether it is of the food, of the oven or of what is around it. The first of a part is asked about.

**Why it matters.** Of such a figure no check can say whether it is enough.

**What to do.** Say what reads it: \`until the custard reads 72 C\`, \`in an oven at 80 C\`. **Silent** for figures that are understood, for changes by so many degrees, and where nothing in the part is a risk raw.`,
  *find(part) {
    if (!part.head.ingredients.some(isRaw)) return;
    for (const step of part.steps)
      for (const heat of heatsOf(step)) {
        if (!isUnread(heat)) continue;
        const said = ownDegrees(heat.celsius.low, heat.written[0]);
        yield { at: { line: step.line, start: heat.start, end: heat.end }, values: { said } };
        return;
      }
  },
  say: ({ said }) => ({
    message: `Of what is ${said}: of the food, of the oven, or of what is around it? Say what reads it. ${CAUTION}`,
  }),
  examples: {
    good: [
      'recipe Roast chicken\n  1.6 kg    chicken\n  do Roast the chicken at 200 C for 75 min, until the thickest part of the thigh reads 75 C.\n',
      'recipe Sabayon\n  6         egg yolks\n  120 g     caster sugar\n  100 g     water\n  do Whisk the yolks, sugar and water over simmering water until the sabayon reads 72 C.\n',
    ],
    bad: [
      'recipe Sauce\n  4         egg yolks\n  200 g     butter\n  do Egg yolks and butter over a pan, whisk to ribbon, 65 C.\n# "65 C" unread-temperature\n',
      'recipe Sabayon\n  6         egg yolks\n  120 g     caster sugar\n  100 g     water\n  do Yolks, sugar and water over a pan, whisk to ribbon, 72 C.\n# "72 C" unread-temperature: Of what is 72 °C\n',
    ],
  },
});

const HOT: ReadonlySet<PlaceKind> = new Set<PlaceKind>(['oven', 'smoker', 'hot', 'bath', 'stove']);

function isRaw(ingredient: Part['head']['ingredients'][number]): boolean {
  const food = foodOf(ingredient);
  const listed = listedAs(ingredient);
  return food !== undefined && groupOf(food) !== undefined && !listed.has('cooked') && !listed.has('treated');
}

function isUnread({ of, bound, celsius, event }: HeatFigure): boolean {
  if (of !== 'nothing' || bound === 'change' || celsius.low < READ_C.low || celsius.high > READ_C.high) return false;
  if (event === undefined) return true;
  if (event.said !== 'yes') return false;
  const isPlaced = event.where.some(
    ({ not, way, start }) => !not && (way === 'at' || way === 'to') && start !== event.verb?.start,
  );
  // In an oven or a smoker it is that of one of the two, and is read as either.
  if (event.where.some(({ is }) => is !== undefined && HOT.has(is))) return false;
  if (isPlaced) return celsius.high > PLACE_C;
  return celsius.low < INFERRED_C.low || celsius.high > INFERRED_C.high;
}
