/**
 * Knows whether what no known order cooks is raw by the state that it is in at the end too: a word that nobody knows is no danger by itself.
 */
import { journeyOf } from '../../recipe/journey/fold.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import type { Place } from '../check.ts';
import type { House } from '../house.ts';
import { undercooked } from './undercooked.ts';

/** Whether the ingredient on that line ends raw, or not hot enough. */
export const staysRaw = (recipe: Recipe, house: House, { part, line }: Place): boolean =>
  undercooked(recipe, journeyOf(recipe), house).some(({ listed }) => listed.part === part && listed.line === line);
