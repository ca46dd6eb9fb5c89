/**
 * Knows the journeys of a recipe: how its parts fold one after another into bodies, and which of them share food.
 * Refuses to judge. What an edit does not reach is the same object as before: a part that finds what it found, and a journey of such parts.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Part, Recipe } from '../recipe.ts';
import { inOrder, type Placed } from './ahead.ts';
import type { Body, Stay } from './bodies.ts';
import { type FoldedPart, foldPart } from './folded-part.ts';
import type { FoldedStep } from './folded-step.ts';
import { Kitchen } from './kitchen.ts';

/** The way of foods that come together at some time, or lie in one part. */
export interface Journey {
  /** The parts it goes through, by their index. */
  readonly parts: Readonly<Record<number, Part>>;
  readonly steps: readonly FoldedStep[];
  readonly stays: readonly Stay[];
  /** All that there is at the end. */
  readonly bodies: readonly Body[];
}

/** The way of a recipe's parts. */
interface Followed {
  /** In the order in which they are followed. */
  readonly placed: readonly Placed[];
  readonly folded: readonly FoldedPart[];
  readonly shared: Shared;
  whole?: Journey;
}

/** Parts by what they share. */
interface Shared {
  readonly journeys: readonly Journey[];
  /** By journey: places of its parts in the order in which they are followed. */
  readonly through: readonly (readonly number[])[];
  /** By place: the number of its journey. */
  readonly of: readonly number[];
}

const FOLLOWED = keptOn<Recipe, Followed>();
/** That of the recipe before an edit. */
const LENT = keptOn<Recipe, Followed | undefined>();

/** Lets a recipe go on from how the one that it was edited from was followed. */
export function lendJourneys(recipe: Recipe, before: Recipe): void {
  const known = FOLLOWED.get(before);
  if (known !== undefined && FOLLOWED.get(recipe) === undefined) LENT.set(recipe, known);
}

function followed(recipe: Recipe): Followed {
  let known = FOLLOWED.get(recipe);
  if (known === undefined) {
    known = follow(recipe, LENT.get(recipe));
    FOLLOWED.set(recipe, known);
    LENT.set(recipe, undefined);
  }
  return known;
}

/** The journeys of a recipe: what is in one of them never meets what is in another. */
export const journeysOf = (recipe: Recipe): readonly Journey[] => followed(recipe).shared.journeys;

/** That of a part, by its index. */
export const journeyAt = (recipe: Recipe, part: number): Journey | undefined =>
  journeysOf(recipe).find(({ parts }) => parts[part] !== undefined);

/** All of them as one. */
export function journeyOf(recipe: Recipe): Journey {
  const known = followed(recipe);
  known.whole ??= journeyThrough(known.folded);
  return known.whole;
}

function follow({ parts }: Recipe, before: Followed | undefined): Followed {
  const placed = inOrder(parts);
  const kitchen = new Kitchen(parts);
  const folded: FoldedPart[] = [];
  const others: number[] = [];
  for (let at = 0; at < placed.length; at++) {
    const each = placed[at] as Placed;
    const old = before?.folded[at];
    const isSame = old !== undefined && before?.placed[at] === each && kitchen.findsTheSame(each, old);
    const now = isSame ? old : foldPart(kitchen.stateFor(each), each, parts);
    kitchen.leave(now, old);
    folded.push(now);
    if (now !== old) others.push(at);
  }
  const shared =
    (before?.folded.length === folded.length ? sharedAgain(folded, before, others) : undefined) ?? sharing(folded);
  return { placed, folded, shared };
}

/** What those share where the parts at some places are others than before; undefined where they share it with others. */
function sharedAgain(folded: readonly FoldedPart[], before: Followed, others: readonly number[]): Shared | undefined {
  const { journeys, through, of } = before.shared;
  if (others.length === 0) return before.shared;
  const changed = new Set<number>();
  for (const at of others) {
    const [now, old] = [folded[at]?.touches, before.folded[at]?.touches];
    if (now?.length !== old?.length || !now?.every((part, i) => part === old?.[i])) return undefined;
    if (folded[at]?.part.index !== before.folded[at]?.part.index) return undefined;
    changed.add(of[at] as number);
  }
  return {
    journeys: journeys.map((journey, number) =>
      changed.has(number) ? journeyThrough((through[number] ?? []).map((at) => folded[at] as FoldedPart)) : journey,
    ),
    through,
    of,
  };
}

/** Each journey is of parts that had food of each other in hand, at first or second hand. */
function sharing(folded: readonly FoldedPart[]): Shared {
  const under: number[] = [];
  const rootOf = (part: number): number => {
    let root = part;
    for (let next = under[root]; next !== undefined; next = under[root]) root = next;
    return root;
  };
  for (const { part, touches } of folded)
    for (const other of touches) {
      const [a, b] = [rootOf(part.index), rootOf(other)];
      if (a !== b) under[Math.max(a, b)] = Math.min(a, b);
    }
  const through: number[][] = [];
  const numbers: (number | undefined)[] = [];
  const of = folded.map(({ part }, at) => {
    const root = rootOf(part.index);
    const number = numbers[root] ?? through.length;
    numbers[root] = number;
    if (number === through.length) through.push([]);
    through[number]?.push(at);
    return number;
  });
  return { journeys: through.map((those) => keptJourney(those.map((at) => folded[at] as FoldedPart))), through, of };
}

interface Kept {
  readonly through: readonly FoldedPart[];
  readonly journey: Journey;
}

const JOURNEYS = keptOn<FoldedPart, Kept>();

/** The same journey where another edit only sets its parts apart from others. */
function keptJourney(through: readonly FoldedPart[]): Journey {
  const [first] = through as [FoldedPart];
  const kept = JOURNEYS.get(first);
  if (kept !== undefined && kept.through.length === through.length && through.every((p, i) => p === kept.through[i]))
    return kept.journey;
  const journey = journeyThrough(through);
  JOURNEYS.set(first, { through, journey });
  return journey;
}

function journeyThrough(through: readonly FoldedPart[]): Journey {
  const parts: Record<number, Part> = {};
  for (const { part } of through) parts[part.index] = part;
  const listed = through.toSorted((a, b) => a.part.index - b.part.index).flatMap((each) => each.listed);
  const stays = through.flatMap((each) => each.stays);
  const told = new Set(stays.map((stay) => stay.told));
  return {
    parts,
    steps: through.flatMap(({ steps }) => steps),
    stays: [...listed, ...stays.filter((stay) => !told.has(stay))],
    bodies: bodiesAfter(through),
  };
}

/** What nothing can happen to any more, and what stands about at the end. */
function bodiesAfter(through: readonly FoldedPart[]): readonly Body[] {
  const open = new Map<number, Body>();
  for (const { taken, changed, made } of through) {
    for (const id of taken) open.delete(id);
    for (const body of changed) open.set(body.id, body);
    for (const { body } of made) open.set(body.id, body);
  }
  return [...through.flatMap(({ ended }) => ended), ...open.values()];
}
