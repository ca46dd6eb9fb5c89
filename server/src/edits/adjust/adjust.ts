/**
 * Knows how measures of a part are brought to values: which grams change, what follows and why, and the change to the text.
 * Refuses what hangs on a food that nobody knows, and what cannot be had: it says what stands in the way.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Document } from '../../notation/document.ts';
import { contentsOf } from '../../recipe/measures/contents.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import { isIncomplete } from '../../recipe/measures/part-measure.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { fileOf } from '../scale-target.ts';
import type { TextEdit } from '../text-edit.ts';
import { type Factors, type Hold, listAt, type Target } from './landing.ts';
import { leaving, partWords, sayMoved, sayUnreached } from './said.ts';
import { solve } from './solve.ts';
import { type Moved, rewriteLines } from './write.ts';

export interface AdjustWish {
  readonly targets: readonly Target[];
  /** What stays as it is; nothing where left out, and what is not turned stays anyway. */
  readonly hold?: readonly Hold[];
  /** Names of ingredients that do not move. */
  readonly keep?: readonly string[];
  /** Eggs and other pieces stay whole. */
  readonly whole?: boolean;
}

/** A measure before, and after with the amounts as they are written. */
export interface Brought {
  readonly measure: MeasureName;
  readonly to: number;
  readonly before: Range;
  readonly after: Range;
}

export interface Adjustment {
  readonly ok: true;
  readonly edits: readonly TextEdit[];
  readonly brought: readonly Brought[];
  readonly moved: readonly Moved[];
  /** Other measures of the kind that lie outside their bands by it. */
  readonly leaving: readonly MeasureName[];
  /** In sentences: why these move, what stays, and what else it does. */
  readonly said: readonly string[];
}

export type AdjustResult = Adjustment | { readonly ok: false; readonly why: string };

const refuse = (why: string): AdjustResult => ({ ok: false, why });

/** The part with its measures on their targets, to the rounding of its amounts. */
export function adjustPart(document: Document, recipe: Recipe, part: Part, wish: AdjustWish): AdjustResult {
  const refused = cannotBeWritten(recipe, part) ?? notKnown(part, wish.targets);
  if (refused !== undefined) return refuse(refused);
  const keep = new Set<Ingredient>();
  for (const name of wish.keep ?? []) {
    const kept = linesNamed(part, name);
    if (kept.length === 0)
      return refuse(
        `\`${name}\` is not in ${partWords(part)}; on its list are ${part.head.ingredients.map((i) => i.name).join(', ')}`,
      );
    for (const line of kept) keep.add(line);
  }
  const hold = new Set(wish.hold);
  if (hold.has('mass') && part.head.ingredients.some((i) => i.percent !== undefined))
    return refuse(
      'the list is written in percentages of the flour, so what the whole weighs follows from them: hold the flour',
    );
  const asked = { targets: wish.targets, hold, keep, whole: wish.whole === true };
  const solved = solve(part, asked);
  if (!solved.ok) return refuse(sayUnreached(part, asked, solved));
  const written = rewriteLines(document, recipe, part, solved.factors);
  if (written === undefined)
    return refuse(
      'a line that has to move has no place for another amount: write its weight in front of its name first',
    );
  const { edits, moved } = written;
  const factors: Factors = new Map(moved.map((m) => [m.ingredient, m.gramsAfter / m.gramsBefore]));
  const now = contentsOf(part);
  const then = listAt(now, factors);
  const brought = wish.targets.flatMap(({ measure, to }): Brought[] => {
    const [before, after] = [workOut(measure, now), workOut(measure, then)];
    return before.known && after.known ? [{ measure, to, before: before.value, after: after.value }] : [];
  });
  const said = sayMoved(part, asked, solved, { moved, now, then });
  return { ok: true, edits, brought, moved, leaving: leaving(part, asked, { now, then }), said };
}

/** Ingredients of a part by their name, or by its last words. */
function linesNamed({ head }: Part, name: string): readonly Ingredient[] {
  const wanted = name.trim().toLowerCase();
  const exact = head.ingredients.filter((i) => i.name.toLowerCase() === wanted);
  if (exact.length > 0 || wanted === '') return exact;
  return head.ingredients.filter((i) => i.name.toLowerCase().endsWith(` ${wanted}`));
}

function cannotBeWritten(recipe: Recipe, part: Part): string | undefined {
  const file = fileOf(part);
  if (file !== undefined)
    return `${partWords(part)} comes from ${file}: adjust it there, or write this file out in full first`;
  if (recipe.inherits && recipe.outline.head.some(({ line }) => line.statement.kind === 'from'))
    return 'the recipe builds on another file: adjust that one, or write this one out in full first';
  if (recipe.outline.isCut)
    return 'the file has more lines than are worked out, so not all that follows would be written';
  if (part.head.ingredients.length === 0) return `${partWords(part)} has no list`;
  return isIncomplete(part) ? 'a line of the list is not understood, so what it brings is not known' : undefined;
}

function notKnown(part: Part, targets: readonly Target[]): string | undefined {
  const contents = contentsOf(part);
  for (const { measure } of targets) {
    const { words } = MEASURES[measure];
    const worked = workOut(measure, contents);
    if (!worked.known) return `${words} of ${partWords(part)} is not known: ${worked.why}`;
    const [open] = worked.open ?? [];
    if (open !== undefined) return `${words} hangs on \`${open.name}\`, and what that brings is not known`;
  }
  return undefined;
}
