/**
 * Knows whether a body must be kept hot or cold, by what it holds and how it was cooked, and what on its list makes it keep by itself.
 * Refuses to know where it lies.
 */
import { middle } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import { type Body, type Member, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isListedCut } from '../../recipe/journey/listed.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { type Mixture, mixtureOf, type Portioned } from '../../recipe/measures/mixture.ts';
import type { Ingredient } from '../../recipe/model.ts';

/** Least share of animal foods, and of cooked plants without the water they take up, that makes a mixture perishable (judgement). */
const ANIMAL_SHARE = 0.15;
const PLANT_SHARE = 0.3;
/** Shares that keep a mixture: flour of a dough or cake, sugar, salt, fat, water of what is dry (common practice, no source). */
const FLOURY = 0.2;
const SWEET = 0.45;
/** Flour and sugar together, of what is baked sweet. */
const CAKE = 0.4;
/** Flour from which that is a cake and no thickened custard (judgement). */
const BOUND = 0.08;
/** Sugar in what is wet of it, as in a buttercream. */
const SYRUP = 0.55;
const SALT = 0.1;
const FATTY = 0.8;
const DRY = 0.15;
/** Acid in the water of the mixture, as half vinegar of 5 % over solids; vinegar of the whole. */
export const SOUR = 0.011;
const VINEGAR = 0.1;
/** Alcohol of 17 % by volume, in grams of what is liquid. */
const STRONG = 0.135;
/** Salt with which plants turn sour by themselves (NCHFP and USDA Complete Guide, 2 to 5 %; with a margin). */
const SOURING = 0.013;
/** In so much fat nothing turns sour (judgement). */
const OILY = 0.2;
/** Flour in what was baked until it is dry: choux, batter puddings (judgement). */
const BAKED_FLOURY = 0.14;
/** Grams of water in 100 g from which cured meat is a boiled sausage or a ham, and no dry one (judgement). */
const MOIST_WATER = 53;

/** Where the lists are that members are of: a recipe, or a journey in it. */
export type Lists = Pick<Journey, 'parts'>;

const ingredientOf = ({ parts }: Lists, { of }: Member): Ingredient | undefined =>
  parts[of.part]?.head.ingredients[of.ingredient];

export interface Held {
  readonly member: Member;
  readonly ingredient: Ingredient;
}

interface Kept {
  readonly of: readonly (Ingredient | undefined)[];
  readonly members: readonly Held[];
  /** Where its ingredients were looked up last. */
  parts: Lists['parts'];
  mixture?: Mixture;
}

const KEPT = keptOn<Body, Kept>();

/** What is known of a body while its ingredients are the same. */
function keptIn(lists: Lists, body: Body): Kept {
  const kept = KEPT.get(body);
  if (kept !== undefined) {
    if (kept.parts === lists.parts) return kept;
    if (body.members.every((member, i) => ingredientOf(lists, member) === kept.of[i])) {
      kept.parts = lists.parts;
      return kept;
    }
  }
  const of = body.members.map((member) => ingredientOf(lists, member));
  const members = body.members.flatMap((member, i) => {
    const ingredient = of[i];
    return ingredient === undefined ? [] : [{ member, ingredient }];
  });
  const made: Kept = { of, members, parts: lists.parts };
  KEPT.set(body, made);
  return made;
}

/** The members with their ingredients. */
export const membersIn = (lists: Lists, body: Body): readonly Held[] => keptIn(lists, body).members;

/** A bird that is raw and whole. */
export const isRawBird = ({ member: { state }, ingredient }: Held): boolean =>
  state.cooked === 'raw' &&
  state.cut === 'whole' &&
  (state.was & WAS.animal) !== 0 &&
  foodOf(ingredient)?.class === 'poultry' &&
  !isOf(foodOf(ingredient), 'organ');

/** The function, which gives again what it gave of a body while that and the foods in it are the same; it asks nothing else of a journey. */
export function onceForBody<V>(ask: (lists: Lists, body: Body) => V): (lists: Lists, body: Body) => V {
  const last = keptOn<Body, { readonly held: readonly Held[]; readonly value: V }>();
  return (lists, body) => {
    const held = membersIn(lists, body);
    const known = last.get(body);
    if (known?.held === held) return known.value;
    const value = ask(lists, body);
    last.set(body, { held, value });
    return value;
  };
}

/** What a body holds in all. */
export function mixtureIn(lists: Lists, body: Body): Mixture {
  const kept = keptIn(lists, body);
  kept.mixture ??= mixtureOf(rinsed(kept.members));
  return kept.mixture;
}

/** Salt and sugar that what was cured holds at the most once it is rinsed, of its weight (judgement). */
const TAKEN_UP = 0.05;

/** With their shares; of salt and sugar that were washed off, what was taken up. */
function rinsed(members: readonly Held[]): readonly Portioned[] {
  const shared = members.map(({ member, ingredient }) => ({ ingredient, share: middle(member.share) }));
  if (!members.some(({ member: { state } }) => (state.was & WAS.rinsed) !== 0)) return shared;
  const isWashed = members.map(
    ({ member: { state }, ingredient }) =>
      (state.was & WAS.rinsed) !== 0 && (isOf(foodOf(ingredient), 'sugar') || isSalt(ingredient)),
  );
  if (!isWashed.includes(true)) return shared;
  const { of } = mixtureOf(shared);
  const most = (of.flesh + of.plant) * TAKEN_UP;
  return shared.map(({ ingredient, share }, i) => {
    const grams = ingredient.weighed.known ? middle(ingredient.weighed.grams) * share : 0;
    return { ingredient, share: isWashed[i] === true && grams > most ? (share * most) / grams : share };
  });
}

const isSalt = (ingredient: Ingredient): boolean => {
  const kind = foodOf(ingredient)?.class;
  return kind === 'salt' || kind === 'curing salt';
};

/** By a step, or as it was bought. */
export const isCooked = (member: Member, ingredient: Ingredient): boolean =>
  (member.state.cooked !== 'raw' && member.state.cooked !== 'outside') || listedAs(ingredient).has('cooked');

/** Whether it must be kept hot or cold: the whole of it, or what a crust, a sponge or the like holds. */
export const spoils = (lists: Lists, body: Body): boolean =>
  spoilsAsOne(lists, body) || fillings(lists, body).some((filling) => spoilsAsOne(lists, filling));

/** What other parts lie on or in a part that is baked by itself, each as if it were alone: no crust makes a custard keep. */
const fillings = onceForBody((lists, body): readonly Body[] => {
  const [first] = body.members;
  if (first === undefined || body.members.every(({ of }) => of.part === first.of.part)) return NO_FILLINGS;
  const parts = [...new Set(body.members.map(({ of }) => of.part))].map((part) => ({
    ...body,
    members: body.members.filter(({ of }) => of.part === part),
  }));
  const crusts = parts.filter((part) => keepsByItself(mixtureIn(lists, part), part) && part.members.some(isBakedIn));
  return parts.filter((part) => !crusts.includes(part) && crusts.some((crust) => isLaidIn(lists, part, crust)));
});
const NO_FILLINGS: readonly never[] = [];

/** It was never one batter with what it lies in: that is pastry or crumbs, or was not heated when that was. */
function isLaidIn(lists: Lists, { members }: Body, crust: Body): boolean {
  const { massG, waterG, fatG } = mixtureIn(lists, crust);
  const isShort = fatG >= massG * SHORT && waterG <= massG * STIFF;
  const heats = new Set(crust.members.map(({ state }) => state.heatedBy));
  return isShort || members.every(({ state }) => !heats.has(state.heatedBy));
}
/** Fat that a crust of pastry or crumbs has at the least, and water at the most, of what is listed (common practice, no source). */
const SHORT = 0.15;
const STIFF = 0.3;

function spoilsAsOne(lists: Lists, body: Body): boolean {
  const mix = mixtureIn(lists, body);
  // Of what nobody weighed, as a head, no salt and no sugar on the list is known to be enough.
  if (
    body.members.length > 1 &&
    membersIn(lists, body).some(isUnweighedFlesh) &&
    !isDried(mix, body) &&
    !mix.has.has('curing')
  )
    return true;
  // `2 rice-cooker cups jasmine rice`: nothing beside it is weighed either.
  if (mix.massG <= mix.of.water && membersIn(lists, body).some(isUnweighedStarch)) return !isDried(mix, body);
  if (mix.massG <= 0 || keepsByItself(mix, body)) return false;
  let animal = 0;
  let plants = 0;
  for (const { member, ingredient } of membersIn(lists, body)) {
    const food = foodOf(ingredient);
    if (!ingredient.weighed.known) continue;
    const grams = middle(ingredient.weighed.grams) * middle(member.share);
    // In its shell an egg keeps.
    if (food?.class === 'egg' && body.members.length === 1 && !isCooked(member, ingredient)) continue;
    if (isIn(ingredient, 'animal') || (food?.class === 'cured meat' && (food.per100.water ?? 0) >= MOIST_WATER))
      animal += grams;
    else if (isOf(food, 'cooks to spoil') && isCooked(member, ingredient))
      plants += isDrawnOff(member, mix) ? 0 : grams;
    else if (isOf(food, 'spoils raw')) plants += grams;
    else if (isOf(food, 'spoils when cut') && isCut(member, ingredient)) plants += grams;
  }
  return animal >= mix.massG * ANIMAL_SHARE || plants >= (mix.massG - mix.of.water) * PLANT_SHARE;
}

/** By a step, or on the list and raw yet. */
const isCut = ({ state }: Member, ingredient: Ingredient): boolean =>
  state.cut !== 'whole' || (state.cooked === 'raw' && isListedCut(ingredient));

/** A yeast dough, yet raw, of which eggs and milk make as much as makes a mixture perishable; one with a sour starter keeps itself. */
export function isRichDough(lists: Lists, body: Body): boolean {
  const { massG, of, has } = mixtureIn(lists, body);
  return (
    has.has('yeast') &&
    !has.has('culture') &&
    of.flour > massG * FLOURY &&
    of.egg > 0 &&
    of.animal >= massG * ANIMAL_SHARE &&
    // Milk that was warmed for the yeast is the same dough.
    membersIn(lists, body).every(
      ({ member: { state }, ingredient }) => state.cooked === 'raw' || !isOf(foodOf(ingredient), 'flour'),
    )
  );
}

/** Ginger, rhubarb or the like, strained out of the syrup that it gave its taste to. */
const isDrawnOff = ({ state }: Member, { of, waterG }: Mixture): boolean =>
  (state.was & WAS.strained) !== 0 && of.sugar >= (of.sugar + waterG) * STRAINED_SYRUP;
/** Sugar of a syrup that keeps for some weeks in the cold (common practice, no source). */
const STRAINED_SYRUP = 0.3;

const isUnweighedFlesh = ({ member, ingredient }: Held): boolean =>
  !ingredient.weighed.known &&
  isIn(ingredient, 'animal') &&
  isOf(foodOf(ingredient), 'flesh') &&
  isCooked(member, ingredient);

/** Boiled or steamed, or bought so. */
const isUnweighedStarch = ({ member, ingredient }: Held): boolean =>
  !ingredient.weighed.known &&
  !ingredient.free &&
  isOf(foodOf(ingredient), 'cooks to spoil') &&
  isCooked(member, ingredient) &&
  !isBakedIn(member);

const isBakedIn = ({ state }: Member): boolean => state.heatedBy?.event.where.some(({ is }) => is === 'oven') === true;

/** Boiled, or cooked in no oven and no fat: what is dry as bought is wet by then. */
export const tookWater = ({ members }: Body): boolean =>
  members.some(({ state: { cooked, heatedBy, was } }) => {
    if (cooked === 'through') return true;
    if (cooked !== 'unsaid' || heatedBy === undefined || (was & (WAS.fat | WAS.flour)) !== 0) return false;
    const { where, medium } = heatedBy.event;
    return medium?.is === 'water' || medium?.is === 'steam' || where.some(({ is }) => is === 'hot');
  });

/** By hours in dry air; of plants, by what is seen too. */
export const isDried = ({ of }: Mixture, { members }: Body): boolean => {
  const bits = of.animal === 0 ? WAS.dried | WAS.crisp : WAS.dried;
  return (
    members.some(({ state }) => (state.was & bits) !== 0) &&
    members.every(({ state }) => (state.was & bits) !== 0 || state.cooked === 'raw')
  );
};

/** Salt of the whole, and the least of the time in it, that cure raw flesh (judgement). */
export const CURES = 0.025;
export const CURING_MIN = 14 * 1440;

/** What is on the list keeps it, whatever is done. */
export const keepsByItself = (mix: Mixture, body: Body): boolean =>
  keepsForHours(mix) ||
  (mix.of.fat >= mix.massG * FATTY && !mix.has.has('egg')) ||
  isDry(mix, body) ||
  keepsForDays(mix, body);

const isDry = ({ waterG, massG }: Mixture, body: Body): boolean => waterG <= massG * DRY && !tookWater(body);

/** Raw egg, milk and flesh do not grow what sickens in as much acid, culture or fat for some hours; none of that keeps them for days. */
const keepsForHours = ({ massG, waterG, alcoholG, acidG, of, has }: Mixture): boolean =>
  (of.fat >= massG * FATTY && has.has('egg')) ||
  (acidG >= (waterG + alcoholG) * SOUR && of.egg < massG * ANIMAL_SHARE) ||
  of.vinegar > massG * VINEGAR ||
  (has.has('culture') && of.flesh === 0);

function keepsForDays(mix: Mixture, body: Body): boolean {
  const { massG, waterG, saltG, alcoholG, of, has } = mix;
  const cured = saltG >= massG * CURES && body.coldMin.low + body.warmMin.low >= CURING_MIN;
  const raw = body.members.every(({ state }) => state.cooked === 'raw');
  // A crust keeps itself, and no meat that is in it.
  const isBread = of.flesh < massG * ANIMAL_SHARE;
  return (
    (isBread &&
      (of.flour > massG * FLOURY ||
        (of.flour > massG * BAKED_FLOURY && of.egg + of.flour > massG * FLOURY && body.members.some(isBakedIn)) ||
        (of.flour >= massG * BOUND && of.flour + of.sugar >= massG * CAKE) ||
        has.has('yeast'))) ||
    of.sugar >= massG * SWEET ||
    of.sugar >= (of.sugar + waterG) * SYRUP ||
    saltG >= massG * SALT ||
    alcoholG >= (waterG + alcoholG) * STRONG ||
    cured ||
    has.has('curing') ||
    ((raw || body.members.some(hasSoured)) &&
      of.animal === 0 &&
      saltG >= massG * SOURING &&
      of.plant > 0 &&
      of.fat < massG * OILY) ||
    isDried(mix, body)
  );
}

/** A plant that turned sour by itself, and stays so when it is boiled. */
const hasSoured = ({ state: { was } }: Member): boolean => (was & WAS.soured) !== 0 && (was & WAS.animal) === 0;

/** Least share of raw egg that a sauce is made of (judgement: a yolk to 400 g of mayonnaise). */
const RAW_EGG_SHARE = 0.04;
/** Fat of the whole in which there is little water, and all of it by itself (judgement). */
const EMULSION = 0.5;
/** Salt of the whole from which curd is a cheese that ripens (judgement). */
const CHEESE_SALT = 0.004;

/**
 * Whether it is no food to be left out of the cold for days, though for hours it keeps: mayonnaise, yogurt, a dressing of cream (USDA FSIS,
 * danger zone, and FDA Food Code 2022, 3-501.16, which name no acid of kitchens that would do).
 */
export function spoilsInDays(lists: Lists, body: Body): boolean {
  const mix = mixtureIn(lists, body);
  const { massG, of, has, saltG, fatG } = mix;
  if (massG <= 0 || !keepsForHours(mix) || keepsForDays(mix, body)) return false;
  if (isDry(mix, body) && of.fat < massG * EMULSION) return false;
  if (has.has('culture') && saltG >= massG * CHEESE_SALT && of.milk >= massG * MILKY) return false;
  const egg = membersIn(lists, body).reduce(
    (grams, { member, ingredient }) =>
      isOf(foodOf(ingredient), 'egg') && ingredient.weighed.known && body.members.length > 1
        ? grams + middle(ingredient.weighed.grams) * middle(member.share)
        : grams,
    0,
  );
  return egg >= massG * RAW_EGG_SHARE || (of.animal >= massG * ANIMAL_SHARE && fatG < massG * FATTY);
}
/** Of what is milk with its culture, and little else (judgement). */
const MILKY = 0.8;
