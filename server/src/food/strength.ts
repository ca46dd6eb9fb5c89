/**
 * Knows the strength that is written beside a food (`vinegar, 3 % acidity`, `80 % lean ground beef`), and what the food then holds.
 * Refuses to adjust a part of which the class does not say what it takes the place of.
 */
import data from '../../data/foods/strengths.json' with { type: 'json' };
import { once } from '../measure/once.ts';
import type { Composition, Food, FoodClass, FoodMatch } from './food.ts';

type Part = 'acid' | 'alcohol' | 'fat' | 'cocoa' | 'protein';

interface Row {
  readonly component: Part;
  readonly of?: 'half' | 'rest';
  readonly words: readonly string[];
  readonly classes: readonly FoodClass[];
}

/** A strength as written. */
export interface Strength {
  /** Per cent. */
  readonly share: number;
  /** What it is of, where a word says so. */
  readonly row?: Row;
  /** The words that are left: `ground beef`. */
  readonly rest: string;
}

const ROWS = data.words as readonly Row[];
const ROW_OF: ReadonlyMap<string, Row> = new Map(ROWS.flatMap((row) => row.words.map((word) => [word, row])));
const BARE = data.bare as Readonly<Partial<Record<FoodClass, Part>>>;

const oneOf = (words: readonly string[]): string =>
  `(?:${[...words].sort((a, b) => b.length - a.length).join('|')})\\.?(?![\\p{L}-])`;
/** Made where a name may have a strength: it takes long to make. */
const WRITTEN = once(() => {
  const word = oneOf([...ROW_OF.keys()]);
  return new RegExp(
    `(?:(?<![\\p{L}])(?<before>${word})[ :]*)?(?<![\\d.,/–-])(?<share>\\d{1,3}(?:\\.\\d{1,2})?) ?(?:%|per ?cent(?![\\p{L}])|(?=proof))(?! ?[-–] ?\\d)(?: *(?<after>${word}))?(?: *${word})?(?<other> *${oneOf(data.otherThan)})?`,
    'iu',
  );
});
/** `80/20`: lean and fat. */
const LEAN_AND_FAT = /(?<![\d/])(\d\d) ?\/ ?(\d\d)(?![\d/])/;
const MAY_BE = /%|per ?cent|\d ?proof|\d ?\/ ?\d/i;

/** The strength among the words; undefined where there is none, or one of what nobody asks (`45 % fat in dry matter`). */
export function strengthIn(words: string): Strength | undefined {
  if (!MAY_BE.test(words)) return undefined;
  const pair = LEAN_AND_FAT.exec(words);
  if (pair !== null) {
    const [lean, fat] = [Number(pair[1]), Number(pair[2])];
    const row = ROW_OF.get('fat');
    return row === undefined || lean + fat !== 100
      ? undefined
      : { share: Math.min(lean, fat), row, rest: without(words, pair) };
  }
  const found = WRITTEN().exec(words);
  const share = Number(found?.groups?.share);
  if (found === null || found.groups?.other !== undefined || !(share <= 200)) return undefined;
  const word = (found.groups?.after ?? found.groups?.before)?.toLowerCase().replace(/\.$/, '');
  const row = word === undefined ? undefined : ROW_OF.get(word);
  return { share, ...(row !== undefined && { row }), rest: without(words, found) };
}

/** The words before and behind, without the signs that have nothing left between them. */
const without = (words: string, { 0: found, index }: RegExpExecArray): string =>
  `${words.slice(0, index)} ${words.slice(index + found.length)}`
    .replace(/\(\s*\)/g, ' ')
    .replace(/\s+,/g, ',')
    .replace(/,(?=\s*,)/g, '')
    .replace(/^[\s,]+|[\s,]+$/g, '')
    .replace(/\s{2,}/g, ' ');

/**
 * The match with the strength in it; undefined where the food has no such part. Of several foods of one class it is the one that
 * is nearest in strength.
 */
export function withStrength(found: FoodMatch, strength: Strength): FoodMatch | undefined {
  const foods = found.kind === 'food' ? [found.food] : found.kind === 'ambiguous' ? found.foods : [];
  const [first] = foods;
  if (first === undefined || foods.some((food) => food.class !== first.class)) return undefined;
  const meant = partOf(first.class, strength);
  if (meant === undefined) return undefined;
  const away = (food: Food): number => Math.abs((partNow(food, meant.part) ?? Number.POSITIVE_INFINITY) - meant.share);
  const food = adjusted(
    foods.reduce((a, b) => (away(b) < away(a) ? b : a)),
    meant.part,
    meant.share,
  );
  if (food === undefined) return undefined;
  return found.kind === 'food' ? { ...found, food } : { kind: 'food', food };
}

/** Whether the words are a strength that the food may have, by a word that says what it is of. */
export function isStrengthOf(found: FoodMatch, words: string): boolean {
  const strength = strengthIn(words);
  return strength?.row !== undefined && strength.rest === '' && withStrength(found, strength) !== undefined;
}

interface Meant {
  readonly part: Part;
  /** Per cent of that part. */
  readonly share: number;
}

function partOf(foodClass: FoodClass, { share, row }: Strength): Meant | undefined {
  const part = row === undefined ? BARE[foodClass] : row.classes.includes(foodClass) ? row.component : undefined;
  if (part === undefined) return undefined;
  const of = row?.of === 'rest' ? 100 - share : row?.of === 'half' ? share / 2 : share;
  return of >= 0 && of <= 100 ? { part, share: of } : undefined;
}

/** Cocoa is what dark chocolate has besides its sugar. */
function partNow({ per100 }: Food, part: Part): number | undefined {
  if (part !== 'cocoa') return per100[part];
  return per100.sugars === undefined ? undefined : 100 - data.cocoa.besides - per100.sugars;
}

function adjusted(food: Food, part: Part, share: number): Food | undefined {
  const per100 = ADJUST[part](food, share);
  if (per100 === undefined) return undefined;
  return { ...food, per100, source: `${food.source}; ${share} % ${part}, as written` };
}

const ADJUST: Readonly<Record<Part, (food: Food, share: number) => Composition | undefined>> = {
  acid: ({ per100 }, acid) => ({ ...per100, ...inWater(per100, acid - (per100.acid ?? acid)), acid }),
  alcohol: ({ per100 }, volume) => {
    const alcohol = alcoholByMass(volume);
    return per100.alcohol === undefined
      ? undefined
      : { ...per100, ...inWater(per100, alcohol - per100.alcohol), alcohol };
  },
  fat: ({ per100 }, fat) => {
    const { fat: was, saturates } = per100;
    if (was === undefined || was >= 100) return undefined;
    // What is no fat keeps its proportions.
    const lean = timesAll(per100, (100 - fat) / (100 - was));
    return { ...lean, fat, ...(saturates !== undefined && was > 0 && { saturates: (saturates * fat) / was }) };
  },
  cocoa: ({ per100, allergens }, cocoa) => {
    const { sugars: was, carbohydrate } = per100;
    // Of milk chocolate nobody can say what is cocoa and what is milk.
    if (was === undefined || carbohydrate === undefined || was <= 0 || allergens.eu.includes('milk')) return undefined;
    const sugars = Math.max(0, 100 - data.cocoa.besides - cocoa);
    const by = (100 - sugars) / (100 - was);
    const { sucrose } = per100;
    return {
      ...timesAll(per100, by),
      sugars,
      carbohydrate: sugars + (carbohydrate - was) * by,
      ...(sucrose !== undefined && { sucrose: (sucrose * sugars) / was }),
    };
  },
  protein: ({ per100 }, protein) => {
    const { protein: was, carbohydrate, starch } = per100;
    if (was === undefined || carbohydrate === undefined || protein > 30) return undefined;
    const more = protein - was;
    return {
      ...per100,
      protein,
      carbohydrate: carbohydrate - more,
      ...(starch !== undefined && { starch: starch - more }),
    };
  },
};

/** What comes in takes the place of water. */
const inWater = ({ water }: Composition, more: number): Composition =>
  water === undefined ? {} : { water: Math.max(0, water - more) };

const timesAll = (per100: Composition, by: number): Composition =>
  Object.fromEntries(Object.entries(per100).map(([key, grams]) => [key, grams * by]));

/** g of alcohol in 100 g of what has so much by volume. */
function alcoholByMass(volume: number): number {
  const { byVolume, byMass } = data.alcohol;
  const at = Math.max(
    1,
    byVolume.findIndex((v) => v >= volume),
  );
  const [v0 = 0, v1 = 0, m0 = 0, m1 = 0] = [byVolume[at - 1], byVolume[at], byMass[at - 1], byMass[at]];
  return m0 + ((volume - v0) / (v1 - v0)) * (m1 - m0);
}
