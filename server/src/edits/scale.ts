/**
 * Knows how a whole recipe, or one part, is written at another size: list, portions in the sentences, pieces, yield and pan.
 * Refuses to touch temperatures, percentages and trials, and times but those in the oven; what does not scale by itself is said.
 */

import { trimmed } from '../measure/number-text.ts';
import type { Document } from '../notation/document.ts';
import type { Recipe } from '../recipe/model.ts';
import { sameName } from '../recipe/words.ts';
import { newOvenTimes, newTimeText } from './new-oven-times.ts';
import { timesStay, whatDoesNotScale } from './not-in-proportion.ts';
import { percentOff, scaleList } from './scale-list.ts';
import { scalePan, scalePartPan } from './scale-pans.ts';
import { closePortions, scaleStep } from './scale-steps.ts';
import { fileOf, massIn, type ScaleTarget, sizesFor } from './scale-target.ts';
import { sizeYield } from './scale-yield.ts';
import { type ScaleEvent, type ToScale, textOf } from './scaling.ts';
import type { TextEdit } from './text-edit.ts';

export interface Scaling {
  /** What fills the pan, and everything where no part lines it, becomes so many times as large. */
  readonly by: number;
  readonly edits: readonly TextEdit[];
  /** One line a change: `plain flour 240 g → 480 g`, with the error of rounding where it is worth a word. */
  readonly changes: readonly string[];
  /** What does not scale by itself, and what rounding did. */
  readonly said: readonly string[];
  readonly rounding: Rounding;
}

/** What rounding to kitchen measures did to the amounts of the list. */
export interface Rounding {
  /** The amount furthest off: what is written over what it should be, less one. */
  readonly worst?: { readonly name: string; readonly error: number };
  /** By how much the ratio of two weights of one part moves at most. */
  readonly ratio: number;
}

export type ScaleResult =
  | { readonly ok: true; readonly scaling: Scaling }
  | {
      readonly ok: false;
      readonly why: string;
      /** What is to be scaled lies in another file. */
      readonly inherits?: true;
    };

/** The recipe at another size; `partName`, or the target's own part, limits it to one part. */
export function scaleRecipe(
  document: Document,
  recipe: Recipe,
  target: ScaleTarget,
  partName = target.part,
): ScaleResult {
  const parts = partName === undefined ? recipe.parts : recipe.parts.filter((p) => sameName(p.head.name, partName));
  if (recipe.outline.head.some(({ line }) => line.statement.kind === 'from'))
    return {
      ok: false,
      inherits: true,
      why: 'the recipe builds on another file: scale that one, or write this one out in full first',
    };
  if (recipe.outline.isCut)
    return {
      ok: false,
      why: 'the file, or a part of it, has more lines than are worked out, so not all would be scaled',
    };
  if (parts.length === 0) {
    const names = recipe.parts.map((p) => p.head.name).filter((n) => n !== '');
    return {
      ok: false,
      why:
        partName === undefined
          ? 'there is nothing to scale: the file has no ingredients'
          : `there is no part \`${partName}\`; the parts are ${names.join(', ') || 'nameless'}`,
    };
  }
  const [taken] = parts.filter((p) => fileOf(p) !== undefined);
  if (taken !== undefined && (parts.length === 1 || weighs(target)))
    return {
      ok: false,
      inherits: true,
      why: `${taken.head.name} comes from ${fileOf(taken)}: scale that file, or write this one out in full first`,
    };
  const sizes = sizesFor(recipe, parts, target);
  if (typeof sizes === 'string') return { ok: false, why: sizes };
  if (![sizes.by, ...sizes.lining.values()].every((by) => by > 0.001 && by < 1000))
    return { ok: false, why: 'a recipe is scaled by more than 0.001 and less than 1000' };
  const manner = { measures: recipe.world.measures, exact: target.exact === true };
  return {
    ok: true,
    scaling: withTimes(document, recipe, scalingOf({ document, recipe, parts, sizes, manner }, target)),
  };
}

/** The times in the oven as they are then likely to be. */
function withTimes(document: Document, recipe: Recipe, scaling: Scaling): Scaling {
  const times = newOvenTimes(document, recipe, scaling.edits);
  return {
    ...scaling,
    edits: [...scaling.edits, ...times.edits],
    changes: [
      ...scaling.changes,
      ...times.times.map((time) =>
        newTimeText(time, `as what lies in it is ${time.percent > 0 ? 'deeper or larger' : 'shallower or smaller'}`),
      ),
    ],
    said: times.left > 0 ? scaling.said : scaling.said.filter((each) => each !== timesStay(scaling.by > 1)),
  };
}

/** Whether a size is a weight, for which every part must be here. */
const weighs = (target: ScaleTarget): boolean =>
  target.kind === 'mass' ||
  (target.kind === 'yield' && massIn(target.words.replace(/^.*? (?:of|at) (?=\d)/, '')) !== undefined);

/** An error below this is not worth a sentence: no kitchen scale and no cook is nearer. */
const WORTH_SAYING = 0.01;

function scalingOf(work: ToScale, target: ScaleTarget): Scaling {
  const { recipe, parts, sizes } = work;
  const isWhole = parts.length === recipe.parts.length;
  const taken = [
    ...parts.flatMap((part) => [...scaleList(work, part)]),
    ...recipe.parts.flatMap((part) => part.steps.flatMap((step) => [...scaleStep(work, part, step)])),
  ];
  const pans = isWhole ? [...scalePan(work)] : [];
  const events: readonly ScaleEvent[] = [
    ...taken,
    ...closePortions(work, taken),
    ...parts.flatMap((part) => [...scalePartPan(work, part)]),
    ...(isWhole ? scaleYield(work) : []),
    ...pans,
  ];
  const panStays = !isWhole || (sizes.pan === undefined && pans.length === 0);
  const rounding = roundingOf(events);
  return {
    by: sizes.by,
    edits: events.flatMap((e) => (e.kind === 'edits' ? e.edits.filter((edit) => changes(work, edit)) : [])),
    changes: wordsOf(events, 'change'),
    said: [
      ...sizes.said,
      ...sayRounding(work, rounding),
      ...wordsOf(events, 'said'),
      ...whatDoesNotScale(recipe, parts, sizes, target, panStays, wordsOf(events, 'stays')),
    ],
    rounding,
  };
}

const wordsOf = (events: readonly ScaleEvent[], kind: 'change' | 'said' | 'stays'): string[] =>
  events.flatMap((event) => (event.kind === kind ? [event.words] : []));

const changes = (work: ToScale, { start, end, text }: TextEdit): boolean =>
  textOf(work, start.line).slice(start.character, end.character) !== text;

function* scaleYield(work: ToScale): Generator<ScaleEvent> {
  const { recipe, sizes, manner } = work;
  if (recipe.yield === undefined) return;
  const { at, node } = recipe.yield;
  const sized = sizeYield(at, textOf(work, at), node, sizes, manner);
  if (sized === undefined) return;
  yield { kind: 'edits', edits: sized.edits };
  yield { kind: 'change', words: sized.change };
  if (sized.said !== undefined) yield { kind: 'said', words: sized.said };
}

function roundingOf(events: readonly ScaleEvent[]): Rounding {
  let worst: Rounding['worst'];
  let ratio = 0;
  for (const event of events) {
    if (event.kind === 'ratio') ratio = Math.max(ratio, event.by);
    else if (event.kind === 'rounded' && Math.abs(event.error) > Math.abs(worst?.error ?? 0))
      worst = { name: event.name, error: event.error };
  }
  return { ...(worst && { worst }), ratio };
}

function sayRounding({ manner }: ToScale, { worst, ratio }: Rounding): string[] {
  if (manner.exact) return ['The amounts are exact, and not rounded to what a kitchen can measure.'];
  if (worst === undefined || Math.abs(worst.error) < WORTH_SAYING) return [];
  const moves = ratio < WORTH_SAYING ? '' : `; the ratio of two weights moves by at most ${trimmed(ratio * 100, 1)} %`;
  return [
    `Rounded to what a kitchen can measure. Furthest off: ${worst.name}, ${percentOff(worst.error)}${moves}. Ask for exact figures to have them unrounded.`,
  ];
}
