/**
 * Knows which part of a recipe lines its pan, and whether it covers the sides too.
 * Refuses to know the pan's size.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Part, Recipe } from '../recipe/recipe.ts';
import { baseForm } from '../recipe/verbs.ts';
import { wordsOf } from '../recipe/words.ts';

export type Lining = 'bottom and sides' | 'bottom';

/** Pastry that is rolled out; choux is piped. */
const ROLLED: ReadonlySet<string> = new Set(['shortcrust', 'sweet paste', 'puff pastry']);
const CRUSTS: ReadonlySet<string> = new Set(['crust', 'base', 'case', 'shell', 'pastry', 'bottom']);
const PANS: ReadonlySet<string> = new Set(['pan', 'tin', 'ring', 'dish', 'mould', 'plate', 'tray']);
const PAPERS: ReadonlySet<string> = new Set(['paper', 'parchment', 'foil', 'film', 'baking']);
const LIDS: ReadonlySet<string> = new Set(['lid', 'top', 'topping', 'lattice', 'crumble']);

/**
 * How a part lines the pan; undefined for one that fills it. Its own steps say so (`line the pan`), or it is rolled pastry
 * or bears a crust's name, and a later part goes in or on it.
 */
export function liningOf(recipe: Recipe, part: Part): Lining | undefined {
  const name = wordsOf(part.head.name);
  if (name.some((w) => LIDS.has(w))) return undefined;
  const own = part.steps.map((s) => linedHere(s.sentence.items)).find((l) => l !== undefined);
  if (own !== undefined) return own;
  const crust = ROLLED.has(part.head.kind?.name ?? '') || name.some((w) => CRUSTS.has(w));
  const first = part.head.source.lines[0]?.statement;
  const fromFile = first?.kind === 'part' && first.file !== undefined;
  if (!crust || (part.head.ingredients.length === 0 && !fromFile)) return undefined;
  const holds = recipe.parts
    .slice(part.index + 1)
    .some((p) => p.steps.some((s) => s.mentions.some((m) => m.part === part.index)));
  return holds ? 'bottom and sides' : undefined;
}

function linedHere(items: readonly SentenceItem[]): Lining | undefined {
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (item?.kind !== 'word') continue;
    const verb = baseForm(item.word);
    const clause = clauseFrom(items, i + 1);
    if (verb === 'line' && clause.some((w) => PANS.has(w)) && !clause.some((w) => PAPERS.has(w)))
      return 'bottom and sides';
    if (verb === 'press' && clause.some((w) => PANS.has(w)))
      return clause.includes('side') || !clause.some((w) => w === 'bottom' || w === 'base')
        ? 'bottom and sides'
        : 'bottom';
  }
  return undefined;
}

function clauseFrom(items: readonly SentenceItem[], from: number): string[] {
  const words: string[] = [];
  for (const item of items.slice(from)) {
    if (item.kind === 'mark' && /[.;,:]/.test(item.mark)) break;
    if (item.kind === 'word') words.push(...wordsOf(item.word));
  }
  return words;
}
