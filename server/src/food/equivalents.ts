/**
 * Knows which foods can stand in for which, by what they bring, and where that is from.
 * Refuses to know how much of anything a recipe has.
 */
import data from '../../data/equivalents.json' with { type: 'json' };
import type { Component } from './composition.ts';
import { bookIdOf, type Food } from './food.ts';

/** A food that takes the place of another. */
export interface StandIn {
  readonly food: string;
  /** As it is written in the list. */
  readonly name: string;
  /** The component of which it must bring as much as there was. */
  readonly keeps?: Component;
  /** Grams of it for a gram of the old food, where that is fixed. */
  readonly per?: number;
  /** What one sheet of it weighs, where it is counted in sheets. */
  readonly sheetG?: number;
}

/** A line of the list that gives or takes what the new food brings or lacks. */
export interface Adjustment {
  /** `salt`, `water` (any liquid of the list), or the id of a food. */
  readonly role: string;
  readonly keeps?: Component;
  readonly per?: number;
  /** Where the list has no such line, or too little: add one, do without, or do not swap at all. */
  readonly may: 'add' | 'skip' | 'refuse';
}

export interface Equivalent {
  /** Permanent. */
  readonly id: string;
  /** The food that goes. */
  readonly from: string;
  readonly form?: 'sheets' | 'powder';
  readonly to: readonly StandIn[];
  readonly adjusts: readonly Adjustment[];
  /** Counted pieces go one for one. */
  readonly byPiece?: boolean;
  /** The same in a few words, where a cook must not miss it. */
  readonly aside?: string;
  /** What a cook should know of it. */
  readonly said?: string;
  readonly source: string;
}

const SOURCES: Readonly<Record<string, string>> = data.sources;

/** Every stated equivalent, the source written out. */
export const EQUIVALENTS: readonly Equivalent[] = (data.equivalents as unknown as readonly Equivalent[]).map((e) => ({
  ...e,
  source: SOURCES[e.source] ?? e.source,
}));

/** What can stand in for a food: stated equivalents, and for a cheese others of its kind, with the water made good. */
export function equivalentsFor(food: Food): readonly Equivalent[] {
  const stated = EQUIVALENTS.filter((e) => e.from === bookIdOf(food));
  return food.class === 'cheese' ? [...stated, ...cheesesFor(food)] : stated;
}

function cheesesFor(food: Food): readonly Equivalent[] {
  const family = [data.cheeses.soft, data.cheeses.hard].find((ids) => ids.includes(bookIdOf(food))) ?? [];
  return family
    .filter((id) => id !== bookIdOf(food))
    .map((id) => ({
      id: `${id}-for-${bookIdOf(food)}`,
      from: bookIdOf(food),
      to: [{ food: id, name: id.replaceAll('-', ' '), per: 1 }],
      adjusts: [{ role: 'water', keeps: 'water' as const, may: 'refuse' as const }],
      source: SOURCES[data.cheeses.source] ?? '',
    }));
}
