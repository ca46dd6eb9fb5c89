/**
 * Knows what the parts of a recipe fry, with the heats of the fat, and how long it fries deep in it, as they are written.
 * Refuses to judge.
 */
import { spansOf } from '../../heat/spans.ts';
import type { Event } from '../../prose/event.ts';
import { cutOf } from '../../recipe/baking/cuts.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import type { HeatFigure } from '../../recipe/journey/figures.ts';
import { isIn } from '../../recipe/list/families.ts';
import type { Ingredient, Part, Recipe } from '../../recipe/model.ts';
import { onceWith } from '../once.ts';
import { isFigure, spentIn, stepsOf } from './heated-on-stove.ts';
import { kindOf, namedAt, type Taken } from './taken-for.ts';
import type { Heated, WrittenHeat, WrittenTime } from './written-heat.ts';

export const friedIn = ({ parts, name }: Recipe): readonly Heated[] => parts.flatMap((part) => inFat(part, name));

/** `called`: what the whole recipe is. */
const inFat = onceWith((part: Part, called: string): readonly Heated[] => {
  const steps = stepsOf(part);
  const frying = steps.flatMap(({ line, events }) => events.filter(isFrying).map((event) => ({ part, line, event })));
  if (frying.length === 0) return NONE;
  const heats = steps.flatMap(({ line, figures }) =>
    figures.flatMap((figure): readonly WrittenHeat[] =>
      isFigure(figure) && (figure.of === 'medium' ? isOfFat(figure.event) : isOfOil(part, line, figure))
        ? [{ part: part.index, line, figure }]
        : [],
    ),
  );
  const times = frying.flatMap(({ line, event }) =>
    event.craft === 'deep-fry'
      ? spentIn(event).map((time): WrittenTime => ({ ...time, part: part.index, line, at: [] }))
      : [],
  );
  if (heats.length + times.length === 0) return NONE;
  const name = kindOf(part);
  const own = name === undefined ? [] : spansOf(name, 'fat');
  const lying = part.head.ingredients.map((ingredient) => ({ ingredient, share: 1 }));
  const named =
    own.length === 0
      ? frying.map((where) => namedAt({ name: called }, where, 'fat', lying)).find((each) => each !== undefined)
      : undefined;
  const taken = named ?? (own.length > 0 && name !== undefined ? { of: name, spans: own } : takenBySize(part));
  return [{ way: 'fat', ...taken, heats, times, totalMin: Number.POSITIVE_INFINITY }];
});
const NONE: readonly never[] = [];

function takenBySize({ head: { ingredients } }: Part): Taken {
  const of = ingredients.some((each) => isIn(each, 'flesh') && isLarge(each)) ? 'any large fat' : 'any fat';
  return { of, spans: spansOf(of, 'fat') };
}

/** Flesh of which so much may be one piece, or nobody says how much it is. Grams. */
const LARGE_G = 600;
const isLarge = (ingredient: Ingredient): boolean =>
  (!ingredient.weighed.known || ingredient.weighed.grams.high >= LARGE_G) && cutOf(ingredient)?.is !== 'small';

const isFrying = ({ craft, said }: Event): boolean => said === 'yes' && (craft === 'deep-fry' || craft === 'fry');
/** `Pour the oil into a deep pan. Heat to 175 C`: what was named last. */
function isOfOil({ index, head, steps }: Part, line: number, { of, event, inside }: HeatFigure): boolean {
  const step = steps.find((each) => each.line === line);
  if (of !== 'food' || inside || event?.act !== 'heat' || event.cooks !== 'barely' || step === undefined) return false;
  const all = boundEvents(step);
  const last = all
    .slice(0, all.findIndex((each) => each.event === event) + 1)
    .findLast(({ names }) => names.length > 0);
  const named = (last?.names ?? []).flatMap(({ mention }) => mention.ingredients);
  return (
    named.length > 0 &&
    named.every(({ part, ingredient }) => {
      const listed = part === index ? head.ingredients[ingredient] : undefined;
      return listed !== undefined && isIn(listed, 'oil');
    })
  );
}

/** `Heat the oil to 180 C` says it before anything lies in it. */
const isOfFat = (event: Event | undefined): boolean =>
  event !== undefined && (event.medium?.is === 'fat' || (event.medium === undefined && event.cooks === 'barely'));
