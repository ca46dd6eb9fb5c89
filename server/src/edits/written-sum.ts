/**
 * Knows how one or two figures are written in the place of the terms of an amount, which may stand on both sides of the name.
 * Refuses to work the figures out.
 */
import { figuresText, type KitchenFigure } from '../measure/kitchen.ts';
import { placesOf } from '../notation/item-amounts.ts';
import type { MeasuredNode, Span } from '../notation/tree.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

const JOINT_BEFORE = /\s*,?\s*(?:[+&]|plus|and)?\s*$/i;

/** What the writer put between the first two terms where they stand together. */
function jointIn(text: string, { plus = [], end }: MeasuredNode): string | undefined {
  const joint = text.slice(end, plus[0]?.start ?? end);
  return joint.trim() === '' ? (joint === '' ? undefined : ' ') : joint;
}

/** Writes figures where the terms stand: each in its own place where there are as many, else all in front. */
export function writeFigures(
  line: number,
  text: string,
  amount: MeasuredNode,
  figures: readonly KitchenFigure[],
): TextEdit[] {
  const { front: whole, many, behind } = placesOf(text, amount);
  const front = { start: amount.low.start, end: whole.end };
  const bias =
    amount.bias === undefined || amount.bias.start >= front.end
      ? ''
      : `${text.slice(amount.bias.start, amount.bias.end)} `;
  const [first, second] = figures;
  const [term] = behind;
  if (!many && first !== undefined && second !== undefined && term !== undefined && behind.length === 1)
    return [replaceSpan(line, front, figuresText([first])), replaceSpan(line, term, figuresText([second]))];
  const joint = second === undefined || !many ? undefined : jointIn(text, amount);
  const written = joint === undefined ? figuresText(figures) : figures.map((f) => figuresText([f])).join(joint);
  const edits = [replaceSpan(line, front, bias === '' ? written : written.replace(' ', ` ${bias}`))];
  for (const gone of behind) {
    const before = JOINT_BEFORE.exec(text.slice(0, gone.start))?.[0].length ?? 0;
    edits.push(replaceSpan(line, { start: gone.start - before, end: gone.end }, ''));
  }
  return edits;
}

/** An amount as it is written, or will be after edits; its terms joined where the name stands between. */
export function amountText(text: string, amount: MeasuredNode, edits: readonly TextEdit[] = []): string {
  const { front, behind } = placesOf(text, amount);
  return [front, ...behind]
    .map((span) => patched(text, span, edits))
    .filter((t) => t !== '')
    .join(' + ');
}

/** The text of a span after the edits that touch it. */
function patched(text: string, span: Span, edits: readonly TextEdit[]): string {
  let out = text.slice(span.start, span.end);
  for (const edit of [...edits].sort((a, b) => b.start.character - a.start.character)) {
    const [from, to] = [edit.start.character - span.start, edit.end.character - span.start];
    if (to < 0 || from > span.end - span.start) continue;
    out = out.slice(0, Math.max(0, from)) + edit.text + out.slice(to);
  }
  return out;
}
