/**
 * Knows where water is poured on lye, which boils up and spits; lye that goes into the water does not.
 */
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { type Family, isIn } from '../../recipe/list/families.ts';
import { onceFor } from '../once.ts';
import { type Done, doneIn } from './done.ts';

/** The step that pours it. */
export const wateredLye = onceFor((journey: Journey): Done | undefined => {
  const { parts } = journey;
  /** What of that family an event takes: to put it somewhere (`pour on the water`), or to put something on it. */
  const takes = ({ names, unnamed }: BoundEvent, family: Family, isPut: boolean): boolean =>
    names.some(
      ({ role, mention }) =>
        (role === 'what' || unnamed === 'nothing') === isPut &&
        mention.ingredients.some(({ part, ingredient }) => {
          const of = parts[part]?.head.ingredients[ingredient];
          return of !== undefined && isIn(of, family);
        }),
    );
  const done = doneIn(journey);
  const lye = done.find(({ by }) => takes(by, 'caustic', true) || takes(by, 'caustic', false));
  if (lye === undefined) return undefined;
  let dry: Done | undefined;
  for (const each of done) {
    const { by, part } = each;
    if (by.event.said !== 'yes') continue;
    const isWater = takes(by, 'water', true);
    if (isWater && takes(by, 'caustic', false)) return each;
    const isLye = takes(by, 'caustic', true);
    if (isLye && (isWater || takes(by, 'water', false))) return undefined;
    // Water that is there first is what it goes into.
    if (isWater && dry === undefined && part === lye.part) return undefined;
    if (isWater && dry?.part === part) return each;
    if (isLye) dry = each;
  }
  return undefined;
});
