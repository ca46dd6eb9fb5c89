import limits from '../../../data/curing-limits.json' with { type: 'json' };
import { listGrams } from '../../edits/set-amount.ts';
import { gramsText, trimmed } from '../../measure/number-text.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part } from '../../recipe/recipe.ts';
import { defineCheck } from '../check.ts';
import { sumTable } from '../sum-table.ts';
import { CAUTION } from './limits.ts';

type Product = keyof typeof limits.products;

interface Values {
  readonly name: string;
  readonly ppm: number;
  readonly saltG: number;
  readonly meatG: number;
  /** Water that shares the nitrite; 0 in a dry cure. */
  readonly brineG: number;
  readonly product: Product;
  readonly mostG: number;
  readonly ingredient: Ingredient;
  readonly part: number;
  /** Within the limit only while little of the brine is taken up. */
  readonly ifShort: boolean;
  /** Nitrite in a gram of the curing salt. */
  readonly share: number;
  readonly meats: readonly Ingredient[];
  readonly pickleG: number;
}

export default defineCheck<Values>({
  code: 'curing-salt-dose',
  title: 'More curing salt than the product may have',
  family: 'safety',
  severity: 'error',
  scope: 'part',
  source: {
    kind: 'publication',
    title: `${limits.source}: 156 ppm minced, 200 immersed or pumped, 625 dry cured, bacon 120`,
  },
  explain: `**What it computes.** Ingoing sodium nitrite in mg a kg of meat: grams of curing salt × its share of nitrite (6.25 % in the pink salts no. 1 and no. 2) ÷ grams of meat, in a brine ÷ grams of meat and water together. 2.5 g of curing salt a kg of minced meat are 156 ppm.

**Why it matters.** Nitrite keeps botulism out of cured meat, and is a poison in little more than the dose that does it: a tablespoon for a teaspoon has put families in hospital.

**What to do.** Weigh it, to a tenth of a gram. The limit depends on the product: minced or emulsified 156 ppm, in a brine 200 ppm (bacon 120 ppm), rubbed on dry 625 ppm (bacon 200 ppm).

A brine stronger than that when it has evened out, and within it when a tenth is taken up, is information. **Silent** where the weight of the meat or the salt is not known, and on too little of it.`,
  *find(part) {
    const cures = part.head.ingredients.filter((i) => i.food?.class === 'curing salt');
    if (cures.length === 0) return;
    for (const ingredient of cures) {
      const values = dose(part, ingredient);
      const { name } = ingredient.node;
      if (values === undefined || name === undefined || values.saltG <= values.mostG * ROUNDING) continue;
      yield {
        at: { line: ingredient.line, start: name.start, end: name.end },
        values,
        ...(values.ifShort && { severity: 'info' as const }),
      };
    }
  },
  say: ({ name, ppm, saltG, meatG, brineG, product, mostG, ifShort }) => {
    const rule = limits.products[product];
    const over =
      brineG > 0
        ? `${gramsText(meatG)} g of meat and ${gramsText(brineG)} g of water`
        : `${gramsText(meatG)} g of meat`;
    const limit = `${rule.words} may have ${rule.ppm} ppm, ${gramsText(mostG)} g`;
    return {
      message: ifShort
        ? `${gramsText(saltG)} g of ${name} on ${over} are ${Math.round(ppm)} ppm of nitrite once the brine has evened out; ${limit}. It is within the limit only while about a tenth of the brine is taken up: say how long, or weaken it. ${CAUTION}`
        : `${gramsText(saltG)} g of ${name} on ${over} are ${Math.round(ppm)} ppm of nitrite; ${limit}. ${CAUTION}`,
      value: Math.round(ppm),
      unit: 'mg/kg',
      band: [null, rule.ppm],
      source: rule.section,
    };
  },
  fix: ({ ingredient, part, mostG, name }, { recipe }) => {
    // Rounded down: never above the limit.
    const change = listGrams(recipe, part, ingredient, Math.floor(mostG * 10) / 10);
    return change === undefined
      ? []
      : [{ title: `Write ${change.written} ${name}`, effect: 'amounts', edits: change.edits }];
  },
  work: ({ name, ppm, saltG, brineG, product, meats, meatG, share, mostG, pickleG, ifShort }) => {
    const { words, ppm: most } = limits.products[product];
    const baseG = meatG + brineG;
    const water = brineG > 0 ? [{ name: 'water', numbers: [brineG] }] : [];
    const nitriteG = gramsText(saltG * share);
    const percent = `${trimmed(share * 100, 2)} %`;
    return [
      ...sumTable(
        ['what takes the nitrite up', 'weighs, g'],
        [...meats.map((i) => ({ name: i.name, numbers: [grams(i)] })), ...water],
      ),
      '',
      `${gramsText(saltG)} g ${name} × ${percent} = ${nitriteG} g of nitrite; ${nitriteG} g ÷ ${gramsText(baseG)} g × 1 000 000 = ${Math.round(ppm)} ppm. Taken for ${words}: ${most} ppm × ${gramsText(baseG)} g ÷ 1 000 000 ÷ ${percent} = ${gramsText(mostG)} g at most.`,
      ...(ifShort
        ? [
            '',
            `By what is taken up: ${nitriteG} g ÷ ${gramsText(pickleG)} g of brine × ${trimmed(limits.pickup.share * 100, 0)} % of the meat's weight × 1 000 000 = ${Math.round(((saltG * share) / pickleG) * limits.pickup.share * 1e6)} ppm (${limits.pickup.source}).`,
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
const MEAT: ReadonlySet<string> = new Set(['meat', 'ground meat', 'poultry', 'ground poultry', 'fish', 'cured meat']);
const MINCED = /\b(?:minced?|ground|sausage|salami|emulsif|chopped fine|finely chopped|diced small)/i;
const BACON = /\b(?:bacon|belly|pancetta)\b/i;
/** From this share of the meat's weight on, water is a brine. */
const BRINE = 0.1;

const grams = ({ weighed }: Ingredient): number => (weighed.known ? (weighed.grams.low + weighed.grams.high) / 2 : 0);

function dose(part: Part, ingredient: Ingredient): Values | undefined {
  const { weighed, food, name } = ingredient;
  const share = food === undefined ? undefined : (limits.nitriteShare as Readonly<Record<string, number>>)[food.id];
  if (share === undefined || !weighed.known) return undefined;
  const meats = part.head.ingredients.filter((i) => MEAT.has(i.food?.class ?? ''));
  const meatG = meats.reduce((sum, i) => sum + grams(i), 0);
  if (meatG <= 0 || meats.some((i) => !i.weighed.known)) return undefined;
  const waterG = part.head.ingredients.reduce((sum, i) => sum + (i.food?.class === 'water' ? grams(i) : 0), 0);
  const words = meats.map((i) => [i.name, i.node.preparation?.text].join(' ')).join(' ');
  const minced = meats.some((i) => i.food?.class.startsWith('ground')) || MINCED.test(words);
  const brined = !minced && waterG > meatG * BRINE;
  const bacon = BACON.test(words);
  const product: Product = minced
    ? 'comminuted'
    : brined
      ? bacon
        ? 'bacon in brine'
        : 'in brine'
      : bacon
        ? 'bacon, dry'
        : 'dry';
  const { ppm: most } = limits.products[product];
  const baseG = brined ? meatG + waterG : meatG;
  const saltG = grams(ingredient);
  const ppm = (saltG * share * 1e6) / baseG;
  // By pick-up: the brine's own strength, times the share of the meat's weight that it adds.
  const pickleG = part.head.ingredients.reduce((sum, i) => sum + (meats.includes(i) ? 0 : grams(i)), 0);
  const taken = brined ? ((saltG * share * 1e6) / pickleG) * limits.pickup.share : ppm;
  return {
    name,
    ppm,
    saltG,
    meatG,
    brineG: brined ? waterG : 0,
    product,
    mostG: (most * baseG) / 1e6 / share,
    ingredient,
    part: part.index,
    share,
    meats,
    pickleG,
    ifShort: brined && taken <= most * ROUNDING,
  };
}
