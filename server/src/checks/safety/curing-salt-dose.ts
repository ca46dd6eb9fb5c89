import limits from '../../../data/curing-limits.json' with { type: 'json' };
import { listGrams } from '../../edits/set-amount.ts';
import { bookIdOf } from '../../food/food.ts';
import { gramsText, significant, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { anyDoes, deed } from '../../recipe/journey/deeds.ts';
import { isIn, isOf, listedAs } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { gramsOf as middleG } from '../../recipe/measures/brought.ts';
import type { Ingredient, Mention, Part, Recipe } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import { defineCheck, type Found } from '../check.ts';
import { anyPart } from '../over-parts.ts';
import { sumTable } from '../sum-table.ts';
import { isCuringSalt, weighedCure } from './curing-salts.ts';
import { CAUTION } from './limits.ts';

type Product = keyof typeof limits.products;

interface Values {
  readonly name: string;
  readonly substance: 'nitrite' | 'nitrate';
  /** Its strength is not known, and taken for the usual. */
  readonly assumed: boolean;
  readonly ppm: number;
  readonly mostPpm: number;
  readonly saltG: number;
  readonly meatG: number;
  /** Water that shares the nitrite; 0 in a dry cure. */
  readonly brineG: number;
  readonly product: Product;
  readonly mostG: number;
  readonly ingredient: Ingredient;
  /** The part whose list it stands on. */
  readonly part: number;
  /** All of it goes to this meat, so that its line may be mended. */
  readonly whole: boolean;
  /** Within the limit only while little of the brine is taken up. */
  readonly ifShort: boolean;
  /** Nitrite in a gram of the curing salt. */
  readonly share: number;
  readonly meats: readonly Taken[];
  readonly pickleG: number;
}

/** Times the limit. */
const FAR_OVER = 3;

export default defineCheck<Values>({
  code: 'curing-salt-dose',
  title: 'More curing salt than the product may have',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: `${limits.source}: 156 ppm minced, 200 immersed or pumped, 625 dry cured, bacon 120`,
  },
  explain: `**What it computes.** Ingoing sodium nitrite in mg a kg of meat: grams of curing salt × its share of nitrite (6.25 % in the pink salts no. 1 and no. 2) ÷ grams of meat, in a brine ÷ grams of meat and water together. 2.5 g of curing salt a kg of minced meat are 156 ppm. A cure or a brine that is a part of its own is held against the meat of the part that takes it. What is sold as some \`cure\` that no book has is taken for no. 1; of saltpetre the nitrate is reckoned.

**Why it matters.** Nitrite keeps botulism out of cured meat, and is a poison in little more than the dose that does it: a tablespoon for a teaspoon has put families in hospital.

**What to do.** Weigh it, to a tenth of a gram. The limit depends on the product: minced or emulsified 156 ppm, in a brine 200 ppm (bacon 120 ppm), rubbed on dry 625 ppm (bacon 200 ppm).

A brine stronger than that when it has evened out, and within it when a tenth is taken up, is information, but where it lies in it for 4 days or more and the brine is ${FAR_OVER} times too strong. **Silent** where the weight of the meat or the salt is not known, and on too little of it.`,
  find: ({ recipe }) => (anyCure(recipe) ? overdoses(recipe) : []),
  say: ({ name, substance, assumed, ppm, mostPpm, saltG, meatG, brineG, product, mostG, ifShort }) => {
    const rule = limits.products[product];
    const over =
      brineG > 0
        ? `${gramsText(meatG)} g of meat and ${gramsText(brineG)} g of water`
        : `${gramsText(meatG)} g of meat`;
    const limit = `${rule.words} may have ${mostPpm === 0 ? 'none' : `${mostPpm} ppm, ${gramsText(mostG)} g`}`;
    const taken = assumed
      ? ` Taken for curing salt no. 1, of ${trimmed(limits.assumed.share * 100, 2)} % nitrite: write which it is.`
      : '';
    const are = `${gramsText(saltG)} g of ${name} on ${over} are ${Math.round(ppm)} ppm of ${substance}`;
    return {
      message: ifShort
        ? `${are} once the brine has evened out; ${limit}.${taken} It is within the limit only while about a tenth of the brine is taken up: say how long, or weaken it. ${CAUTION}`
        : `${are}; ${limit}.${taken} ${CAUTION}`,
      value: Math.round(ppm),
      unit: 'mg/kg',
      band: [null, mostPpm],
      source: assumed ? `${rule.section}; ${limits.assumed.source}` : rule.section,
    };
  },
  fix: ({ ingredient, part, mostG, name, whole }, { recipe }) => {
    if (!whole || mostG < 0.1) return [];
    // Rounded down: never above the limit.
    const change = listGrams(recipe, part, ingredient, Math.floor(mostG * 10) / 10);
    return change === undefined
      ? []
      : [{ title: `Write ${change.written} ${name}`, effect: 'amounts', edits: change.edits }];
  },
  work: ({ name, substance, ppm, mostPpm, saltG, brineG, product, meats, meatG, share, mostG, pickleG, ifShort }) => {
    const baseG = meatG + brineG;
    const rows = meats.map(({ of, grams }) => ({ name: of.name, numbers: [grams] }));
    const water = brineG > 0 ? [{ name: 'water', numbers: [brineG] }] : [];
    const pureG = significant(saltG * share, 4);
    const percent = `${trimmed(share * 100, 2)} %`;
    return [
      ...sumTable([`what takes the ${substance} up`, 'weighs, g'], [...rows, ...water]),
      '',
      `${significant(saltG, 4)} g ${name} × ${percent} = ${pureG} g of ${substance}; ${pureG} g ÷ ${gramsText(baseG)} g × 1 000 000 = ${Math.round(ppm)} ppm. Taken for ${limits.products[product].words}: ${mostPpm} ppm × ${gramsText(baseG)} g ÷ 1 000 000 ÷ ${percent} = ${gramsText(mostG)} g at most.`,
      ...(ifShort
        ? [
            '',
            `By what is taken up: ${pureG} g ÷ ${gramsText(pickleG)} g of brine × ${trimmed(limits.pickup.share * 100, 0)} % of the meat's weight × 1 000 000 = ${Math.round(((saltG * share) / pickleG) * limits.pickup.share * 1e6)} ppm (${limits.pickup.source}).`,
          ]
        : []),
    ];
  },
  examples: {
    good: [
      'recipe Garlic sausage\n  1 kg      pork shoulder, minced\n  18 g      fine salt\n  2.5 g     curing salt\n  do Mix the pork with the fine salt and the curing salt and poach until the centre reads 72 C.\n',
      'recipe Bacon\n  2 kg      pork belly\n  50 g      fine salt\n  5 g       curing salt\n  do Rub the pork belly with the fine salt and the curing salt and cure at 4 C for 7 d.\n  do Rinse, dry, and roast at 170 C until the centre reads 66 C.\n',
    ],
    bad: [
      {
        text: 'recipe Garlic sausage\n  1 kg      pork shoulder, minced\n  18 g      fine salt\n  7.5 g     curing salt\n# "curing salt" curing-salt-dose *: 469 ppm\n  do Mix the pork with the fine salt and the curing salt and poach until the centre reads 72 C.\n',
        after: {
          'Write 2.4 g curing salt':
            'recipe Garlic sausage\n  1 kg      pork shoulder, minced\n  18 g      fine salt\n  2.4 g     curing salt\n  do Mix the pork with the fine salt and the curing salt and poach until the centre reads 72 C.\n',
        },
      },
      'recipe Bacon\n  2 kg      pork belly\n  50 g      fine salt\n  1 tbsp    curing salt\n# "curing salt" curing-salt-dose *: 200 ppm\n  do Rub the pork belly with the fine salt and the curing salt and cure at 4 C for 7 d.\n  do Rinse, dry, and roast at 170 C until the centre reads 66 C.\n',
      'recipe Brined ham\n  4 kg      pork shoulder\n  2 l       water\n  120 g     fine salt\n  40 g      curing salt\n# "curing salt" curing-salt-dose info *: evened out\n  do Stir the fine salt and the curing salt into the water and brine the pork at 4 C for 3 d.\n  do Simmer the pork until the centre reads 70 C.\n',
    ],
  },
});

/** A kitchen scale rounds to this share. */
const ROUNDING = 1.03;
/** From this share of the meat's weight on, water is a brine. */
const BRINE = 0.1;
/** So long in a brine, the meat has taken its share; that far over the limit a tenth taken up excuses nothing (judgement). */
const EVENED_MIN = 4 * 1440;

const IS_LONG = deed(({ times }) => times.some(({ minutes }) => minutes.low >= EVENED_MIN));

const anyCure = anyPart(({ head, includes }) =>
  head.ingredients.some((i) => isCuringSalt(i) && !includes.some(({ name }) => isNamed(name, i))),
);

const isNamed = (part: string, { name }: Ingredient): boolean => part.toLowerCase() === name.toLowerCase();

/** What a part works with: an ingredient of its own or of an earlier part, and how much of it. */
interface Taken {
  readonly of: Ingredient;
  readonly part: number;
  readonly grams: number;
  readonly share: number;
}

/** Every curing salt against the meat that it goes to, where it is too much; one a salt, where it is worst. */
function overdoses(recipe: Recipe): readonly Found<Values>[] {
  const worst = new Map<Ingredient, Values>();
  for (const part of recipe.parts) {
    const taken = takenBy(part, recipe);
    for (const salt of taken)
      if (isCuringSalt(salt.of)) {
        const values = dose(taken, salt, part);
        const known = worst.get(salt.of);
        if (values === undefined || values.saltG <= values.mostG * ROUNDING) continue;
        if (known === undefined || values.ppm / values.mostPpm > known.ppm / known.mostPpm) worst.set(salt.of, values);
      }
  }
  return [...worst.values()].flatMap((values) => {
    const { ingredient, part, ifShort } = values;
    const { name } = ingredient.node;
    if (name === undefined) return [];
    const at = { part, line: ingredient.line, start: name.start, end: name.end };
    return [{ at, values, ...(ifShort && { severity: 'info' as const }) }];
  });
}

/** Its own list, and what its list and its steps take of earlier parts. */
function takenBy(part: Part, { parts, heads, world }: Recipe): readonly Taken[] {
  const taken: Taken[] = [];
  const add = (index: number, of: Ingredient, share: number): void => {
    if (!taken.some((t) => t.of === of))
      taken.push({ of, part: index, share, grams: middleG(weighedCure(of, world)) * share });
  };
  const addPart = (index: number, share: number): void => {
    for (const i of parts[index]?.head.ingredients ?? []) add(index, i, share);
  };
  const listed = new Set<Ingredient>();
  for (const head of part.includes) {
    const line = listedPart(part.head, head.name);
    const index = heads.lastIndexOf(head, part.index);
    if (line === undefined || index < 0) continue;
    listed.add(line);
    addPart(index, shareOfMass(middleG(line), head.massG));
  }
  for (const i of part.head.ingredients) if (!listed.has(i)) add(part.index, i, 1);
  const mentions = part.steps.flatMap((step) => step.mentions).filter((m) => !m.verb);
  for (const { part: index, ingredients } of mentions) {
    if (index !== undefined && index !== part.index) {
      const whole = parts[index]?.head.massG;
      const uses = mentions.filter((m) => m.part === index);
      if (whole !== undefined) addPart(index, portionOf(uses, whole));
    }
    for (const ref of ingredients) {
      const of = ref.part === part.index ? undefined : parts[ref.part]?.head.ingredients[ref.ingredient];
      if (of === undefined) continue;
      const uses = mentions.filter((m) =>
        m.ingredients.some((r) => r.part === ref.part && r.ingredient === ref.ingredient),
      );
      add(ref.part, of, portionOf(uses, of.weighed.known ? of.weighed.grams : NOTHING));
    }
  }
  return taken;
}

/** What the portions come to as a share; the whole where none says how much, for that is the safe side. */
function portionOf(uses: readonly Mention[], whole: Range): number {
  const shares = uses.flatMap(({ portion }) => {
    if (portion.kind === 'share') return [portion.of];
    if (portion.kind !== 'amount') return [];
    const { unit, quantity } = portion.measured;
    if (unit === undefined || dimensionOf(unit.symbol) !== 'mass') return [1];
    return [shareOfMass(((quantity.low + quantity.high) / 2) * (baseOf(unit.symbol, 'us') ?? 1), whole)];
  });
  return shares.length === 0
    ? 1
    : Math.min(
        1,
        shares.reduce((sum, share) => sum + share, 0),
      );
}

const NOTHING: Range = { low: 0, high: 0 };

const shareOfMass = (grams: number, { low, high }: Range): number => (low + high > 0 ? (2 * grams) / (low + high) : 1);

/** The nitrite itself, and no salt with a little of it. */
const PURE = /\b(?:sodium|potassium) nitrite$|^e ?2(?:49|50)\b/i;

/** How much of what cures is in a gram of it. */
function strengthOf({ food, name }: Ingredient): Pick<Values, 'substance' | 'share' | 'assumed'> {
  const id = food === undefined ? '' : bookIdOf(food);
  const nitrate = (limits.nitrateShare as Readonly<Record<string, number>>)[id];
  if (nitrate !== undefined) return { substance: 'nitrate', share: nitrate, assumed: false };
  if (food === undefined && PURE.test(name)) return { substance: 'nitrite', share: 1, assumed: false };
  const share = (limits.nitriteShare as Readonly<Record<string, number>>)[id];
  return { substance: 'nitrite', share: share ?? limits.assumed.share, assumed: share === undefined };
}

const isMinced = (ingredient: Ingredient): boolean =>
  isOf(foodOf(ingredient), 'mince') ||
  isIn(ingredient, 'sausage') ||
  listedAs(ingredient).has('minced') ||
  listedAs(ingredient).has('chopped');

function dose(
  taken: readonly Taken[],
  { of: ingredient, part, share: of, grams: saltG }: Taken,
  by: Part,
): Values | undefined {
  const { name } = ingredient;
  if (saltG <= 0) return undefined;
  const { substance, share, assumed } = strengthOf(ingredient);
  const meats = taken.filter((t) => isOf(foodOf(t.of), 'flesh') || foodOf(t.of)?.class === 'cured meat');
  const minced = by.head.kind?.minced === true || meats.some((t) => isMinced(t.of));
  // The fat of a sausage is of its weight.
  if (minced) meats.push(...taken.filter((t) => foodOf(t.of)?.class === 'fat' && t.of.weighed.known));
  const meatG = meats.reduce((sum, { grams }) => sum + grams, 0);
  if (meatG <= 0 || meats.some((t) => !t.of.weighed.known)) return undefined;
  const waterG = taken.reduce((sum, t) => sum + (foodOf(t.of)?.class === 'water' ? t.grams : 0), 0);
  const brined = !minced && waterG > meatG * BRINE;
  const bacon = meats.some((t) => isIn(t.of, 'bacon'));
  const product: Product = minced
    ? 'comminuted'
    : brined
      ? bacon
        ? 'bacon in brine'
        : 'in brine'
      : bacon
        ? 'bacon, dry'
        : 'dry';
  const rule = limits.products[product];
  const mostPpm = substance === 'nitrate' ? rule.nitratePpm : rule.ppm;
  const baseG = brined ? meatG + waterG : meatG;
  const ppm = (saltG * share * 1e6) / baseG;
  // By pick-up: the brine's own strength, times the share of the meat's weight that it adds.
  const pickleG = taken.reduce((sum, t) => sum + (meats.includes(t) ? 0 : t.grams), 0);
  const ifTaken = brined ? ((saltG * share * 1e6) / pickleG) * limits.pickup.share : ppm;
  return {
    name,
    substance,
    assumed,
    ppm,
    mostPpm,
    saltG,
    meatG,
    brineG: brined ? waterG : 0,
    product,
    mostG: (mostPpm * baseG) / 1e6 / share,
    ingredient,
    part,
    whole: of === 1,
    share,
    meats,
    pickleG,
    ifShort: brined && ifTaken <= mostPpm * ROUNDING && !(ppm > mostPpm * FAR_OVER && anyDoes(by.steps, IS_LONG)),
  };
}
