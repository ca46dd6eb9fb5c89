/**
 * Knows which recipes, parts, foods and trials of the folders fit what was typed, the best first.
 * Refuses to read any recipe: the index says what each file holds.
 */
import type { Entry, Named } from '../workspace/folder.ts';
import type { Folders } from '../workspace/folders.ts';
import type { Place } from './place.ts';

export interface FoundSymbol {
  readonly name: string;
  readonly kind: 'recipe' | 'part' | 'food' | 'trial';
  readonly path: string;
  readonly at: Place;
  /** The recipe it belongs to. */
  readonly inside?: string;
}

const MOST = 300;

export function workspaceSymbols(index: Folders, query: string): FoundSymbol[] {
  const wanted = query.trim().toLowerCase();
  const found = index
    .entries()
    .flatMap(symbolsOf)
    .flatMap((symbol) => {
      const rank = rankOf(symbol.name.toLowerCase(), wanted);
      return rank === undefined ? [] : [{ symbol, rank }];
    });
  found.sort((a, b) => a.rank - b.rank || (a.symbol.name < b.symbol.name ? -1 : 1));
  return found.slice(0, MOST).map(({ symbol }) => symbol);
}

function symbolsOf({ path, recipe, parts, foods, trials }: Entry): FoundSymbol[] {
  const inside = recipe === undefined ? {} : { inside: recipe.name };
  const symbol = (kind: FoundSymbol['kind'], { name, at, span }: Named): FoundSymbol => ({
    name,
    kind,
    path,
    at: { line: at, start: span.start, end: span.end },
  });
  return [
    ...(recipe === undefined ? [] : [symbol('recipe', recipe)]),
    ...parts.map((part) => ({ ...symbol('part', part), ...inside })),
    ...foods.map((food) => symbol('food', food)),
    ...trials.map((trial) => ({ ...symbol('trial', { ...trial, name: `trial ${trial.name}` }), ...inside })),
  ];
}

/** 0 at the start, 1 at the start of a word, 2 inside, 3 as letters in order; undefined where they are not there. */
function rankOf(name: string, wanted: string): number | undefined {
  if (name.startsWith(wanted)) return 0;
  const at = name.indexOf(wanted);
  if (at > 0) return /[\p{L}\p{N}]/u.test(name[at - 1] ?? '') ? 2 : 1;
  let next = 0;
  for (const letter of name) if (letter === wanted[next]) next++;
  return next === wanted.length ? 3 : undefined;
}
