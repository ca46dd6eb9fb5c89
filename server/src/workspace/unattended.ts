/**
 * Knows which fixes may run with nobody looking: those whose check says that they invent nothing, and that leave all that was understood
 * as it was. Refuses to know what asks for them. A fix that does not pass is left for the cook.
 */
import type { Fix } from '../checks/check.ts';
import { type Finding, fixesOf } from '../checks/finding.ts';
import type { TextEdit } from '../edits/text-edit.ts';
import type { Range } from '../measure/quantity.ts';
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
  const fix = onlyFix(finding, snapshot);
  return fix && { fix, held: heldBack([fix], snapshot.after(fix.edits), finding.code, snapshot) };
}

function onlyFix(finding: Finding, snapshot: Snapshot): Fix | undefined {
  const [fix, ...others] = fixesOf(finding, snapshot);
  return fix?.unattended === true && others.length === 0 ? fix : undefined;
}

/** Texts that are judged for one file; one that still has fixes then is left as it has become. */
const MOST_JUDGED = 400;

/**
 * The file with every fix made that may run unattended, of one code or of all, until there is none; the same snapshot where there never was.
 * Each time findings of that code go and all else stays, so there is an end.
 */
export function mended(snapshot: Snapshot, only?: string): Snapshot {
  const work = { left: MOST_JUDGED };
  let now = snapshot;
  for (;;) {
    const before = now;
    const codes = new Set(now.findings.open.flatMap(({ code }) => (only === undefined || only === code ? [code] : [])));
    for (const code of codes) now = mendedOf(code, now, work);
    if (now === before) return now;
  }
}

/** With all fixes of one code that may be made together, or of each half of them. */
function mendedOf(code: string, snapshot: Snapshot, work: { left: number }): Snapshot {
  const fixes = apart(snapshot.findings.open.flatMap((f) => (f.code === code ? (onlyFix(f, snapshot) ?? []) : [])));
  const together = (some: readonly Fix[]): readonly Fix[] => {
    if (some.length === 0 || work.left-- <= 0) return [];
    const after = snapshot.after(some.flatMap(({ edits }) => edits));
    if (heldBack(some, after, code, snapshot) === undefined) return some;
    const half = some.length >> 1;
    return half === 0 ? [] : firstFilled(together(some.slice(0, half)), () => together(some.slice(half)));
  };
  const made = together(fixes);
  return made.length === 0 ? snapshot : snapshot.after(made.flatMap(({ edits }) => edits));
}

/** The first half that can be made: the other is asked again in what that leaves. */
const firstFilled = <A>(first: readonly A[], second: () => readonly A[]): readonly A[] =>
  first.length > 0 ? first : second();

/** Of fixes that overlap, the first. */
function apart(fixes: readonly Fix[]): readonly Fix[] {
  const taken: Fix[] = [];
  const edits: TextEdit[] = [];
  for (const fix of fixes) {
    if (fix.edits.some((edit) => edits.some((other) => overlap(edit, other)))) continue;
    taken.push(fix);
    edits.push(...fix.edits);
  }
  return taken;
}

function overlap(a: TextEdit, b: TextEdit): boolean {
  const order = (x: TextEdit['start'], y: TextEdit['start']) => x.line - y.line || x.character - y.character;
  return order(a.start, b.start) === 0 || (order(a.start, b.end) < 0 && order(b.start, a.end) < 0);
}

function heldBack(fixes: readonly Fix[], now: Snapshot, code: string, before: Snapshot): Held | undefined {
  const unread = linesNotRead(before);
  if (fixes.some(({ edits }) => edits.some((edit) => touchesAny(edit, unread)))) return 'a line that was not read';
  if (!isSame(factsOf(before), factsOf(now))) return 'what was understood';
  const goes = found(now, code) < found(before, code);
  return goes && isSame(findingsBeside(code, before), findingsBeside(code, now)) ? undefined : 'another finding';
}

const found = ({ findings }: Snapshot, code: string): number => findings.open.filter((f) => f.code === code).length;

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

/** All that is found but what is to be mended, each with the line it stands on, in one order. */
function findingsBeside(code: string, snapshot: Snapshot): readonly string[] {
  const { open, accepted } = snapshot.findings;
  return [...open, ...accepted]
    .filter((f) => f.code !== code)
    .map((f) => [f.code, f.severity, f.said.message, snapshot.document.lines[f.at.line]?.text].join('|'))
    .sort();
}

const isSame = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((text, i) => text === b[i]);
