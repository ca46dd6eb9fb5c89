/**
 * Knows which parts came, went, moved, or changed their name, kind or pan.
 * Refuses to know what is in them, but for the names in a part that came or went.
 */
import type { Part } from '../../recipe/model.ts';
import type { Change } from './change.ts';
import { nameKey, type Paired } from './pair.ts';
import { saidBy, sameWords } from './written.ts';

export function partChanges(parts: Paired<Part>, beforeCount: number, afterCount: number): Change[] {
  const changes: Change[] = [];
  const of = (part: Part) => part.head.ingredients.map((i) => i.name);
  for (const part of parts.dropped) changes.push({ kind: 'part-dropped', part: part.head.name, of: of(part) });
  for (const part of parts.added) changes.push({ kind: 'part-added', part: part.head.name, of: of(part) });
  let last = -1;
  for (const [a, b] of parts.both) {
    if (nameKey(a.head.name) !== nameKey(b.head.name))
      changes.push({ kind: 'part-renamed', part: b.head.name, from: a.head.name, to: b.head.name });
    const [from, to] = [a.head.kindNode?.text ?? '', b.head.kindNode?.text ?? ''];
    if (from !== to) changes.push({ kind: 'part-kind', part: b.head.name, from, to });
    const [was, is] = [panOf(a), panOf(b)];
    if (!sameWords(was, is)) changes.push({ kind: 'part-pan', part: b.head.name, from: was, to: is });
    if (a.index < last && beforeCount === afterCount)
      changes.push({ kind: 'part-moved', part: b.head.name, from: a.index + 1, to: b.index + 1 });
    last = Math.max(last, a.index);
  }
  return changes;
}

/** The pan that the part alone goes into, as written. */
function panOf({ head: { pan, source } }: Part): string | null {
  const line = pan === undefined ? undefined : source.lines[pan.line];
  return line === undefined ? null : saidBy({ line });
}
