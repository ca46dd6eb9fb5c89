/**
 * Knows what a recipe heats, bakes, fries and lets rise, each with its heats and times as they are written, and within what a thing of that sort is
 * heated at all: by its kind where one is said, by what it is called, by the kind that it plainly is, else by what lies there.
 * Refuses to judge.
 */
import type { Recipe } from '../../recipe/model.ts';
import { onceFor } from '../once.ts';
import { boiledIn, readOf } from './heated-foods.ts';
import { friedIn } from './heated-in-fat.ts';
import { bakedIn } from './heated-in-oven.ts';
import { heatedByParts } from './heated-on-stove.ts';
import { risenIn } from './heated-rising.ts';
import { stewedOf } from './heated-tough.ts';
import { livingIn } from './living.ts';
import { timedByPart } from './timed-acts.ts';
import type { Heated } from './written-heat.ts';

/** All that is heated: what lies in the oven, then part by part, then what is read and boiled. */
export const heatedIn = onceFor((recipe: Recipe): readonly Heated[] =>
  recipe.inherits
    ? []
    : [
        ...bakedIn(recipe),
        ...heatedByParts(recipe),
        ...friedIn(recipe),
        ...readOf(recipe),
        ...boiledIn(recipe),
        ...stewedOf(recipe),
        ...risenIn(recipe),
        ...livingIn(recipe),
        ...timedByPart(recipe).flatMap(({ value }) => value),
      ],
);
