/**
 * Knows the journeys of a recipe: how its parts fold one after another into bodies, and which of them share food.
 * Refuses to judge. What an edit does not reach is the same object as before: a part that finds what it found, and a journey of such parts.
 */
import { atOnce, type InPieces } from '../../measure/in-pieces.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Part, Recipe } from '../model.ts';
import { inOrder, type Placed } from './ahead.ts';
import type { Body, Stay } from './bodies.ts';
import { type FoldedPart, foldPart } from './folded-part.ts';
import type { FoldedStep } from './folded-step.ts';
import { Kitchen } from './kitchen.ts';
import { type Piece, piecesOf } from './pieces.ts';
import { isSameSharing, type Sharing, sharingOf } from './sharing.ts';

/** The way of foods that come together at some time, or lie in one part. */
export class Journey {
  /** By index; it knows of those alone that it goes through. */
  readonly parts: readonly Part[];
  /** What each of its parts leaves to judge. */
  readonly pieces: readonly Piece[];
  private allSteps: readonly FoldedStep[] | undefined;
  private lists: { readonly stays: readonly Stay[]; readonly bodies: readonly Body[] } | undefined;

  constructor(parts: readonly Part[], pieces: readonly Piece[]) {
    this.parts = parts;
    this.pieces = pieces;
  }

  get steps(): readonly FoldedStep[] {
    this.allSteps ??= this.pieces.flatMap(({ folded }) => folded.steps);
    return this.allSteps;
  }

  get stays(): readonly Stay[] {
    return this.all.stays;
  }

  /** All that there is at the end. */
  get bodies(): readonly Body[] {
    return this.all.bodies;
  }

  private get all(): { readonly stays: readonly Stay[]; readonly bodies: readonly Body[] } {
    if (this.lists !== undefined) return this.lists;
    const listed = this.pieces

      .map(({ folded }) => folded)
      .filter((each) => each.listed.length > 0)
      .sort((a, b) => a.part.index - b.part.index)
      .flatMap((each) => each.listed);
    this.lists = {
      // What the lists say comes before the first step.
      stays: [...listed, ...this.pieces.flatMap(({ folded, stays }) => stays.slice(folded.listed.length))],
      bodies: [...this.pieces.flatMap(({ folded }) => folded.ended), ...this.pieces.flatMap(({ open }) => open)],
    };
    return this.lists;
  }
}

/** The way of a recipe's parts. */
interface Followed {
  /** In the order in which they are followed. */
  readonly placed: readonly Placed[];
  readonly folded: readonly FoldedPart[];
  readonly pieces: readonly Piece[];
  readonly sharing: Sharing;
  readonly journeys: readonly Journey[];
  whole?: Journey;
}

const FOLLOWED = keptOn<Recipe, Followed>();
/** That of the recipe before an edit. */
const LENT = keptOn<Recipe, Followed | undefined>();

/** Lets a recipe go on from how the one that it was edited from was followed. */
export function lendJourneys(recipe: Recipe, before: Recipe): void {
  const known = FOLLOWED.get(before);
  if (known !== undefined && FOLLOWED.get(recipe) === undefined) LENT.set(recipe, known);
}

const followed = (recipe: Recipe): Followed => FOLLOWED.get(recipe) ?? atOnce(following(recipe));

/** Follows a recipe in pieces of a part each, so that its journeys are known. */
export function* following(recipe: Recipe): InPieces<Followed> {
  let known = FOLLOWED.get(recipe);
  if (known === undefined) {
    known = yield* follow(recipe, LENT.get(recipe));
    FOLLOWED.set(recipe, known);
    LENT.set(recipe, undefined);
  }
  return known;
}

/** The journeys of a recipe: what is in one of them never meets what is in another. */
export const journeysOf = (recipe: Recipe): readonly Journey[] => followed(recipe).journeys;

/** That of a part, by its index. */
export function journeyAt(recipe: Recipe, part: number): Journey | undefined {
  const { folded, sharing, journeys } = followed(recipe);
  const at = folded[part]?.part.index === part ? part : folded.findIndex((each) => each.part.index === part);
  return journeys[sharing.of[at] ?? -1];
}

/** All of them as one. */
export function journeyOf(recipe: Recipe): Journey {
  const known = followed(recipe);
  known.whole ??= new Journey(recipe.parts, known.pieces);
  return known.whole;
}

function* follow(recipe: Recipe, before: Followed | undefined): InPieces<Followed> {
  const { parts } = recipe;
  const placed = inOrder(recipe);
  const kitchen = new Kitchen(parts);
  const folded: FoldedPart[] = [];
  for (let at = 0; at < placed.length; at++) {
    const each = placed[at] as Placed;
    const old = before?.folded[at];
    const isSame = old !== undefined && before?.placed[at] === each && kitchen.findsTheSame(each, old);
    const now = isSame ? old : yield* foldPart(kitchen.stateFor(each), each, parts);
    kitchen.leave(now, old);
    folded.push(now);
    if (!isSame) yield;
  }
  // What parts that are gone had in hand lies where it lay before them.
  for (const gone of before?.folded.slice(placed.length) ?? []) kitchen.lose(gone);
  const pieces = piecesOf(folded, kitchen.other, before);
  const sharing = before !== undefined && isSameSharing(folded, before.folded) ? before.sharing : sharingOf(folded);
  const journeys = sharing.through.map((places, number) => {
    const old = before?.sharing === sharing ? before.journeys[number] : undefined;
    const isSame = old !== undefined && places.every((at, i) => pieces[at] === old.pieces[i]);
    return isSame
      ? old
      : new Journey(
          parts,
          places.map((at) => pieces[at] as Piece),
        );
  });
  return { placed, folded, pieces, sharing, journeys };
}
