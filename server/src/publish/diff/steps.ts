/**
 * Knows which steps came, went or moved, by how alike their words are.
 * Refuses to know what differs within a step (`step-change.ts`).
 */
import type { Part } from '../../recipe/model.ts';
import { align, type Pairing } from '../align.ts';
import type { Change } from './change.ts';
import { type Paired, pairBy } from './pair.ts';
import { type PlacedStep, stepsOf } from './placed-step.ts';
import { stepChange } from './step-change.ts';

export function stepChanges(parts: Paired<Part>, batch: number): Change[] {
  const changes: Change[] = [];
  const dropped: PlacedStep[] = [];
  const added: PlacedStep[] = [];
  for (const [a, b] of parts.both) {
    const pairing: Pairing<PlacedStep> = align(stepsOf(a), stepsOf(b), similarity);
    for (const [was, is] of pairing.both) changes.push(...stepChange(was, is, batch));
    dropped.push(...pairing.left);
    added.push(...pairing.right);
  }
  const moved = pairBy(dropped, added, (a, b) => similarity(a, b) >= 0.85);
  for (const [was, is] of moved.both) {
    changes.push({
      kind: 'step-moved',
      part: was.part.head.name,
      toPart: is.part.head.name,
      from: was.number,
      to: is.number,
      text: is.text,
    });
    changes.push(...stepChange(was, is, batch));
  }
  for (const { part, number, text } of moved.dropped)
    changes.push({ kind: 'step-dropped', part: part.head.name, step: number, text });
  for (const { part, number, text } of moved.added)
    changes.push({ kind: 'step-added', part: part.head.name, step: number, text });
  return changes;
}

/** Twice the words in common over all words: 1 for the same, 0 for nothing alike. */
function similarity(a: PlacedStep, b: PlacedStep): number {
  const left = new Map<string, number>();
  for (const word of a.words) left.set(word, (left.get(word) ?? 0) + 1);
  let common = 0;
  for (const word of b.words) {
    const more = left.get(word) ?? 0;
    if (more === 0) continue;
    left.set(word, more - 1);
    common++;
  }
  const all = a.words.length + b.words.length;
  return all === 0 ? 1 : (2 * common) / all;
}
