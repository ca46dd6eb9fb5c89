/**
 * Knows what one offered completion is, and what its sources are given.
 */
import type { Entry } from '../../workspace/folder.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Cursor } from '../place.ts';

export type CompletionKind = 'ingredient' | 'part' | 'unit' | 'kind' | 'keyword' | 'food' | 'code' | 'value' | 'file';

export interface Completion {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail?: string;
  /** The characters of the line that are replaced, up to the caret. */
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The same with places for the caret; what stands outside is escaped. */
  readonly snippet?: string;
  /** Several lines to fill in: of no use without places for the caret. */
  readonly skeleton?: true;
  /** What the typed characters are held against. */
  readonly filter: string;
  /** A food whose facts may be asked for. */
  readonly food?: string;
  /** A finding whose page may be asked for. */
  readonly code?: string;
}

/** In the order they are to be shown. */
export interface Completions {
  readonly items: readonly Completion[];
  /** More would be found with another letter. */
  readonly incomplete: boolean;
}

/** The files of the folders, and where the one at hand lies among them. */
export interface Others {
  readonly path: string;
  readonly entries: readonly Entry[];
}

export interface Typing extends Cursor {
  readonly snapshot: Snapshot;
  /** The line up to the caret. */
  readonly before: string;
  /** Asked for by a blank that was typed, and not by the cook. */
  readonly byBlank: boolean;
  /** Reads the folders; undefined for a text that lies in none. */
  readonly others: () => Others | undefined;
}

export const NOTHING: Completions = { items: [], incomplete: false };
export const all = (items: readonly Completion[]): Completions => ({ items, incomplete: false });

/** A snippet from a text in which `<12>` is a place for the caret and `<keep|change>` one with choices. */
export function stops(text: string): string {
  let n = 0;
  return text.replace(/<([^<>]*)>|[\\}]/g, (mark, inside: string | undefined) => {
    if (inside === undefined) return `\\${mark}`;
    n++;
    return inside.includes('|') ? `\${${n}|${inside.replaceAll('|', ',')}|}` : `\${${n}:${inside}}`;
  });
}
