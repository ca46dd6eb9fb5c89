/**
 * Knows what may be done about a range: the fixes of its findings, accepting one, all fixes that may run unattended at once, rewrites, and other sizes.
 * Needs findings. Refuses to know how an editor applies an edit; a producer that fails leaves the others standing.
 */
import type { Finding } from '../checks/finding.ts';
import { scaleRecipe } from '../edits/scale.ts';
import { madeInNumber, withWord } from '../edits/sized-amount.ts';
import { editsBetween, replaceSpan, type TextEdit } from '../edits/text-edit.ts';
import type { PositionRange } from '../notation/document.ts';
import { yieldNoun } from '../recipe/yield.ts';
import { offeredFixes } from '../workspace/offered.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { mended } from '../workspace/unattended.ts';
import { isBroken } from '../workspace/variant.ts';
import { stops } from './completion/item.ts';
import { speaksOfSize } from './place.ts';
import { adjustFinding } from './rewrites/adjust.ts';
import type { RewriteKind } from './rewrites/rewrite.ts';
import { REWRITES } from './rewrites.ts';

export type ActionKind = RewriteKind | 'source.fixAll.quern';

export interface Action {
  readonly title: string;
  readonly kind: ActionKind;
  /** The finding it mends or accepts. */
  readonly finding?: Finding;
  readonly preferred?: boolean;
  /** Its edits cost more than a caret that only passes by is worth. */
  readonly costly?: true;
  /** Worked out when asked for. */
  readonly edits: () => readonly ActionEdit[];
}

export interface ActionEdit extends TextEdit {
  /** The text holds a place for the caret: `${1:reason}`; what stands outside is escaped. */
  readonly snippet?: string;
}

/** The actions for a range of the text, of the kinds wanted. */
export function codeActions(
  snapshot: Snapshot,
  range: PositionRange,
  wants: (kind: ActionKind) => boolean,
  report: (error: unknown) => void,
): Action[] {
  const producers: (() => readonly Action[])[] = [];
  if (wants('quickfix')) {
    const near = snapshot.findings.open.filter((f) => touches(f, range));
    for (const finding of near) producers.push(() => fixActions(snapshot, finding));
    for (const finding of near) producers.push(() => middleActions(snapshot, finding));
    for (const finding of oneOfEach(near)) producers.push(() => sameKindActions(snapshot, finding));
    for (const finding of near) producers.push(() => allowActions(snapshot, finding));
  }
  if (wants('source.fixAll.quern')) producers.push(() => fixAllActions(snapshot));
  for (const { kinds, offer } of REWRITES)
    if (kinds.some(wants)) producers.push(() => offer(snapshot, range).filter(({ kind }) => wants(kind)));
  if (wants('refactor.rewrite') && speaksOfSize(snapshot, range.start.line))
    producers.push(() => scaleActions(snapshot));
  return producers.flatMap((produce) => {
    try {
      return [...produce()];
    } catch (error) {
      report(error);
      return [];
    }
  });
}

/** One finding a code. */
const oneOfEach = (findings: readonly Finding[]): Finding[] => [...new Map(findings.map((f) => [f.code, f])).values()];

function touches({ at }: Finding, { start, end }: PositionRange): boolean {
  if (at.line < start.line || at.line > end.line) return false;
  const from = at.line === start.line ? start.character : 0;
  const to = at.line === end.line ? end.character : Number.POSITIVE_INFINITY;
  return at.start <= to && at.end >= from;
}

function fixActions(snapshot: Snapshot, finding: Finding): Action[] {
  return offeredFixes(finding, snapshot).map((fix, i) => ({
    title: fix.title,
    kind: 'quickfix',
    finding,
    preferred: i === 0,
    edits: () => fix.edits,
  }));
}

/** A measure outside its band brought to the middle of it, beside the fix that brings it to the edge. */
const middleActions = (snapshot: Snapshot, finding: Finding): Action[] =>
  adjustFinding(snapshot, finding).map((rewrite) => ({ ...rewrite, finding, costly: true }));

/** Findings that only a better line can answer. */
const NEVER_ALLOWED: ReadonlySet<string> = new Set(['syntax', 'allow-without-reason', 'decimal-comma']);

function allowActions(snapshot: Snapshot, finding: Finding): Action[] {
  if (NEVER_ALLOWED.has(finding.code)) return [];
  const opening = `  allow ${finding.code} because `;
  const { line } = finding.at;
  const { text = '', statement } = snapshot.document.lines[line] ?? {};
  // What a part brings from another file is accepted at its head.
  const brought = statement?.kind === 'part' && statement.file !== undefined && !isBroken(finding);
  const edit: ActionEdit = brought
    ? {
        ...replaceSpan(line, { start: text.length, end: text.length }, `\n${opening}`),
        snippet: stops(`\n${opening}<reason>`),
      }
    : { ...replaceSpan(line, { start: 0, end: 0 }, `${opening}\n`), snippet: stops(`${opening}<reason>\n`) };
  return [{ title: `Allow ${finding.code} here, with a reason`, kind: 'quickfix', finding, edits: () => [edit] }];
}

function fixAllActions(snapshot: Snapshot): Action[] {
  const edits = editsBetween(snapshot.document, mended(snapshot).document);
  return edits.length === 0
    ? []
    : [{ title: 'Mend everything that changes no quantity', kind: 'source.fixAll.quern', edits: () => edits }];
}

/** All of a code at once, where there are more and the one at hand may be mended unattended. Which others may is found when it is chosen. */
function sameKindActions(snapshot: Snapshot, finding: Finding): Action[] {
  const { code } = finding;
  const [fix, ...choice] = offeredFixes(finding, snapshot);
  if (fix?.unattended !== true || choice.length > 0) return [];
  if (snapshot.findings.open.filter((f) => f.code === code).length < 2) return [];
  const edits = () => {
    const all = editsBetween(snapshot.document, mended(snapshot, code).document);
    return all.length > 0 ? all : fix.edits;
  };
  return [{ title: `Mend every ${code} that leaves no choice`, kind: 'quickfix', finding, costly: true, edits }];
}

const FACTORS: readonly (readonly [string, number])[] = [
  ['Scale the recipe by half', 0.5],
  ['Scale the recipe by two', 2],
  ['Scale the recipe by three', 3],
];

function scaleActions(snapshot: Snapshot): Action[] {
  const { recipe } = snapshot;
  if (!recipe.parts.some((p) => p.head.ingredients.length > 0)) return [];
  // Its amounts lie in the base: there is nothing to scale here until it is written out in full.
  if (snapshot.outline.head.some(({ line }) => line.statement.kind === 'from')) return [];
  const byFactor = FACTORS.map(([title, by]): Action => scaleAction(snapshot, title, by));
  const amount = recipe.yield?.node.amount;
  const of = (recipe.yield && yieldNoun(recipe.yield.node)) || undefined;
  if (amount === undefined || of === undefined || amount.quantity.low <= 0) return byFactor;
  const toYield = roundYields(amount.quantity.low).map((n) =>
    scaleAction(
      snapshot,
      `Scale the recipe to ${n} ${withWord(of, madeInNumber(of, amount.quantity.high, n))}`,
      n / amount.quantity.low,
    ),
  );
  return [...byFactor, ...toYield];
}

function scaleAction(snapshot: Snapshot, title: string, by: number): Action {
  return {
    title,
    kind: 'refactor.rewrite',
    edits: () => {
      const scaled = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by });
      return scaled.ok ? scaled.scaling.edits : [];
    },
  };
}

const ROUND = [
  1, 2, 4, 6, 8, 10, 12, 16, 20, 24, 30, 36, 48, 50, 60, 72, 100, 150, 200, 250, 500, 750, 1000, 1500, 2000, 3000, 5000,
  10_000,
];

/** The round numbers nearest below and above a yield, but for half, double and triple, which are offered anyway. */
function roundYields(now: number): number[] {
  const other = ROUND.filter((n) => ![0.5, 1, 2, 3].some((by) => Math.abs(n - now * by) < 1e-9));
  const below = other.findLast((n) => n < now);
  const above = other.filter((n) => n > now).slice(0, 2);
  return [...(below === undefined ? [] : [below]), ...above];
}
