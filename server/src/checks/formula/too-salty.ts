import { percentRange, percentText, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Act, Craft } from '../../prose/event.ts';
import { type BoundEvent, boundEvents } from '../../recipe/journey/bind.ts';
import { anyDoes, deed, eventsOf } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { bringing, gramsOf, timesTheIngredient } from '../../recipe/measures/brought.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { type Mixture, mixtureOf } from '../../recipe/measures/mixture.ts';
import { isIncomplete } from '../../recipe/measures/part-measure.ts';
import { saltShare } from '../../recipe/measures/shares.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { defineCheck } from '../check.ts';
import { onceFor } from '../once.ts';
import { yieldOf } from '../printed/pieces-made.ts';
import { sumTable } from '../sum-table.ts';
import { ingredientPlace, mostOf } from './band.ts';
import { isDish, isSour } from './dishes.ts';

/** Salt of the whole from which no dish is eaten (house band of dishes: 2.6 % is too salty; above that some room for what is eaten by the spoon). */
const MOST = 0.03;
const USUAL = '0.5 to 1.5 %';
/** Salt for one who eats in a day, at the most, g (WHO 2012: less than 5 g); a dish that is salted past its usual share and has a fifth more for each is a slip (judgement). */
const DAY_G = 5;
const BY_EYE = 1.2;
const SERVED = 0.015;
/** From here on it is a crust, a bed or a box of salt, or a base that is thinned (judgement). */
const BED = 0.2;
/** Of the salt, what comes of salt by itself: a dish of olives, soy sauce or ham is as salt as they are (judgement). */
const PLAIN = 0.5;
/** Flour of the whole from which it is a dough or a batter (judgement). */
const FLOURY = 0.25;
/** Of the whole, liquid that is listed: what boils in less boils in water that is not (judgement). */
const LISTED_LIQUID = 0.1;

interface Values {
  readonly part: number;
  readonly partName: string;
  readonly name: string;
  readonly share: Range;
  readonly contents: readonly Ingredient[];
  /** Grams for each who eats, where that alone is too much. */
  readonly each?: number;
}

export default defineCheck<Values>({
  code: 'too-salty',
  title: 'A dish of no kind is too salty to eat',
  family: 'formula',
  severity: 'warning',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** Of a part that is no kind, and goes into no other: the salt of all that lies in it, as a share of the whole, and of salt itself the grams for each who eats. Salt itself counts its grams, other foods bring sodium × 2.5. Salt that no step takes is left out.

**Why it matters.** Dishes have ${USUAL} of salt. At more than ${percentText(MOST)} nobody eats them: a tablespoon may stand for a teaspoon, or a figure is too many.

**What to do.** Look at the amount of the salt. If it is a cure, a brine, a rub or a stock base, say so: \`as cure\`, \`as brine\`.

**Silent** for parts with a kind, which has a band of its own; for what is no dish by what is in it (brines, rubs and spice mixes, pickles and whatever is sour, what is salt by its soy sauce, ham or olives, crusts and beds of salt); where salt goes away again by the steps (what is soaked, cured, drained, rinsed, strained, wrung out or lifted out, or boiled in water that is not listed), or what is packed in jars; and where a weight is not known.`,
  find: ({ recipe }) => recipe.parts.flatMap((part) => salty(recipe, part)),
  say: ({ partName, name, share, each }) => {
    if (each !== undefined)
      return {
        message: `${trimmed(each, 1)} g of salt for each who eats, and ${DAY_G} g is the most for a day (WHO 2012): too salty to eat. Look at the ${name}; a tablespoon may stand for a teaspoon.`,
        value: each,
        unit: 'g',
        band: [null, DAY_G],
      };
    const about = partName === '' ? undefined : `The ${partName}:`;
    return {
      message: `${about === undefined ? 'Salt' : `${about} salt`} is ${percentRange(share.low, share.high)} of all that goes in, and ${USUAL} is usual for a dish: too salty to eat. Look at the ${name}; if it is a cure, a brine or a base, write \`as\` and its kind.`,
      ...(about !== undefined && { about }),
      value: (share.low + share.high) / 2,
      unit: '1',
      band: [null, MOST],
    };
  },
  work: ({ contents }) =>
    sumTable(
      ['ingredient', 'weighs, g', 'salt, g'],
      contents.map((each) => ({
        name: each.name,
        numbers: [gramsOf(each), gramsOf(each) * bringing(each, saltShare)],
      })),
    ),
  examples: {
    good: [
      'recipe Carrot soup\n  600 g     carrots, sliced\n  800 g     water\n  12 g      fine salt\n  do Boil the carrots in the water with the salt for 25 min, then blend.\n',
      'recipe Salted cucumbers\n  1 kg      cucumbers, sliced\n  80 g      fine salt\n  200 g     crème fraîche\n  do Toss the cucumbers with the salt, leave for 1 h, then rinse and drain.\n  do Stir in the crème fraîche.\n',
      'recipe Buttered pasta\n  500 g     dried pasta\n  40 g      coarse sea salt\n  60 g      unsalted butter\n  do Boil the pasta in plenty of water with the salt for 10 min.\n  do Toss with the butter.\n',
      'recipe Trout in salt\n  1 kg      whole trout\n  1.5 kg    coarse sea salt\n  do Bury the trout in the salt and bake at 220 C until the centre reads 63 C.\n  do Break the crust and lift out the trout.\n',
    ],
    bad: [
      'recipe Carrot soup\n  600 g     carrots, sliced\n  800 g     water\n  90 g      fine salt\n# "fine salt" too-salty: 6\n  do Boil the carrots in the water with the salt for 25 min, then blend.\n',
      'recipe Meatballs\npart balls\n  500 g     minced beef\n  1         egg\n  60 g      breadcrumbs\n  45 g      fine salt\n# "fine salt" too-salty: 7\n  do Mix the beef, egg, breadcrumbs and salt, shape into balls and fry until the centre reads 74 C.\n',
    ],
  },
});

interface Salty {
  readonly at: { readonly part: number; readonly line: number; readonly start: number; readonly end: number };
  readonly values: Values;
}

const NONE: readonly Salty[] = [];

interface Salted {
  readonly share: Range;
  readonly contents: readonly Ingredient[];
  readonly salt: Ingredient;
  readonly plainG: number;
  readonly isDough: boolean;
  /** It keeps what it is salted with. */
  readonly isMinced: boolean;
}

function salty(recipe: Recipe, part: Part): readonly Salty[] {
  const { head } = part;
  if (head.kind !== undefined || head.ingredients.length === 0 || isIncomplete(part)) return NONE;
  const worked = saltedIn(part);
  if (worked === undefined || recipe.parts.some(({ mixes }) => mixes.includes(head))) return NONE;
  const each = worked.plainG / (eatersOf(recipe)?.high ?? Number.POSITIVE_INFINITY);
  const isMuch = worked.share.low > SERVED && each > DAY_G * BY_EYE;
  if (worked.share.low <= MOST && !isMuch) return NONE;
  const { share, contents, salt } = worked;
  // What is salted is thinned by what it goes into.
  const own = recipe.parts.find((other) => other.head.ingredients.includes(salt)) ?? part;
  const holding = recipe.parts.filter(
    (other) => other === own || other === part || (part.mixes.includes(other.head) && other.mixes.includes(own.head)),
  );
  if (!worked.isMinced && holding.some((other) => losesSalt(stepsWith(salt, other), worked.isDough))) return NONE;
  const place = ingredientPlace(salt);
  if (place === undefined) return NONE;
  const values: Values = { part: own.index, partName: own === part ? head.name : '', name: salt.name, share, contents };
  return [
    {
      at: { part: own.index, ...place },
      values: share.low > MOST ? values : { ...values, each },
    },
  ];
}

/** Those who eat, where the yield counts them. */
function eatersOf(recipe: Recipe): Range | undefined {
  const made = yieldOf(recipe);
  return made?.serves === true && made.low > 0 ? made : undefined;
}

/** What a part and what it takes in hold, where it is a dish by what is in it and salted by salt. */
const saltedIn = onceFor((part: Part): Salted | undefined => {
  const contents = contentsOf(part).map((each) => taken(part, each));
  const isSalt = ({ food }: Ingredient): boolean => food?.class === 'salt';
  const salt = mostOf(contentsOf(part).filter(isSalt), gramsOf);
  if (salt === undefined) return undefined;
  const worked = workOut('salt share', contents);
  if (
    !worked.known ||
    worked.value.low <= SERVED ||
    (worked.open === undefined ? worked.value.high : worked.value.low) > BED
  )
    return undefined;
  const mix = mixtureOf(contents.map((ingredient) => ({ ingredient, share: 1 })));
  const plainG = contents.reduce((sum, each) => (isSalt(each) ? sum + gramsOf(each) : sum), 0);
  if (
    plainG < mix.saltG * PLAIN ||
    mix.unweighed > 0 ||
    !isDish(mix) ||
    isSour(mix) ||
    boilsInOther(part, mix, contents)
  )
    return undefined;
  return {
    share: worked.value,
    contents,
    salt,
    plainG,
    isDough: mix.of.flour >= mix.massG * FLOURY,
    isMinced: part.steps.some((step) => boundEvents(step).some((by) => minces(by, part, mix))),
  };
});

/** So much of it as the steps take; all of what no step names. */
function taken(part: Part, ingredient: Ingredient): Ingredient {
  const entry = part.ledger[part.head.ingredients.indexOf(ingredient)];
  if (entry === undefined || entry.uses.length === 0 || entry.left.low <= 0) return ingredient;
  return timesTheIngredient(ingredient, 1 - entry.left.low);
}

const boilsInOther = ({ steps }: Part, { massG }: Mixture, contents: readonly Ingredient[]): boolean =>
  anyDoes(steps, BOILS) &&
  contents.reduce((sum, each) => (isWet(each) ? sum + gramsOf(each) : sum), 0) < massG * LISTED_LIQUID;

/** What a pot simmers in: what is poured, tomatoes, coconut milk. */
const isWet = (each: Ingredient): boolean =>
  isIn(each, 'liquid') ||
  isIn(each, 'tomato') ||
  ((each.food?.per100.water ?? 0) > WET && !isIn(each, 'flesh') && !isIn(each, 'plant') && !isIn(each, 'egg'));
const WET = 60;

const BOILS = deed(({ act, medium }) => act === 'heat' && medium?.is === 'water');

const minces = ({ event, names }: BoundEvent, { index, head }: Part, { of, massG }: Mixture): boolean =>
  event.act === 'mince' &&
  event.said === 'yes' &&
  // `Mince through a 6 mm plate`
  ((names.length === 0 && of.flesh >= massG * PLAIN) ||
    names.some(({ mention }) =>
      mention.ingredients.some(({ part, ingredient }) => {
        const listed = part === index ? head.ingredients[ingredient] : undefined;
        return listed !== undefined && isIn(listed, 'flesh');
      }),
    ));

/** From where it goes in. */
function stepsWith(salt: Ingredient, { ledger, steps, index }: Part): Part['steps'] {
  const uses = ledger.flatMap((each) => (each.ingredient === salt ? each.uses : []));
  const first = uses.flatMap((use) => (use.part === index ? [use.step] : []));
  return first.length === 0 ? steps : steps.slice(Math.min(...first));
}

/** Whether by the steps some of the salt is left behind, or what lies in it is cured: a dough only rests. */
function losesSalt(steps: Part['steps'], isDough: boolean): boolean {
  if (anyDoes(steps, LOSES)) return true;
  if (isDough) return false;
  // What lay in salt for long before any heat.
  let isRaw = true;
  return steps.some((step) =>
    eventsOf(step).some(({ act, times }) => {
      isRaw &&= act !== 'heat';
      return isRaw && act !== 'rise' && times.some(({ kind, minutes }) => kind !== 'every' && minutes.low >= LONG_MIN);
    }),
  );
}

/** Crafts by which what holds the salt is left behind. */
const LEFT_BEHIND: ReadonlySet<Craft> = new Set<Craft>(['drain', 'strain', 'rinse', 'press', 'marinate']);
/** Minutes from which what lies in salt is salted for long (judgement). */
const LONG_MIN = 30;
const LOSES = deed(
  (event) =>
    (event.craft !== undefined && LEFT_BEHIND.has(event.craft)) ||
    LEAVES.has(event.act) ||
    (event.act === 'remove' && event.objects.some(({ role, by }) => role === 'what' && by === 'name')),
);
const LEAVES: ReadonlySet<Act> = new Set<Act>(['discard', 'steep', 'smoke', 'dry', 'pack']);
