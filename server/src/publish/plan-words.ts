/** Knows how what a plan found is said: clashes, ways out, what may be done before, what is asked. Refuses to know where it is shown. */
import type { PlanAsked, PlanClash, PlanClock, PlanFacts, PlanStep } from './plan-facts.ts';

/** `1 h 15 min` */
export function lengthOf(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : '']
    .filter((w) => w !== '')
    .join(' ');
}

/** `18:05`, `22:50 the day before` */
export function clockText({ at, days_before: days }: PlanClock): string {
  return days === 0 ? at : days === 1 ? `${at} the day before` : `${at} ${days} days before`;
}

/** `Begin at 16:05; at 15:50 if all takes its longest.` */
export function beginText({ start, start_at_most: most, at_least: atLeast }: PlanFacts): readonly [string, string] {
  const longest = most.min < start.min ? `; at ${clockText(most)} if all takes its longest` : '';
  return [`${atLeast ? 'Begin before' : 'Begin at'} ${clockText(start)}`, `${longest}.`];
}

/** The same with how long that is: `… That is 3 h 25 min before it is eaten, 38 min of it by hand.` */
export function planSummary(facts: PlanFacts): string {
  const { start, hands_min: hands, at_least: atLeast } = facts;
  const least = atLeast ? 'at least ' : '';
  return `${beginText(facts).join('')} That is ${least}${lengthOf(-start.min)} before it is eaten, ${lengthOf(hands)} of it by hand.`;
}

export const AT_LEAST =
  'All of this is the least: what cooks or waits and says no minutes is reckoned as none, and is asked for below.';

/** `Two steps of work say no minutes: 10 min is put for each here, and nothing is written.` Nothing where all say theirs. */
export function putText({ asked }: PlanFacts): string | undefined {
  const put = asked.filter(({ put_min }) => put_min !== null);
  const [first] = put;
  if (first === undefined) return undefined;
  const each =
    put.length === 1 ? 'One step of work says no minutes' : `${countWord(put.length)} steps of work say no minutes`;
  return `${each}: ${lengthOf(first.put_min ?? 0)} is put for ${put.length === 1 ? 'it' : 'each'} here, and nothing is written.`;
}

const countWord = (count: number): string =>
  ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'][count] ?? String(count);

export const NOT_ALL_TRIED = 'There are too many orders to try them all: a better one may be left.';

/** `Gratin: bake at 160 C for 1 h 15 min` */
export const namedStep = ({ recipes }: PlanFacts, { recipe, text }: PlanStep): string =>
  recipes.length > 1 ? `${recipes[recipe] ?? ''}: ${text}` : text;

export const ovenName = ({ ovens }: PlanFacts, oven: number | null): string =>
  ovens.length > 1 && oven !== null ? (ovens[oven] ?? 'the oven') : 'the oven';

/** `220 °C`, `160 °C fan` */
export const heatText = ({ celsius, fan }: { readonly celsius: number; readonly fan: boolean }): string =>
  `${celsius} °C${fan ? ' fan' : ''}`;

export function clashText(facts: PlanFacts, { step, other, over, earlier_min, too_long_min }: PlanClash): string {
  const own = facts.steps[step];
  const by = other === null ? undefined : facts.steps[other];
  if (own === undefined) return '';
  const why = by === undefined ? 'somebody would have to be up at night' : `${WANTED[over]} “${namedStep(facts, by)}”`;
  const waits =
    too_long_min > 0
      ? `; it then waits ${lengthOf(own.waits_min)}, ${lengthOf(too_long_min)} longer than it should`
      : '';
  return `“${namedStep(facts, own)}” is ${lengthOf(earlier_min)} earlier than it need be, as ${why}${waits}.`;
}

const WANTED = {
  hands: 'the hands are wanted for',
  oven: 'the oven is wanted, at its heat, for',
  night: 'it is night before',
} as const;

export function wayOutText(facts: PlanFacts, way: PlanFacts['ways_out'][number]): string {
  const before = tooLongIn(facts);
  const mends =
    before === 0
      ? ''
      : way.too_long_min === 0
        ? ', and nothing waits too long'
        : `, and what waits too long does so by ${lengthOf(way.too_long_min)} in all, not ${lengthOf(before)}`;
  const begins = way.start.min === 0 ? 'nothing is left for the day' : `the day begins at ${clockText(way.start)}`;
  return `${WAYS[way.way]}: ${begins}${mends}.`;
}

const WAYS = {
  'share the oven': 'If all that is baked at one heat fits in together (--share-oven)',
  'another oven': 'With another oven',
  'another cook': 'With another pair of hands',
  'days before': 'With all that may be done before it done before',
  'at night': 'If somebody is up at night (--awake 00:00-24:00)',
} as const;

/** Minutes by which things wait longer than they should, all together. */
const tooLongIn = ({ clashes }: PlanFacts): number => clashes.reduce((sum, { too_long_min }) => sum + too_long_min, 0);

export function aheadText(facts: PlanFacts, { recipe, step, days }: PlanFacts['ahead'][number]): string {
  const until = facts.steps[step]?.text ?? '';
  const whose = facts.recipes.length > 1 ? `${facts.recipes[recipe] ?? ''}: ` : '';
  return `${whose}all up to “${until}” may be done ${days === 1 ? 'the day before' : `up to ${days} days before`}, and is left there, cold and covered.`;
}

export function askedText(facts: PlanFacts, { step, where, put_min: put }: PlanAsked): string {
  const own = facts.steps[step];
  if (own === undefined) return '';
  const said = put === null ? '' : ` (${lengthOf(put)} is put here)`;
  const why = own.not_estimated === null ? '' : ` (not estimated: ${own.not_estimated})`;
  return `${where}: “${own.text}”: how many minutes?${said}${why}`;
}

/** The head above what is done on a day. */
export const dayText = (days: number): string =>
  days === 0 ? 'On the day' : days === 1 ? 'The day before' : `${days} days before`;
