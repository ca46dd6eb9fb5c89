/**
 * Knows the journeys of a recipe: how its parts fold one after another into bodies, and which of them share food.
 * Refuses to judge. What an edit does not reach is the same object as before: a part that finds what it found, and a journey of such parts.
 */
import { keptOn } from '../../notation/kept.ts';
import type { Part, Recipe } from '../recipe.ts';
import { inOrder } from './ahead.ts';
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

interface Followed {
  /** In the order in which they are followed. */
  readonly folded: readonly FoldedPart[];
  readonly journeys: readonly Journey[];
  /** By part. */
  readonly of: readonly (Journey | undefined)[];
  whole?: Journey;
}

const FOLLOWED = keptOn<Recipe, Followed>();

function followed(recipe: Recipe): Followed {
  let known = FOLLOWED.get(recipe);
  if (known === undefined) {
    known = follow(recipe);
    FOLLOWED.set(recipe, known);
  }
  return known;
}

/** The journeys of a recipe: what is in one of them never meets what is in another. */
export const journeysOf = (recipe: Recipe): readonly Journey[] => followed(recipe).journeys;

/** That of a part, by its index. */
export const journeyAt = (recipe: Recipe, part: number): Journey | undefined => followed(recipe).of[part];

/** All of them as one. */
export function journeyOf(recipe: Recipe): Journey {
  const known = followed(recipe);
  known.whole ??= journeyThrough(known.folded);
  return known.whole;
}

function follow({ parts }: Recipe): Followed {
  const kitchen = new Kitchen(parts);
  const folded: FoldedPart[] = [];
  for (const placed of inOrder(parts)) {
    const each = foldPart(kitchen.stateFor(placed), placed, parts);
    kitchen.leave(each);
    folded.push(each);
  }
  const journeys: Journey[] = [];
  const of: (Journey | undefined)[] = [];
  for (const those of sharing(folded)) {
    const journey = keptJourney(those);
    journeys.push(journey);
    for (const { part } of those) of[part.index] = journey;
  }
  return { folded, journeys, of };
}

/** Folded parts by what they share: each set is of those that had food of each other in hand, at first or second hand. */
function sharing(folded: readonly FoldedPart[]): readonly (readonly FoldedPart[])[] {
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
  const sets: FoldedPart[][] = [];
  const setAt: (FoldedPart[] | undefined)[] = [];
  for (const each of folded) {
    const root = rootOf(each.part.index);
    const set = setAt[root];
    if (set === undefined) {
      const made = [each];
      setAt[root] = made;
      sets.push(made);
    } else set.push(each);
  }
  return sets;
}

interface Kept {
  readonly through: readonly FoldedPart[];
  readonly journey: Journey;
}

const JOURNEYS = keptOn<FoldedPart, Kept>();

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
