/**
 * Knows the hints that stand in the text behind amounts, names and temperatures, of the sorts that are shown; in the order of the text.
 * Needs the recipe worked out. Refuses a line that says itself what a hint would. What hangs on a part alone is kept on it.
 */
import { keptOn } from '../notation/kept.ts';
import type { Part } from '../recipe/model.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { gramHints } from './hints/grams.ts';
import type { Hint } from './hints/hint.ts';
import { percentHints } from './hints/percent.ts';
import { ovenHints, scaleHints } from './hints/scale.ts';
import { takenHints } from './hints/taken.ts';
import type { Shown } from './shown.ts';

/** A hint with its line in the document. */
export interface PlacedHint {
  readonly at: number;
  readonly hint: Hint;
}

/** Of the lines from the first to the last, both included. */
export function hints({ recipe }: Snapshot, from: number, to: number, shown: Shown): PlacedHint[] {
  const found: PlacedHint[] = [];
  const put = (base: number, some: readonly Hint[]) => {
    for (const hint of some) {
      const at = base + hint.line;
      if (at >= from && at <= to) found.push({ at, hint });
    }
  };
  if (shown.scale) put(0, ovenHints(recipe));
  for (const part of recipe.parts) {
    const base = recipe.partsAt[part.index] ?? 0;
    if (base > to || base + part.head.source.lines.length <= from) continue;
    if (shown.grams) put(base, GRAMS(part));
    if (shown.percent) put(base, PERCENT(part));
    if (shown.scale) put(base, SCALE(part));
    if (shown.taken) put(base, takenHints(recipe, part));
  }
  return found.sort((a, b) => a.at - b.at || a.hint.of.end - b.hint.of.end);
}

function kept(make: (part: Part) => readonly Hint[]): (part: Part) => readonly Hint[] {
  const byPart = keptOn<Part, readonly Hint[]>();
  return (part) => {
    let made = byPart.get(part);
    if (made === undefined) {
      made = make(part);
      byPart.set(part, made);
    }
    return made;
  };
}

const GRAMS = kept(gramHints);
const PERCENT = kept(percentHints);
const SCALE = kept(scaleHints);
