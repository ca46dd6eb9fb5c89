/**
 * Knows the serving of a label in the United States: so many whole pieces, or such a slice of the whole, as come nearest to the reference amount (21 CFR 101.9(b)(2)).
 * Refuses to weigh a cup that nobody weighed.
 */
import type { Reference } from '../../recipe/label/reference.ts';
import type { Recipe } from '../../recipe/model.ts';
import { pieceNoun, yieldNoun } from '../../recipe/yield.ts';
import { servingsOf } from '../nutrition.ts';

export interface Serving {
  readonly grams: number;
  /** `2 cookies (31 g)`, `1/8 cake (80 g)`. */
  readonly words: string;
}

/** Slices that a label may name: halves to sixths, and those halved or parted in three (101.9(b)(2)(ii)). */
const SLICES = [2, 3, 4, 5, 6, 8, 9, 10, 12, 15, 16, 18, 20, 24, 30, 32, 36];

/** Undefined where the law gives a measure alone, of which nobody knows the weight. */
export function servingOf(recipe: Recipe, massG: number, { grams, measure }: Reference): Serving | undefined {
  if (grams === undefined || massG <= 0) return undefined;
  if (measure !== undefined) return said(measure, grams);
  const made = recipe.yield?.node;
  const pieces = made === undefined || made.serves === true ? null : servingsOf(recipe);
  const noun = made === undefined || pieces === null ? '' : pieceNoun(yieldNoun(made));
  if (pieces === null || noun === '' || PORTIONS.has(oneOf(noun))) return slice(massG, grams, 'of the whole');
  const each = massG / pieces;
  // (b)(2)(i): up to half of the amount as many as come nearest; to twice of it one is a serving.
  if (each >= grams * 2) return slice(each, grams, oneOf(noun));
  const count = each <= grams / 2 ? Math.round(grams / each) : 1;
  return said(count === 1 ? `1 ${oneOf(noun)}` : `${count} ${noun}`, each * count);
}

/** `cookies` are a cookie, `loaves` a loaf: as a label writes it. */
const oneOf = (noun: string): string =>
  noun
    .replace(/(loa|hal)ves$/, '$1f')
    .replace(/([sc]h|x|ss)es$/, '$1')
    .replace(/([^s])s$/, '$1');

const PORTIONS: ReadonlySet<string> = new Set(['portion', 'serving', 'people', 'person', 'helping']);

function slice(wholeG: number, grams: number, of: string): Serving {
  const off = (parts: number): number => Math.abs(wholeG / parts - grams);
  const parts = SLICES.reduce((best, each) => (off(each) < off(best) ? each : best), 1);
  return said(parts === 1 ? `1 ${of}` : `1/${parts} ${of}`, wholeG / parts);
}

/** From 5 g to the gram, from 2 to the half, below to the tenth (101.9(b)(7)). */
function said(words: string, grams: number): Serving {
  const step = grams >= 5 ? 1 : grams >= 2 ? 0.5 : 0.1;
  return { grams, words: `${words} (${Number((Math.round(grams / step) * step).toFixed(1))} g)` };
}
