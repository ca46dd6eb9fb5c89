import { shareOf } from '../../food/composition.ts';
import { trimmed } from '../../measure/number-text.ts';
import { addRanges, type Range, scaleRange } from '../../measure/quantity.ts';
import { type Held, type HeldSaid, heldIn } from '../../prose/printed-energy.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import type { Ingredient, Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { anyPart } from '../over-parts.ts';
import { allListed, NOTHING, namedBy } from './foods-named.ts';
import { notesOf, placeIn } from './notes.ts';
import { isSameNoun, madeOf, yieldOf } from './pieces-made.ts';

interface Values {
  readonly said: HeldSaid;
  readonly worked: Range;
  readonly of: string;
}

/** Tables of composition, cuts of meat and rounding are this far apart (judgement: a label may be out by a fifth, 21 CFR 101.9(g)(5)). */
const FAR = 1.8;
const FAR_G = 2;
/** Less than that is rounding. */
const NEAR: Readonly<Record<HeldSaid['unit'], number>> = { kcal: 40, g: 5 };
/** Of all, what may be of unknown composition. */
const UNKNOWN = 0.02;
/** Of what goes in, at the least, what 100 g of the finished dish are of. */
const LEAST_KEPT = 0.7;
/** Pieces that a serving may be of, where the yield counts pieces (21 CFR 101.9(b)(2)(i): as many as come nearest to the reference amount). */
const PIECES = 4;

export default defineCheck<Values>({
  code: 'nutrition-disagrees',
  title: 'Printed energy or nutrition is far from what the list holds',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: '21 CFR 101.9(c)(1)(i)(B): 4, 9, 4 and 7 kcal a gram of protein, fat, carbohydrate and alcohol',
  },
  explain: `**What it computes.** Energy, protein, fat or carbohydrate as a note prints them (\`About 95 kcal a biscuit\`, \`Per serving: 320 calories, 12 g fat\`), against what the list holds for as many pieces or portions as it makes.

**Why it matters.** People count on it, and a figure that is out by a factor comes of a slip in it, in an amount or in the yield.

**What to do.** Mend it; \`quern label\` drafts the figures.

**Silent** within a factor of ${FAR} (${FAR_G} of a nutrient), where a weight, a food or the number of pieces is not known, and where something listed is left out (\`without the sauce\`).`,
  find: ({ recipe }) => (recipe.inherits ? NONE : found(recipe)),
  say: ({ said, worked, of }) => {
    const [low, high] = [trimmed(worked.low, 0), trimmed(worked.high, 0)];
    const unit = `${said.unit}${said.of === 'energy' ? '' : ` of ${said.of}`}`;
    return {
      message: `${trimmed(said.low, 0)} ${unit} is printed, and by the list ${of} has ${low === high ? low : `${low} to ${high}`} ${unit}: mend the figure, an amount or the yield.`,
      value: said.low,
      unit: said.unit,
      band: [worked.low / FAR, worked.high * FAR],
    };
  },
  examples: {
    good: [
      'recipe Dry muesli\n  serves  4\n  note    Each serving: 260 kcal.\n  250 g     rolled oats\n  40 g      raisins\n  do Stir the raisins into the oats.\n',
      'recipe Flapjacks\n  yield   12 bars\n  note    About 210 kcal a bar.\n  250 g     rolled oats\n  125 g     butter\n  100 g     caster sugar\n  60 g      golden syrup\n  do Melt the butter with the sugar and syrup and stir in the oats.\n  do Bake at 160 C for 25 min until golden.\n',
    ],
    bad: [
      'recipe Flapjacks\n  yield   12 bars\n  note    About 95 kcal a bar.\n#         "About 95 kcal" nutrition-disagrees: one of 12 has 206 kcal\n  250 g     rolled oats\n  125 g     butter\n  100 g     caster sugar\n  60 g      golden syrup\n  do Melt the butter with the sugar and syrup and stir in the oats.\n  do Bake at 160 C for 25 min until golden.\n',
      'recipe Flapjacks\n  yield   12 bars\n  note    Per bar: 210 calories, 29 g fat, 3 g protein.\n#         "29 g fat" nutrition-disagrees: 10 g of fat\n  250 g     rolled oats\n  125 g     butter\n  100 g     caster sugar\n  60 g      golden syrup\n  do Melt the butter with the sugar and syrup and stir in the oats.\n  do Bake at 160 C for 25 min until golden.\n',
    ],
  },
});

const NONE: readonly never[] = [];

const found = onceFor((recipe: Recipe): readonly Found<Values>[] =>
  notesOf(recipe).flatMap((note) =>
    heldIn(note.items).flatMap((said): Found<Values>[] => {
      const values = valuesOf(recipe, said);
      return values === undefined ? [] : [{ at: placeIn(note, said), values }];
    }),
  ),
);

function valuesOf(recipe: Recipe, said: HeldSaid): Values | undefined {
  const all = allListed(recipe);
  if (said.without.some((word) => namedBy([word], all).length > 0)) return undefined;
  const whole = heldBy(recipe, said.of);
  const share = whole && shareSaid(recipe, said, whole.massG);
  if (whole === undefined || share === undefined) return undefined;
  const worked = { low: whole.held.low * share.low, high: whole.held.high * share.high };
  const factor = said.of === 'energy' ? FAR : FAR_G;
  const isMore = said.low > worked.high * factor && said.low - worked.high >= NEAR[said.unit];
  const isLess = said.high < worked.low / factor && worked.low - said.high >= NEAR[said.unit];
  const isOut = (isMore && !whole.mayBeMore) || (isLess && !whole.mayBeLess);
  return isOut ? { said, worked, of: share.of } : undefined;
}

interface Whole {
  readonly held: Range;
  readonly massG: Range;
  /** Fat to fry in, sugar to taste: nobody weighed it. */
  readonly mayBeMore: boolean;
  /** What is poured away takes something along. */
  readonly mayBeLess: boolean;
}

function heldBy(recipe: Recipe, of: Held): Whole | undefined {
  const all = allListed(recipe);
  if (all.length === 0 || recipe.parts.some(({ head }) => head.nominal || head.notUnderstood.length > 0))
    return undefined;
  let [held, massG, lacking, mayBeMore] = [NOTHING, NOTHING, 0, false];
  for (const each of all) {
    const { weighed, free, optional } = each;
    const by = perGram(each, of);
    if (!weighed.known) {
      if (!free) return undefined;
      mayBeMore ||= by === undefined || by > 0.1;
      continue;
    }
    const grams = { low: optional ? 0 : weighed.grams.low, high: weighed.grams.high };
    massG = addRanges(massG, grams);
    if (by === undefined) lacking += grams.high;
    else held = addRanges(held, scaleRange(grams, by));
  }
  if (lacking > massG.high * UNKNOWN || massG.high <= 0) return undefined;
  return { held, massG, mayBeMore, mayBeLess: pours(recipe) };
}

/** kcal, or g, in a gram of it. */
function perGram({ food }: Ingredient, of: Held): number | undefined {
  const share = (component: Exclude<Held, 'energy'> | 'alcohol'): number | undefined =>
    food === undefined ? undefined : shareOf(food.per100, component);
  if (of !== 'energy') return by100(share(of));
  const [protein, fat, carbohydrate] = [share('protein'), share('fat'), share('carbohydrate')];
  if (protein === undefined || fat === undefined || carbohydrate === undefined) return undefined;
  return by100(4 * protein + 9 * fat + 4 * carbohydrate + 7 * (share('alcohol') ?? 0));
}

const by100 = (share: number | undefined): number | undefined => (share === undefined ? undefined : share / 100);

const DRIES = deed(({ act, craft }) => act === 'dry' || craft === 'reduce');
const dries = anyPart(({ steps }) => anyDoes(steps, DRIES));
const POURS = deed(({ act, craft }) => act === 'discard' || craft === 'strain' || craft === 'deep-fry');
const pours = anyPart(({ steps }) => anyDoes(steps, POURS));

/** The share of the whole that a figure is of, in words too. */
function shareSaid(recipe: Recipe, { per }: HeldSaid, massG: Range): (Range & { readonly of: string }) | undefined {
  const own = yieldOf(recipe);
  if (per.is === 'whole') return { low: 1, high: 1, of: 'all of it' };
  if (per.is === 'weight')
    return Number.isNaN(per.grams) || dries(recipe)
      ? undefined
      : { low: per.grams / massG.high, high: per.grams / (massG.low * LEAST_KEPT), of: `${trimmed(per.grams, 0)} g` };
  if (per.is === 'unsaid') return own && own.low > 0 ? { low: 1 / own.high, high: 1, of: oneOf(own) } : undefined;
  const { noun = '' } = per;
  const counts = madeOf(recipe).filter((each) =>
    noun === '' ? each === madeOf(recipe)[0] && own !== undefined : isSameNoun(each.noun, noun),
  );
  const counted = counts.length > 0 ? counts : own?.serves || (per.portion && own !== undefined) ? [own] : [];
  if (counted.length === 0) return undefined;
  const low = Math.min(...counted.map((each) => each.low));
  const high = Math.max(...counted.map((each) => each.high));
  if (!(low > 0)) return undefined;
  // A serving may be of several biscuits.
  const most = per.portion && counts.length === 0 && !own?.serves ? PIECES : 1;
  return { low: 1 / high, high: Math.min(1, most / low), of: oneOf({ low, high }) };
}

const oneOf = ({ low, high }: Range): string =>
  high <= 1 ? 'all of it' : `one of ${low === high ? trimmed(low, 1) : `${trimmed(low, 1)} to ${trimmed(high, 1)}`}`;
