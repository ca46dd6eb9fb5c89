/**
 * Knows the rewrites of a sentence: a mention in the list's wording, a temperature on another scale.
 * Refuses what the sentence does not make sure.
 */
import { convertTemperature, type HeatToConvert, ovenHeat, type Wish } from '../../edits/convert-temperature.ts';
import { respellMention } from '../../edits/respell-mention.ts';
import type { PositionRange } from '../../notation/document.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { cursorAt, holds } from '../place.ts';
import type { Rewrite } from './rewrite.ts';

export function sentenceRewrites(snapshot: Snapshot, { start }: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  const cursor = cursorAt(snapshot, start);
  const { part, at, character, line } = cursor;
  if (line.statement.kind === 'oven' && holds(line.statement.temperature, character))
    return temperatures(at, line.text, ovenHeat(line.statement.temperature));
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
  for (const heat of heatsOf(step)) if (holds(heat, character)) found.push(...temperatures(at, line.text, heat));
  return found;
}

const WISHES: readonly Wish[] = [
  { scale: 'C' },
  { scale: 'F' },
  { scale: 'gas', oven: 'still' },
  { oven: 'fan' },
  { oven: 'still' },
];

function temperatures(line: number, text: string, heat: HeatToConvert): Rewrite[] {
  const seen = new Set<string>();
  return WISHES.flatMap((wish): Rewrite[] => {
    const written = convertTemperature(line, text, heat, wish);
    if (written === undefined || seen.has(written.after)) return [];
    seen.add(written.after);
    return [{ title: `Write ${written.after}`, kind: 'refactor.rewrite', edits: () => [written.edit] }];
  });
}
