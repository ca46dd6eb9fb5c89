/**
 * Knows how the lines of a list are put in the order in which the steps take them.
 * Refuses to move a line out of its group: blank lines and comments at a group's head stay where the writer put them.
 */
import type { Document } from '../notation/document.ts';
import type { Line } from '../notation/tree.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import type { TextEdit } from './text-edit.ts';

/** A line of the list with the comments and accepted findings that stand right above it. */
interface Entry {
  readonly lines: readonly string[];
  readonly at: number;
  readonly used: number;
}

/** The edits that order the list of a part; none where it is in order. */
export function orderByUse(document: Document, recipe: Recipe, part: Part): TextEdit[] {
  const base = recipe.partsAt[part.index] ?? 0;
  const used = firstUses(part);
  const { lines } = part.head.source;
  const edits: TextEdit[] = [];
  let run: number[] = [];
  const close = () => {
    edits.push(...orderRun(document, base, lines, run, used));
    run = [];
  };
  lines.forEach((line, i) => {
    if (isListed(line)) run.push(i);
    else close();
  });
  close();
  return edits;
}

/** A line of the list, or one that goes with the next. */
function isListed({ statement, comment }: Line): boolean {
  return (
    statement.kind === 'ingredient' ||
    statement.kind === 'allow' ||
    (statement.kind === 'blank' && comment !== undefined)
  );
}

/** When the steps first take each line, by its number in the part; what no step takes is absent. */
function firstUses(part: Part): ReadonlyMap<number, number> {
  const used = new Map<number, number>();
  for (const { ingredient, uses } of part.ledger) {
    const own = uses.filter((u) => u.part === part.index);
    const order = own.map((u) => u.step * 10_000 + u.mention.start);
    if (order.length > 0) used.set(ingredient.line, Math.min(...order));
    else if (uses.length > 0) used.set(ingredient.line, 1e8 + (uses[0]?.part ?? 0) * 1e6 + (uses[0]?.step ?? 0) * 1000);
  }
  return used;
}

function orderRun(
  document: Document,
  base: number,
  lines: readonly Line[],
  run: readonly number[],
  used: ReadonlyMap<number, number>,
): TextEdit[] {
  const entries = entriesOf(lines, run, used);
  const ordered = entries
    .map((entry, i) => ({ entry, i }))
    .sort((a, b) => a.entry.used - b.entry.used || a.i - b.i)
    .map(({ entry }) => entry);
  const before = entries.flatMap((e) => e.lines);
  const after = ordered.flatMap((e) => e.lines);
  let first = 0;
  while (first < before.length && before[first] === after[first]) first++;
  if (first === before.length) return [];
  let last = before.length - 1;
  while (before[last] === after[last]) last--;
  const start = base + (entries[0]?.at ?? 0);
  const end = document.lines[start + last]?.text.length ?? 0;
  return [
    {
      start: { line: start + first, character: 0 },
      end: { line: start + last, character: end },
      text: after.slice(first, last + 1).join('\n'),
    },
  ];
}

/** Comments at the head of a group are its heading and stay; one that accepts a finding goes with its line. */
function entriesOf(lines: readonly Line[], run: readonly number[], used: ReadonlyMap<number, number>): Entry[] {
  const entries: Entry[] = [];
  let held: number[] = [];
  let headings = true;
  for (const i of run) {
    const line = lines[i] as Line;
    if (line.statement.kind !== 'ingredient') {
      if (headings && line.statement.kind === 'blank') continue;
      headings = false;
      held.push(i);
      continue;
    }
    headings = false;
    const own = [...held, i];
    entries.push({
      lines: own.map((n) => lines[n]?.text ?? ''),
      at: own[0] ?? i,
      used: used.get(i) ?? Number.MAX_SAFE_INTEGER,
    });
    held = [];
  }
  return entries;
}
