/**
 * Knows whether what a part makes must be kept hot or cold to be safe: moist, and neither sour, sweet, salt nor dry enough to keep.
 * Refuses to know for how long; it errs towards silence where a composition is unsure.
 */
import { FLESH, type Food, type FoodClass } from '../../food/food.ts';
import type { PartHead } from '../../recipe/part.ts';
import type { Part } from '../../recipe/recipe.ts';
import { foodOf } from '../../recipe/stand-in.ts';
import { anySays, matching } from '../../recipe/step-words.ts';
import { onceFor } from '../once.ts';

const ANIMAL: ReadonlySet<FoodClass> = new Set<FoodClass>([...FLESH, 'egg', 'milk', 'cream', 'dairy', 'stock']);
const MEATS: ReadonlySet<FoodClass> = new Set(FLESH);
/** Perishable once cooked (Food Code 2022, 1-201.10(B), time/temperature control for safety food). */
const PLANT: ReadonlySet<FoodClass> = new Set<FoodClass>(['vegetable', 'legume', 'grain', 'pasta', 'mushroom']);
const MOIST_KINDS: ReadonlySet<string> = new Set([
  'soup',
  'stock',
  'braise',
  'rice',
  'roast',
  'mince dish',
  'starch sauce',
  'roux sauce',
]);
const KEEPING_GROUPS: ReadonlySet<string> = new Set(['pastry', 'dough', 'cake', 'batter', 'ferment']);
const KEEPING_KINDS: ReadonlySet<string> = new Set([
  'jam',
  'vinaigrette',
  'dressing',
  'ganache',
  'caramel',
  'meringue',
  'sorbet',
  'jelly',
]);

/** Least share of animal foods, and of cooked plant foods without the water they take up, that makes a mixture perishable. */
const ANIMAL_SHARE = 0.15;
const PLANT_SHARE = 0.3;
/** Grams of water in 100 g from which cured meat is a boiled sausage or a ham, and no dry one (judgement). */
const MOIST_WATER = 53;
/** Shares from which flour dries, sugar binds, and vinegar sours a mixture enough to keep (common practice, no source). */
const DRY = 0.2;
const SWEET = 0.45;
/** What has no more water than this, and is not cooked in some, is a dry mix (common practice, no source). */
const MOIST = 0.15;
const SOUR = 0.1;

/** Whether the part, or an earlier one that its steps take in, is perishable. */
export const isPerishable = onceFor(
  (part: Part): boolean =>
    isPerishableMix(part.head, cooks(part)) || part.includes.some((head) => isPerishableMix(head, true)),
);

export const isFlesh = (food: Food): boolean => MEATS.has(food.class);

/** Meat or fish is on its list, or on that of a part it takes in. */
export const hasFlesh = onceFor(({ head, includes }: Part): boolean =>
  [head, ...includes].some(({ ingredients }) => ingredients.some((i) => MEATS.has(foodOf(i)?.class ?? 'other'))),
);

/** By itself, for a night: flesh and stock, and rice, pasta and pulses that are cooked. Whole eggs and butter may stand. */
export const spoilsInTheRoom = (food: Food, name: string | undefined): boolean =>
  MEATS.has(food.class) || food.class === 'stock' || (PLANT.has(food.class) && COOKED.test(name ?? ''));

const isPerishableMix = (head: PartHead, cooked: boolean): boolean => (cooked ? cookedMix : rawMix)(head);

const rawMix = onceFor((head: PartHead) => judge(head, false));
const cookedMix = onceFor((head: PartHead) => judge(head, true));

function judge({ kind, ingredients }: PartHead, asCooked: boolean): boolean {
  if (kind !== undefined && (KEEPING_GROUPS.has(kind.group) || KEEPING_KINDS.has(kind.name))) return false;
  let whole = 0;
  let animal = 0;
  let plant = 0;
  let flour = 0;
  let sugar = 0;
  let sour = 0;
  let cooked = asCooked;
  let cultured = false;
  let soured = false;
  let flesh = false;
  let water = 0;
  let moisture = 0;
  for (const ingredient of ingredients) {
    const { weighed, name, node } = ingredient;
    const food = foodOf(ingredient);
    if (food?.class === 'yeast' || food?.class === 'curing salt') cultured = true;
    else if (STARTERS.test(name)) soured = true;
    if (food === undefined) continue;
    if (!weighed.known) continue;
    const grams = (weighed.grams.low + weighed.grams.high) / 2;
    whole += grams;
    moisture += grams * ((food.per100.water ?? 100) / 100);
    flesh ||= MEATS.has(food.class);
    if (
      ANIMAL.has(food.class) ||
      BONES.test(food.name) ||
      (food.class === 'cured meat' && (food.per100.water ?? 0) >= MOIST_WATER)
    )
      animal += grams;
    else if (PLANT.has(food.class)) {
      plant += grams;
      cooked ||= COOKED.test([node.name?.text, node.preparation?.text].join(' '));
    } else if (food.class === 'flour' || food.class === 'bread') flour += grams;
    else if (food.class === 'sugar' || food.class === 'syrup') sugar += grams;
    else if (food.class === 'vinegar') sour += grams;
    else if (food.class === 'water') water += grams;
  }
  // Yoghurt keeps milk, and not the meat that lies in it.
  if (
    cultured ||
    (soured && !flesh) ||
    whole <= 0 ||
    (!asCooked && moisture <= whole * MOIST) ||
    flour > whole * DRY ||
    sugar > whole * SWEET ||
    sour > whole * SOUR
  )
    return false;
  if (animal >= whole * ANIMAL_SHARE) return true;
  return cooked && (plant >= (whole - water) * PLANT_SHARE || (kind !== undefined && MOIST_KINDS.has(kind.name)));
}

/** What a broth is made of. */
const BONES = /\b(?:bones?|carcass)\b/;
/** Cooked before it is weighed: `potatoes, boiled`; tofu always. */
const COOKED = /\b(?:boiled|cooked|leftover|roasted|steamed|blanched|baked|tofu)\b/i;
const STARTERS = /\b(?:starter|yoghurt|yogurt|kefir|rennet|buttermilk|culture)\b/i;

const cooks = ({ steps }: Part): boolean =>
  anySays(steps, HEATING) || steps.some((s) => s.heat.some((h) => h.role === 'oven'));
const HEATING = matching(/^(?:boil|simmer|cook|fry|roast|bake|steam|braise|stew|soften|sweat|blanch|poach)/);
