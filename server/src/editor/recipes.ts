/**
 * Knows every recipe of the folders as a kitchen looks for one: by how it was cooked, by its tags, by what it is made with.
 * Refuses to work out what nobody cooked: only a trial asks for the recipe that it tested.
 */
import type { InPieces } from '../measure/in-pieces.ts';
import { keptOn } from '../notation/kept.ts';
import { sameItems } from '../recipe/steps.ts';
import { type RecipeState, recipeRecord } from '../recipe/trials/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Entry } from '../workspace/folder.ts';
import type { Kitchen } from './kitchen.ts';
import { fileName } from './place.ts';

export interface KitchenRecipe {
  readonly path: string;
  readonly name: string;
  /** The line that opens it, from 0. */
  readonly line: number;
  readonly tags: readonly string[];
  readonly state: RecipeState;
  readonly trials: number;
  /** The date of the latest trial. */
  readonly latest?: string;
  readonly uses: readonly Used[];
}

/** A recipe that another builds on, or a part of it that another takes. */
export interface Used {
  readonly path: string;
  /** The part; absent where it is the whole recipe. */
  readonly part?: string;
  /** What the recipe is called that is built on, else its file. */
  readonly of: string;
}

/** In the order of their names. A file that holds no recipe is none. */
export function* kitchenRecipes(kitchen: Kitchen): InPieces<readonly KitchenRecipe[]> {
  const { index } = kitchen;
  const found: KitchenRecipe[] = [];
  for (const entry of index.entries()) {
    if (entry.recipe === undefined) continue;
    const record = recordOf(entry, kitchen);
    if (entry.trials.length > 0) yield;
    found.push({
      path: entry.path,
      name: entry.recipe.name,
      line: entry.recipe.at,
      tags: entry.tags,
      ...record,
      uses: entry.links.map(({ path, part }) => ({
        path,
        ...(part !== undefined && { part }),
        of: index.entry(path)?.recipe?.name ?? fileName(path),
      })),
    });
  }
  return found.sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.path < b.path ? -1 : 1));
}

type Record = Pick<KitchenRecipe, 'state' | 'trials' | 'latest'>;

const NEVER: Record = { state: 'never cooked', trials: 0 };

/** While what a file says and what it builds on stay the same, so does its record. */
const KEPT = keptOn<
  Entry,
  { readonly rests: readonly (Entry | undefined)[]; readonly house: object; readonly record: Record }
>();

function recordOf(entry: Entry, { index, snapshotAt }: Kitchen): Record {
  if (entry.trials.length === 0) return NEVER;
  const known = KEPT.get(entry);
  const snapshot = snapshotAt(entry.path);
  if (snapshot === undefined) return NEVER;
  const rests = (snapshot.written?.files ?? []).map((path) => index.entry(path));
  if (known?.house === snapshot.house && sameItems(known.rests, rests)) return known.record;
  const { state, trials } = recipeRecord(snapshot.whole.recipe, readTrials(snapshot.outline));
  const latest = trials.at(-1)?.date;
  const record = { state, trials: trials.length, ...(latest !== undefined && { latest }) };
  KEPT.set(entry, { rests, house: snapshot.house, record });
  return record;
}
