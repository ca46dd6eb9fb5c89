/**
 * Knows where perishable food lies between cold and hot for too long: cooled, kept, thawed, set out.
 * Refuses to know whether it is cooked.
 */
import { middle } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Stay } from '../../recipe/journey/bodies.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import { isWarm } from '../../recipe/journey/stays.ts';
import { type Sure, weakest } from '../../recipe/journey/sure.ts';
import type { Recipe } from '../../recipe/recipe.ts';
import type { House } from '../house.ts';
import { type HoldingLimits, holdingLimits } from '../safety/limits.ts';
import { spoils } from './spoils.ts';
import { type Level, levelOver, type Verdict } from './verdict.ts';

const WRONG_SCALE_C = 30;
/** A roast may rest, and a platter stand, for so long (USDA FSIS, danger zone). */
const SHORT_MIN = 120;
/** A thermometer, and rounding between °C and °F. */
const SLACK_C = 0.6;

/** Every stay but those that are judged by other rules. */
export function tooWarm(
  recipe: Recipe,
  journey: Journey,
  except: ReadonlySet<Stay>,
  { foodSafety }: House,
): readonly Verdict[] {
  const limits = holdingLimits(foodSafety);
  const last = new Set(journey.bodies.flatMap(({ waits }) => waits ?? []));
  return journey.stays.flatMap((stay) => {
    if (except.has(stay)) return [];
    const verdict = judge(recipe, stay, last.has(stay), limits);
    return verdict === undefined ? [] : [verdict];
  });
}

function judge(recipe: Recipe, stay: Stay, isLast: boolean, limits: HoldingLimits): Verdict | undefined {
  const { by, body, lies } = stay;
  const { act } = by.event;
  if (act === 'rise' || act === 'dry' || act === 'smoke' || act === 'freeze') return undefined;
  // A roast is held from here on.
  if (!isWarm(lies) || lies.celsius.low >= limits.hot.roastC - SLACK_C || !spoils(recipe, body)) return undefined;
  if (act === 'cool' && by.event.temperatures.some(({ of }) => of === 'food')) return tooSlow(stay, limits);
  const figure = figureIn(stay);
  const sure = surenessOf(stay);
  const over = stay.timed ? overIn(stay, limitFor(stay, limits), sure) : undefined;
  const level: Level | undefined = stay.branch && over === 'error' ? 'warning' : over;
  if (
    figure !== undefined &&
    (level === undefined || level === 'ask') &&
    (!stay.timed || stay.minutes.high >= SHORT_MIN)
  ) {
    // Kept at a figure that is neither cold nor hot.
    if (figure.celsius.low >= limits.hot.roastC - SLACK_C || figure.celsius.high <= limits.cold.celsius + SLACK_C)
      return undefined;
    // Held in the cold at 40 C: the other scale was meant.
    if (lies.place === 'cold' && figure.celsius.low >= WRONG_SCALE_C) return undefined;
    if (
      (act === 'cool' && lies.place !== 'cold') ||
      act === 'eat' ||
      (!isLast && !stay.timed && act !== 'stay' && act !== 'cool')
    )
      return undefined;
    return verdictAt(
      'held-too-warm',
      stay,
      figure,
      figure.sure === 'said' ? 'error' : 'warning',
      `kept at ${figure.celsius.low} °C`,
    );
  }
  if (level !== undefined) {
    const at = by.event.times.find(({ kind }) => kind !== 'every') ?? by.event;
    const code = figure === undefined ? 'cooling-too-slow' : 'held-too-warm';
    return verdictAt(
      code,
      stay,
      at,
      level,
      `${stay.warmMin.low} to ${stay.warmMin.high} min between cold and hot, ${lies.place ?? 'nobody knows where'} (${lies.sure})`,
    );
  }
  if (
    !stay.timed &&
    isLast &&
    OPEN_STAYS.has(act) &&
    lies.sure === 'said' &&
    lies.place !== 'stove' &&
    lies.place !== 'oven'
  ) {
    const where = by.event.where.at(-1) ?? by.event;
    return verdictAt(
      'held-too-warm',
      stay,
      where,
      lies.place === 'cool' ? 'ask' : 'warning',
      `kept in a place that is ${lies.place}, and nobody says for how long`,
    );
  }
  return undefined;
}

/** From hot to the middle within two hours, and to the cold within six; each figure has the time behind it. */
function tooSlow(stay: Stay, { cooling }: HoldingLimits): Verdict | undefined {
  const { by, body } = stay;
  if (body.band !== 'hot') return undefined;
  for (const { of, celsius, end, sure } of by.event.temperatures) {
    const time =
      of === 'food' ? (by.event.times.find((each) => each.start >= end) ?? by.event.times.at(-1)) : undefined;
    if (time === undefined) continue;
    const limit =
      celsius.high <= cooling.endC + 1
        ? cooling.endMin
        : celsius.high <= cooling.middleC + 1
          ? cooling.middleMin
          : Number.POSITIVE_INFINITY;
    if (time.minutes.high > limit)
      return verdictAt(
        'cooling-too-slow',
        stay,
        time,
        sure === 'said' ? 'error' : 'warning',
        `${time.minutes.high} min to ${celsius.high} °C`,
      );
  }
  return undefined;
}

/** Until a time of the day nobody knows from when on: the middle of it counts. */
function overIn({ warmMin, by }: Stay, limit: number, sure: Sure): Level | undefined {
  const level = levelOver(warmMin, limit, sure);
  const isHorizon = by.event.times.some(({ kind }) => kind === 'until');
  return level === 'ask' && isHorizon && middle(warmMin) > limit && sure !== 'unread' ? 'warning' : level;
}

const OPEN_STAYS: ReadonlySet<string> = new Set(['stay', 'pack', 'close', 'cover', 'put']);

/** Two hours while it cools from hot; four for what lies about. */
const limitFor = ({ by, body }: Stay, { cooling, leftOut }: HoldingLimits): number =>
  by.event.act === 'cool' && body.band === 'hot' ? cooling.middleMin : leftOut.min;

/** A cool place is asked about; what lies frozen to thaw is held to be warm where it lies. */
function surenessOf({ sure, lies, body, warmMin }: Stay): Sure {
  const own = lies.place === 'cool' && lies.celsius.high - lies.celsius.low > 10 ? weakest(sure, 'unread') : sure;
  return warmMin.high > 0 && body.warmMin.high > 0 ? weakest(own, body.warmSure) : own;
}

/** The figure of where it lies. */
function figureIn({
  by,
  lies,
}: Stay):
  | (Span & { readonly celsius: { readonly low: number; readonly high: number }; readonly sure: Sure })
  | undefined {
  const said = by.event.temperatures.find(
    ({ celsius }) => celsius.low === lies.celsius.low && celsius.high === lies.celsius.high,
  );
  return said === undefined ? undefined : { ...said, sure: lies.sure };
}

const verdictAt = (code: string, { part, line }: Stay, { start, end }: Span, level: Level, why: string): Verdict => ({
  code,
  level,
  part,
  line,
  start,
  end,
  why,
});
