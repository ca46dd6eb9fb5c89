/**
 * Knows how much is looked at around a recipe.
 */

/** Files and folders beside a recipe in no house, that nobody opened: its folder may be somebody's home. */
export const MOST_BESIDE = 2000;

/** Files on which one builds on another. */
export const DEEPEST = 20;

/** Files that are read for one recipe: past them they are an endless round, or a mistake. */
export const MOST_LOADS = 200;
