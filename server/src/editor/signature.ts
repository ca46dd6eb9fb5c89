/**
 * Knows what a line that is typed still wants: its slots, which of them the caret is in; of a step, what there is left to use.
 * Refuses a line that needs no telling, and the inside of a comment.
 */
import type { Position } from '../notation/document.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { type Cursor, cursorAt, toWhole } from './place.ts';
import { FORMS, type Form, MEASURE } from './signature/forms.ts';
import { leftWords } from './signature/left.ts';

export interface Signatures {
  readonly signatures: readonly Signature[];
  /** The one that is typed. */
  readonly active: number;
}

export interface Signature {
  readonly label: string;
  /** Runs of the label, with what belongs there. */
  readonly slots: readonly { readonly start: number; readonly end: number; readonly words: string }[];
  /** The slot under the caret; undefined where there are none. */
  readonly slot?: number;
}

/** `byKey`: a typed character asks, not the cook, and nothing is shown yet; of a step that is only answered at its beginning. */
export function signature(snapshot: Snapshot, position: Position, byKey = false): Signatures | undefined {
  const cursor = cursorAt(snapshot, position);
  const { line, character } = cursor;
  if (line.comment !== undefined && character > line.comment.start) return undefined;
  const before = line.text.slice(0, character);
  const [, word = '', typed = ''] = /^\s*(\p{L}+)\s(.*)$/su.exec(before) ?? [];
  if (word === 'do') return byKey && typed.trim() !== '' ? undefined : leftAt(snapshot, cursor);
  const forms = Object.hasOwn(FORMS, word) ? FORMS[word] : isMeasure(snapshot, cursor) ? [MEASURE] : undefined;
  if (forms === undefined) return undefined;
  const behind = forms[0] === MEASURE ? before : ` ${typed}`;
  const shape = forms.findIndex(({ lead }) => new RegExp(`\\s${lead.slice(word.length + 1)}\\b`).test(behind));
  return {
    signatures: forms.map((form) => filled(form, behind)),
    active: forms.length === 1 ? 0 : Math.max(0, shape),
  };
}

function filled({ lead, slots, tail }: Form, typed: string): Signature {
  let label = lead;
  const placed = slots.map(({ name, words }) => {
    const start = label === '' ? 0 : label.length + 1;
    label = label === '' ? name : `${label} ${name}`;
    return { start, end: label.length, words };
  });
  const slot = slots.findLastIndex(({ opens }) => opens === undefined || opens.test(typed));
  return { label: tail === undefined ? label : `${label} ${tail}`, slots: placed, slot: Math.max(0, slot) };
}

/** A line of figures within a food of the house. */
function isMeasure({ outline }: Snapshot, { at, line }: Cursor): boolean {
  const inFood = outline.foods.some(({ at: from, lines }) => at > from && at < from + lines.length);
  return inFood && /^\s*[\d½⅓⅔¼¾⅛⅜⅝⅞]/u.test(line.text);
}

/** In a variant, of the part as it is written out. */
function leftAt(snapshot: Snapshot, cursor: Cursor): Signatures | undefined {
  const there = toWhole(snapshot, { line: cursor.at, character: cursor.character });
  const of = there === undefined ? snapshot : snapshot.whole;
  const { part, inPart } = there === undefined ? cursor : cursorAt(of, there);
  const label = part === undefined ? undefined : leftWords(of.recipe, part, inPart);
  return label === undefined ? undefined : { signatures: [{ label, slots: [] }], active: 0 };
}
