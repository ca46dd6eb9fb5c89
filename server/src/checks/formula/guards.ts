/**
 * Knows what a part must be for a row of `data/proportions.tsv` to hold for it.
 */
import { anyDoes, deed, does } from '../../recipe/journey/deeds.ts';
import { bringing, gramsOf } from '../../recipe/measures/brought.ts';
import { lift } from '../../recipe/measures/leavening.ts';
import type { Mixture } from '../../recipe/measures/mixture.ts';
import { type Foods, type Guard, isAmong, type Proportion } from '../../recipe/measures/proportions.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { isDish } from './dishes.ts';
import { isHelped } from './gel-wont-set.ts';
import { pours } from './poured.ts';

export interface Seen {
  readonly part: Part;
  readonly contents: readonly Ingredient[];
  readonly mix: Mixture;
  readonly title: ReadonlySet<string>;
}

/** The first step that takes some of them. */
export const firstUse = (part: Part, foods: Foods): number =>
  Math.min(
    ...part.ledger.flatMap(({ ingredient, uses }) =>
      isAmong(foods, ingredient) ? uses.flatMap((use) => (use.part === part.index ? [use.step] : [])) : [],
    ),
  );

export const IN_WATER = deed(({ act, medium }) => act === 'heat' && (medium?.is === 'water' || medium?.is === 'steam'));
const KNEADS = deed(({ craft }) => craft === 'knead');

/** In a dough that is boiled, the water that it boils in may be listed. */
const isKneaded = ({ steps }: Part): boolean => anyDoes(steps, KNEADS) && !anyDoes(steps, IN_WATER);

/** Shares of the whole from which a part is what a row asks for (judgement). */
const FLOUR = 0.2;
const SWEET = 0.12;
const FLESH = 0.25;
const LIQUID = 0.5;
const PLANT = 0.15;
const FLOURY = 0.08;

export const GUARDS: Readonly<Record<Guard, (seen: Seen, row: Proportion) => boolean>> = {
  any: () => true,
  dish: ({ mix }) => isDish(mix),
  flour: ({ mix: { of, massG } }) => of.flour >= massG * FLOUR,
  // A dry mix has yet to be wetted.
  'sweet bake': ({ mix: { of, massG } }) =>
    of.flour >= massG * FLOUR && of.sugar >= massG * SWEET && of.liquid + of.egg + of.fat > 0,
  sweetened: ({ mix: { of, massG } }) => of.flour > 0 && of.flesh === 0 && of.sugar >= massG * SWEET,
  flesh: ({ mix }) => isDish(mix) && mix.of.flesh >= mix.massG * FLESH,
  absorbed: ({ part, mix }, { bottom }) => {
    // A cake or a bread of it is no pot of it.
    if (mix.of.flour > mix.massG * FLOURY) return false;
    const first = bottom === undefined ? 0 : firstUse(part, bottom);
    const since = Number.isFinite(first) ? first : 0;
    return part.steps.length > 0 && !part.steps.some((step, at) => at >= since && does(step, LEAVES));
  },
  liquid: ({ mix: { of, massG } }) => of.liquid >= massG * LIQUID && of.flesh === 0 && of.egg < massG * SWEET,
  kneaded: ({ part, mix: { of, massG } }) => isKneaded(part) && of.plant < massG * PLANT,
  // Pretzels are boiled in their soda.
  yeasted: ({ part, mix: { of, massG } }) =>
    of.flour >= massG * FLOUR && of.yeast > 0 && !anyDoes(part.steps, IN_WATER),
  'yeast dough': ({ part, mix }) => isKneaded(part) && mix.of.yeast > 0,
  leavened: ({ part, contents, mix: { of, massG } }) =>
    of.flour > 0 && of.flesh === 0 && !anyDoes(part.steps, IN_WATER) && liftIn(contents) > massG * LIFTED,
  raised: ({ part, mix: { of, massG } }) =>
    of.yeast > 0 && of.flour > massG * SOME && of.flesh === 0 && !anyDoes(part.steps, IN_WATER),
  // Water that a step pours in may be on no list.
  bound: ({ part, mix: { of, massG } }) =>
    of.flour >= massG * FLOUR && of.liquid + of.egg > 0 && of.flesh === 0 && !part.steps.some(pours),
  custard: ({ mix: { of, massG } }) =>
    of.milk >= massG * MILKY && of.egg > 0 && of.flour + of.flesh + of.yeast === 0 && of.plant < massG * FLOURY,
  // A stew or a braise, which flour only thickens.
  braise: ({ mix: { of, massG } }) => of.flesh >= massG * SOUPY && of.liquid >= massG * SOUPY && of.egg === 0,
  soup: ({ part }) => part.index === 0 && part.isLast && part.steps.length > 0 && !part.steps.some(pours),
  set: ({ part, contents, mix: { of, massG } }) =>
    part.head.kind === undefined && of.flour + of.flesh === 0 && of.egg < massG * FLOURY && !isHelped(contents),
};

/** Of the whole: leavening, as baking powder, from which it is leavened; flour that is more than what a starter or a board brings; milk of a custard (judgement). */
const LIFTED = 0.0015;
const SOME = 0.02;
const MILKY = 0.4;
const SOUPY = 0.1;

const liftIn = (contents: readonly Ingredient[]): number =>
  contents.reduce((sum, i) => sum + gramsOf(i) * bringing(i, lift), 0);

/** What the liquid is poured off from again. */
export const LEAVES = deed(
  ({ craft, act }) => craft === 'drain' || craft === 'strain' || craft === 'rinse' || act === 'discard',
);
