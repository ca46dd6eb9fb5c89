/**
 * Knows what does not grow with a recipe: times, pans, evaporation, leavening, seasoning, machines and cooling.
 * Refuses to change any of it: it is said, in a cook's words.
 */
import type { FoodClass } from '../food/food.ts';
import { trimmed } from '../measure/number-text.ts';
import type { PanNode } from '../notation/tree.ts';
import { anyDoes, deed, isBaked, isInOven } from '../recipe/journey/deeds.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import type { ScaleTarget } from './scale-target.ts';
import type { Sizes } from './sizes.ts';

/** A batch so many times as large, or as small, is no small change any more (common practice, no source). */
const LARGE = 2;
const VERY_LARGE = 4;
/** A mixer, an oven and a fridge of a home kitchen are full at about this much (common practice, no source). */
const FULL_G = 3000;

export function whatDoesNotScale(
  recipe: Recipe,
  parts: readonly Part[],
  sizes: Sizes,
  target: ScaleTarget,
  panStays: boolean,
  amountsThatStay: readonly string[],
): string[] {
  const { by } = sizes;
  if (Math.abs(by - 1) < 0.02 && sizes.deeper === undefined) return [];
  const said: string[] = [];
  const steps = parts.flatMap((p) => p.steps);
  const more = by > 1;
  const oven = anyDoes(steps, IN_OVEN);
  if (sizes.deeper !== undefined && Math.abs(sizes.deeper - 1) > 0.05) {
    // By conduction alone time goes with the square of the depth; common practice is less.
    const square = sizes.deeper ** 2;
    said.push(
      `The fill is ${trimmed(sizes.deeper, 2)} times as deep: the middle takes ${sizes.deeper > 1 ? 'longer' : 'less time'}, up to ${trimmed(square, 1)} times the time${sizes.deeper > 1 ? ', in a slightly cooler oven' : ''}. Go by the temperature inside.`,
    );
  }
  if (oven) said.push(timesStay(more));
  if (recipe.pan !== undefined && panStays) said.push(sayPan(recipe.pan.node, by));
  if (target.kind === 'pan' && recipe.parts.some((p) => p.steps.some((s) => s.sentence.items.some(isPanLength))))
    said.push('Sizes of pans, circles and cutters named in the steps stay as written: look through them.');
  const foods = parts.flatMap((p) => p.head.ingredients).map((i) => i.food?.class);
  const far = by >= LARGE || by <= 1 / LARGE;
  if (far && foods.includes('yeast'))
    said.push(
      `Yeast is scaled like the rest; a ${more ? 'large dough keeps its warmth and rises faster, so go by its volume, and take a little less yeast if it runs away' : 'small dough cools and rises more slowly, so go by its volume'}.`,
    );
  if (far && foods.includes('leavening'))
    said.push(
      `Baking powder and soda are scaled like the rest; ${more ? 'a deep, large batter often wants a little less' : 'weigh them: a small error shows more'}.`,
    );
  if (far && parts.some(isSeasoned))
    said.push('Taste for spice and salt: strong seasonings seldom need the whole factor.');
  if (anyDoes(steps, SIMMERS))
    said.push(
      `Simmering and reducing times stay as written; a ${more ? 'larger pot loses a smaller' : 'smaller pot loses a larger'} share of its water in the same time: go by thickness or weight.`,
    );
  if (far && more && anyDoes(steps, FRIES)) said.push('Fry in batches: a full pan stews.');
  if (by >= VERY_LARGE || massG(parts) * by > FULL_G * (by > 1 ? 1 : Number.POSITIVE_INFINITY))
    said.push(
      'Check that mixer, pans and oven hold the batch, and that hot food still cools from 57 to 21 °C within 2 h and to 5 °C within 6 h.',
    );
  if (parts.some((p) => p.head.nominal))
    said.push('Percentages stay: neither a weight nor a yield in grams says how large the batch is.');
  if (amountsThatStay.length > 0)
    said.push(
      `Amounts in the steps of what no list names stay as written: ${[...new Set(amountsThatStay)].join(', ')}.`,
    );
  if (recipe.outline.trials.length > 0) said.push('The trials stay as recorded: they were cooked at the old size.');
  return said;
}

/**
 * What simmers, or is seasoned as it is eaten: of a dough or batter, a cure, a brine or what is baked as it is, the salt and the spice are
 * a share of it, at every size.
 */
function isSeasoned({ head, steps }: Part): boolean {
  const classes = new Set(head.ingredients.map(({ food }) => food?.class));
  const isSeasoning = SEASONINGS.some((each) => classes.has(each));
  const isByShare =
    head.flourG.high > FLOURY * head.massG.high || classes.has('curing salt') || BY_SHARE.has(head.kind?.name ?? '');
  return isSeasoning && !isByShare && anyDoes(steps, COOKED_IN_A_POT);
}
/** Flour of a dough or batter; a stew is bound with less. */
const FLOURY = 0.15;
const SEASONINGS = ['spice', 'dried herb', 'salt'] as const satisfies readonly FoodClass[];
/** Kinds whose salt is a share of the whole, though no flour is in them. */
const BY_SHARE: ReadonlySet<string> = new Set([
  'lacto-ferment',
  'cure',
  'quick pickle',
  'fermented hot sauce',
  'brine',
  'sausage',
  'terrine',
  'baked custard',
  'meringue',
  'fruit curd',
  'starch pudding',
  'marshmallow',
  'brittle',
  'ice cream',
  'jam',
]);
const COOKED_IN_A_POT = deed((event) => event.act === 'heat' && !isBaked(event));

/** What is said where a time in the oven cannot be worked out anew. */
export const timesStay = (more: boolean): string =>
  `Baking and roasting times that cannot be estimated stay as written; a ${more ? 'deeper or larger' : 'shallower or smaller'} piece takes ${more ? 'longer' : 'less time'}: go by the signs of doneness and the temperature inside.`;

const IN_OVEN = deed(
  (event) => isBaked(event) || ((event.act === 'put' || event.act === 'dry') && event.where.some(isInOven)),
);
/** Water goes off as it cooks. */
const SIMMERS = deed(
  (event) => event.act === 'heat' && !isBaked(event) && (event.cooks === 'through' || event.craft === 'reduce'),
);
const FRIES = deed(({ craft }) => craft === 'fry' || craft === 'deep-fry');

const massG = (parts: readonly Part[]): number => parts.reduce((sum, p) => sum + p.head.massG.high, 0);

const isPanLength = (item: { readonly kind: string }): boolean => item.kind === 'length';

/** What the pan as written now holds, and the pan of the same depth that would hold it. */
function sayPan(pan: PanNode, by: number): string {
  const [first] = pan.sizes;
  const isOwn = pan.shape !== undefined && pan.sizes.length > 1 && pan.form === pan.shape && first !== undefined;
  const sides = pan.sizes.slice(0, -1).map((s) => trimmed(s.value * Math.sqrt(by), 0));
  const depth = pan.sizes.at(-1);
  const like =
    !isOwn || depth === undefined || pan.unit === undefined || pan.count !== 1 || pan.shape === 'ring'
      ? ''
      : ` (about ${pan.shape} ${[...sides, trimmed(depth.value, 1)].join(' x ')} ${pan.unit.symbol})`;
  const times =
    by > 1 ? `now holds ${trimmed(by, 3)} times as much` : `is now filled to ${trimmed(by * 100, 0)} % of what it was`;
  return `The pan stays as written, and ${times}: choose one of ${trimmed(by, 2)} times the volume${like}${by > 1 ? ', or bake in batches' : ''}.`;
}
