/** Knows how a time of the day is written by whoever plans: `19:30`, `7.30`, `06:00-23:00`. Refuses to know what it is for. */
import type { Awake } from './task.ts';

/** As a minute of the day; 24:00 is its end. */
export function readClock(text: string): number | undefined {
  const [, hours, minutes = '0'] = /^\s*(\d{1,2})(?:[:.](\d{2}))?\s*$/.exec(text) ?? [];
  if (hours === undefined) return undefined;
  const at = Number(hours) * 60 + Number(minutes);
  return Number(minutes) < 60 && at <= 1440 ? at : undefined;
}

export function readAwake(text: string): Awake | undefined {
  const [from, to, ...more] = text.split('-').map(readClock);
  return from === undefined || to === undefined || more.length > 0 || from >= to ? undefined : { from, to };
}
