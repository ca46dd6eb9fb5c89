/**
 * Knows how a body is kept in the end: in the cold and for how long, out of it, or put by with no word of that.
 * Refuses to know what must not be kept so.
 */
import type { Range } from '../../measure/quantity.ts';
import { type Body, type Member, type Stay, sharesFood, WAS } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isWarm } from '../../recipe/journey/stays.ts';
import type { Sure } from '../../recipe/journey/sure.ts';
import { onceFor } from '../once.ts';

export interface Kept {
  /** `put by`: closed up, and no step says where or for how long. */
  readonly how: 'warm' | 'cold' | 'put by';
  /** Where it lies, as sure as the words are. */
  readonly sure: Sure;
  /** Minutes; no limits where nobody says. */
  readonly minutes: Range;
  readonly stay: Stay | undefined;
}

/** What is done when something is left to itself. */
const KEEPING: ReadonlySet<Stay['by']['event']['act']> = new Set([
  'stay',
  'reserve',
  'pack',
  'close',
  'put',
  'steep',
  'eat',
  'cool',
  'cover',
  'unknown',
]);

const OPEN: Range = { low: 0, high: Infinity };
const isFrozen = ({ lies }: Stay): boolean => lies.place === 'frozen' || lies.celsius.high < 0;

/** `It lives beside the stove`, `we leave ours at 21 C`: used from there, it is there all the same. */
export const livesThere = ({ by: { event }, lies }: Stay): boolean =>
  event.act === 'stay' &&
  (event.as === 'told' || event.craft === 'keep') &&
  event.until.length === 0 &&
  (event.where.length > 0 || event.temperatures.length > 0) &&
  lies.sure !== 'unread';

/** The stays that keep a body of the same foods, for so many minutes or with no word of how long. */
export const keepingStays = ({ stays }: Journey, body: Body, leastMin: number): readonly Stay[] =>
  stays.filter(
    (stay) =>
      !stay.branch &&
      KEEPING.has(stay.by.event.act) &&
      (stay.timed ? stay.minutes.high >= leastMin : stay === body.waits || livesThere(stay)) &&
      sharesFood(stay.body, body),
  );

/** No list is so long. */
const MOST_LINES = 2 ** 16;
const keyOf = ({ of }: Member): number => of.part * MOST_LINES + of.ingredient;

/** The bodies of a journey by what is in them: a long recipe has hundreds. */
const byFood = onceFor(({ bodies }: Journey): ReadonlyMap<number, readonly Body[]> => {
  const made = new Map<number, Body[]>();
  for (const body of bodies)
    for (const member of body.members) {
      const key = keyOf(member);
      const same = made.get(key);
      if (same === undefined) made.set(key, [body]);
      else same.push(body);
    }
  return made;
});

/** Those in which something of a body is. */
export const bodiesWith = (journey: Journey, body: Body): readonly Body[] => [
  ...new Set(body.members.flatMap((member) => byFood(journey).get(keyOf(member)) ?? [])),
];

/** How a stay keeps; undefined where it is frozen. */
export function keptBy(stay: Stay): Kept | undefined {
  if (isFrozen(stay)) return undefined;
  const { lies, minutes, timed } = stay;
  return { how: isWarm(lies) ? 'warm' : 'cold', sure: lies.sure, minutes: timed ? minutes : OPEN, stay };
}

/** Closed up, with nothing said of it from then on; undefined where it is open, or eaten. */
export function putBy(body: Body): Kept | undefined {
  if (body.shut !== 'jar' && (body.vessel !== 'jar' || body.shut === 'covered')) return undefined;
  if (body.members.some(({ state }) => (state.was & WAS.eaten) !== 0)) return undefined;
  return { how: 'put by', sure: body.shut === 'jar' ? 'said' : 'unread', minutes: OPEN, stay: undefined };
}

/** The words of its line that say where and for how long, as they stand there: `"cool cupboard", "a month"`; empty where nobody says. */
export function wordsOf({ parts }: Journey, { stay }: Kept): string {
  if (stay === undefined) return '';
  const { where, times } = stay.by.event;
  const text = parts[stay.part]?.head.source.lines[stay.line]?.text ?? '';
  const spans = [...where.filter(({ not }) => !not), ...times].sort((a, b) => a.start - b.start);
  return spans.map(({ start, end }) => `"${text.slice(start, end)}"`).join(', ');
}
