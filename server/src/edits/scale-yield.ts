/**
 * Knows how a yield is written at another size, to its last word: the count, its noun, and what else it counts (`1 loaf (12 slices)`);
 * what one of them weighs or measures stays.
 * Refuses to know the recipe.
 */
import { kitchenCount, numberText } from '../measure/kitchen.ts';
import { gramsText, trimmed } from '../measure/number-text.ts';
import { wordOfNumber } from '../measure/number-words.ts';
import { unitSpelled } from '../measure/unit.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { YieldNode } from '../recipe/yield.ts';
import { type Manner, madeInNumber, sizeAmount, withWord } from './sized-amount.ts';
import type { Sizes } from './sizes.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface SizedYield {
  readonly edits: readonly TextEdit[];
  readonly change: string;
  /** What is to be said of it. */
  readonly said?: string;
}

/** The yield on a line of the document; undefined where it has no amount. */
export function sizeYield(
  line: number,
  text: string,
  node: YieldNode,
  sizes: Sizes,
  manner: Manner,
): SizedYield | undefined {
  const { amount: made, of } = node;
  if (made === undefined) return undefined;
  const tail = { start: made.end, text: text.slice(made.end, Math.max(made.end, of?.end ?? 0)) };
  if (made.unit !== undefined) {
    const sized = sizeAmount(line, text, made, sizes.by, manner);
    return {
      edits: [...sized.edits, ...countsIn(line, tail, sizes.by)],
      change: `yield ${sized.before} → ${sized.after} ${of?.text ?? ''}`.trim(),
    };
  }
  const lot = lotOf(made);
  const asked = sizes.made === undefined ? undefined : sizes.made.count / lot;
  const noun = of ?? made.counted;
  const isVessel = /^(?:\p{L}+ )*(?:tins?|pans?|trays?|dish(?:es)?|moulds?|molds?)\b/u.test(noun?.text ?? '');
  const numerals = made.high === undefined ? [made.low] : [made.low, made.high];
  const counts = numerals.map((n, i) => (i === 0 ? asked : undefined) ?? n.value * sizes.pieces);
  const written = counts.map((wanted) =>
    manner.exact ? wanted : isVessel ? Math.max(1, Math.round(wanted)) : yieldCount(wanted),
  );
  const bare = /^\s*\d/.test(tail.text);
  const texts = written.map((count, i) => {
    const word = bare || numerals[i]?.style === 'word' ? wordOfNumber(count) : undefined;
    return word ?? (manner.exact ? trimmed(count, 3) : numberText(count, 'plain'));
  });
  const edits = numerals.map((n, i) => replaceSpan(line, n, texts[i] ?? ''));
  const was = (made.high ?? made.low).value * lot;
  const now = (asked !== undefined && made.high === undefined ? asked : (written.at(-1) ?? 1)) * lot;
  // `one 23 cm tart`: the size stands before the noun.
  const size = /^(?:\d[\d./½⅓⅔¼¾ -]*[\p{L}"]+\.? +)+/u.exec(noun?.text ?? '')?.[0].length ?? 0;
  const word = noun === undefined ? undefined : madeInNumber(noun.text.slice(size), was, now);
  if (noun !== undefined && word !== undefined)
    edits.push(
      replaceSpan(line, { start: noun.start + size + word.start, end: noun.start + size + word.end }, word.text),
    );
  edits.push(...eachAsked(line, node, sizes), ...countsIn(line, tail, sizes.pieces));
  const before = text.slice(made.low.start, (made.high ?? made.low).end);
  const nounText = noun === undefined ? '' : noun.text.slice(0, size) + withWord(noun.text.slice(size), word);
  const [wanted = 1, count = 1] = [counts.at(-1), written.at(-1)];
  const off = count / wanted - 1;
  return {
    edits,
    change: `yield ${before} → ${texts.join('-')} ${nounText}`.trim(),
    ...(isVessel &&
      Math.abs(off) > 0.02 && {
        said: `The yield comes to ${trimmed(wanted, 2)} ${noun?.text ?? ''} and is written as ${count}: each holds ${off > 0 ? 'less' : 'more'} than before.`,
      }),
  };
}

/** What one of the written number stands for: 12 for `2 dozen`. */
const lotOf = ({ quantity, low, high }: MeasuredNode): number =>
  high === undefined && low.value > 0 ? quantity.low / low.value : 1;

/** Few are made in halves, many in whole numbers. */
const yieldCount = (wanted: number): number => (wanted >= 4 ? Math.round(wanted) : kitchenCount(wanted, 0.1, 'halves'));

/** `yield 16 rolls of 55 g` takes the weight asked for. */
function eachAsked(line: number, { of }: YieldNode, { eachG }: Sizes): TextEdit[] {
  const each =
    of === undefined || eachG === undefined ? null : /\b(?:of|at) (?:about )?([\d.]+)(?= ?g\b)/.exec(of.text);
  if (of === undefined || each === null || eachG === undefined) return [];
  const end = of.start + each.index + each[0].length;
  return [replaceSpan(line, { start: end - (each[1]?.length ?? 0), end }, gramsText(eachG))];
}

const NUMBER = /(?<![\p{L}\d.,/-])(\d+)(?:\s*[-–]\s*(\d+))?(?![\d./])/gu;

/** Bare counts behind the first are of the whole too (`(12 slices)`), unless they are said of each, or of one box of them. */
function countsIn(
  line: number,
  { start, text }: { readonly start: number; readonly text: string },
  by: number,
): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const found of text.matchAll(NUMBER)) {
    const before = text.slice(0, found.index);
    const after = text.slice(found.index + found[0].length);
    const [clause = ''] = /^[^,;()]*/.exec(after) ?? [];
    const [next = ''] = /^[\s-]*([\p{L}%"×]+)/u.exec(after)?.slice(1) ?? [];
    const isSize = next !== '' && (unitSpelled(next) !== undefined || /^[x×"%]/.test(next));
    if (isSize || /\b(?:of|at|x|by|from)\s+(?:about\s+)?$|×\s*$/.test(before) || /\b(?:each|per|apiece)\b/.test(clause))
      continue;
    // At the very start it belongs to the noun's own size.
    if (before.trim() === '') continue;
    for (const digits of [found[1], found[2]]) {
      if (digits === undefined) continue;
      const at = start + found.index + found[0].lastIndexOf(digits);
      const place = digits === found[1] ? start + found.index : at;
      edits.push(
        replaceSpan(
          line,
          { start: place, end: place + digits.length },
          String(Math.max(1, Math.round(Number(digits) * by))),
        ),
      );
    }
  }
  return edits;
}
