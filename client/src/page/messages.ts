// Knows what the panel and the page within it say to each other, and lets in nothing else: either side may hear anything.
// It refuses to know what a recipe is; both sides read it, and the page has no editor to import.

import type { PageLook } from '../../../server/src/lsp/messages.ts';

/** What of a page outlives it: which recipe is shown, how it is looked at, and how far each view is scrolled, in pixels. */
export type PageState = {
  readonly uri: string;
  readonly view: string;
  readonly look: PageLook;
  readonly scroll: Readonly<Record<string, number>>;
};

/** What there is to press where the page cannot be shown as it should. */
export type Remedy = 'restart' | 'log' | 'reopen';

export type Trouble = {
  readonly heading: string;
  readonly words: string;
  readonly remedies: readonly { readonly does: Remedy; readonly label: string }[];
};

export type ToPage =
  | {
      readonly kind: 'show';
      readonly state: Omit<PageState, 'scroll'>;
      readonly html: string;
      readonly style?: string;
      /** How often the text has changed: what was pressed is done once this is another. */
      readonly documentVersion: number;
    }
  /** The caret's line, from 1; 0 where it stands in another text. */
  | { readonly kind: 'caret'; readonly line: number }
  /** Something was done, or could not be: said to whoever listens. */
  | { readonly kind: 'said'; readonly words: string; readonly refused: boolean }
  | { readonly kind: 'busy' }
  | { readonly kind: 'trouble'; readonly trouble: Trouble | null };

export type FromPage =
  | { readonly kind: 'ready' }
  | { readonly kind: 'view'; readonly view: string }
  /** To a line, from 1, of the text, and whether the keys go there too. */
  | { readonly kind: 'go'; readonly line: number; readonly focus: boolean }
  | { readonly kind: 'act'; readonly act: string; readonly arg: unknown; readonly value: unknown }
  | { readonly kind: 'remedy'; readonly does: Remedy }
  | { readonly kind: 'undo' };

export function readToPage(value: unknown): ToPage | undefined {
  if (!isRecord(value)) return undefined;
  const { kind } = value;
  if (kind === 'show') {
    const { state, html, style, documentVersion } = value;
    const read = readState(state);
    if (read === undefined || typeof html !== 'string') return undefined;
    if (typeof documentVersion !== 'number' || (style !== undefined && typeof style !== 'string')) return undefined;
    return { kind, state: read, html, documentVersion, ...(style !== undefined && { style }) };
  }
  if (kind === 'caret') return isLine(value.line) || value.line === 0 ? { kind, line: value.line } : undefined;
  if (kind === 'said') {
    const { words, refused } = value;
    return typeof words === 'string' && typeof refused === 'boolean' ? { kind, words, refused } : undefined;
  }
  if (kind === 'busy') return { kind };
  if (kind === 'trouble') {
    if (value.trouble === null) return { kind, trouble: null };
    const trouble = readTrouble(value.trouble);
    return trouble && { kind, trouble };
  }
  return undefined;
}

export function readFromPage(value: unknown): FromPage | undefined {
  if (!isRecord(value)) return undefined;
  const { kind } = value;
  if (kind === 'ready' || kind === 'undo') return { kind };
  if (kind === 'view') return typeof value.view === 'string' ? { kind, view: value.view } : undefined;
  if (kind === 'go') {
    const { line, focus } = value;
    return isLine(line) && typeof focus === 'boolean' ? { kind, line, focus } : undefined;
  }
  if (kind === 'act') {
    const { act, arg, value: held } = value;
    return typeof act === 'string' ? { kind, act, arg, value: held } : undefined;
  }
  if (kind === 'remedy') return isRemedy(value.does) ? { kind, does: value.does } : undefined;
  return undefined;
}

/** What a page kept of itself, by this version or an older one. */
export function readState(value: unknown): PageState | undefined {
  if (!isRecord(value)) return undefined;
  const { uri, view, look, scroll } = value;
  if (typeof uri !== 'string' || typeof view !== 'string') return undefined;
  const kept = Object.entries(isRecord(scroll) ? scroll : {}).filter(
    (entry): entry is [string, number] => typeof entry[1] === 'number' && Number.isFinite(entry[1]),
  );
  return { uri, view, look: isRecord(look) ? look : {}, scroll: Object.fromEntries(kept) };
}

function readTrouble(value: unknown): Trouble | undefined {
  if (!isRecord(value)) return undefined;
  const { heading, words, remedies } = value;
  if (typeof heading !== 'string' || typeof words !== 'string' || !Array.isArray(remedies)) return undefined;
  const read = remedies.flatMap((remedy: unknown) =>
    isRecord(remedy) && isRemedy(remedy.does) && typeof remedy.label === 'string'
      ? [{ does: remedy.does, label: remedy.label }]
      : [],
  );
  return { heading, words, remedies: read };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isLine = (value: unknown): value is number => Number.isInteger(value) && Number(value) > 0;

const isRemedy = (value: unknown): value is Remedy => value === 'restart' || value === 'log' || value === 'reopen';
