/**
 * Knows what a button or a field of the page comes to, and how what the page sends along is read: it may be anything.
 * Refuses to know any one act.
 */
import type { TextEdit } from '../../../edits/text-edit.ts';
import type { Look } from '../../../publish/view/look.ts';
import type { Snapshot } from '../../../workspace/snapshot.ts';

/** Something the cook did on the page. */
export interface Done {
  readonly snapshot: Snapshot;
  /** What the page carries for it. */
  readonly arg: unknown;
  /** What a field holds. */
  readonly value: unknown;
  readonly look: Look;
}

/** A change of the text, something else to look at, or a sentence why not. */
export type Outcome =
  | { readonly edits: readonly TextEdit[]; readonly said: string; readonly look?: Look }
  | { readonly look: Look; readonly said?: string }
  | { readonly refused: string };

export type Act = (done: Done) => Outcome;

/** A field of what the page carries, where it is a text. */
export function textIn(arg: unknown, key: string): string | undefined {
  const value = fieldIn(arg, key);
  return typeof value === 'string' ? value : undefined;
}

/** A field of what the page carries, where it is a finite number. */
export function numberIn(arg: unknown, key: string): number | undefined {
  const value = fieldIn(arg, key);
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
}

export const fieldIn = (arg: unknown, key: string): unknown =>
  typeof arg === 'object' && arg !== null && Object.hasOwn(arg, key)
    ? (arg as Readonly<Record<string, unknown>>)[key]
    : undefined;
