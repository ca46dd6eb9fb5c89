import { percentText, trimmed } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import type { SentenceItem } from '../../notation/tree.ts';
import { type PercentSaid, percentsIn, type RatioSaid, ratiosIn } from '../../prose/printed-shares.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Recipe, Step, World } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { allListed, eitherNamed, gramsOfAll, NOTHING, namedBy } from './foods-named.ts';
import { notesOf, placeIn } from './notes.ts';

interface Values {
  /** As a ratio. */
  readonly said: Range;
  readonly worked: Range;
  readonly words: string;
  /** It is said in per cent, and not as parts. */
  readonly percent?: true;
}

/** What rounding and a loose word explain (judgement): percentages are written to the point or the half, parts to the whole. */
const FAR = 1.3;
/** Parts by the cup of what is listed by weight: a cup of flour has half the weight of one of milk. */
const FAR_MEASURES = 2;
/** Hydration is said to the nearest five. */
const NEAR_HYDRATION = 0.05;

export default defineCheck<Values>({
  code: 'proportion-disagrees',
  title: 'A proportion that is printed and the list do not agree',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** A proportion in a title, a note or a step against the weights of the list: \`80 % hydration\`, \`a 3.5 % brine\`, \`35 g of salt to the litre\`, \`3:2:1 flour, butter and sugar\`, \`equal weights of fruit and sugar\`, \`twice as much\`, \`half the flour is wholemeal\`. Salt may be counted of the water, the flour, the main food or everything, whichever comes nearest; of parts that are all measured, the volumes count.

**Why it matters.** A cook who makes another amount goes by the proportion.

**What to do.** Mend the one that is wrong.

**Silent** within a factor of ${FAR} (${FAR_MEASURES} where some are weighed and some are measured), within ${NEAR_HYDRATION * 100} points of hydration, and where a word names nothing that is listed or a weight is not known.`,
  find: ({ recipe }) => (recipe.inherits ? NONE : found(recipe)),
  say: ({ said, worked, words, percent }) => {
    const text = (share: number): string => (percent ? percentText(share) : partsText(share));
    const [low, high] = [text(worked.low), text(worked.high)];
    const is = low === high ? low : `${low} to ${high}`;
    return {
      message: `${words} is printed as ${text(middle(said))}, and by the list it is ${is}: mend one of them.`,
      value: middle(said),
      unit: '1',
      band: [worked.low, worked.high],
    };
  },
  examples: {
    good: [
      'recipe Rolls, 65 % hydration as lean bread\n  yield   8 rolls\n  500 g     bread flour\n  325 g     water\n  10 g      fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Bake at 220 C for 15 min until gold.\n',
      'recipe Dressing as vinaigrette\n  yield   200 ml\n  note    Three parts oil to one of vinegar.\n  150 ml    olive oil\n  50 ml     wine vinegar\n  do Shake the vinegar and the oil.\n',
    ],
    bad: [
      'recipe Rolls, 85 % hydration\n#       "85 %" proportion-disagrees: Hydration is printed as 85 %, and by the list it is 65 %\n  500 g     bread flour\n  325 g     water\n  10 g      fine salt\n  5 g       instant yeast\n  do Knead the flour, water, salt and yeast and prove at 24 C for 90 min.\n  do Bake at 220 C for 15 min until gold.\n',
      'recipe Dressing as vinaigrette\n  yield   200 ml\n  note    Three parts oil to one of vinegar.\n#         "Three parts oil to one of vinegar" proportion-disagrees: 5.4 : 1\n  150 ml    olive oil\n  25 ml     wine vinegar\n  do Shake the vinegar and the oil.\n',
    ],
  },
});

const NONE: readonly never[] = [];

/** `3 : 1`, `1 : 2` */
const partsText = (ratio: number): string => (ratio >= 1 ? `${trimmed(ratio, 1)} : 1` : `1 : ${trimmed(1 / ratio, 1)}`);

const found = onceFor((recipe: Recipe): readonly Found<Values>[] => {
  const whole = allListed(recipe);
  const lists = recipe.parts.length > 1 ? [whole, ...recipe.parts.map(({ head }) => head.ingredients)] : [whole];
  const { world } = recipe;
  return [
    ...notesOf(recipe).flatMap((note) =>
      saidIn(note.items, lists, world).map(({ span, ...values }) => ({ at: placeIn(note, span), values })),
    ),
    ...printing(recipe).flatMap(({ part: { index, head }, value }) =>
      value.flatMap(({ line, sentence: { items } }) =>
        saidIn(items, [whole, head.ingredients], world).map(({ span: { start, end }, ...values }) => ({
          at: { part: index, line, start, end },
          values,
        })),
      ),
    ),
  ];
});

/** What a text prints hangs on its words alone. */
const printedIn = onceFor((items: readonly SentenceItem[]) => ({
  percents: percentsIn(items),
  ratios: ratiosIn(items),
}));

/** The steps that print some. */
const printing = overParts(({ steps }): readonly Step[] | undefined => {
  const those = steps.filter(({ sentence: { items } }) => {
    const { percents, ratios } = printedIn(items);
    return percents.length + ratios.length > 0;
  });
  return those.length === 0 ? undefined : those;
});

type Lists = readonly (readonly Ingredient[])[];

/** What disagrees with every list that it may be of. */
function saidIn(
  items: readonly SentenceItem[],
  lists: Lists,
  world: World,
): readonly (Values & { readonly span: PercentSaid | RatioSaid })[] {
  return [
    ...printedIn(items).percents.flatMap((span) => {
      const said = { low: span.percent.low / 100, high: span.percent.high / 100 };
      const worked = nearest(
        lists.flatMap((list) => [isPlain, isCuring].flatMap((is) => percentOf(span, list, is) ?? [])),
        said,
      );
      const near = span.of === 'hydration' ? NEAR_HYDRATION : 0;
      const words = typeof span.of === 'string' ? NAMES[span.of] : `The ${span.of.food}`;
      // More than the whole: nobody knows what it is of.
      const isOpen = typeof span.of !== 'string' && worked !== undefined && worked.high > 1;
      return worked === undefined || isOpen || fits(said, worked, FAR, near)
        ? []
        : [{ span, said, worked, words, percent: true as const }];
    }),
    ...printedIn(items).ratios.flatMap((span) => ratioMisfit(span, lists, world)),
  ];
}

const NAMES = { hydration: 'Hydration', brine: 'The strength of the brine' } as const;

const fits = (said: Range, worked: Range, far: number, near = 0): boolean =>
  said.low <= Math.max(worked.high * (near > 0 ? 1 : far), worked.high + near) &&
  said.high >= Math.min(worked.low / (near > 0 ? 1 : far), worked.low - near);

/** Of several that may be meant, the one that comes nearest. */
function nearest(all: readonly Range[], said: Range): Range | undefined {
  const off = ({ low, high }: Range): number => Math.max(said.low / high, low / said.high);
  return all.reduce<Range | undefined>(
    (best, each) => (best === undefined || off(each) < off(best) ? each : best),
    undefined,
  );
}

/** Grams of what is so; undefined where none is, or one has no weight. */
function gramsOf(list: readonly Ingredient[], is: (each: Ingredient) => boolean): Range | undefined {
  const those = list.filter(is);
  return those.length === 0 ? undefined : gramsOfAll(those.filter(({ free }) => !free));
}

const isFlour = (each: Ingredient): boolean => foodOf(each)?.class === 'flour';
const isWater = (each: Ingredient): boolean => isIn(each, 'water');
const isSalt = (each: Ingredient): boolean => foodOf(each)?.class === 'salt';

const isPlain = (each: Ingredient): boolean =>
  isSalt(each) || isFlour(each) || isWater(each) || isIn(each, 'sugar') || isIn(each, 'yeast');
/** `The curing salt to 0.25 %` is none of the other salt. */
const isCuring = (each: Ingredient): boolean => foodOf(each)?.class === 'curing salt';

/** The share that is listed, from what may be meant least to what may be meant most. */
function percentOf(
  { of }: PercentSaid,
  list: readonly Ingredient[],
  is: (each: Ingredient) => boolean,
): Range | undefined {
  const flour = gramsOf(list, isFlour);
  const water = gramsOf(list, isWater);
  if (of === 'hydration') {
    const liquid = gramsOf(list, (each) => isIn(each, 'liquid') || isIn(each, 'egg'));
    return flour && liquid && shares(water ?? liquid, liquid, [flour]);
  }
  const word = of === 'brine' ? 'salt' : of.food;
  const { own, kind } = eitherNamed([word], list);
  const top = [...new Set([...kind, ...own])].filter(is);
  const topG = gramsOf(top, () => true);
  if (topG === undefined || (of === 'brine' && water === undefined)) return undefined;
  if (of !== 'brine' && of.below !== undefined) {
    const below = gramsOf(namedBy([of.below], list), () => true);
    if (below !== undefined) return shares(topG, topG, [below]);
  }
  if (top.some(isWater) || top.every(isFlour)) return flour && shares(topG, topG, [flour]);
  const others = list.filter((each) => !top.includes(each) && each.weighed.known);
  const all = gramsOf(list, ({ weighed }) => weighed.known);
  const main = others
    .flatMap((each) => gramsOfAll([each]) ?? [])
    .reduce((most, each) => (each.high > most.high ? each : most), NOTHING);
  return all && main.high > 0
    ? shares(topG, topG, [all, main, ...(water === undefined ? [] : [water]), ...(flour === undefined ? [] : [flour])])
    : undefined;
}

const shares = (least: Range, most: Range, of: readonly Range[]): Range => ({
  low: least.low / Math.max(...of.map(({ high }) => high)),
  high: most.high / Math.min(...of.filter(({ low }) => low > 0).map(({ low }) => low)),
});

/** The first two terms of a ratio that the list does not have so. */
function ratioMisfit(span: RatioSaid, lists: Lists, world: World): readonly (Values & { readonly span: RatioSaid })[] {
  const [first, ...rest] = span.terms;
  if (first === undefined) return NONE;
  for (const other of rest) {
    const said = { low: first.value / other.value, high: first.value / other.value };
    const all = lists.flatMap((list) => {
      const [a, b] = [namedBy(first.words, list), namedBy(other.words, list)];
      const apart = span.within ? a.every((each) => b.includes(each)) : !a.some((each) => b.includes(each));
      return a.length === 0 || b.length === 0 || !apart ? [] : ratiosOf(a, b, world, span.byWeight);
    });
    const worked = nearest(
      all.map(({ ratio }) => ratio),
      said,
    );
    if (worked === undefined) return NONE;
    if (all.some(({ ratio, far }) => fits(said, ratio, far))) continue;
    return [{ span, said, worked, words: `${first.words.join(' ')} to ${other.words.join(' ')}` }];
  }
  return NONE;
}

/** By weight, and by volume where all are measured. */
function ratiosOf(
  a: readonly Ingredient[],
  b: readonly Ingredient[],
  world: World,
  byWeight: boolean,
): readonly { readonly ratio: Range; readonly far: number }[] {
  const [weightA, weightB] = [gramsOfAll(a), gramsOfAll(b)];
  const [mlA, mlB] = [mlOf(a, world), mlOf(b, world)];
  const by = (x: Range, y: Range): Range => ({ low: x.low / y.high, high: x.high / y.low });
  const isMixed = (mlA === undefined) !== (mlB === undefined);
  return [
    ...(weightA && weightB && weightB.low > 0
      ? [{ ratio: by(weightA, weightB), far: isMixed && !byWeight ? FAR_MEASURES : FAR }]
      : []),
    ...(mlA && mlB && mlB.low > 0 && !byWeight ? [{ ratio: by(mlA, mlB), far: FAR }] : []),
  ];
}

function mlOf(list: readonly Ingredient[], { measures }: World): Range | undefined {
  let [low, high] = [0, 0];
  for (const { node } of list) {
    const total = node.amount?.kind === 'measured' ? totalOf(node.amount.quantity, measures) : undefined;
    if (total?.dimension !== 'volume') return undefined;
    low += total.low;
    high += total.high;
  }
  return { low, high };
}
