/**
 * Knows which hour the day is counted back from, and in which order its steps are told: only what is looked at.
 */
import { readClock } from '../../../recipe/plan/clock-text.ts';
import { type Act, textIn } from './act.ts';

export const serveAt: Act = ({ value, look }) => {
  const minute = typeof value === 'string' ? readClock(value) : undefined;
  if (minute === undefined) return { refused: 'Write a time of the day such as 19:30.' };
  const two = (n: number) => String(n).padStart(2, '0');
  return { look: { ...look, serve: `${two(Math.floor(minute / 60) % 24)}:${two(minute % 60)}` } };
};

/** Carries `{ order }`. */
export const orderOfSteps: Act = ({ arg, look: { order: _, ...look } }) => ({
  look: textIn(arg, 'order') === 'part' ? { ...look, order: 'part' } : look,
});
