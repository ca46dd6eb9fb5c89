/**
 * Knows what a verb is that an editor has done by its name: what it is given, and what comes of it.
 * Refuses to know any one verb, and how edits reach a text.
 */
import type { TextEdit } from '../../edits/text-edit.ts';
import type { PriceList } from '../../publish/cost.ts';
import type { Recipe } from '../../recipe/model.ts';
import { sameName } from '../../recipe/words.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface Asked {
  readonly snapshot: Snapshot;
  /** What was sent along: an object of any fields. */
  readonly arg: unknown;
  /** '2026-09-14' */
  readonly today: string;
  /** Those of the file and of its house; looked for when asked. */
  readonly prices: () => PriceList;
}

export type Answered =
  /** A change of the text, with a line for each thing that changes, and sentences on what does not. */
  | { readonly edits: readonly TextEdit[]; readonly changes: readonly string[]; readonly said: readonly string[] }
  /** Something to read. */
  | { readonly text: string }
  | { readonly refused: string };

export interface Verb {
  /** The fields of its argument beside `uri`, for whoever binds a key: `to` or `part?`. */
  readonly takes: readonly string[];
  /** What it does, in a few words: the name of the change, too. */
  readonly title: string;
  readonly run: (asked: Asked) => Answered;
}

/** The lines of a named part, both included; a sentence where there is none. */
export function linesOfPart({ parts, partsAt }: Recipe, named: string): { first: number; last: number } | string {
  const part = parts.find(({ head }) => sameName(head.name, named));
  const names = parts.map(({ head }) => head.name).filter((name) => name !== '');
  if (part === undefined) return `There is no part \`${named}\`; the parts are ${names.join(', ') || 'nameless'}.`;
  const first = partsAt[part.index] ?? 0;
  return { first, last: first + part.head.source.lines.length - 1 };
}
