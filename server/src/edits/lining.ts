/**
 * Knows which part of a recipe lines its pan, and whether it covers the sides too.
 * Refuses to know the pan's size.
 */
import { eventsOf, isAbout } from '../recipe/journey/deeds.ts';
import type { Part, Recipe, Step } from '../recipe/model.ts';
import { wordsOf } from '../recipe/words.ts';

export type Lining = 'bottom and sides' | 'bottom';

/** Pastry that is rolled out; choux is piped. */
const ROLLED: ReadonlySet<string> = new Set(['shortcrust', 'sweet paste', 'puff pastry']);
const CRUSTS: ReadonlySet<string> = new Set(['crust', 'base', 'case', 'shell', 'pastry', 'bottom']);
const LIDS: ReadonlySet<string> = new Set(['lid', 'top', 'topping', 'lattice', 'crumble']);

/**
 * How a part lines the pan; undefined for one that fills it. Its own steps say so (`line the pan`), or it is rolled pastry
 * or bears a crust's name, and a later part goes in or on it.
 */
export function liningOf(recipe: Recipe, part: Part): Lining | undefined {
  const name = wordsOf(part.head.name);
  if (name.some((w) => LIDS.has(w))) return undefined;
  const own = part.steps.map(linedHere).find((l) => l !== undefined);
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

function linedHere(step: Step): Lining | undefined {
  for (const { craft, start, end } of eventsOf(step)) {
    const said = step.sentence.items.filter((item) => item.start >= start && item.end <= end);
    if (!said.some((item) => isAbout(item, 'tin')) || said.some((item) => isAbout(item, 'paper'))) continue;
    if (craft === 'line') return 'bottom and sides';
    if (craft === 'press')
      return said.some((item) => isAbout(item, 'sides')) || !said.some((item) => isAbout(item, 'bottom'))
        ? 'bottom and sides'
        : 'bottom';
  }
  return undefined;
}
