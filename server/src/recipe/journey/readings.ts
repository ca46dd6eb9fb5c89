/**
 * Knows which figures and signs of an event are read of a body, and for how long it is held at them.
 * Refuses to know what they do to it.
 */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import type { BoundEvent } from './bind.ts';
import { NO_TIME, type Read } from './bodies.ts';
import type { Settled } from './temperatures.ts';

/** From here a figure read in the food tells of its being cooked, and not of a dough or of what is to be lukewarm. */
export const LEAST_READ_C = 38;
/** And on the heat from here: whoever stops at it cooks nothing. */
export const LEAST_HEATED_C = 25;

/** Water, fat or air cooler than this heats what lies in it no further than itself. */
export const GENTLE_C = 80;
/** Meat in air no warmer than this takes hours to be as warm. */
const COOL_AIR_C = 75;

/** Whatever reads this all through has nothing left that grows (Food Code 2022, 3-401.11, the least of its figures). */
export const LETHAL_C = 63;

/** A figure in the middle of something, as flesh and egg are read, and what is baked with them. */
export const isReadInside = ({ temperatures }: Event): boolean =>
  temperatures.some(
    ({ of, inside, celsius: { low, high } }) =>
      of === 'food' && inside && low >= LEAST_READ_C && high <= MOST_IN_FLESH_C,
  );
/** Bread is read at more. */
const MOST_IN_FLESH_C = 90;

/** Words between a figure and its time: `57 C for 2 min`. */
const BESIDE = 6;

/** The figures of the food itself, and those around it that are so low that it is no warmer. */
export function readsIn(
  by: BoundEvent,
  temperatures: readonly Settled[],
  isResting: boolean,
  least = LEAST_READ_C,
): Read[] {
  // At 20 C it bubbles as it ferments.
  const isCool = temperatures.some(({ of, said }) => of === 'around' && said.celsius.high < LEAST_READ_C);
  return [...figuresIn(by, temperatures, isResting, least), ...(isCool ? [] : signsIn(by))];
}

/** What is seen or felt that tells how hot the food is: `until it bubbles`, `as warm as new milk`. */
const signsIn = (by: BoundEvent): readonly Read[] =>
  by.event.until.flatMap((sign): readonly Read[] => {
    if (sign.celsius === undefined || sign.is === 'stage' || isOfOther(by.event, sign)) return [];
    const { low, high } = sign.celsius;
    const celsius = high < LETHAL_C ? { low: high, high } : { low, high: low };
    const when = by.event.cooks === 'again' ? 'again' : 'cooking';
    return [{ by, at: sign, celsius, held: NO_TIME, of: 'food', inside: false, sure: 'inferred', when }];
  });

/** `When the water boils, slide in the chicken`: it tells of what is there, and not of what goes in. */
export const isOfOther = ({ act }: Event, { from }: Event['until'][number]): boolean =>
  from === 'when' && (act === 'put' || act === 'combine' || act === 'return');

function figuresIn(
  by: BoundEvent,
  temperatures: readonly Settled[],
  isResting: boolean,
  least: number,
): readonly Read[] {
  return temperatures.flatMap(({ said, of, sure }): Read[] => {
    const { celsius } = said;
    const isFood = of === 'food';
    const isAir = of === 'oven' || by.event.medium?.is === 'air' || by.event.medium?.is === 'smoke';
    if (celsius.low < (isFood ? least : LEAST_READ_C) || of === 'nothing') return [];
    const isHot = !isFood && celsius.high > (isAir ? COOL_AIR_C : GENTLE_C);
    if (isHot && of !== 'oven') return [];
    return [
      {
        by,
        at: said,
        celsius,
        ...writtenInF(said),
        held: isFood ? heldAt(by.event, said.end) : spentIn(by.event),
        inside: said.inside,
        of: isFood ? 'food' : isHot ? 'oven' : isAir ? 'air' : 'around',
        sure,
        when: by.event.cooks === 'again' ? 'again' : isResting ? 'resting' : 'cooking',
      },
    ];
  });
}

/** `hold at 60 C for 12 min`: the time of a figure in the food. */
function heldAt({ act, times, until }: Event, end: number): Range {
  // `until it reads 72 C and has stayed there 2 min`
  const isAwaited = (time: Span): boolean =>
    until.some((sign) => sign.start < end && time.start >= end && time.end <= sign.end);
  const time = times.find(
    (each) =>
      each.kind === 'spent' &&
      (act === 'stay' || (each.start >= end && (each.start - end <= BESIDE || isAwaited(each)))),
  );
  return time?.minutes ?? NO_TIME;
}

export function spentIn({ times }: Event): Range {
  let [low, high] = [0, 0];
  for (const { kind, minutes } of times) {
    if (kind !== 'spent') continue;
    low += minutes.low;
    high += minutes.high;
  }
  return { low, high };
}

/** The row of a table that is meant is that of the figure as it is written. */
function writtenInF({ written, celsius }: Settled['said']): Pick<Read, 'fahrenheit'> {
  const [node] = written;
  if (node === undefined || node.unit === 'C' || node.unit === 'gas') return {};
  const isF = node.unit === 'F' || Math.abs(celsius.low - (node.lowDegrees - 32) / 1.8) < 0.01;
  return isF ? { fahrenheit: node.lowDegrees } : {};
}
