/**
 * Knows which block each line belongs to: the recipe's head, its parts, trials and foods, and what stands where it may not.
 * Refuses to know what the blocks say. A part that no edit touched is the same object as before.
 */
import type { Document } from './document.ts';
import type { Line, StatementKind, SyntaxFault } from './tree.ts';

export interface PlacedLine {
  /** The line's number in the document, from 0. */
  readonly at: number;
  readonly line: Line;
}

/** The lines of a part; the first is its `part` line when it is named. Knows no place in the file. */
export interface PartSource {
  readonly named: boolean;
  readonly lines: readonly Line[];
}

export interface PlacedPart {
  readonly at: number;
  readonly source: PartSource;
}

export interface Block {
  readonly at: number;
  readonly lines: readonly Line[];
}

export interface Misplaced {
  readonly at: number;
  readonly fault: SyntaxFault;
}

export interface Outline {
  readonly recipe?: PlacedLine;
  /** Fields above the first part, `from`, and the swaps, drops and adds of a variant. */
  readonly head: readonly PlacedLine[];
  readonly parts: readonly PlacedPart[];
  readonly trials: readonly Block[];
  readonly foods: readonly Block[];
  readonly allows: readonly PlacedLine[];
  readonly misplaced: readonly Misplaced[];
}

type Place = 'nowhere' | 'head' | 'part' | 'trial' | 'food';

const FIELDS: ReadonlySet<StatementKind> = new Set(['text', 'yield', 'pan', 'oven', 'tags', 'from']);
const IN_TRIAL: ReadonlySet<StatementKind> = new Set(['took', 'reached', 'weighed', 'used', 'saw', 'tested', 'verdict']);
const IN_FOOD: ReadonlySet<StatementKind> = new Set(['like', 'also', 'component', 'trim', 'price', 'contains']);
const CHANGES: ReadonlySet<StatementKind> = new Set(['swap', 'drop', 'add']);

/** Sorts the lines of a document into blocks; `before` lends the parts that have not changed. */
export function outline(document: Document, before?: Outline): Outline {
  const head: PlacedLine[] = [];
  const parts: PlacedPart[] = [];
  const trials: Block[] = [];
  const foods: Block[] = [];
  const allows: PlacedLine[] = [];
  const misplaced: Misplaced[] = [];
  let recipe: PlacedLine | undefined;
  const now: { place: Place; opened: number } = { place: 'nowhere', opened: 0 };

  const close = (end: number) => {
    const lines = () => document.lines.slice(now.opened, end);
    if (now.place === 'part')
      parts.push({
        at: now.opened,
        source: { named: document.lines[now.opened]?.statement.kind === 'part', lines: lines() },
      });
    else if (now.place === 'trial') trials.push({ at: now.opened, lines: lines() });
    else if (now.place === 'food') foods.push({ at: now.opened, lines: lines() });
  };
  const open = (at: number, next: Place) => {
    close(at);
    now.place = next;
    now.opened = at;
  };
  const misplace = (at: number, line: Line, detail: string) =>
    misplaced.push({ at, fault: faultAt(line, 'misplaced', detail) });

  for (let at = 0; at < document.lines.length; at++) {
    const line = document.lines[at] as Line;
    const { kind } = line.statement;
    if (kind === 'blank') continue;
    if (kind === 'allow') {
      allows.push({ at, line });
    } else if (kind === 'recipe') {
      if (recipe !== undefined) misplace(at, line, 'a file holds one recipe; put this one in a file of its own');
      else recipe = { at, line };
      open(at, recipe.at === at ? 'head' : 'nowhere');
    } else if (kind === 'part') open(at, 'part');
    else if (kind === 'trial') open(at, 'trial');
    else if (kind === 'food') open(at, 'food');
    else if (FIELDS.has(kind)) {
      if (now.place === 'head' || now.place === 'nowhere') {
        if (now.place === 'nowhere') open(at, 'head');
        head.push({ at, line });
      } else misplace(at, line, 'this is said of the whole recipe: write it above the first part');
    } else if (IN_TRIAL.has(kind)) {
      if (now.place !== 'trial')
        misplace(at, line, 'this is what a trial measured: write it under a `trial 2026-09-14` line');
    } else if (IN_FOOD.has(kind)) {
      if (now.place !== 'food') misplace(at, line, componentHelp(line));
    } else if (CHANGES.has(kind)) {
      if (now.place === 'nowhere') open(at, 'head');
      if (now.place === 'head') head.push({ at, line });
      else if (now.place !== 'part')
        misplace(at, line, 'this changes what `from` brought in: write it in the recipe or a part, above the trials');
    } else if (now.place === 'head' || now.place === 'nowhere') {
      if (kind !== 'unread') open(at, 'part');
    } else if (now.place === 'trial') {
      if (kind !== 'unread') misplace(at, line, 'ingredients and steps stand above the trials');
    } else if (now.place === 'food') {
      const { statement } = line;
      const measure = statement.kind === 'ingredient' && statement.equals !== undefined && statement.name === undefined;
      if (kind !== 'unread' && !measure)
        misplace(
          at,
          line,
          'a food block holds `1 cup = 120 g`, `like`, `also`, `water 12 %`, `trim`, `price` and `contains`',
        );
    }
    if (
      line.statement.kind === 'ingredient' &&
      line.statement.name === undefined &&
      line.statement.optional === undefined
    ) {
      if (now.place === 'part')
        misplaced.push({ at, fault: faultAt(line, 'missing-name', 'name the ingredient after its amount') });
    }
  }
  close(document.lines.length);
  return {
    ...(recipe && { recipe }),
    head,
    parts: before === undefined ? parts : reuse(parts, before.parts),
    trials,
    foods,
    allows,
    misplaced,
  };
}

function componentHelp(line: Line): string {
  return line.statement.kind === 'component'
    ? "put the amount first if this is an ingredient; a share of a food's weight stands in a `food` block"
    : 'this describes a food of the house: write it under a `food NAME` line';
}

function faultAt(line: Line, code: SyntaxFault['code'], detail: string): SyntaxFault {
  const text = line.comment === undefined ? line.text : line.text.slice(0, line.comment.start);
  return { code, start: text.length - text.trimStart().length, end: Math.max(text.trimEnd().length, 1), detail };
}

/** Parts of equal lines are the old objects again, so that what hangs on them lives on. */
function reuse(parts: readonly PlacedPart[], old: readonly PlacedPart[]): PlacedPart[] {
  const shift = parts.length - old.length;
  return parts.map((part, i) => {
    const same = [old[i], old[i - shift]].find((o) => o !== undefined && sameLines(part.source, o.source));
    return same === undefined ? part : same.at === part.at ? same : { at: part.at, source: same.source };
  });
}

function sameLines(a: PartSource, b: PartSource): boolean {
  if (a.lines.length !== b.lines.length) return false;
  for (let i = 0; i < a.lines.length; i++) if (a.lines[i] !== b.lines[i]) return false;
  return true;
}
