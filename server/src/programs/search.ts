/**
 * Knows which recipes of a folder speak of something: by name, tag, part, kind or ingredient.
 * Refuses to look into what nobody may open.
 */
import { housesFor, type Input, readMany, snapshotOf } from '../cli/inputs.ts';
import type { Io } from '../cli/io.ts';
import { recipeRecord } from '../recipe/trials/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Houses } from '../workspace/houses.ts';

export interface Hit {
  readonly path: string;
  readonly recipe: string;
  readonly state: string;
  /** Lines that speak of it, from 1. */
  readonly lines: readonly { readonly line: number; readonly text: string }[];
}

const MOST_HITS = 50;
const MOST_LINES = 5;

/** Recipes in whose name or lines every word stands, those by name first. */
export async function searchFor(wanted: string, io: Io): Promise<readonly Hit[]> {
  const words = wanted
    .toLowerCase()
    .split(/\s+/u)
    .filter((word) => word !== '');
  if (words.length === 0) return [];
  const houses = housesFor(io);
  const inputs = await readMany({ values: {}, flags: new Set(), rest: [] }, io, houses);
  const hits = inputs.flatMap((input) => hitIn(input, words, houses) ?? []);
  const isNamed = ({ recipe }: Hit): boolean => words.every((word) => recipe.toLowerCase().includes(word));
  return [...hits.filter(isNamed), ...hits.filter((hit) => !isNamed(hit))].slice(0, MOST_HITS);
}

function hitIn(input: Input, words: readonly string[], houses: Houses): Hit | undefined {
  const { text } = input;
  // Most files are not opened further.
  if (!words.every((word) => text.toLowerCase().includes(word))) return undefined;
  const { outline, recipe, whole, document } = snapshotOf(input, houses);
  if (outline.recipe === undefined) return undefined;
  const lines = document.lines.flatMap(({ text: line }, i) =>
    words.some((word) => line.toLowerCase().includes(word)) ? [{ line: i + 1, text: line.trim() }] : [],
  );
  return {
    path: input.shown,
    recipe: recipe.name,
    state: recipeRecord(whole.recipe, readTrials(outline)).state,
    lines: lines.slice(0, MOST_LINES),
  };
}
