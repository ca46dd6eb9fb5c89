/**
 * Knows how a day of the notation is said on a page. What is no day is said as it is written.
 */

const MONTHS = [
  ['January', 'Jan.'],
  ['February', 'Feb.'],
  ['March', 'March'],
  ['April', 'April'],
  ['May', 'May'],
  ['June', 'June'],
  ['July', 'July'],
  ['August', 'Aug.'],
  ['September', 'Sept.'],
  ['October', 'Oct.'],
  ['November', 'Nov.'],
  ['December', 'Dec.'],
] as const;

/** `14 September 2026` of `2026-09-14`. */
export function dateText(date: string): string {
  const { year, month, day } = read(date);
  return month === undefined ? date : `${day} ${month[0]} ${year}`;
}

/** `14 Sept.`, and with the year where a table has several. */
export function shortDate(date: string, withYear: boolean): string {
  const { year, month, day } = read(date);
  return month === undefined ? date : `${day} ${month[1]}${withYear ? ` ${year}` : ''}`;
}

function read(date: string): {
  readonly year: string;
  readonly month: (typeof MONTHS)[number] | undefined;
  readonly day: number;
} {
  const [, year = '', month = '', day = ''] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date) ?? [];
  return { year, month: MONTHS[Number(month) - 1], day: Number(day) };
}
