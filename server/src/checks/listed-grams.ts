/**
 * Knows what all lists of a recipe weigh together.
 */
import type { Range } from '../measure/quantity.ts';
import type { Recipe } from '../recipe/model.ts';
import { onceFor } from './once.ts';
import { byPart } from './over-parts.ts';

const lows = byPart(({ head }) => head.massG.low);
const highs = byPart(({ head }) => head.massG.high);

/** Grams of what is known, least and most. */
export const listedG = (recipe: Recipe): Range => ({ low: sum(lows(recipe)), high: sum(highs(recipe)) });

const sum = onceFor((grams: readonly number[]): number => grams.reduce((g, each) => g + each, 0));
