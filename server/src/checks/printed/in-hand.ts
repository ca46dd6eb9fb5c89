/**
 * Knows how much a part has in hand at a step: what of its list its steps have taken, what that weighs and how much room it takes, and how
 * far it has boiled down or been beaten up by then. Refuses to know what it is put in.
 */
import type { FoodClass } from '../../food/food.ts';
import type { Range } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import { endsIn, volumesIn } from '../../prose/counted-pieces.ts';
import type { Event } from '../../prose/event.ts';
import { anyDoes, deed, does, eventsOf, isBaked, speaksOf } from '../../recipe/journey/deeds.ts';
import { isIn } from '../../recipe/list/families.ts';
import { foodOf } from '../../recipe/list/stand-in.ts';
import type { Ingredient, Part, Recipe, Step } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import { volumeMl, type Weight } from '../method/volume.ts';
import { isListWeighed, isWeighed } from '../method/weighed.ts';
import { onceFor } from '../once.ts';

export interface InHand {
  readonly grams: Range;
  readonly ml: Range;
}

interface Share extends Range {
  readonly ingredient: Ingredient;
}

/** Of the whole recipe in the end; undefined where a weight or a composition is not known. */
export const madeInAll = onceFor(({ parts }: Recipe): InHand | undefined => {
  if (!parts.every((part) => isWeighed(part))) return undefined;
  const all = parts.flatMap(({ head }) => head.ingredients);
  return changed(
    all.map((ingredient) => ({ ingredient, low: ingredient.optional ? 0 : 1, high: 1 })),
    parts.flatMap(({ steps }) => steps),
  );
});

/** What the steps of a part have taken up to a line, and with it. */
export function inHandAt(part: Part, line: number): InHand | undefined {
  const { head, includes, ledger, index } = part;
  const before = part.steps.filter((step) => step.line <= line);
  if (!isListWeighed(head)) return undefined;
  // `Mix everything` takes what no step names.
  const isAll = before.some((step) => speaksOf(step, 'everything', 'ingredients'));
  const own = ledger.map(({ ingredient, uses, unsure }): Share => {
    if (uses.length === 0) return { ingredient, low: isAll && !ingredient.optional ? 1 : 0, high: 1 };
    let [low, high] = [0, 0];
    for (const use of uses) {
      if (use.part !== index || use.line > line) continue;
      low += use.taken.low;
      high += use.taken.high;
    }
    return { ingredient, low: ingredient.optional ? 0 : Math.min(1, low), high: unsure ? 1 : Math.min(1, high) };
  });
  const taken = includes.flatMap(({ ingredients, name }) =>
    (listedPart(head, name) === undefined ? ingredients : []).map(
      (ingredient): Share => ({ ingredient, low: 0, high: 1 }),
    ),
  );
  return changed([...own, ...taken], before);
}

/** The least room, in ml, that all takes that goes into the pot of a step, until another vessel is named or something is poured off. */
export function inPotMl({ head, index, steps, ledger }: Part, { line }: Step, noun: string): number | undefined {
  if (head.nominal) return undefined;
  let last = line;
  for (const step of steps) {
    if (step.line <= line) continue;
    const events = eventsOf(step);
    if (does(step, LEAVES) || does(step, STRAINS) || events.some(({ vessel }) => isOther(step, vessel, noun))) break;
    if (events.some((event) => event.act === 'heat' && !isBaked(event))) last = step.line;
  }
  const least = ledger.flatMap(({ ingredient: { food, weighed, optional }, uses }): Weight[] => {
    if (!weighed.known || optional) return [];
    const share = uses.reduce(
      (sum, use) => (use.part === index && use.line >= line && use.line <= last ? sum + use.taken.low : sum),
      0,
    );
    const grams = weighed.grams.low * Math.min(1, share);
    return [{ food, low: grams, high: grams }];
  });
  return volumeMl(least, 'low');
}

const isOther = ({ sentence }: Step, vessel: Event['vessel'], noun: string): boolean =>
  vessel !== undefined && vessel.is !== 'tool' && vessel.is !== 'wrap' && !endsIn(sentence.items, vessel, noun);

/** Of a pan on the stove, ml in a minute at the most (judgement: a burner of 2 kW boils off about 40 ml of water, a simmer half of that). */
const BOILS_OFF_ML = 30;
const UNTIMED_MIN = 3;
/** Below that nothing boils off, °C. */
const BOILS = 95;
/** What is drained, pressed, peeled or thrown away leaves at least so much. */
const LEAST_LEFT = 0.3;
const AIR = 1.15;
/** Beaten, and whipped, risen or churned, it takes so many times the room (common practice, no source). */
const BEATEN = 1.5;
const WHIPPED = 2.5;
/** A machine at home beats in half as much air at the most, and one of the trade as much again. */
const CHURNED = 1.9;

const LEAVES = deed(
  ({ act, craft }) => act === 'discard' || craft === 'drain' || craft === 'press' || craft === 'peel',
);
const STRAINS = deed(({ craft }) => craft === 'strain');
const BEATS = deed(({ craft }) => craft === 'beat' || craft === 'cream');
const WHIPS = deed((event) => event.craft === 'whip' || isBaked(event));
const RISES = deed(({ act }) => act === 'rise');
const CHURNS = deed(({ act, craft }) => act === 'freeze' || craft === 'churn');
const IN_WATER = deed(({ act, medium }) => (act === 'heat' || act === 'steep') && medium?.is === 'water');
const DRIES_OUT = deed(({ act }) => act === 'dry');

function changed(shares: readonly Share[], steps: readonly Step[]): InHand | undefined {
  const [least, most]: [Weight[], Weight[]] = [[], []];
  let [low, high, solidsG, mostSolidG, looseG, wetG, drinksG, isOpen, hasFlour] = [0, 0, 0, 0, 0, 0, 0, false, false];
  for (const { ingredient, ...share } of shares) {
    const { food, weighed, free } = ingredient;
    if (!weighed.known) {
      if (!free) return undefined;
      // Water and flour as needed: nobody knows how much.
      isOpen ||= isIn(ingredient, 'liquid') && share.high > 0;
      continue;
    }
    const [l, h] = [weighed.grams.low * share.low, weighed.grams.high * share.high];
    if (h <= 0) continue;
    least.push({ food, low: l, high: l });
    most.push({ food, low: h, high: h });
    low += l;
    high += h;
    solidsG += (l * (100 - (food?.per100.water ?? 100))) / 100;
    mostSolidG += (h * (100 - (food?.per100.water ?? 0))) / 100;
    if (!isIn(ingredient, 'fat')) looseG += (h * (100 - (food?.per100.water ?? 0))) / 100;
    hasFlour ||= isIn(ingredient, 'flour');
    if (isIn(ingredient, 'liquid')) wetG += l;
    if (DRINKS.has(foodOf(ingredient)?.class)) drinksG += h;
  }
  const [mlLow, mlHigh] = [volumeMl(least, 'low'), volumeMl(most, 'high')];
  if (mlLow === undefined || mlHigh === undefined || high <= 0) return undefined;
  const boiledG = boiledOff(steps);
  const share =
    anyDoes(steps, LEAVES) || anyDoes(steps, DRIES_OUT) || (anyDoes(steps, STRAINS) && holdsBits(shares, high))
      ? LEAST_LEFT
      : 1;
  const leastG = Math.max(
    low * share - boiledG,
    share === 1 ? Math.min(low, solidsG / MOST_SOLID) : low * LEAST_BOILED,
  );
  const isRisen = anyDoes(steps, WHIPS) || (hasFlour && anyDoes(steps, RISES));
  const air = isRisen ? WHIPPED : anyDoes(steps, CHURNS) ? CHURNED : anyDoes(steps, BEATS) ? BEATEN : AIR;
  // Dry beans and rice take up water that is on no list.
  const grown =
    isOpen || mlInSteps(steps) > mlHigh || (wetG <= drinksG && anyDoes(steps, IN_WATER)) ? Number.POSITIVE_INFINITY : 1;
  const mostG = setsByBoiling(steps) ? Math.max(leastG, Math.min(high, mostSolidG / LEAST_SOLID)) : high;
  // Flakes, nuts and powders lie loose, and a mix is stirred into something.
  const isDry = looseG > high * DRY;
  return {
    grams: { low: leastG, high: mostG * grown },
    ml: {
      low: low > 0 ? (mlLow * leastG) / low : 0,
      high: isDry ? Number.POSITIVE_INFINITY : ((mlHigh * mostG) / high) * air * grown,
    },
  };
}

/** Of jam as it sets, what is no water at the least (21 CFR 150.160: 65 % soluble solids), with what its fruit holds back; and from where on it boils so, °C. */
const LEAST_SOLID = 0.55;
const SETS = 103;
const setsByBoiling = (steps: readonly Step[]): boolean =>
  steps.some((step) =>
    eventsOf(step).some(({ temperatures }) =>
      temperatures.some(({ of, celsius }) => of === 'food' && celsius.low >= SETS),
    ),
  );

const DRY = 0.75;
/** Of jams and pastes, what is no water at the most. */
const MOST_SOLID = 0.8;
const LEAST_BOILED = 0.1;
const DRINKS: ReadonlySet<FoodClass | undefined> = new Set<FoodClass>(['legume', 'grain', 'pasta', 'dried fruit']);

/** Herbs, bones and pieces that a sieve keeps back. */
const BITS = 0.1;
const holdsBits = (shares: readonly Share[], massG: number): boolean => {
  let bits = 0;
  for (const { ingredient, high } of shares)
    if (ingredient.weighed.known && (isIn(ingredient, 'plant') || isIn(ingredient, 'flesh')))
      bits += ingredient.weighed.grams.high * high;
  return bits > massG * BITS;
};

/** The largest volume that a step says: `boil in 1 litre water`, where none is listed. */
const mlInSteps = (steps: readonly Step[]): number =>
  Math.max(
    0,
    ...steps.flatMap(({ sentence }) =>
      volumesIn(sentence.items).map(({ quantity }) => {
        const total = totalOf(quantity, 'us');
        return total?.dimension === 'volume' ? total.high : 0;
      }),
    ),
  );

/** Boiled down until it is thick, or as nobody has read, it may take as long as it likes. */
const untimedMin = ({ craft, until }: Event): number =>
  craft === 'reduce' || until.some(({ is }) => is === undefined || is === 'thick')
    ? Number.POSITIVE_INFINITY
    : UNTIMED_MIN;

/** Grams of water that boil off on the stove at the most. */
function boiledOff(steps: readonly Step[]): number {
  let minutes = 0;
  for (const step of steps)
    for (const event of eventsOf(step)) {
      if (event.act !== 'heat' || event.cooks === 'barely' || isBaked(event)) continue;
      if (event.temperatures.some(({ of, celsius }) => of === 'food' && celsius.high < BOILS)) continue;
      const spent = event.times.filter(({ kind }) => kind === 'spent');
      minutes += Math.max(untimedMin(event), ...spent.map((time) => time.minutes.high));
    }
  return minutes * BOILS_OFF_ML;
}
