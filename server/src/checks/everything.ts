/**
 * Knows when a step takes all that is listed without naming it.
 */
import type { Event } from '../prose/event.ts';
import { deed, does, eventsOf, speaksOf, speaksOfSeveral } from '../recipe/journey/deeds.ts';
import type { Step } from '../recipe/model.ts';

/** `mix all the ingredients` uses them all. */
export const takesEverything = (steps: readonly Step[]): boolean =>
  steps.some(
    (step, i) =>
      // `The thickest part` is none.
      (i === 0 ? speaksOf(step, 'everything') : speaksOfSeveral(step, 'everything')) ||
      (speaksOf(step, 'ingredients') && !does(step, INTO_ALL)) ||
      does(step, TAKES_ALL),
  ) || isBare(steps[0]);

/** `Stir into the dry ingredients` */
const INTO_ALL = deed(({ objects }) => objects.some(({ by, role }) => by === 'all' && role === 'into'));

/** `Fry it all`, and `keep it all under`, is what lies there. */
const TAKES_ALL = deed(
  ({ act, objects }) =>
    (act === 'combine' || act === 'heat' || act === 'steep' || act === 'put') &&
    objects.some(({ by, role }) => by === 'all' && role !== 'into') &&
    !objects.some(({ by }) => by === 'it'),
);

/** `Stir together and leave overnight.`, `Layer in a jar`: mixed, and nothing is said of what; `toss the filling`, which is no name of the list. */
function isBare(step: Step | undefined): boolean {
  const first = step && eventsOf(step)[0];
  return (
    step !== undefined &&
    first !== undefined &&
    first.as === 'ordered' &&
    first.verb?.start === step.sentence.items[0]?.start &&
    isMixing(first) &&
    first.objects.every(
      ({ by }) =>
        by === 'nothing' || by === 'mixture' || by === 'vessel' || (by === 'name' && step.mentions.length === 0),
    )
  );
}

const isMixing = ({ act, cooks, medium }: Event): boolean =>
  act === 'combine' || (act === 'heat' && (cooks === 'through' || (cooks === 'as read' && medium === undefined)));
