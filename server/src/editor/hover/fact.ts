/**
 * Knows what a hover is: a title and facts, of one place.
 * Refuses to know markdown, and what is pointed at.
 */
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Cursor, Place } from '../place.ts';

export interface Hover {
  readonly at: Place;
  readonly title: string;
  /** What it is, in a clause. */
  readonly subtitle?: string;
  readonly facts: readonly Fact[];
}

export type Fact =
  /** `label: value`, and where the figure comes from. */
  | { readonly kind: 'figure'; readonly label: string; readonly value: string; readonly source?: string }
  | { readonly kind: 'text'; readonly text: string }
  /** A file that is there, and what is to be seen in it. */
  | { readonly kind: 'picture'; readonly path: string; readonly alt: string }
  /** A finding's page. */
  | { readonly kind: 'page'; readonly code: string };

export type HoverSource = (snapshot: Snapshot, cursor: Cursor) => Hover | undefined;
