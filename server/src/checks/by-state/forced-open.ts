/**
 * Knows where shells that stayed shut in the heat are opened all the same: what lay in them was dead before it was cooked, or is mud.
 * Refuses to know whether the others are cooked.
 */
import type { Journey } from '../../recipe/journey/fold.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { speaks } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import { type Done, doneIn, spokenAround } from './done.ts';

/** Where they are opened. */
export const forcedOpen = onceFor((journey: Journey): readonly Done[] => {
  const shells = journey.parts.flatMap(({ head }) =>
    head.ingredients.filter((each) => foodOf(each)?.class === 'shellfish'),
  );
  if (shells.length === 0) return NONE;
  const done = doneIn(journey);
  const heated = done.findIndex(({ by: { event } }) => event.act === 'heat' && event.said === 'yes');
  return done.flatMap((at, i) => {
    const { event, names } = at.by;
    if (event.act !== 'open' || event.said !== 'yes' || heated < 0 || i < heated) return [];
    const of = names.flatMap(({ mention: { ingredients } }) =>
      ingredients.map(({ part, ingredient }) => journey.parts[part]?.head.ingredients[ingredient]),
    );
    const isOfShells = of.length === 0 || shells.some((each) => of.includes(each));
    const around = spokenAround(done, i).filter(({ start }) => start >= event.start);
    return isOfShells && speaks(around, 'shut', 'unopened', 'left shut') ? [at] : [];
  });
});

const NONE: readonly Done[] = [];
