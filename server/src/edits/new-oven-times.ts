/**
 * Knows how the times in the oven are written once the recipe is another size, lies in another tin, or the oven is another: by the ratio of
 * what is computed then and now, in which what is not known of the kind cancels.
 * Refuses to change a time that is not estimated: that is said elsewhere.
 */
import { trimmed } from '../measure/number-text.ts';
import type { Document } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import { ovenTimes } from '../recipe/baking/oven-time.ts';
import type { OvenTime } from '../recipe/baking/time-in-oven.ts';
import { durationOf } from '../recipe/journey/figures.ts';
import type { Recipe } from '../recipe/model.ts';
import { bindRecipe } from '../recipe/recipe.ts';
import { applyEdits, replaceSpan, type TextEdit } from './text-edit.ts';

export interface NewTimes {
  readonly edits: readonly TextEdit[];
  readonly times: readonly NewTime[];
  /** Bakes of which the time stays, as none can be worked out. */
  readonly left: number;
}

/** How a time in the oven was written, and would be. */
export interface NewTime {
  readonly written: string;
  readonly now: string;
  /** In a hundred of the time that it took, by which it takes longer; below 0 where it takes less. */
  readonly percent: number;
}

/** A change of less is within what ovens differ by. */
const WORTH = 0.06;

/** Of the recipe before those edits; they must not touch times. */
export function newOvenTimes(document: Document, recipe: Recipe, edits: readonly TextEdit[]): NewTimes {
  const before = ovenTimes(recipe);
  if (before.length === 0 || edits.length === 0) return { edits: [], times: [], left: before.length };
  const after = ovenTimes(bindRecipe(outline(applyEdits(document, edits), recipe.outline), recipe.world, recipe));
  const made: TextEdit[] = [];
  const times: NewTime[] = [];
  let left = 0;
  for (const [i, old] of before.entries()) {
    const ratio = ratioOf(old, after[i]);
    if (ratio === undefined) left++;
    else if (Math.abs(ratio - 1) > WORTH) {
      const written = timeAt(recipe, old, ratio);
      if (written === undefined) left++;
      else {
        made.push(written.edit);
        times.push(written.time);
      }
    }
  }
  return { edits: made, times, left };
}

/** Of the kind's own times: what a recipe's trials taught holds for both. */
function ratioOf(old: OvenTime, now: OvenTime | undefined): number | undefined {
  if (old.is === 'declined' || now === undefined || now.is === 'declined') return undefined;
  if (old.load.kind !== now.load.kind) return undefined;
  return now.estimate.likely / old.estimate.likely;
}

function timeAt(recipe: Recipe, old: OvenTime, ratio: number): { edit: TextEdit; time: NewTime } | undefined {
  const { part, line, said } = old.bake;
  const step = recipe.parts[part.index]?.steps.find((each) => each.line === line);
  const node = said && step && durationOf(step, said);
  const text = part.head.source.lines[line]?.text;
  if (node === undefined || text === undefined || node.overnight) return undefined;
  const written = text.slice(node.start, node.end);
  // What went before at another heat stays: the last of it takes the difference.
  const earlier = said === undefined ? 0 : said.low - node.lowMin;
  const low = roundedTime((node.lowMin + earlier) * ratio - earlier);
  const high = roundedTime((node.highMin + earlier) * ratio - earlier);
  if (!(low > 0)) return undefined;
  const now = timeText(low, Math.max(low, high));
  if (now === written) return undefined;
  return {
    edit: replaceSpan((recipe.partsAt[part.index] ?? 0) + line, node, now),
    time: { written, now, percent: Math.round((ratio - 1) * 100) },
  };
}

/** `35-40 min → 50-55 min: 40 % longer, as …` */
export const newTimeText = ({ written, now, percent }: NewTime, why: string): string =>
  `in the oven ${written} → ${now}: ${Math.abs(percent)} % ${percent > 0 ? 'longer' : 'less'}, ${why}; an estimate, a thermometer decides`;

/** As times of baking are written: by the minute to 20, by five to 2 h, then by ten. */
function roundedTime(minutes: number): number {
  const step = minutes < 20 ? 1 : minutes < 120 ? 5 : 10;
  return Math.round(minutes / step) * step;
}

const MANY_MIN = 150;

function timeText(low: number, high: number): string {
  const inHours = low >= MANY_MIN;
  const text = (minutes: number) => trimmed(inHours ? minutes / 60 : minutes, 2);
  const range = low === high ? text(low) : `${text(low)}-${text(high)}`;
  return `${range} ${inHours ? 'h' : 'min'}`;
}
