/**
 * Knows the pans that the steps of a part name with their size, and whether one of them is a pan at another size.
 * Refuses to know what goes into them.
 */

import { baseOf } from '../../measure/unit.ts';
import type { PanNode, Span } from '../../notation/tree.ts';
import { type Holding, holdingsIn, sizedVesselsIn } from '../../prose/sized-vessels.ts';
import type { Part, Step } from '../model.ts';
import { panIn } from './pan-size.ts';

export interface PanSaid extends Span {
  readonly line: number;
  readonly words: string;
}

/** What is measured before it: `a 20 cm square tin`. */
export function pansSaidIn({ head, steps }: Part): readonly PanSaid[] {
  return steps.flatMap(({ line, sentence }) => {
    const text = head.source.lines[line]?.text ?? '';
    return sizedVesselsIn(sentence.items).map(({ start, end }) => ({
      line,
      start,
      end,
      words: text.slice(start, end),
    }));
  });
}

/** Single vessels that a step names with what they hold; a size that names a food is the food's. */
export const holdingIn = ({ sentence: { items }, mentions }: Step): readonly Holding[] =>
  holdingsIn(items).filter(({ start, end }) => !mentions.some((each) => each.start < end && each.end > start));

/** What it says is baked or set in, where its shape and size are known. */
export function bakingPanIn(words: string): PanNode | undefined {
  const node = panIn(words);
  return node?.form === undefined || UNLIKE.has(node.form) || node.sizes.length === 0 ? undefined : node;
}

/** Rounded to the inch, or to the half litre (judgement). */
const FAR_MM = 1.1;
const FAR_ML = 1.2;
/** Another thing than the one that is meant: a sheet to stand it on, a pan on the stove. */
const OTHER = 3;

/** How many times as large the words say that pan to be, where they name it at another size; 1 where it is another pan, or the same. */
export function timesOf(pan: PanNode, words: string): number {
  // `A 20 cm tin` is of the shape of the one that is known.
  const said = panIn(words) ?? (pan.shape === undefined ? undefined : panIn(`${pan.shape} ${words}`));
  if (said === undefined || !mayBeSame(pan, said)) return 1;
  if (said.volume !== undefined && pan.volume !== undefined) return apart(mlOf(said), mlOf(pan), FAR_ML);
  const [own, other] = [sidesOf(pan), sidesOf(said)];
  for (const side of other) {
    const times = own.map((each) => side / each);
    if (times.some((each) => apart(each, 1, FAR_MM) === 1)) continue;
    return times.find((each) => apart(each, 1, OTHER) === 1) ?? 1;
  }
  return 1;
}

/** `Round` and `tart` are one shape; a skillet is none of a cake's. */
const mayBeSame = (pan: PanNode, said: PanNode): boolean =>
  said.form === pan.form ||
  said.form === undefined ||
  pan.form === undefined ||
  (said.shape !== undefined && said.shape === pan.shape && !UNLIKE.has(said.form) && !UNLIKE.has(pan.form));
const UNLIKE: ReadonlySet<string> = new Set(['skillet', 'roasting', 'sheet', 'casserole', 'gastronorm', 'pot']);

const apart = (one: number, two: number, far: number): number =>
  one > 0 && two > 0 && (one > two * far || two > one * far) ? one / two : 1;

const mlOf = ({ volume }: PanNode): number =>
  volume?.unit === undefined ? 0 : volume.quantity.low * (baseOf(volume.unit.symbol, 'us') ?? 0);

/** mm */
function sidesOf({ sizes, unit, unitMeant }: PanNode): readonly number[] {
  const mm = baseOf(unit?.symbol ?? unitMeant ?? 'cm', 'us') ?? 0;
  return sizes.map(({ value }) => value * mm);
}
