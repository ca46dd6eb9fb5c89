import type { Act } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { deed, does, eventsOf, speaksOf, speaksOfSeveral } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { litresText } from '../../recipe/measures/pan-size.ts';
import { holdingIn } from '../../recipe/measures/pans-said.ts';
import type { Part, Step } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { volumeMl, type Weight } from './volume.ts';

interface Values {
  readonly ml: number;
  readonly holdsMl: number;
  /** It is to fry in. */
  readonly hot: boolean;
}

export default defineCheck<Values>({
  code: 'vessel-too-small',
  title: 'More goes into a pot, a bowl or a jar than it holds',
  family: 'method',
  severity: 'warning',
  scope: 'part',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** What a step puts into a vessel of which it says what it holds (\`a 4 l pot\`), from grams and composition, with no air between: the foods that it names, or all that went in before where it names none and nothing was heated or taken out. Oil to fry in is held against three quarters of it.

**Why it matters.** It does not go in. Oil that fills its pan runs over into the flame as soon as food goes in.

**What to do.** A larger vessel, several, or a smaller batch.

**Silent** for batches and several vessels, for what is poured over food in a jar, and where a weight is not known.`,
  *find(part) {
    for (const [at, step] of part.steps.entries())
      for (const { start, end, ml: holdsMl } of holdingIn(step)) {
        const events = boundEvents(step);
        const into = events.findIndex(({ event }) => event.start <= start && end <= event.end);
        const bound = events[into];
        if (bound === undefined || !FILLS.has(bound.event.act) || bound.event.said !== 'yes') continue;
        const hot = bound.event.act === 'heat' && isOfOil(bound, part) && part.steps.some((each) => does(each, FRIES));
        if (!hot && isShared(step)) continue;
        const ml = Math.max(mlNamed(part, at, events.slice(into)), isBare(bound) ? mlBefore(part, at, bound) : 0);
        if (ml > holdsMl * (hot ? FRIES_AT : BRIM))
          yield { at: { line: step.line, start, end }, values: { ml, holdsMl, hot } };
      }
  },
  say: ({ ml, holdsMl, hot }) => ({
    message: hot
      ? `There are ${litresText({ low: ml, high: ml })} of oil, and this holds ${litresText({ low: holdsMl, high: holdsMl })} to the brim: it runs over once food goes in. Hot fat may fill a pan to half, or two thirds at the most.`
      : `At least ${litresText({ low: ml, high: ml })} go into this, and it holds ${litresText({ low: holdsMl, high: holdsMl })} to the brim: take a larger one, or several.`,
    value: Math.round(ml),
    unit: 'ml',
    band: [null, Math.round(holdsMl)],
  }),
  examples: {
    good: [
      'recipe Kraut as lacto-ferment\n  2 kg      white cabbage, shredded\n  40 g      fine salt\n  do Knead the cabbage with the salt for 10 min.\n  do Pack into a clean 3 l jar and weigh down.\n  do Ferment at 19 C for 21 d.\n',
      'recipe Vegetable broth\n  500 g     carrots, sliced\n  2 l       water\n  do Put the carrots in a 4 l pot, cover with the water and simmer for 40 min.\n  do Strain into a 1 l jug.\n',
    ],
    bad: [
      'recipe Kraut as lacto-ferment\n  2 kg      white cabbage, shredded\n  40 g      fine salt\n  do Knead the cabbage with the salt for 10 min.\n  do Pack into a clean 1 l jar and weigh down.\n# "1 l jar" vessel-too-small: At least\n  do Ferment at 19 C for 21 d.\n',
      'recipe Fried potatoes\n  1 kg      potatoes, cut in sticks\n  1.5 l     sunflower oil\n  5 g       salt\n  do Heat the oil to 180 C in a 1.5 l saucepan.\n# "1.5 l saucepan" vessel-too-small: half\n  do Fry the potatoes in the oil in four batches for 6 min each, until golden, and salt them.\n',
    ],
  },
});

/** Above this share of its vessel, oil runs over as food goes in (half to two thirds is what is advised). */
const FRIES_AT = 0.75;
/** Slack for figures that are rounded (judgement). */
const BRIM = 1.1;

const FILLS: ReadonlySet<Act> = new Set<Act>([
  'put',
  'pack',
  'combine',
  'mince',
  'heat',
  'steep',
  'rise',
  'stay',
  'ready',
]);
const FRIES = deed(({ craft, medium }) => craft === 'deep-fry' || craft === 'fry' || medium?.is === 'fat');
/** It is not all in there any more, or less than it was. */
const LEAVES = deed(({ act }) => LEFT.has(act));
const LEFT: ReadonlySet<Act> = new Set<Act>([
  'heat',
  'remove',
  'discard',
  'divide',
  'reserve',
  'eat',
  'dry',
  'pack',
  'rise',
]);

const isShared = (step: Step): boolean =>
  speaksOf(step, 'batch', 'each') || speaksOfSeveral(step, 'tin', 'share', 'lump') || eventsOf(step).some(isInParts);
const isInParts = ({ act, batches }: BoundEvent['event']): boolean => act === 'divide' || batches !== undefined;

const isBare = ({ names, unnamed }: BoundEvent): boolean =>
  names.length === 0 && unnamed !== 'name' && unnamed !== 'rest';

const isOfOil = ({ names }: BoundEvent, { index, head }: Part): boolean =>
  names.some(({ mention }) =>
    mention.ingredients.some(({ part, ingredient }) => {
      const listed = part === index ? head.ingredients[ingredient] : undefined;
      return listed !== undefined && isIn(listed, 'oil');
    }),
  );

/** Of all that steps took up to here, where it is all still there. */
function mlBefore(part: Part, at: number, { event }: BoundEvent): number {
  if (part.steps.slice(0, at).some((step) => does(step, LEAVES))) return 0;
  return mlTaken(part, event.vessel?.is === 'jar', (step, start) => step < at || (step === at && start < event.start));
}

/** Of what goes in with it, and what the same step adds. */
function mlNamed(part: Part, at: number, [into, ...later]: readonly BoundEvent[]): number {
  if (into === undefined) return 0;
  const isMore = ({ event: { act, craft, onto, vessel } }: BoundEvent): boolean =>
    vessel === undefined && (onto === true || craft === 'add' || act === 'cover');
  const end = later.findIndex((each) => !isMore(each));
  const events = [into, ...(end < 0 ? later : later.slice(0, end))];
  const starts = new Set(
    events.flatMap(({ names }) => names.flatMap(({ role, mention }) => (role === 'from' ? [] : [mention.start]))),
  );
  return mlTaken(part, into.event.vessel?.is === 'jar', (step, start) => step === at && starts.has(start));
}

/** What is poured over food in a jar fills the room between, and may be left over. */
function mlTaken(part: Part, isJar: boolean, isThere: (step: number, start: number) => boolean): number {
  const weighed: Weight[] = [];
  for (const { ingredient, uses } of part.ledger) {
    const { weighed: of, food, optional } = ingredient;
    if (!of.known || optional || (isJar && isIn(ingredient, 'liquid'))) continue;
    const share = uses.reduce(
      (sum, { part: by, step, mention, taken }) =>
        by === part.index && isThere(step, mention.start) ? sum + taken.low : sum,
      0,
    );
    if (share > 0) weighed.push({ food, low: of.grams.low * Math.min(1, share), high: of.grams.high });
  }
  return volumeMl(weighed, 'low') ?? 0;
}
