/**
 * Knows how what stands in a text without being typed is written for a test: hints inside their lines, lenses above them.
 * Refuses to know what is expected.
 */
import { hints } from '../../server/src/editor/hints.ts';
import { lenses, lensWords } from '../../server/src/editor/lenses.ts';
import { SHOWN_BY_DEFAULT, type Shown } from '../../server/src/editor/shown.ts';
import type { PriceList } from '../../server/src/publish/cost.ts';
import { edited } from './at-cursor.ts';
import { open } from './harness.ts';

const NONE: Shown = { grams: false, percent: false, taken: false, scale: false, lenses: 'off' };
const ALL = Number.POSITIVE_INFINITY;

/** The lines that have hints of one sort, each hint in `⟨ ⟩` where it stands. */
export function hintedLines(text: string, sort: Exclude<keyof Shown, 'lenses'>): string[] {
  const snapshot = open(text);
  const found = hints(snapshot, 0, ALL, { ...NONE, [sort]: true });
  const lines = new Map<number, string>();
  for (const { at, hint } of found.toReversed()) {
    const line = lines.get(at) ?? snapshot.document.lines[at]?.text ?? '';
    lines.set(at, `${line.slice(0, hint.of.end)} ⟨${hint.label}⟩${line.slice(hint.of.end)}`);
  }
  return [...lines].sort(([a], [b]) => a - b).map(([, line]) => line.trim().replace(/\s+/g, ' '));
}

/** The text after a double click on the hint of that label. */
export function afterHint(text: string, label: string): string {
  const snapshot = open(text);
  const all: Shown = { grams: true, percent: true, taken: true, scale: true, lenses: 'off' };
  const found = hints(snapshot, 0, ALL, all).find(({ hint }) => hint.label === label);
  if (found === undefined) throw new Error(`no such hint: ${label}`);
  return edited(snapshot, found.hint.edits?.(snapshot, found.at) ?? []);
}

/** `line: words` of what says something, `line: [act]` of what does something; lines from 1. */
export function lensesOf(text: string, shown: Shown['lenses'] = 'all', prices: PriceList = new Map()): string[] {
  const snapshot = open(text);
  return lenses(snapshot, { ...SHOWN_BY_DEFAULT, lenses: shown }).map(
    ({ line, does, part }) =>
      `${line + 1}: ${does === 'facts' ? (lensWords(snapshot, part, prices) ?? 'nothing') : `[${does}]`}`,
  );
}
