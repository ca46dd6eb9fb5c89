/** Knows a minute of the day as a clock shows it, `19:30`, and back. Refuses to know which day. */

const DAY_MIN = 1440;

/** Any minute, of days before and after too. */
export function clockOf(minute: number): string {
  const ofDay = ((Math.round(minute) % DAY_MIN) + DAY_MIN) % DAY_MIN;
  return [Math.floor(ofDay / 60), ofDay % 60].map((n) => String(n).padStart(2, '0')).join(':');
}

/** Of what `clockOf` wrote. */
export function minuteOf(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}
