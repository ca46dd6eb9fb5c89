/**
 * Knows whether what no known order cooks is raw by the state that it is in at the end too: a word that nobody knows is no danger by itself.
 */
import { keptOn } from '../../notation/kept.ts';
import { journeyOf } from '../../recipe/journey/fold.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import type { Place } from '../check.ts';
import type { House } from '../house.ts';
import { undercooked } from './undercooked.ts';

const RAW = keptOn<Recipe, { readonly house: House; readonly lines: ReadonlySet<string> }>();

/** Whether the ingredient on that line ends raw, or not hot enough. */
export function staysRaw(recipe: Recipe, house: House, { part, line }: Place): boolean {
  let kept = RAW.get(recipe);
  if (kept?.house !== house) {
    const found = undercooked(recipe, journeyOf(recipe), house);
    kept = { house, lines: new Set(found.map(({ listed }) => `${listed.part} ${listed.line}`)) };
    RAW.set(recipe, kept);
  }
  return kept.lines.has(`${part} ${line}`);
}
