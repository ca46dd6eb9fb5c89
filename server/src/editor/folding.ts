/**
 * Knows what folds: recipe heads, parts, trials, foods, and runs of comments.
 * Needs the outline only.
 */
import { lastAbove } from '../notation/outline.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { lastSaying } from './symbols.ts';

export interface Fold {
  readonly from: number;
  readonly to: number;
  readonly comment: boolean;
}

export function folds({ document, outline }: Snapshot): Fold[] {
  const blocks = [
    ...outline.parts.filter((p) => p.source.named).map((p) => ({ at: p.at, lines: p.source.lines })),
    ...outline.trials,
    ...outline.foods,
  ];
  const found = blocks.map(({ at, lines }): Fold => ({ from: at, to: at + lastSaying(lines), comment: false }));
  const lastField = lastAbove(outline);
  if (outline.recipe !== undefined && lastField !== undefined)
    found.push({ from: outline.recipe.at, to: lastField, comment: false });
  let run = -1;
  for (let at = 0; at <= document.lines.length; at++) {
    const line = document.lines[at];
    const comment = line?.statement.kind === 'blank' && line.comment !== undefined;
    if (comment && run < 0) run = at;
    if (!comment && run >= 0) {
      found.push({ from: run, to: at - 1, comment: true });
      run = -1;
    }
  }
  return found.filter((f) => f.to > f.from).sort((a, b) => a.from - b.from || b.to - a.to);
}
