/**
 * Knows what one centimetre of a food weighs, what a lump as big as some thing does, and how much of a can stays when it is drained.
 * Refuses to know how a line says so.
 */
import drainedText from '../../data/foods/drained.tsv';
import lengthsText from '../../data/foods/lengths.tsv';
import likenessText from '../../data/foods/likeness.tsv';
import type { Range } from '../measure/quantity.ts';
import type { Food } from './food.ts';
import { once } from './once.ts';

/** A figure with how far it goes. */
export interface Spread {
  readonly typical: number;
  readonly range: Range;
  readonly source: string;
}

const tableOf = (text: string): ReadonlyMap<string, Spread> =>
  new Map(
    text
      .split('\n')
      .slice(2)
      .filter((line) => line !== '')
      .map((line) => {
        const [key = '', typical, low, high, source = ''] = line.split('\t');
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

/** Grams of a lump that is said to be the size of something: `butter the size of a walnut`. */
export function lumpIn(text: string): Spread | undefined {
  const thing = /\bsize of an? (?:small |large )?(\p{L}+)/iu.exec(text)?.[1];
  return thing === undefined ? undefined : LIKENESS().get(thing.toLowerCase());
}

/** The share of its net weight that a canned food keeps when it is drained. */
export const drainedShare = (food: Food): Spread | undefined =>
  food.id.startsWith('canned-') ? DRAINED().get(food.class) : undefined;
