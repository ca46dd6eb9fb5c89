/**
 * Knows the rewrites of a sentence: a mention in the list's wording, a temperature on another scale.
 * Refuses what the sentence does not make sure.
 */
import { convertTemperature, type Oven, type TemperatureScale } from '../../edits/convert-temperature.ts';
import { respellMention } from '../../edits/respell-mention.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import type { HeatRole } from '../../recipe/heat.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { cursorAt, holds } from '../place.ts';
import type { Rewrite } from './rewrite.ts';

export function sentenceRewrites(snapshot: Snapshot, { start }: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  const cursor = cursorAt(snapshot, start);
  const { part, at, character, line } = cursor;
  if (line.statement.kind === 'oven' && holds(line.statement.temperature, character))
    return temperatures(at, line.text, line.statement.temperature, 'oven');
  const step = part?.steps.find((s) => s.line === cursor.inPart);
  if (part === undefined || step === undefined) return [];
  const found: Rewrite[] = [];
  for (const mention of step.mentions) {
    if (!holds(mention, character)) continue;
    const respelled = respellMention(document, recipe, part, step, mention);
    if (respelled !== undefined)
      found.push({
        title: `Write ${respelled.name}, as the list has it`,
        kind: 'refactor.rewrite',
        edits: () => respelled.edits,
      });
  }
  for (const { node, role } of step.heat)
    if (holds(node, character)) found.push(...temperatures(at, line.text, node, role));
  return found;
}

const WISHES: readonly { readonly scale?: TemperatureScale; readonly oven?: Oven }[] = [
  { scale: 'C' },
  { scale: 'F' },
  { scale: 'gas', oven: 'still' },
  { oven: 'fan' },
  { oven: 'still' },
];

function temperatures(line: number, text: string, node: TemperatureNode, role: HeatRole): Rewrite[] {
  const seen = new Set<string>();
  return WISHES.flatMap((wish): Rewrite[] => {
    const written = convertTemperature(line, text, node, role, wish);
    if (written === undefined || seen.has(written.after)) return [];
    seen.add(written.after);
    return [{ title: `Write ${written.after}`, kind: 'refactor.rewrite', edits: () => [written.edit] }];
  });
}
