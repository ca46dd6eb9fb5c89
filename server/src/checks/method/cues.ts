/**
 * Knows which steps order a bake, a roast or a fry, and whether a step says by what sign it is done.
 * Refuses to know what the sign should be.
 */
import type { Span } from '../../notation/tree.ts';
import type { Craft, Event, Sign } from '../../prose/event.ts';
import { deed, does, eventsOf, type Question, speaksOf } from '../../recipe/journey/deeds.ts';
import type { Part, Step } from '../../recipe/model.ts';

/** What is ordered, and the words that order it. */
export type Order = Event & { readonly verb: Span };

interface Orders {
  readonly asked: Question;
  readonly is: (event: Event) => boolean;
}

function ordersOf(is: (event: Event) => boolean): Orders {
  const isOrder = (event: Event) =>
    event.as === 'ordered' && event.inPassing === undefined && event.verb !== undefined && is(event);
  return { asked: deed(isOrder), is: isOrder };
}

const isOf = ({ craft }: Event, crafts: readonly Craft[]): boolean => craft !== undefined && crafts.includes(craft);

const BAKING = ordersOf((event) => isOf(event, ['bake', 'roast']));
/** `Cook on a hot griddle` too. */
const FRYING = ordersOf(
  (event) => isOf(event, ['fry', 'deep-fry', 'grill']) || (event.cooks === 'as read' && event.medium?.is === 'metal'),
);

function orderIn(step: Step, { asked, is }: Orders): Order | undefined {
  return does(step, asked) ? eventsOf(step).find((event): event is Order => is(event)) : undefined;
}

/** The order of such as `Bake …`, and not of `ready to bake`. */
export const bakingOrder = (step: Step): Order | undefined => orderIn(step, BAKING);
export const cookingOrder = (step: Step): Order | undefined => bakingOrder(step) ?? orderIn(step, FRYING);

/** As it is written; of several words the first. */
export const verbText = ({ head }: Part, { line }: Step, { start, end }: Span): string =>
  (head.source.lines[line]?.text.slice(start, end).split(' ')[0] ?? '').toLowerCase();

/** The step, or one of the two after it in its part, says how it looks or reads when done. */
export function hasCue({ steps }: Part, step: Step): boolean {
  if (does(step, SHOWN) || speaksOf(step, 'look', 'test')) return true;
  const at = steps.indexOf(step);
  // Of a later step only what tests it: `until` there may be of something else.
  return [steps[at + 1], steps[at + 2]].some(
    (later) => later !== undefined && (does(later, TESTED) || speaksOf(later, 'test')),
  );
}

const isLooked = ({ is }: Sign): boolean => is !== 'needed';
/** A temperature in the food, but not that of what cools. */
const isReadInside = ({ act, temperatures }: Event): boolean =>
  act !== 'cool' && act !== 'freeze' && temperatures.some(({ of }) => of === 'food');

const SHOWN = deed((event) => event.act === 'read' || event.until.some(isLooked) || isReadInside(event));
const TESTED = deed(
  (event) =>
    event.act === 'read' ||
    isReadInside(event) ||
    event.until.some(({ from, is }) => from === 'when' || is === 'through'),
);
