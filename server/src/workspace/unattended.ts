/**
 * Knows which fixes may run with nobody looking: those whose check says that they invent nothing, and that leave all that was understood
 * as it was. Refuses to know what asks for them. A fix that does not pass is left for the cook.
 */
import type { Fix } from '../checks/check.ts';
import { type Finding, fixesOf } from '../checks/finding.ts';
import { applyEdits, type TextEdit } from '../edits/text-edit.ts';
import type { Range } from '../measure/quantity.ts';
import { printDocument } from '../notation/document.ts';
import { bareLines } from '../recipe/list/not-understood.ts';
import type { Recipe } from '../recipe/model.ts';
import { recipeRecord } from '../recipe/trials/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Snapshot } from './snapshot.ts';

/** Why a fix is left for the cook. */
export type Held = 'a line that was not read' | 'what was understood' | 'another finding';

export interface Judged {
  readonly fix: Fix;
  /** What it would change beside its finding; undefined where nothing. */
  readonly held: Held | undefined;
}

/** The fix of a finding that could run unattended; undefined where there is none, or a choice. */
export function judgedFix(finding: Finding, snapshot: Snapshot): Judged | undefined {
  const [fix, ...others] = fixesOf(finding, snapshot);
  if (fix?.unattended !== true || others.length > 0) return undefined;
  return { fix, held: heldBack(fix, finding, snapshot) };
}

/** The fix of a finding that may run unattended. */
export function unattendedFix(finding: Finding, snapshot: Snapshot): Fix | undefined {
  const judged = judgedFix(finding, snapshot);
  return judged === undefined || judged.held !== undefined ? undefined : judged.fix;
}

/** Rounds after which a file that still changes is left as it is. */
const MOST_ROUNDS = 100;

/** The file with every fix made that may run unattended, each upon the file that the one before it left; the same snapshot where there is none. */
export function mended(snapshot: Snapshot): Snapshot {
  let now = snapshot;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const fix = firstOf(now.findings.open, (finding) => unattendedFix(finding, now));
    if (fix === undefined) return now;
    now = after(now, fix.edits);
  }
  return now;
}

function firstOf<A, B>(list: readonly A[], find: (item: A) => B | undefined): B | undefined {
  for (const item of list) {
    const found = find(item);
    if (found !== undefined) return found;
  }
  return undefined;
}

const after = (snapshot: Snapshot, edits: readonly TextEdit[]): Snapshot =>
  snapshot.edited(snapshot.version + 1, [{ text: printDocument(applyEdits(snapshot.document, edits)) }]);

function heldBack(fix: Fix, finding: Finding, before: Snapshot): Held | undefined {
  const unread = linesNotRead(before);
  if (fix.edits.some((edit) => touchesAny(edit, unread))) return 'a line that was not read';
  const now = after(before, fix.edits);
  if (!isSame(factsOf(before), factsOf(now))) return 'what was understood';
  return isSame(findingsOf(before, finding), findingsOf(now, finding)) ? undefined : 'another finding';
}

/** The lines with a fault, and those of lists that are not understood. */
function linesNotRead({ document, outline, recipe }: Snapshot): ReadonlySet<number> {
  const bare = new Set(bareLines(recipe));
  const faulty = document.lines.flatMap((line, at) => (line.faults.length > 0 && !bare.has(at) ? [at] : []));
  const inLists = recipe.parts.flatMap(({ head, index }) =>
    head.notUnderstood.map((line) => (recipe.partsAt[index] ?? 0) + line),
  );
  return new Set([...faulty, ...inLists, ...outline.misplaced.map(({ at }) => at)]);
}

function touchesAny({ start, end }: TextEdit, lines: ReadonlySet<number>): boolean {
  // A line that goes with its line end reaches to the beginning of the next.
  const last = end.character === 0 && end.line > start.line ? end.line - 1 : end.line;
  for (let line = start.line; line <= last; line++) if (lines.has(line)) return true;
  return false;
}

/** Every gram, food and step of what is cooked, and what the trials prove of it: one text each, those of a list in any order. */
function factsOf(snapshot: Snapshot): readonly string[] {
  const { recipe } = snapshot.whole;
  const { state } = recipeRecord(recipe, readTrials(snapshot.outline));
  return [`${recipe.name}, ${state}`, ...recipe.parts.flatMap((part) => partFacts(part, recipe))];
}

function partFacts({ head, steps }: Recipe['parts'][number], { parts }: Recipe): string[] {
  const list = head.ingredients.map(({ name, food, weighed, percent, optional, free }) =>
    [
      name,
      food?.id ?? 'unknown',
      weighed.known ? rangeText(weighed.grams) : weighed.why,
      percent === undefined ? '' : rangeText(percent),
      optional ? 'optional' : '',
      free ? 'free' : '',
    ].join('|'),
  );
  const method = steps.map(({ line, mentions }) => {
    const named = mentions
      .flatMap((m) => m.ingredients)
      .map((ref) => parts[ref.part]?.head.ingredients[ref.ingredient]);
    return [head.source.lines[line]?.text, ...named.map((i) => i?.name)].join('|');
  });
  return [`part ${head.name}`, ...list.sort(), ...method];
}

const rangeText = ({ low, high }: Range): string => `${low}-${high}`;

/** All that is found but what a fix is to mend, each with the line it stands on, in one order. */
function findingsOf(snapshot: Snapshot, mended: Finding): readonly string[] {
  const { open, accepted } = snapshot.findings;
  return [...open, ...accepted]
    .filter((f) => f.code !== mended.code)
    .map((f) => [f.code, f.severity, f.said.message, snapshot.document.lines[f.at.line]?.text].join('|'))
    .sort();
}

const isSame = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);
