/**
 * Knows what points are: how strongly words say of what a temperature is, and which kind leads.
 * Refuses to know the words.
 */
import type { HeatOf, Points } from './event.ts';
import type { Weights } from './rows.ts';

/** How much more the first must have than the second. */
const LEAD = 2;
export const KINDS = ['food', 'oven', 'around', 'medium'] as const;
export type Kind = keyof Points;

/** Of what a temperature is by its points; `nothing` where no kind leads. */
export function judged(points: Points): HeatOf {
  let best: Kind = 'food';
  for (const kind of KINDS) if (points[kind] > points[best]) best = kind;
  const second = Math.max(...KINDS.filter((kind) => kind !== best).map((kind) => points[kind]));
  return points[best] >= LEAD && points[best] - Math.max(second, 0) >= LEAD ? best : 'nothing';
}

export const NO_POINTS: Points = { food: 0, oven: 0, around: 0, medium: 0 };
export const zero = (): Record<Kind, number> => ({ food: 0, oven: 0, around: 0, medium: 0 });

export function most(points: Record<Kind, number>, weights: Weights): void {
  for (const { of, adds } of weights) if (of !== 'nothing') points[of] = Math.max(points[of], adds);
}

export const adds = (weights: Weights, kind: Kind): number => weights.find(({ of }) => of === kind)?.adds ?? 0;

/** What a thing's figure is of. */
export function kindOf(weights: Weights): Kind | undefined {
  const of = weights[0]?.of;
  return of === 'nothing' ? undefined : of;
}
