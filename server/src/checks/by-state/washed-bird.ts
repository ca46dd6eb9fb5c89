/**
 * Knows where a raw bird is washed as it comes. Refuses to judge the rinsing off of what it lay in: a brine, a cure, a marinade.
 */
import type { Act } from '../../prose/event.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { larderOf } from '../../recipe/journey/larder.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { onceFor } from '../once.ts';
import { doneIn } from './done.ts';
import type { UsedAgain } from './marinade-again.ts';

/** It is as it was after these. */
const LEAVES_AS_IT_IS: ReadonlySet<Act> = new Set(['cut', 'remove', 'divide', 'ready']);

export const washedBirds = onceFor((journey: Journey): readonly (UsedAgain & { readonly kind: 'washed' })[] => {
  const lain = new Set<string>();
  for (const { by, part, line } of doneIn(journey)) {
    const { event, names } = by;
    for (const { part: at, ingredient } of names.flatMap(({ mention }) => mention.ingredients)) {
      const of = journey.parts[at];
      const listed = of?.head.ingredients[ingredient];
      if (of === undefined || listed === undefined || foodOf(listed)?.class !== 'poultry') continue;
      const key = `${at} ${ingredient}`;
      const isWashed = event.craft === 'rinse' && event.said === 'yes' && larderOf(of).flesh.includes(ingredient);
      if (isWashed && !lain.has(key)) {
        const { start, end } = event.verb ?? event;
        // Bones for a stock are rinsed of their blood, and boiled for hours.
        const level = of.head.kind?.name === 'stock' ? 'ask' : 'warning';
        return [{ kind: 'washed', level, part, line, start, end, flesh: listed.name }];
      }
      if (!LEAVES_AS_IT_IS.has(event.act)) lain.add(key);
    }
  }
  return [];
});
