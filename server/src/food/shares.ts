/**
 * Knows what one centimetre of a food weighs, what a lump as big as some thing does, and how much of a can stays when it is drained.
 * Refuses to know how a line says so.
 */
import drainedText from '../../data/foods/drained.tsv';
import lengthsText from '../../data/foods/lengths.tsv';
import likenessText from '../../data/foods/likeness.tsv';
import { once } from '../measure/once.ts';
import type { Range } from '../measure/quantity.ts';
import { rowsIn } from '../measure/table-rows.ts';
import type { Food } from './food.ts';

/** A figure with how far it goes. */
export interface Spread {
  readonly typical: number;
  readonly range: Range;
  readonly source: string;
}

const tableOf = (text: string): ReadonlyMap<string, Spread> =>
  new Map(
    rowsIn(text).map(([key = '', typical, low, high, source = '']) => {
      return [
        key,
        {
          typical: Number(typical),
          range: { low: Number(low), high: Number(high) },
          source: source === 'practice' ? 'common practice, no source' : source,
        },
      ];
    }),
  );

const LENGTHS = once(() => tableOf(lengthsText));
const LIKENESS = once(() => tableOf(likenessText));
const DRAINED = once(() => tableOf(drainedText));

/** Grams of one centimetre; undefined for what nobody measures so. */
export const perCentimetre = (food: Food): Spread | undefined => LENGTHS().get(food.id);

/** Grams of a lump that is said to be the size of something: `the size of a walnut`, `as big as two eggs`, `walnut-sized`. */
export function lumpIn(text: string): Spread | undefined {
  if (!MAY_LIKEN.test(text)) return undefined;
  const { count, thing } = LIKE.exec(text)?.groups ?? SIZED.exec(text)?.groups ?? {};
  if (thing === undefined) return undefined;
  const word = thing.toLowerCase().replace(/'s$/, '');
  const lump = LIKENESS().get(word) ?? LIKENESS().get(word.replace(/s$/, ''));
  const times = COUNTS.get(count?.toLowerCase() ?? '') ?? 1;
  if (lump === undefined || times === 1) return lump;
  const { typical, range, source } = lump;
  return { typical: typical * times, range: { low: range.low * times, high: range.high * times }, source };
}

const MAY_LIKEN = /size|\bas /i;
const LIKE =
  /\b(?:size of|(?:big|large|small) as) (?:(?<count>half an?|an?|one|two|three|2|3) )?(?:small |large |good |hen's |shelled |whole )*(?<thing>\p{L}+(?: ball)?)/iu;
const SIZED = /(?<![\p{L}-])(?<thing>\p{L}+)-sized?\b/iu;
const COUNTS: ReadonlyMap<string, number> = new Map([
  ['half a', 0.5],
  ['half an', 0.5],
  ['two', 2],
  ['2', 2],
  ['three', 3],
  ['3', 3],
]);

/** Whether cooks say of a lump that it is as big as that. */
export const isLikeness = (thing: string): boolean => LIKENESS().has(thing.toLowerCase());

/** The share of its net weight that a canned food keeps when it is drained; of a food that is bought otherwise too, where a can is a name of it. */
export const drainedShare = (food: Food): Spread | undefined =>
  food.id.startsWith('canned-') || food.names.some((name) => name.startsWith('canned '))
    ? DRAINED().get(food.class)
    : undefined;
