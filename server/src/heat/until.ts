/** Knows how long a body takes until its coldest or warmest place passes a temperature. Refuses to know why. */
import type { Conduction } from './conduct.ts';

/** Each step is so much of the time that has gone by, and no less than the first and no more than the last. */
const GROWTH = 0.015;
const STEPS = 4000;

export interface Passing {
  readonly seconds: number;
  /** °C per second when it passed. */
  readonly rate: number;
}

/** When the coldest place is as hot as that; undefined where it does not get there in `most` seconds. */
export const untilHot = (body: Conduction, celsius: number, first: number, most: number): Passing | undefined =>
  until(body, () => body.coldestC - celsius, first, most);

/** When the warmest place is as cold as that. */
export const untilCold = (body: Conduction, celsius: number, first: number, most: number): Passing | undefined =>
  until(body, () => celsius - body.warmestC, first, most);

function until(body: Conduction, over: () => number, first: number, most: number): Passing | undefined {
  let before = over();
  if (before >= 0) return { seconds: body.seconds, rate: 0 };
  for (let step = 0; step < STEPS && body.seconds < most; step++) {
    const dt = Math.max(first, body.seconds * GROWTH);
    body.step(dt);
    const now = over();
    if (now >= 0) return { seconds: body.seconds - dt * (now / (now - before)), rate: (now - before) / dt };
    before = now;
  }
  return undefined;
}
