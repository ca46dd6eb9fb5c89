/**
 * Knows how to write recipes as cooks write them, of any number of lines and the same in every run: many parts, each with its own foods,
 * amounts and sentences, with a slip here and there. Refuses to repeat itself more than cooks do, so that no cache is flattered.
 */

import { sum } from './figures.ts';
import type { Stock } from './pantry.ts';
import * as pantry from './pantry.ts';
import { Random } from './random.ts';

/** A recipe of exactly so many lines (at least 30), the last without a line end. */
export function writeRecipe(lines: number, seed: number): string {
  const random = new Random(seed);
  const written = headOf(random);
  const taken = new Map<string, number>();
  let waiting: string[] = [];
  let grams = 0;
  for (let course = 1; ; ) {
    const done = waiting.length > 3 || (waiting.length === 3 && random.chance(0.5));
    const next = done ? { lines: assemblyOf(random, course, waiting), grams: 0, name: '' } : partOf(random, taken);
    // The last parts are put together too.
    if (written.length + next.lines.length + (done ? 0 : ASSEMBLY_LINES) > lines) {
      if (!done && waiting.length > 1) written.push(...assemblyOf(random, course, waiting));
      break;
    }
    written.push(...next.lines);
    grams += next.grams;
    waiting = done ? [] : [...waiting, next.name];
    if (done) course++;
  }
  while (written.length < lines) written.push(...trialOf(random, grams).slice(0, lines - written.length));
  return written.join('\n');
}

const ASSEMBLY_LINES = 5;

interface Listed {
  readonly line: string;
  readonly called: string;
  readonly grams: number;
}

interface Formula {
  readonly names: readonly string[];
  readonly kinds: readonly string[];
  /** In the order of use. */
  readonly list: (random: Random) => readonly (readonly [stock: Stock, lowG: number, highG: number])[];
  readonly steps: (random: Random, called: readonly string[]) => readonly string[];
}

const FORMULAS: readonly Formula[] = [
  {
    names: ['crust', 'case', 'base', 'pastry', 'lid'],
    kinds: ['shortcrust', 'sweet paste', ''],
    list: (r) => {
      const flour = r.whole(180, 320);
      return [
        [r.pick(pantry.PASTRY_FLOURS), flour, flour],
        [r.pick(pantry.FATS), 0.48 * flour, 0.58 * flour],
        [r.pick(pantry.SUGARS), 0.1 * flour, 0.3 * flour],
        [r.pick(pantry.SALTS), 1, 3],
        [pantry.YOLKS, 18, 18],
        [r.pick(pantry.MILKS), 0.12 * flour, 0.18 * flour],
      ];
    },
    steps: (r, [flour, fat, sugar, salt, egg, milk]) => [
      `Rub the ${fat} into the ${flour}, ${sugar} and ${salt} until it looks like ${r.pick(['crumbs', 'coarse meal', 'wet sand'])}.`,
      `Bring together with the ${egg} and ${r.pick(['half the', 'a third of the'])} ${milk}.`,
      `Chill at ${r.whole(3, 5)} C for ${r.whole(40, 90)} min.`,
      `Roll out ${r.whole(3, 6)} mm thick, line the pan, brush with the rest of the ${milk} and bake at ${r.whole(165, 195)} C for ${r.whole(14, 24)} min until pale gold.`,
    ],
  },
  {
    names: ['dough', 'bread', 'buns', 'flatbreads'],
    kinds: ['enriched bread', 'lean bread', ''],
    list: (r) => {
      const flour = r.whole(420, 980);
      return [
        [r.pick(pantry.MILKS), 0.62 * flour, 0.7 * flour],
        [pantry.YEAST, 0.006 * flour, 0.009 * flour],
        [r.pick(pantry.SYRUPS), 0.03 * flour, 0.06 * flour],
        [r.pick(pantry.BREAD_FLOURS), flour, flour],
        [r.pick(pantry.SALTS), 0.016 * flour, 0.02 * flour],
        [r.pick(pantry.FATS), 0.06 * flour, 0.12 * flour],
      ];
    },
    steps: (r, [milk, yeast, syrup, flour, salt, fat]) => [
      `Warm the ${milk} to ${r.whole(28, 36)} C and stir in the ${yeast} and the ${syrup}.`,
      `Work into the ${flour} with the ${salt} and knead for ${r.whole(6, 14)} min, adding the ${fat} little by little.`,
      `Cover and prove at ${r.whole(23, 28)} C for 1 h ${r.whole(5, 50)} min until doubled.`,
      `Divide in ${r.whole(4, 18)}, shape, and bake at ${r.whole(190, 235)} C for ${r.whole(16, 38)} min, until the centre reads ${r.whole(92, 97)} C.`,
    ],
  },
  {
    names: ['cream', 'custard', 'set cream', 'filling'],
    kinds: ['baked custard', 'stirred custard', ''],
    list: (r) => {
      const cream = r.whole(180, 460);
      return [
        [r.pick(pantry.CREAMS), cream, cream],
        [r.pick(pantry.MILKS), 0.4 * cream, 0.7 * cream],
        [r.pick(pantry.SPICES), 1, 4],
        [pantry.YOLKS, 0.25 * cream, 0.35 * cream],
        [r.pick(pantry.SUGARS), 0.2 * cream, 0.3 * cream],
      ];
    },
    steps: (r, [cream, milk, spice, egg, sugar]) => [
      `Warm the ${cream} with ${r.pick(['half the', 'two thirds of the', '40 ml of the'])} ${milk} and the ${spice} to ${r.whole(55, 70)} C.`,
      `Whisk the ${egg} with the ${sugar}, pour on the ${cream}, then the rest of the ${milk}.`,
      `Strain, stir over a low heat until it reads ${r.whole(80, 83)} C, and skim off the froth.`,
    ],
  },
  {
    names: ['compote', 'fruit', 'jam', 'topping'],
    kinds: [''],
    list: (r) => [
      [r.pick(pantry.FRUITS), 300, 800],
      [r.pick(pantry.SUGARS), 60, 180],
      [r.pick(pantry.SOURS), 10, 30],
      [r.pick(pantry.SPICES), 1, 3],
    ],
    steps: (r, [fruit, sugar, sour, spice]) => [
      `Toss the ${fruit} with ${r.pick(['half the', 'a quarter of the'])} ${sugar} and stand for ${r.whole(10, 90)} min.`,
      `Cook over a low heat with the ${sour} and the ${spice} for ${r.whole(8, 35)} min until it ${r.pick(['thickens', 'falls', 'leaves the pan'])}.`,
      `Stir in the rest of the ${sugar} and cool to ${r.whole(18, 25)} C.`,
    ],
  },
  {
    names: ['braise', 'stew', 'ragout', 'pie filling'],
    kinds: ['braise', 'mince dish', ''],
    list: (r) => [
      [r.pick([...pantry.MEATS, ...pantry.FISH]), 500, 1200],
      [r.pick(pantry.OILS), 20, 45],
      ...r.some(pantry.VEGETABLES, r.whole(2, 4)).map((v) => [v, 90, 320] as const),
      [r.pick(pantry.AROMATICS), 6, 24],
      [r.pick(pantry.STOCKS), 250, 700],
      [r.pick(pantry.SALTS), 8, 14],
      [r.pick(pantry.HERBS), 3, 14],
    ],
    steps: (r, called) => {
      const [meat, oil, first, ...rest] = called;
      const [garlic, broth, salt, herb] = rest.slice(-4);
      const others = rest.slice(0, -4);
      return [
        `Brown the ${meat} in ${r.pick(['half the', `${r.whole(8, 15)} g of the`])} ${oil} for ${r.whole(6, 14)} min and lift out.`,
        `Soften the ${first} in the rest of the ${oil} with ${others.map((o) => `the ${o}`).join(', ')} and the ${garlic} for ${r.whole(8, 20)} min.`,
        `Return the ${meat}, pour on the ${broth}, season with the ${salt} and simmer for ${r.whole(1, 3)} h ${r.whole(5, 55)} min.`,
        `Heat until the centre reads ${r.whole(74, 92)} C and fold in the ${herb}.`,
      ];
    },
  },
  {
    names: ['soup', 'puree', 'broth'],
    kinds: ['soup', ''],
    list: (r) => {
      const [last, ...vegetables] = r.some(pantry.VEGETABLES, 3).map((v) => [v, 140, 500] as const);
      return [
        ...vegetables,
        [r.pick(pantry.SPICES), 1, 5],
        ...(last === undefined ? [] : [last]),
        [r.pick(pantry.PULSES), 60, 160],
        [r.pick(pantry.STOCKS), 900, 1800],
        [r.pick(pantry.SALTS), 12, 20],
      ];
    },
    steps: (r, [a, b, spice, c, pulse, broth, salt]) => [
      `Sweat the ${a} and the ${b} with the ${spice} for ${r.whole(6, 16)} min.`,
      `Add the ${c}, the ${pulse}, the ${broth} and the ${salt}, boil, and simmer for ${r.whole(18, 45)} min until soft.`,
      `Blend smooth; hold at ${r.whole(62, 75)} C for no more than ${r.whole(2, 4)} h.`,
    ],
  },
  {
    names: ['dressing', 'salsa', 'relish'],
    kinds: ['vinaigrette', 'dressing', ''],
    list: (r) => [
      [r.pick(pantry.SOURS), 40, 60],
      [r.pick(pantry.SALTS), 2, 4],
      [r.pick(pantry.OILS), 100, 170],
      [r.pick(pantry.HERBS), 4, 18],
      [r.pick(pantry.NUTS), 15, 80],
    ],
    steps: (r, [sour, salt, oil, herb, nut]) => [
      `Whisk the ${sour} with the ${salt}, then ${r.whole(10, 40)} g of the ${oil} in drops and the rest of the ${oil} in a thin stream.`,
      `Stir in the ${herb} and the ${nut}, and keep at ${r.whole(2, 5)} C for up to ${r.whole(1, 4)} d.`,
    ],
  },
  {
    names: ['batter', 'sponge', 'cake', 'crumble'],
    kinds: ['creamed cake', 'muffin', ''],
    list: (r) => {
      const flour = r.whole(150, 280);
      return [
        [r.pick(pantry.FATS), 0.8 * flour, flour],
        [r.pick(pantry.SUGARS), 0.9 * flour, flour],
        [pantry.EGGS, 0.85 * flour, flour],
        [r.pick(pantry.PASTRY_FLOURS), flour, flour],
        [pantry.BAKING_POWDER, 0.02 * flour, 0.035 * flour],
        [r.pick(pantry.CHOCOLATES), 40, 80],
        [r.pick(pantry.NUTS), 30, 80],
      ];
    },
    steps: (r, [fat, sugar, egg, flour, leaven, chocolate, nut]) => [
      `Cream the ${fat} with the ${sugar} for ${r.whole(4, 9)} min until pale.`,
      `Beat in the ${egg} one by one, then fold in the ${flour} and the ${leaven} in ${r.pick(['two', 'three'])} goes.`,
      `Melt the ${chocolate} at ${r.whole(42, 50)} C, stir it in with ${r.pick(['half the', '25 g of the'])} ${nut}, and scatter the rest of the ${nut} over.`,
      `Bake at ${r.whole(155, 185)} C for ${r.whole(22, 55)} min, until the centre reads ${r.whole(94, 99)} C.`,
    ],
  },
  {
    names: ['bake', 'gratin', 'tart filling'],
    kinds: ['quiche', 'cheese filling', ''],
    list: (r) => [
      ...r.some(pantry.VEGETABLES, 2).map((v) => [v, 120, 260] as const),
      [r.pick(pantry.SALTS), 4, 7],
      [pantry.EGGS, 200, 250],
      [r.pick(pantry.CREAMS), 220, 320],
      [r.pick(pantry.CHEESES), 60, 150],
    ],
    steps: (r, [a, b, salt, egg, cream, cheese]) => [
      `Soften the ${a} with the ${b} and ${r.pick(['half the', 'a third of the'])} ${salt} for ${r.whole(8, 22)} min and drain.`,
      `Beat the ${egg} with the ${cream} and the rest of the ${salt}, stir in the vegetables and ${r.pick(['half the', 'a third of the'])} ${cheese}.`,
      `Scatter over the rest of the ${cheese} and bake at ${r.whole(160, 190)} C for ${r.whole(25, 45)} min, until the centre reads ${r.whole(74, 84)} C.`,
    ],
  },
];

/** A part, its name and what it weighs. `taken` counts the names, so that no two parts are called alike. */
function partOf(random: Random, taken: Map<string, number>): { lines: string[]; name: string; grams: number } {
  const formula = random.pick(FORMULAS);
  const stocks = formula.list(random);
  const listed = distinct(stocks).map(([stock, low, high]) =>
    listOf(random, stock, random.whole(Math.round(low), Math.round(high))),
  );
  const main = random.pick(stocks.slice(0, 3))[0].short.replace(/s$/, '');
  const plain = `${main} ${random.pick(formula.names)}`;
  const count = (taken.get(plain) ?? 0) + 1;
  taken.set(plain, count);
  const name = count === 1 ? plain : `${plain} ${count}`;
  const kind = random.pick(formula.kinds);
  const called = stocks.map(([stock]) => stock.short);
  const steps = [...formula.steps(random, called)];
  // A slip of the pen in one part of twelve: more is used than is listed, or a step is forgotten.
  const [first] = listed;
  if (first !== undefined && random.chance(0.04))
    steps.push(`Finish with ${first.grams * 2} g of the ${first.called}.`);
  else if (random.chance(0.04)) steps.splice(random.whole(0, steps.length - 1), 1);
  return {
    name,
    grams: sum(listed.map((l) => l.grams)),
    lines: [
      '',
      `part ${name}${kind === '' ? '' : ` as ${kind}`}`,
      ...listed.map((l) => l.line),
      '',
      ...steps.map((s) => `  do ${s}`),
    ],
  };
}

/** One of each food: a list that names the same food twice is another matter. */
function distinct<T extends readonly [Stock, number, number]>(stocks: readonly T[]): T[] {
  const seen = new Set<string>();
  return stocks.filter(([{ name }]) => !seen.has(name) && seen.add(name));
}

function listOf(random: Random, stock: Stock, grams: number): Listed {
  const amount = amountOf(random, stock, grams);
  const bought = random.chance(0.08) ? ` from ${Math.round(grams * (1.05 + random.next() / 5))} g` : '';
  const prepared = stock.prepared !== undefined && random.chance(0.7) ? `, ${stock.prepared}` : '';
  const comment = random.chance(0.02) ? `  # ${random.pick(pantry.TESTERS)}: weighed ${grams + 1} g` : '';
  const name = amount === '1 large' ? stock.name.replace(/s$/, '') : stock.name;
  return { line: `  ${amount.padEnd(8)}  ${name}${prepared}${bought}${comment}`, called: stock.short, grams };
}

const ML_PER: Readonly<Record<'cup' | 'tbsp' | 'tsp', number>> = { cup: 236.6, tbsp: 14.8, tsp: 4.9 };

function amountOf(random: Random, { name, measure }: Stock, grams: number): string {
  const weighed = grams >= 1000 && random.chance(0.5) ? `${(grams / 1000).toFixed(2)} kg` : `${grams} g`;
  const about = random.chance(0.03) ? 'about ' : '';
  switch (measure) {
    case 'g':
      return random.chance(0.06) ? `${grams}-${grams + random.whole(5, 40)} g` : about + weighed;
    case 'ml':
      return random.chance(0.5) ? `${grams} ml` : weighed;
    case 'large':
      return `${Math.max(1, Math.round(grams / (name === pantry.YOLKS.name ? 18 : 50)))} large`;
    case 'cloves':
      return `${Math.max(1, Math.round(grams / 4))} cloves`;
    case 'count':
      return String(Math.max(1, Math.round(grams / 100)));
    case 'cup':
    case 'tbsp':
    case 'tsp': {
      if (random.chance(measure === 'cup' ? 0.75 : 0.4)) return about + weighed;
      const quarters = Math.max(1, Math.round((grams / (ML_PER[measure] * 0.7)) * 4));
      const spooned = `${withQuarters(quarters)} ${measure}`;
      return measure === 'cup' && random.chance(0.2) ? `${spooned} = ${weighed}` : spooned;
    }
  }
}

function withQuarters(quarters: number): string {
  const whole = Math.floor(quarters / 4);
  const rest = ['', '1/4', '1/2', '3/4'][quarters % 4] ?? '';
  return [whole === 0 ? '' : String(whole), rest].filter((s) => s !== '').join(' ');
}

function assemblyOf(random: Random, course: number, parts: readonly string[]): string[] {
  const [first = '', second = '', ...others] = parts;
  return [
    '',
    `part assembly ${course}`,
    `  do Lay the ${second} on the ${first}${others.map((o) => ` and spoon over the ${o}`).join('')}.`,
    `  do Bake at ${random.whole(140, 200)} C ${random.chance(0.4) ? 'fan ' : ''}for ${random.whole(15, 40)}-${random.whole(41, 60)} min, until the centre reads ${random.whole(75, 84)} C.`,
    `  do Cool for ${random.whole(10, 90)} min, then chill at 4 C for ${random.whole(2, 12)} h before cutting.`,
  ];
}

function headOf(random: Random): string[] {
  return [
    `recipe Set menu ${random.whole(1, 9999)}`,
    '  by      Harbour Lane test kitchen',
    `  yield   ${random.whole(6, 24)} portions`,
    `  pan     rectangle ${random.whole(24, 40)} x ${random.whole(18, 30)} x ${random.whole(3, 8)} cm`,
    `  oven    ${random.whole(150, 220)} C`,
    `  tags    ${random.some(pantry.TAGS, 2).join(', ')}`,
  ];
}

function trialOf(random: Random, listedG: number): string[] {
  const day = String(random.whole(1, 28)).padStart(2, '0');
  return [
    '',
    `trial 2026-${String(random.whole(1, 11)).padStart(2, '0')}-${day} by ${random.pick(pantry.TESTERS)}`,
    `  took    ${random.whole(40, 41)} min to bake`,
    `  reached ${random.whole(96, 99)} C in the centre`,
    `  weighed ${Math.round(listedG * (0.75 + random.next() / 5))} g out of the oven`,
    `  saw     ${random.pick(pantry.ASPECTS)}`,
    `  verdict ${random.pick(['keep', 'change'])}`,
  ];
}
