/**
 * Knows which hour the day is counted back from, and in which order its steps are told: only what is looked at.
 */
import { clockOf } from '../../../publish/clock.ts';
import { readClock } from '../../../recipe/plan/clock-text.ts';
import { type Act, textIn } from './act.ts';

export const serveAt: Act = ({ value, look }) => {
  const minute = typeof value === 'string' ? readClock(value) : undefined;
  if (minute === undefined) return { refused: 'Write a time of the day such as 19:30.' };
  return { look: { ...look, serve: clockOf(minute) } };
};

/** Carries `{ to }`. */
export const orderOfSteps: Act = ({ arg, look: { order: _, ...look } }) => ({
  look: textIn(arg, 'to') === 'part' ? { ...look, order: 'part' } : look,
});
