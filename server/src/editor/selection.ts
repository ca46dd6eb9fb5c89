/**
 * Knows how a selection grows: number, amount, name, line, block, recipe.
 */
import type { Position, PositionRange } from '../notation/document.ts';
import type { Span } from '../notation/tree.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { measuredAt } from './hover/unit.ts';
import { cursorAt, holds, itemSpan, namesOn } from './place.ts';
import { lastSaying } from './symbols.ts';

/** From the smallest to the whole text; each holds the one before. */
export function selections(snapshot: Snapshot, position: Position): PositionRange[] {
  const cursor = cursorAt(snapshot, position);
  const { at, line, character, part } = cursor;
  const { statement } = line;
  const spans: (Span | undefined)[] = [];
  for (const measured of measuredAt(cursor)) spans.push(measured.low, measured.high, measured.unit, measured);
  const node = statement.kind === 'add' ? statement.ingredient : statement;
  const bare = statement.kind === 'unread' ? statement.bare : undefined;
  const first = node.kind === 'ingredient' ? node : bare;
  for (const item of first === undefined ? [] : [first, ...(first.more ?? [])]) {
    spans.push(item.taken, item.name, item.preparation, item.note, itemSpan(item, line.text));
    if (item.amount !== undefined && item.name !== undefined && item.amount.start < item.name.end)
      spans.push({ start: item.amount.start, end: item.name.end });
  }
  for (const ingredient of part?.head.ingredients ?? [])
    if (ingredient.line === cursor.inPart) spans.push(...namesOn(ingredient));
  if (statement.kind === 'step') {
    spans.push(...statement.sentence.items, statement.sentence);
    for (const mention of part?.steps.find((s) => s.line === cursor.inPart)?.mentions ?? [])
      spans.push(mention, mention.whole);
  }
  const text = line.text.trimEnd();
  spans.push({ start: text.length - text.trimStart().length, end: text.length }, { start: 0, end: line.text.length });
  const ranges = spans
    .filter((s): s is Span => s !== undefined && holds(s, character))
    .map((s): PositionRange => ({ start: { line: at, character: s.start }, end: { line: at, character: s.end } }));
  if (part !== undefined) {
    const start = snapshot.recipe.partsAt[part.index] ?? 0;
    ranges.push(lines(snapshot, start, start + lastSaying(part.head.source.lines)));
  }
  ranges.push(lines(snapshot, 0, snapshot.document.lines.length - 1));
  ranges.sort((a, b) => size(a) - size(b));
  const grown: PositionRange[] = [];
  for (const range of ranges) {
    const last = grown.at(-1);
    if (last === undefined || (contains(range, last) && size(range) > size(last))) grown.push(range);
  }
  return grown;
}

function lines(snapshot: Snapshot, from: number, to: number): PositionRange {
  const end = snapshot.document.lines[to]?.text.length ?? 0;
  return { start: { line: from, character: 0 }, end: { line: to, character: end } };
}

const size = ({ start, end }: PositionRange): number => (end.line - start.line) * 1e6 + end.character - start.character;

function contains(outer: PositionRange, inner: PositionRange): boolean {
  const before = (a: Position, b: Position) => a.line < b.line || (a.line === b.line && a.character <= b.character);
  return before(outer.start, inner.start) && before(inner.end, outer.end);
}
