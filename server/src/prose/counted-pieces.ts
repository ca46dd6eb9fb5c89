/**
 * Knows which numbers of a step count the pieces that it makes, or vessels: `cut 12 rounds`, `roll into 24 balls`, `six hot jars`.
 * Refuses to know of what, and how many there should be.
 */

import { baseOf } from '../measure/unit.ts';
import { onceFor } from '../notation/kept.ts';
import type { MeasuredNode, Span } from '../notation/tree.ts';
import { divides, divisionsIn, saysEach } from './counts.ts';
import { jointOf, senseOf, verbOf } from './lexicon.ts';
import { type EachSaid, eachSaidIn, type MakesSaid, nounBehind, PLURAL } from './printed-pieces.ts';
import { amountAt, type Items, isFilled, markAt, numberAt, saidAt, wordAt } from './printed-words.ts';

export { isFilled } from './printed-words.ts';

export interface CountSaid extends MakesSaid {
  readonly sort: EachSaid['sort'];
  /** Where its clause ends. */
  readonly until: number;
}

export const countsIn = onceFor((items: Items): readonly CountSaid[] => [...namedIn(items), ...bareIn(items)]);

const namedIn = (items: Items): readonly CountSaid[] =>
  items.flatMap((item, at) => {
    const number = numberAt(items, at);
    if (number === undefined || number.low < LEAST || saysEach(items, at)) return [];
    const counted = item.kind === 'measured' ? item.counted : undefined;
    const noun = counted === undefined ? nounBehind(items, number.to) : undefined;
    const word = counted?.text.toLowerCase() ?? wordAt(items, noun?.at ?? -1);
    const sort = isFilled(word) ? 'vessel' : 'piece';
    const from = sort === 'vessel' ? item : madeBy(items, at);
    if (from === undefined || !PLURAL.test(word)) return [];
    const mark = items.findIndex((each, i) => i > at && each.kind === 'mark');
    const { low, high } = number;
    const end = counted?.end ?? items[noun?.at ?? at]?.end ?? item.end;
    return [
      { start: from.start, end, low, high, noun: word, sort, until: items[mark]?.start ?? Number.POSITIVE_INFINITY },
    ];
  });

/** Pieces in so many rows of so many: `cut 6 by 8 into 48`, `into a 4 x 6 grid`. */
export interface GridSaid extends Span {
  readonly count: number;
  /** How many the same words say that these are. */
  readonly total: number | undefined;
}

export const gridsIn = onceFor((items: Items): readonly GridSaid[] =>
  items.flatMap((item, at) => {
    const rows = numberAt(items, at);
    const each = rows && saidAt(items, rows.to) === 'rows' ? numberAt(items, rows.to + 1) : undefined;
    const verb = madeBy(items, at);
    const last = items[(each?.to ?? 0) - 1];
    if (rows === undefined || each === undefined || verb === undefined || last === undefined) return [];
    // `2 by 3 inch pieces` are sizes.
    if (amountAt(items, each.from) !== undefined || rows.low !== rows.high || each.low !== each.high) return [];
    const [division] = divisionsIn(items).filter(({ number }) => number >= each.to);
    const total = division === undefined ? undefined : numberAt(items, division.number);
    const end = division === undefined ? last.end : (items[division.number]?.end ?? last.end);
    return [{ start: item.start, end, count: rows.low * each.low, total: total?.low }];
  }),
);

/** Squares that all is cut into, by the length of a side: `cut into 2-inch squares`. */
export interface SquaresSaid extends Span {
  readonly cm: number;
}

export const squaresIn = onceFor((items: Items): readonly SquaresSaid[] =>
  items.flatMap((item, at) => {
    const side = item.kind === 'length' ? item.measured : undefined;
    const mm = side?.unit === undefined ? undefined : baseOf(side.unit.symbol, 'us');
    // `Squares of 5 cm` too.
    const noun = [at + 1, wordAt(items, at - 1) === 'of' ? at - 2 : at].find((i) => saidAt(items, i) === 'squares');
    const verb = noun === undefined ? undefined : madeBy(items, Math.min(noun, at));
    const last = items[Math.max(noun ?? at, at)];
    return side === undefined || mm === undefined || verb === undefined || last === undefined || side.high !== undefined
      ? []
      : [{ start: verb.start, end: last.end, cm: (side.low.value * mm) / 10 }];
  }),
);

/** A number that all is divided into, with no word of what: `roll up, cut into 12 and lay in the pan`. */
const bareIn = (items: Items): readonly CountSaid[] =>
  divisionsIn(items).flatMap(({ verb, number }): readonly CountSaid[] => {
    const count = numberAt(items, number);
    const item = items[number];
    const next = items[count?.to ?? 0];
    if (
      count === undefined ||
      item === undefined ||
      count.low < LEAST ||
      (item.kind === 'measured' && item.counted !== undefined)
    )
      return [];
    // `Cut into 3 cm lengths`, `into 12 rounds`: that is said elsewhere.
    if (next !== undefined && next.kind !== 'mark' && jointOf(senseOf(wordAt(items, count.to))) === undefined)
      return [];
    if (saidAt(items, count.to) === 'rows') return [];
    return [
      {
        start: items[verb]?.start ?? item.start,
        end: item.end,
        low: count.low,
        high: count.high,
        noun: '',
        sort: 'piece',
        until: item.end,
      },
    ];
  });

/** Fewer are halves, tins of a cake, strands of a plait. */
const LEAST = 4;

/** `Cut`, `roll into`, with no other number between. */
function madeBy(items: Items, at: number): Items[number] | undefined {
  for (let i = at - 1; i >= 0 && markAt(items, i) === '' && numberAt(items, i) === undefined; i--)
    if (divides(verbOf(senseOf(wordAt(items, i))))) return items[i];
  return undefined;
}

/** What goes into one, with the words behind it: `pour 1/4 cup batter for each pancake`. */
export interface OfOneSaid extends Span {
  readonly each: EachSaid['each'];
  readonly words: readonly string[];
}

export const ofOneIn = (items: Items): readonly OfOneSaid[] =>
  items.flatMap((item, at) => {
    const amount = amountAt(items, at);
    if (amount === undefined || !saysEach(items, at)) return [];
    const { low, high, unit, to } = amount;
    const words: string[] = [];
    for (let i = to; items[i]?.kind === 'word'; i++) words.push(wordAt(items, i));
    return [
      { start: item.start, end: items[to + words.length - 1]?.end ?? item.end, each: { low, high, unit }, words },
    ];
  });

/** Whether it says so many, of whatever. */
export const saysNumber = (items: Items, number: number): boolean =>
  items.some((_, at) => numberAt(items, at)?.low === number);

/** Whether the words of a place end with a noun. */
export const endsIn = (items: Items, { end }: Span, noun: string): boolean =>
  items.some((item, at) => item.end === end && wordAt(items, at) === noun);

/** Volumes that no vessel has: `boil in 1 litre water`, not `in a 2 l pot`. */
export const volumesIn = onceFor((items: Items): readonly MeasuredNode[] => {
  const vessels = eachSaidIn(items).filter(({ sort }) => sort === 'vessel');
  return items.flatMap((item) =>
    item.kind === 'measured' && !vessels.some(({ start, end }) => start <= item.start && item.end <= end) ? [item] : [],
  );
});
