/**
 * Knows what scaling is given and what it does: one event for every change, remark and figure, in the order of the recipe.
 * Refuses to know how anything is scaled.
 */
import type { Document } from '../notation/document.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import type { Written } from './closing-portions.ts';
import type { Manner } from './sized-amount.ts';
import type { Sizes } from './sizes.ts';
import type { TextEdit } from './text-edit.ts';

/** A recipe to be scaled: the parts that are, and the sizes they get. */
export interface ToScale {
  readonly document: Document;
  readonly recipe: Recipe;
  readonly parts: readonly Part[];
  readonly sizes: Sizes;
  readonly manner: Manner;
}

export type ScaleEvent =
  | { readonly kind: 'edits'; readonly edits: readonly TextEdit[] }
  /** `plain flour 240 g → 480 g` */
  | { readonly kind: 'change'; readonly words: string }
  /** A sentence on what does not scale by itself. */
  | { readonly kind: 'said'; readonly words: string }
  /** An amount in a sentence that stays, as it is not clear of what it is. */
  | { readonly kind: 'stays'; readonly words: string }
  /** What a line of the list is written as. */
  | { readonly kind: 'line'; readonly ingredient: Ingredient; readonly written: Written }
  /** What a step takes of a line, at its new size; not among the edits yet. */
  | { readonly kind: 'portion'; readonly ingredient: Ingredient; readonly portion: Portion }
  /** What is written over what it should be, less one. */
  | { readonly kind: 'rounded'; readonly name: string; readonly error: number }
  /** By how much the ratio of two weights of one part moves. */
  | { readonly kind: 'ratio'; readonly by: number };

/** An amount that a step takes of a line, at its new size. */
export interface Portion extends Written {
  readonly edits: readonly TextEdit[];
  readonly node: MeasuredNode;
  readonly part: number;
}

/** So many times as large a part becomes; one that is not scaled stays. */
export const factorOf = ({ parts, sizes }: ToScale, part: number): number =>
  parts.some((p) => p.index === part) ? (sizes.lining.get(part) ?? sizes.by) : 1;

/** The line of the document that a line of a part is. */
export const lineIn = ({ recipe }: ToScale, part: Part, line: number): number =>
  (recipe.partsAt[part.index] ?? 0) + line;

export const textOf = ({ document }: ToScale, line: number): string => document.lines[line]?.text ?? '';
