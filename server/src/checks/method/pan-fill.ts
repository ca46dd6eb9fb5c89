/**
 * Knows how much room what is baked or set takes in the recipe's pan: from its composition, the air worked into it, and how far its kind grows.
 * Refuses to judge, and to guess where a weight or a size is not known.
 */
import data from '../../../data/pan-fill.json' with { type: 'json' };
import type { Food } from '../../food/food.ts';
import { gramsText, percentRange, percentText, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Measures } from '../../measure/systems.ts';
import type { PanNode } from '../../notation/tree.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { deed, does, isBaked, nameSpeaksOf, speaksOf, speaksOfSeveral } from '../../recipe/journey/deeds.ts';
import { areSameLists } from '../../recipe/measures/contents.ts';
import { litresText, panSize, panSum } from '../../recipe/measures/pan-size.ts';
import { bakingPanIn, pansSaidIn } from '../../recipe/measures/pans-said.ts';
import type { Ingredient, Part, PartHead, Recipe } from '../../recipe/model.ts';
import { listedPart } from '../../recipe/part.ts';
import type { Place } from '../check.ts';
import { onceFor } from '../once.ts';
import { overParts } from '../over-parts.ts';
import { sumTable } from '../sum-table.ts';
import { bakingOrder } from './cues.ts';
import { breadOrKindOf } from './taken-for.ts';
import { DENSITIES, volumeMl, type Weight } from './volume.ts';

export interface PanFill {
  /** Where the pan is written, and what it says. */
  readonly at: Place;
  readonly pan: PanNode;
  /** The usual one where its depth is not said. */
  readonly panMl: number;
  readonly panRange: Range;
  /** What was taken to be so of the pan. */
  readonly assumed: readonly string[];
  /** As it goes in, with the least air and with the most. */
  readonly rawMl: readonly [number, number];
  readonly risenMl: readonly [number, number];
  /** Put in as pieces, with room between. */
  readonly pieces: boolean;
  /** Under a crust, below which it may be heaped. */
  readonly covered: boolean;
  /** More than one pan's worth is spoken of. */
  readonly batches: boolean;
  readonly names: readonly string[];
  readonly layers: readonly PanLayer[];
}

/** One part of what fills the pan. */
export interface PanLayer {
  readonly head: PartHead;
  /** As it says, or as it is taken for. */
  readonly kind: string | undefined;
  readonly room: Room;
  /** Without air, least and most. */
  readonly ml: readonly [number, number];
}

/** How light a kind is worked, as a share of its weight without air, and how often it grows to its height. */
interface Room {
  readonly lightest: number;
  readonly heaviest: number;
  readonly rise: readonly number[];
}

const ROOMS: Readonly<Record<string, Room>> = data.kinds;
const UNJUDGED: ReadonlySet<string> = new Set(data.unjudged);

/** Of every pan that is written: the recipe's, and those of its parts. None where it cannot be told. */
export const panFills = onceFor((recipe: Recipe): readonly PanFill[] => {
  if (recipe.inherits) return [];
  const own = recipe.parts.flatMap((part) => {
    const { pan } = part.head;
    if (pan === undefined) return [];
    const { start, end } = pan.node;
    return fillOf(recipe, pan.node, { part: part.index, line: pan.line, start, end }, withIncluded(recipe, part)) ?? [];
  });
  if (recipe.pan === undefined) return own.length > 0 ? own : onlySaid(recipe);
  const { at, node } = recipe.pan;
  const filling = fillingOf(recipe)?.filter((part) => part.head.pan === undefined);
  const whole = fillOf(recipe, node, { line: at, start: node.start, end: node.end }, filling);
  return whole === undefined ? own : [whole, ...own];
});

/** The pan of the steps, where they name one alone. */
function onlySaid(recipe: Recipe): readonly PanFill[] {
  const named = PANS_SAID(recipe).flatMap(({ part, value }) => value.map((each) => ({ part, ...each })));
  const [said] = named;
  if (said === undefined || named.some(({ words }) => words !== said.words)) return [];
  const { line, start, end, node, part } = said;
  const fill = fillOf(recipe, node, { part: part.index, line, start, end }, fillingOf(recipe));
  return fill === undefined ? [] : [fill];
}

const PANS_SAID = overParts((part) => {
  const said = pansSaidIn(part).flatMap((each) => {
    const node = bakingPanIn(each.words);
    return node === undefined ? [] : [{ ...each, node }];
  });
  return said.length === 0 ? undefined : said;
});

/** What fills a pan, and how. */
interface Filling {
  readonly at: Place;
  readonly measures: Measures;
  readonly parts: readonly Part[];
  readonly covered: boolean;
  readonly pieces: boolean;
  readonly batches: boolean;
}

const lastFill = onceFor((_: PanNode): { filling?: Filling; fill?: PanFill | undefined } => ({}));

/** The same object for as long as what fills it and how is the same. */
function fillOf(recipe: Recipe, pan: PanNode, at: Place, parts: readonly Part[] | undefined): PanFill | undefined {
  if (parts === undefined) return undefined;
  const ways = parts.map(filledBy);
  const filling: Filling = {
    at,
    measures: recipe.world.measures,
    parts,
    covered: ways.some(({ covered }) => covered),
    pieces: ways.some(({ pieces }) => pieces),
    batches: pan.count === 1 && ways.some(({ batches }) => batches),
  };
  const last = lastFill(pan);
  if (last.filling === undefined || !isSame(last.filling, filling)) {
    last.fill = workOut(pan, filling);
    last.filling = filling;
  }
  return last.fill;
}

const isSame = (a: Filling, b: Filling): boolean =>
  a.at.line === b.at.line &&
  a.at.part === b.at.part &&
  a.at.start === b.at.start &&
  a.measures === b.measures &&
  a.covered === b.covered &&
  a.pieces === b.pieces &&
  a.batches === b.batches &&
  areSameLists(a.parts.map(headOf), b.parts.map(headOf)) &&
  a.parts.every(({ includes }, i) => areSameLists(includes, b.parts[i]?.includes ?? []));

const headOf = ({ head }: Part): PartHead => head;

function workOut(pan: PanNode, { at, measures, parts, covered, pieces, batches }: Filling): PanFill | undefined {
  const size = panSize(pan, measures);
  if (size === undefined) return undefined;
  const ownMl = covered ? solidBelowLidMl : solidMl;
  let raw: [number, number] = [0, 0];
  let risen: [number, number] = [0, 0];
  const layers: PanLayer[] = [];
  for (const part of parts) {
    const { head, includes } = part;
    if (head.ingredients.length === 0) continue;
    // A part that is on another's list would be counted twice.
    if (includes.some((other) => listedPart(head, other.name) !== undefined)) return undefined;
    if (UNJUDGED.has(head.kind?.name ?? '') || head.nominal || !head.massG.complete) return undefined;
    const ml = ownMl(head.ingredients);
    if (ml === undefined) return undefined;
    const kind = breadOrKindOf(part);
    const room = ROOMS[kind ?? ''] ?? data.other;
    layers.push({ head, kind, room, ml });
    const [least = 1, most = 1] = room.rise;
    const low = (ml[0] / room.heaviest) * leastTaken(part);
    const high = ml[1] / room.lightest;
    raw = [raw[0] + low, raw[1] + high];
    risen = [risen[0] + low * least, risen[1] + high * most];
  }
  if (raw[0] <= 0) return undefined;
  return {
    at,
    pan,
    panMl: size.volumeMl,
    panRange: size.rangeMl,
    assumed: size.assumed,
    rawMl: raw,
    risenMl: risen,
    pieces,
    covered,
    batches,
    names: parts.filter((p) => p.head.ingredients.length > 0).map((p) => p.head.name),
    layers,
  };
}

const isPastry = (food: Food | undefined): boolean => food !== undefined && nameSpeaksOf(food.name, 'pastry');

/** A lid lies on the dish and not in it. */
const COVERS = deed(({ act, craft }) => act === 'cover' || craft === 'top');
const isCovered = ({ steps }: Part): boolean =>
  steps.some((step) => does(step, COVERS) || speaksOf(step, 'lid', 'top'));

const PIPED = deed(({ craft }) => craft === 'pipe' || craft === 'portion');
const isInPieces = ({ steps }: Part): boolean =>
  steps.some((step) => does(step, PIPED) || speaksOfSeveral(step, 'lump'));

const DIVIDED = deed(({ act, craft }) => (act === 'divide' && craft !== 'portion') || act === 'freeze');
const isInBatches = ({ steps }: Part): boolean =>
  steps.some((step) => does(step, DIVIDED) || speaksOf(step, 'batch') || speaksOfSeveral(step, 'tin', 'loaf'));

const BOILED = deed((event) => event.act === 'heat' && !isBaked(event));
// What is pressed under the cream stays in it.
const LIFTED = deed(({ act, craft }) => act === 'remove' && craft !== 'unmould' && craft !== 'press');

/** Of what is lifted out of a pot either side may go on: the share of the list that goes in at the least. */
const leastTaken = onceFor(({ head, steps }: Part): number => {
  const from = steps.findIndex((step) => does(step, BOILED));
  const lifted = new Set(
    from < 0
      ? []
      : steps
          .slice(from)
          .filter((step) => does(step, LIFTED))
          .flatMap(boundEvents)
          .filter(({ event: { act, craft } }) => act === 'remove' && craft !== 'press')
          .flatMap(({ names }) =>
            names.flatMap(({ mention }) => mention.ingredients.map(({ ingredient }) => ingredient)),
          ),
  );
  const [out, all] = head.ingredients.reduce(
    ([some, whole], { weighed }, i) => {
      const grams = weighed.known ? weighed.grams.low : 0;
      return [some + (lifted.has(i) ? grams : 0), whole + grams];
    },
    [0, 0],
  );
  return out > all * BITS && out < all ? Math.min(out, all - out) / all : 1;
});
/** A bone or a pod that is lifted out leaves the rest (judgement). */
const BITS = 0.2;

/** How the steps of a part fill what they fill. */
const filledBy = onceFor((part: Part) => ({
  covered: isCovered(part),
  pieces: isInPieces(part),
  batches: isInBatches(part),
}));

/** The part that bakes, with what it takes in; without an oven, the last part that takes all in. */
function fillingOf(recipe: Recipe): readonly Part[] | undefined {
  const baking = baked(recipe).at(-1)?.part;
  const last = baking ?? recipe.parts.at(-1);
  const taken = last && withIncluded(recipe, last);
  return baking === undefined && taken?.length !== recipe.parts.length ? undefined : taken;
}

/** A part and those that it takes in. */
function withIncluded(recipe: Recipe, part: Part): readonly Part[] {
  const taken = new Set([part.index]);
  // What is added while they are gone through is gone through too.
  for (const index of taken)
    for (const head of recipe.parts[index]?.includes ?? []) {
      const at = recipe.heads.lastIndexOf(head, index);
      if (at >= 0) taken.add(at);
    }
  return [...taken].sort((a, b) => a - b).flatMap((index) => recipe.parts[index] ?? []);
}

/** ml of a list without air, least and most. */
const solidMl = onceFor((list: readonly Ingredient[]) => mlOf(list, false));

/** The same where a lid of pastry may lie over the rest. */
const solidBelowLidMl = onceFor((list: readonly Ingredient[]) => mlOf(list, true));

function mlOf(list: readonly Ingredient[], lidded: boolean): readonly [number, number] | undefined {
  const weighed: Weight[] = [];
  for (const { food, weighed: of, optional } of list)
    if (of.known)
      weighed.push({ food, low: optional || (lidded && isPastry(food)) ? 0 : of.grams.low, high: of.grams.high });
  const low = volumeMl(weighed, 'low');
  const high = low === undefined ? undefined : volumeMl(weighed, 'high');
  return low === undefined || high === undefined ? undefined : [low, high];
}

/** What was taken to be so of the pan, behind its volume: ` (if it is 5 cm deep)`. */
export const takenSo = (assumed: readonly string[]): string =>
  assumed.length === 0 ? '' : ` (if ${assumed.join('; ')})`;

/** Where the densities and the shares are from. */
export const FILL_SOURCE = `densities: Choi and Okos (1986); air and rise: ${data.source}`;

/** The volumes line by line, and what the pan holds. */
export function fillSum({ layers, panMl, panRange, pan }: PanFill): string[] {
  const ranges = panRange.low < panRange.high ? `, ${litresText(panRange)} by its depth` : '';
  return [
    ...layers.flatMap(layerSum),
    `The pan: ${panSum(pan)} = ${ml(panMl)}, to the brim${ranges}.`,
    '',
    `One gram takes: ${DENSITIES.map(([component, density]) => `${component} ${trimmed(1000 / density, 2)} ml`).join(', ')} (Choi and Okos 1986).`,
  ];
}

const COMPONENTS = DENSITIES.map(([component]) => component);

function layerSum({ head, kind, room, ml: solid }: PanLayer): string[] {
  const rows = head.ingredients.flatMap(({ name, food, weighed }) => {
    if (!weighed.known) return [];
    const grams = (weighed.grams.low + weighed.grams.high) / 2;
    const held = COMPONENTS.map((component) => ((food?.per100[component] ?? 0) * grams) / 100);
    const alone = volumeMl([{ food, low: grams, high: grams }], 'low') ?? grams;
    return [{ name, numbers: [grams, ...held, alone] }];
  });
  const [least = 1, most = 1] = room.rise;
  const raw = [solid[0] / room.heaviest, solid[1] / room.lightest] as const;
  const called = head.name === '' ? 'It' : `The ${head.name}`;
  const air =
    room.heaviest === room.lightest
      ? `weighs ${percentText(room.heaviest)} of that`
      : `weighs ${percentRange(room.lightest, room.heaviest)} of what it would without a bubble of air`;
  return [
    ...sumTable(['ingredient', 'weighs, g', ...COMPONENTS.map((c) => `${c}, g`), 'takes, ml'], rows),
    '',
    `${called} takes ${span(solid[0], solid[1])} without air. As a ${kind ?? 'mixture'} it ${air}, so ${span(raw[0], raw[1])} goes in; it grows ${least === most ? trimmed(least, 2) : `${trimmed(least, 2)} to ${trimmed(most, 2)}`} times, to ${span(raw[0] * least, raw[1] * most)}.`,
    '',
  ];
}

const span = (low: number, high: number): string => (ml(low) === ml(high) ? ml(low) : `${ml(low)} to ${ml(high)}`);
const ml = (volume: number): string => `${gramsText(volume)} ml`;

const baked = overParts((part: Part) => part.steps.some((step) => bakingOrder(step) !== undefined) || undefined);
