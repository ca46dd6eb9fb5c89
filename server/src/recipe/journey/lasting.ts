/**
 * Knows how long the events of a step last, and whether somebody works by then, heat does, or all wait.
 * Refuses to know how steps add up (`recipe/durations.ts`).
 */
import type { Range } from '../../measure/quantity.ts';
import type { Act, Event, Tells, TimeSaid } from '../../prose/event.ts';

/** What one event takes. Minutes; `Infinity` where the end is open. */
export interface Lasting {
  /** From the least to the most of all that is said of it. */
  readonly minutes: Range;
  /** What a cook would plan with: the middle of a range, the least of an open one, the first of a choice. */
  readonly likely: number;
  readonly spent: 'work' | 'cooking' | 'waiting';
  /** Somebody stands by. */
  readonly attended: boolean;
  /** It is done while what came before goes on by itself. */
  readonly meanwhile: boolean;
  /** It is put away for so long, till it is wanted. */
  readonly isKept: boolean;
}

/** What goes on for less than this, nobody leaves; at the stove for no more than the next (common practice, no source). */
const LEAST_LEFT_MIN = 5;
const MOST_AT_STOVE_MIN = 15;
/** Nobody stirs or fries for longer without a pause (judgement). */
const MOST_FRIED_MIN = 30;
const MOST_WORKED_MIN = 60;
/** Shorter than this nothing is put away. */
const LEAST_KEPT_MIN = 240;
/** A horizon beyond a week says when it is wanted; cooling takes no longer than the next (judgement). */
const MOST_AWAITED_MIN = 10_080;
const MOST_COOLED_MIN = 10_080;
/** So long a limit is what it takes, and no life: `rest for up to 20 min` (judgement). */
const MOST_LIMIT_MIN = 60;

/** How long an event lasts; undefined where it says no time of its own. `kg`: what the food it is done to weighs, where that is known. */
export function lastingOf(event: Event, kg: Range | undefined): Lasting | undefined {
  if (!HAPPENS.has(event.said) || event.as === 'before' || TAKES_NO_TIME.has(event.act)) return undefined;
  let low = 0;
  let high = 0;
  let likely = 0;
  let any = false;
  const chosen = new Set<number>();
  const byWeight = event.times.some(({ per }) => per === 'kg') ? weighed(event, kg) : 0;
  for (const time of event.times) {
    const own = minutesOf(time, event, kg);
    if (own === undefined) continue;
    // `30 minutes a pound, so about 6 hours`: all of it again; but `15 min per 500 g plus 20 min`.
    if (time.per !== 'kg' && byWeight > 0 && own.minutes.high >= byWeight * ALL_OF_IT) continue;
    any = true;
    if (time.choice > 0 && chosen.has(time.choice)) {
      // `4 h or overnight`: no longer than the longest of them.
      high = Math.max(high, own.minutes.high);
      continue;
    }
    if (time.choice > 0) chosen.add(time.choice);
    low += own.minutes.low;
    high += own.minutes.high;
    likely += own.likely;
  }
  if (!any) return undefined;
  // What is done on a condition, or as the cook likes, is in no plan.
  const isSure = event.said === 'yes';
  return {
    minutes: { low: isSure ? low : 0, high },
    likely: isSure ? likely : 0,
    ...spentOn(event, likely),
    meanwhile: event.meanwhile,
    isKept: (event.craft === 'keep' || event.verb === undefined) && likely >= LEAST_KEPT_MIN,
  };
}

/** Beside a time by weight, what comes to this share of it is its sum. */
const ALL_OF_IT = 0.6;

function weighed({ times }: Event, kg: Range | undefined): number {
  const each = times.find(({ per }) => per === 'kg');
  return each === undefined || kg === undefined ? 0 : each.minutes.low * kg.low;
}

const HAPPENS: ReadonlySet<Event['said']> = new Set(['yes', 'if', 'optional']);
/** An oven warms up beside the work; what is eaten, or only read, takes none of the cook's. */
const TAKES_NO_TIME: ReadonlySet<Act> = new Set(['ready', 'eat', 'read', 'adjust', 'discard']);

function minutesOf(
  { minutes: { low, high }, kind, per, within }: TimeSaid,
  { batches, act, as }: Event,
  kg: Range | undefined,
): { readonly minutes: Range; readonly likely: number } | undefined {
  if (kind === 'limit' || kind === 'life') {
    // Of what nobody knows, `within an hour` is when.
    if (high > MOST_LIMIT_MIN || act === 'unknown' || within) return undefined;
    return { minutes: { low: 0, high }, likely: high };
  }
  if (kind === 'until' ? low <= 0 || high > MOST_AWAITED_MIN || act === 'unknown' : kind !== 'spent') return undefined;
  // Nothing takes so long to cool; it is what it is for: `from six months`, `the sliced loaf freezes for 3 months`.
  if ((act === 'cool' || (act === 'freeze' && as === 'told')) && low > MOST_COOLED_MIN) return undefined;
  const times = per === 'kg' ? kg : per === 'side' ? SIDES : batches;
  if (per === 'kg' && times === undefined) return undefined;
  const { low: least, high: most } = times ?? ONCE;
  const end = Number.isFinite(high) ? high : low;
  const middle = (kind === 'until' ? low : (low + end) / 2) * ((least + most) / 2);
  return { minutes: { low: low * least, high: high * most }, likely: middle };
}

const ONCE: Range = { low: 1, high: 1 };
/** What is turned has two. */
const SIDES: Range = { low: 2, high: 2 };

function spentOn({ act, lasts, where, medium, until }: Event, minutes: number): Pick<Lasting, 'spent' | 'attended'> {
  const places = where.flatMap(({ is, not, way }) => (not || (way !== 'at' && way !== 'to') || !is ? [] : [is]));
  // `Whisk over simmering water until thick`.
  const isOverWater = act === 'combine' && medium?.is === 'water' && until.some(({ is }) => is && HOT_SIGNS.has(is));
  const isHot = places.includes('oven') || places.includes('stove') || isOverWater;
  switch (act) {
    case 'heat':
      if (places.includes('oven') || places.includes('smoker') || places.includes('hot'))
        return { spent: 'cooking', attended: false };
      return { spent: 'cooking', attended: minutes <= (lasts === 'works' ? MOST_FRIED_MIN : MOST_AT_STOVE_MIN) };
    case 'smoke':
      return { spent: 'cooking', attended: false };
    case 'combine':
    case 'cut':
    case 'shape':
    case 'divide':
      // `Stir over the heat for 8 min`.
      return { spent: isHot ? 'cooking' : 'work', attended: minutes <= MOST_WORKED_MIN };
    case 'dry':
    case 'put':
    case 'return':
    case 'unknown':
      // `Put it in the oven for 20 min`.
      if (isHot) return { spent: 'cooking', attended: !places.includes('oven') && minutes <= MOST_AT_STOVE_MIN };
      return minutes > MOST_AT_STOVE_MIN ? WAITS : WORKS;
    case 'remove':
      // What drains is left to it.
      return lasts === 'waits' && minutes >= LEAST_LEFT_MIN ? WAITS : WORKS;
  }
  return { spent: 'waiting', attended: minutes < LEAST_LEFT_MIN };
}

/** What comes of heat. */
const HOT_SIGNS: ReadonlySet<Tells> = new Set(['thick', 'set', 'boiling', 'hot', 'through', 'figure']);

const WAITS = { spent: 'waiting', attended: false } as const;
const WORKS = { spent: 'work', attended: true } as const;
