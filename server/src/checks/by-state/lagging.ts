/**
 * Knows what is long on its way to being hot or thawed in a place that is the wrong one: frozen meat in a slow cooker, fish in its vacuum pack.
 * Refuses to know how long that takes.
 */
import { middle } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import { type FoodState, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { isOf } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import { speaks, thingsAt, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import { membersIn } from './spoils.ts';
import type { Level } from './verdict.ts';

export interface Lagging extends Span {
  readonly kind: 'from frozen' | 'on warm' | 'in its pack';
  readonly level: Level;
  readonly part: number;
  /** The line in its part, from 0. */
  readonly line: number;
  readonly source: string;
}

/** Less is soon hot (judgement). Grams. */
const MUCH_G = 250;

const SOURCES: Readonly<Record<Lagging['kind'], string>> = {
  'from frozen':
    'USDA FSIS, Slow Cookers, as Iowa State University Extension 2021 quotes it: always thaw meat and poultry first',
  'on warm': 'USDA FSIS, Slow Cookers, as Iowa State University Extension 2021 quotes it: warm does not cook',
  'in its pack': 'FDA Food Code 2022, 3-501.13(E): fish in reduced-oxygen packaging',
};

export const lagging = onceFor((journey: Journey): readonly Lagging[] => {
  const found = journey.steps.flatMap((step): readonly Lagging[] => {
    if (!mayLag(step)) return NONE;
    const said = (by: BoundEvent, kind: Lagging['kind']): Lagging => {
      const { start, end } = by.event.verb ?? by.event;
      return { kind, level: 'error', part: step.part, line: step.line, start, end, source: SOURCES[kind] };
    };
    const held = step.after.bodies.flatMap((body) => membersIn(journey, body));
    return step.events.flatMap((by): readonly Lagging[] => {
      const { event, names } = by;
      if (event.said !== 'yes') return [];
      const isSlow = event.where.some(({ is, not, way }) => is === 'hot' && !not && (way === 'at' || way === 'to'));
      if (isSlow && event.act !== 'stay') {
        const isIn = held.some(
          ({ member, ingredient }) =>
            isFrozen(member.state) &&
            isOf(foodOf(ingredient), 'flesh') &&
            ingredient.weighed.known &&
            middle(ingredient.weighed.grams) >= MUCH_G &&
            (names.length === 0 || names.some(({ mention }) => mention.ingredients.some(isSame(member.of)))),
        );
        return isIn ? [said(by, 'from frozen')] : [];
      }
      if (event.act === 'heat' && event.where.some(({ is, not }) => is === 'warm' && !not)) {
        const isCooked = held.some(
          ({ member: { state }, ingredient }) =>
            state.heatedBy === by &&
            state.cooked === 'unsaid' &&
            (state.was & WAS.animal) !== 0 &&
            isOf(foodOf(ingredient), 'flesh'),
        );
        const isInCooker = step.events.some((other) => other.event.where.some(({ is }) => is === 'hot'));
        return isCooked && isInCooker ? [said(by, 'on warm')] : [];
      }
      if (event.act !== 'thaw') return [];
      const things = within(thingsAt(journey.parts, step), event);
      const isFish = held.some(
        ({ member, ingredient }) =>
          foodOf(ingredient)?.class === 'fish' &&
          names.some(({ mention }) => mention.ingredients.some(isSame(member.of))),
      );
      const isOut = event.objects.some(({ role }) => role === 'from');
      return isFish && !isOut && speaks(things, 'vacuum') ? [said(by, 'in its pack')] : [];
    });
  });
  return found.length === 0 ? NONE : found.slice(0, 1);
});

const NONE: readonly Lagging[] = [];

/** Whether a step thaws, or puts somewhere hot or warm: of the others nothing is asked. */
const mayLag = onceFor(({ events }: FoldedStep) =>
  events.some(
    ({ event: { act, where } }) =>
      act === 'thaw' || where.some(({ is, not }) => (is === 'hot' || is === 'warm') && !not),
  ),
);

const isFrozen = ({ was }: FoodState): boolean =>
  (was & (WAS.frozen | WAS.animal)) === (WAS.frozen | WAS.animal) && (was & WAS.thawed) === 0;

const isSame =
  (of: { readonly part: number; readonly ingredient: number }) =>
  (ref: { readonly part: number; readonly ingredient: number }): boolean =>
    ref.part === of.part && ref.ingredient === of.ingredient;
