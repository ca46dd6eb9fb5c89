/**
 * Knows where flour is the 100 % of a list, and what share of it a line is: of the flour listed, and of all, where a starter brings some.
 * Refuses to say it.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { exactly, type Range } from '../../measure/quantity.ts';
import { keptOn } from '../../notation/kept.ts';
import { isFlour } from '../list/ingredient.ts';
import type { Ingredient, PartHead } from '../model.ts';
import { MEASURES } from './definitions.ts';
import { ratioOf } from './ratio.ts';
import { flourShare, isStarter } from './shares.ts';

/** A share of a sum: what it likely is, and what it can be at the least and the most. */
export interface ShareOfSum {
  readonly likely: number;
  readonly range: Range;
}

/** With less flour than this share of all, it binds a sauce and is no 100 %; from memory: a choux paste has a sixth. */
const LEAST_FLOUR = 0.12;

/** Whether a cook reckons the list by its flour: its kind is measured so, or, of no kind, flour is a good part of it. */
export function isByFlour({ kind, flourG, massG, notUnderstood }: PartHead): boolean {
  // A line that is not understood may be flour.
  if (!(flourG.low > 0) || notUnderstood.length > 0) return false;
  return kind === undefined
    ? massG.complete && flourG.low >= LEAST_FLOUR * massG.high
    : kind.measures.some(({ measure }) => {
        const definition = MEASURES[measure];
        return 'per' in definition && definition.per === 'flour';
      });
}

interface Flours {
  readonly listed: readonly Ingredient[];
  /** Starters, and the share of each that is flour. */
  readonly starters: ReadonlyMap<Ingredient, number>;
}

const FLOURS = keptOn<PartHead, Flours>();

function floursOf(head: PartHead): Flours {
  let flours = FLOURS.get(head);
  if (flours === undefined) {
    const weighed = head.ingredients.filter((i) => i.weighed.known && !i.optional);
    flours = {
      listed: weighed.filter(isFlour),
      starters: new Map(weighed.flatMap((i) => (i.food && isStarter(i.food) ? [[i, flourShare(i.food) ?? 0]] : []))),
    };
    FLOURS.set(head, flours);
  }
  return flours;
}

/** Grams of flour in the list, by what lines likely weigh; `all` with that of its starters. */
export function flourGramsOf(head: PartHead): { readonly listed: number; readonly all: number } {
  const { listed, starters } = floursOf(head);
  const sum = listed.reduce((grams, i) => grams + grams0(i), 0);
  return { listed: sum, all: [...starters].reduce((grams, [i, share]) => grams + grams0(i) * share, sum) };
}

const grams0 = ({ weighed }: Ingredient): number => (weighed.known ? likelyGrams(weighed) : 0);

/** The line's share of the flour; undefined where flour is no 100 % of the list. `all` where a starter brings flour too. */
export function flourSharesOf(
  head: PartHead,
  line: Ingredient,
): { readonly listed: ShareOfSum; readonly all?: ShareOfSum } | undefined {
  if (!isByFlour(head)) return undefined;
  const { listed, starters } = floursOf(head);
  const flour = new Map(listed.map((i) => [i, 1]));
  const of = shareOf(line, flour);
  if (of === undefined) return undefined;
  const all = starters.size === 0 ? undefined : shareOf(line, new Map([...flour, ...starters]));
  return { listed: of, ...(all && { all }) };
}

/** The line's share of the weight of its list; undefined where that is not known. */
export const massShareOf = ({ ingredients, massG }: PartHead, line: Ingredient): ShareOfSum | undefined =>
  massG.complete ? shareOf(line, new Map(ingredients.filter((i) => !i.optional).map((i) => [i, 1]))) : undefined;

/** A line that is in the sum too has one weight: all of the flour is 100 % of it, whatever the cup holds. */
function shareOf(line: Ingredient, sum: ReadonlyMap<Ingredient, number>): ShareOfSum | undefined {
  if (!line.weighed.known) return undefined;
  const lines = [line, ...[...sum.keys()].filter((i) => i !== line)];
  const terms = lines.flatMap((i) =>
    i.weighed.known
      ? [{ grams: i.weighed.grams, top: exactly(i === line ? 1 : 0), bottom: exactly(sum.get(i) ?? 0) }]
      : [],
  );
  const range = ratioOf(terms);
  if (range === undefined) return undefined;
  const total = [...sum].reduce((grams, [i, share]) => grams + grams0(i) * share, 0);
  return total > 0 ? { likely: grams0(line) / total, range } : undefined;
}
