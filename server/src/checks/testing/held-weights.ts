/**
 * Knows where a trial weighed more or less out of the oven than usually comes out of it.
 */
import { gramsText, percentRange } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { weighQuantity } from '../../recipe/list/line-weight.ts';
import type { Recipe } from '../../recipe/model.ts';
import { type InOven, inOven, isOutOfOven, type OutOfOven, outOfAll } from '../../recipe/trials/out-of-oven.ts';
import type { Trial } from '../../recipe/trials/trials.ts';
import type { Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import { byPart } from '../over-parts.ts';
import { gramsRange, type Values } from './held-values.ts';

type WeighedOut = Trial['weighed'][number];

const weightFound = onceWith(
  (
    { at, amount, outOf }: WeighedOut,
    usual: string,
    written: string,
    measured: string,
    beyond: string,
    date: string,
  ): Found<Values> => {
    const place = { line: at, start: amount.start, end: amount.end };
    const of = outOf?.text ?? 'the oven';
    return {
      at: place,
      values: { what: 'weight', of, written, measured, usual, beyond, date, trialAt: place },
    };
  },
);

const weighedOut = onceFor(({ weighed }: Trial) => weighed.filter(isOutOfOven));

export const inOvenOf = byPart(inOven);

export const usualOf = onceFor((parts: readonly InOven[]): OutOfOven | undefined => outOfAll(parts));

export function weights(recipe: Recipe, latest: Trial): readonly Found<Values>[] {
  const lines = weighedOut(latest);
  const usual = lines.length === 0 || recipe.inherits ? undefined : usualOf(inOvenOf(recipe));
  if (usual === undefined) return [];
  return lines.flatMap((line) => {
    const weighed = weighQuantity(line.amount.quantity, { kind: 'unknown', near: [] }, recipe.world);
    const beyond = weighed.known ? beyondUsual(weighed.grams, usual, piecesOf(recipe)) : undefined;
    if (!weighed.known || beyond === undefined) return [];
    const grams = gramsRange(weighed.grams);
    return weightFound(line, gramsRange(usual.left), gramsRange(usual.ingredients), grams, beyond, latest.date);
  });
}

/** What is wrong with what was weighed; undefined where nothing is, or one piece of several was weighed. */
export function beyondUsual(
  { low, high }: Range,
  { ingredients, left, slackG }: OutOfOven,
  pieces: Range,
): string | undefined {
  const isUsual = (by: Range) => high * by.high >= left.low - slackG && low * by.low <= left.high + slackG;
  if (isUsual(ONE) || isUsual(pieces)) return undefined;
  // Nearer to one piece than to all of them, as they would be multiplied.
  if (pieces.low > 1 && high * Math.sqrt(pieces.low) < left.low)
    return beyondPiece({ low, high }, { low: left.low / pieces.high, high: left.high / pieces.low }, pieces);
  if (low > ingredients.high && left.high <= ingredients.high)
    return `that is ${gramsText(low - ingredients.high)} g more than went in. Weigh it without its tin, or mend the list.`;
  return low > left.high
    ? `that is ${gramsText(low - left.high)} g more. Was it weighed with its tin, or not baked through? Mend the trial, or the list.`
    : `that is ${gramsText(left.low - high)} g less. Was some left in the bowl, or was it baked dry? Mend the trial, or the list.`;
}

function beyondPiece({ low, high }: Range, each: Range, pieces: Range): string {
  const away =
    low > each.high ? `${gramsText(low - each.high)} g more` : `${gramsText(Math.max(0, each.low - high))} g less`;
  const many = pieces.low === pieces.high ? `${pieces.low}` : `${pieces.low} to ${pieces.high}`;
  return `one of ${many} usually weighs ${gramsRange(each)}, and that is ${away}. Mend the trial, the yield or the list.`;
}

const ONE: Range = { low: 1, high: 1 };

/** How many the yield is; 1 where it is no number of pieces. */
export function piecesOf({ yield: made }: Recipe): Range {
  const amount = made?.node.amount;
  return amount === undefined || amount.unit !== undefined ? ONE : amount.quantity;
}

/** From the least in and the most out to the most in and the least out. */
export function lossText(inside: Range, left: Range): string {
  if (left.high === Number.POSITIVE_INFINITY || inside.low <= 0) return '';
  return percentRange(Math.max(0, 1 - left.high / inside.high), Math.max(0, 1 - left.low / inside.low));
}
