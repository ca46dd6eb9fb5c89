/**
 * Knows which block each line belongs to: the recipe's head, its parts, trials and foods, and what stands where it may not.
 * Refuses to know what the blocks say. A part that no edit touched is the same object as before.
 */

import type { Document } from './document.ts';
import { equalOf } from './item-amounts.ts';
import { firstSaying, MOST_IN_PART, MOST_LINES, MOST_PARTS, pastFile, pastPart, pastParts } from './limits.ts';
import type { IngredientNode, Line, StatementKind, SyntaxFault } from './tree.ts';

export interface PlacedLine {
  /** The line's number in the document, from 0. */
  readonly at: number;
  readonly line: Line;
}

/** The lines of a part; the first is its `part` line when it is named, and the last, of one that has too many, says so. Knows no place in the file. */
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
  /** All lines it was made from. */
  readonly lines: readonly Line[];
  readonly recipe?: PlacedLine;
  /** Fields above the first part, `from`, the pictures of the dish, the swaps, drops and adds of a variant, and the notes, which may stand in or below the parts too. */
  readonly head: readonly PlacedLine[];
  readonly parts: readonly PlacedPart[];
  readonly trials: readonly Block[];
  readonly foods: readonly Block[];
  readonly allows: readonly PlacedLine[];
  readonly misplaced: readonly Misplaced[];
  /** Whether there is more than is worked out: lines past a limit are in no block. */
  readonly isCut: boolean;
}

type Place = 'nowhere' | 'head' | 'part' | 'trial' | 'food';

const FIELDS: ReadonlySet<StatementKind> = new Set(['text', 'yield', 'pan', 'oven', 'time', 'tags', 'from']);
const IN_TRIAL: ReadonlySet<StatementKind> = new Set([
  'took',
  'started',
  'reached',
  'weighed',
  'used',
  'saw',
  'tested',
  'verdict',
]);
const IN_FOOD: ReadonlySet<StatementKind> = new Set(['like', 'also', 'component', 'trim', 'price', 'contains']);
const CHANGES: ReadonlySet<StatementKind> = new Set(['swap', 'drop', 'add']);

/** Sorts the lines of a document into blocks; `before` lends what has not changed. */
export function outline(document: Document, before?: Outline): Outline {
  const { lines } = document;
  const within = before === undefined ? undefined : editedWithinPart(lines, before);
  if (within !== undefined) return within;
  const scanner = new Scanner(lines);
  scanner.scan(0, Math.min(lines.length, MOST_LINES));
  const { recipe, head, parts, trials, foods, allows, misplaced } = scanner;
  const past = firstSaying(lines, MOST_LINES, lines.length);
  if (past !== undefined) misplaced.push({ at: past, fault: pastFile(lines[past] as Line) });
  return {
    lines,
    ...(recipe && { recipe }),
    head,
    parts: before === undefined ? parts : reuse(parts, before.parts),
    trials,
    foods,
    allows,
    misplaced,
    isCut: scanner.isCut || past !== undefined,
  };
}

/** Reads lines in order and keeps what block it is in. */
class Scanner {
  recipe: PlacedLine | undefined;
  readonly head: PlacedLine[] = [];
  readonly parts: PlacedPart[] = [];
  readonly trials: Block[] = [];
  readonly foods: Block[] = [];
  readonly allows: PlacedLine[] = [];
  readonly misplaced: Misplaced[] = [];
  isCut = false;
  private isPastParts = false;
  private readonly lines: readonly Line[];
  private place: Place = 'nowhere';
  private opened = 0;

  constructor(lines: readonly Line[]) {
    this.lines = lines;
  }

  /** Reads the lines from one to before another, and closes the last block there. */
  scan(from: number, to: number, place: Place = 'nowhere'): void {
    this.place = place;
    this.opened = from;
    for (let at = from; at < to; at++) {
      const line = this.lines[at];
      if (line !== undefined && line.statement.kind !== 'blank') this.read(at, line);
    }
    this.close(to);
  }

  private read(at: number, line: Line): void {
    const { kind } = line.statement;
    if (kind === 'allow') this.allows.push({ at, line });
    else if (kind === 'recipe') this.readRecipe(at, line);
    else if (kind === 'part' || kind === 'trial' || kind === 'food') this.open(at, kind);
    else if (kind === 'picture') this.readPicture(at, line);
    else if (FIELDS.has(kind)) this.readField(at, line);
    else if (IN_TRIAL.has(kind)) {
      if (this.place !== 'trial')
        this.misplace(at, line, 'this is what a trial measured: write it under a `trial 2026-09-14` line');
    } else if (IN_FOOD.has(kind)) {
      if (this.place !== 'food') this.misplace(at, line, componentHelp(line));
    } else if (CHANGES.has(kind)) this.readChange(at, line);
    else this.readBody(at, line);
  }

  private readRecipe(at: number, line: Line): void {
    if (this.recipe !== undefined)
      this.misplace(at, line, 'a file holds one recipe; put this one in a file of its own');
    else this.recipe = { at, line };
    this.open(at, this.recipe.at === at ? 'head' : 'nowhere');
  }

  private readField(at: number, line: Line): void {
    if (this.place === 'nowhere') this.open(at, 'head');
    const again = line.statement.kind === 'from' && this.head.some((h) => h.line.statement.kind === 'from');
    if (again)
      this.misplace(
        at,
        line,
        'a recipe builds on one file; take a part of another with `part dough from FILE : dough`',
      );
    else if (this.place === 'head' || (this.place === 'part' && isNote(line))) this.head.push({ at, line });
    else if (line.statement.kind === 'pan' && this.place === 'part') {
      if (!this.isAboveList(at)) this.misplace(at, line, "a part's own pan stands below its name, above its list");
    } else if (isNote(line))
      this.misplace(at, line, 'a note is said of the whole recipe: write it above the trials and foods');
    else this.misplace(at, line, 'this is said of the whole recipe: write it above the first part');
  }

  /** It shows what stands above it: the dish, a step, what a trial gave. */
  private readPicture(at: number, line: Line): void {
    if (this.place === 'nowhere') this.open(at, 'head');
    if (this.place === 'head') this.head.push({ at, line });
    else if (this.place === 'food')
      this.misplace(at, line, 'a picture shows a dish, a step or a trial: write it there');
    else if (this.place === 'part' && !this.isBelowStep(at))
      this.misplace(at, line, 'a picture of the dish stands above the first part, one of a step below it');
  }

  private isBelowStep(at: number): boolean {
    for (let above = at - 1; above > this.opened; above--) {
      const kind = this.lines[above]?.statement.kind;
      if (kind === 'step') return true;
      if (kind !== 'picture' && kind !== 'blank') return false;
    }
    return this.lines[this.opened]?.statement.kind === 'step';
  }

  /** Whether the open part has no ingredient or step before a line. */
  private isAboveList(at: number): boolean {
    for (let above = this.opened; above < at; above++) {
      const kind = this.lines[above]?.statement.kind;
      if (kind === 'ingredient' || kind === 'step' || kind === 'pan') return false;
    }
    return true;
  }

  private readChange(at: number, line: Line): void {
    if (this.place === 'nowhere') this.open(at, 'head');
    if (this.place === 'head') this.head.push({ at, line });
    else if (this.place !== 'part')
      this.misplace(
        at,
        line,
        'this changes what `from` brought in: write it in the recipe or a part, above the trials',
      );
  }

  /** An ingredient, a step, or what could not be read. */
  private readBody(at: number, line: Line): void {
    const { statement } = line;
    const read = statement.kind !== 'unread';
    if (read && (this.place === 'head' || this.place === 'nowhere')) this.open(this.bareFrom(at), 'part');
    else if (read && this.place === 'trial') this.misplace(at, line, 'ingredients and steps stand above the trials');
    const nameless = statement.kind === 'ingredient' && statement.name === undefined;
    if (read && this.place === 'food' && !(nameless && equalOf(statement) !== undefined)) {
      const may = '`1 cup = 120 g`, `like`, `also`, `water 12 %`, `trim`, `price` and `contains`';
      this.misplace(at, line, `a food block holds ${may}`);
    }
    if (nameless && statement.optional === undefined && this.place === 'part')
      this.misplaced.push({ at, fault: faultAt(line, 'missing-name', 'name the ingredient after its amount') });
  }

  /** The nameless part begins at the first of the lines above that may be ingredients without an amount in front. */
  private bareFrom(at: number, isOne: (bare?: IngredientNode) => boolean = (bare) => bare !== undefined): number {
    let from = at;
    for (let above = at - 1; above > this.opened; above--) {
      const statement = this.lines[above]?.statement;
      if (statement?.kind === 'blank') continue;
      if (statement?.kind !== 'unread' || !isOne(statement.bare)) break;
      from = above;
    }
    return from;
  }

  private open(at: number, next: Place): void {
    this.close(at);
    this.place = next;
    this.opened = at;
  }

  private close(end: number): void {
    if (this.place === 'head') {
      // A list none of whose lines has its amount in front.
      const from = this.bareFrom(end, (bare) => bare?.amount?.kind === 'measured' && bare.amount.unit !== undefined);
      if (from < end) [this.place, this.opened] = ['part', from];
    }
    const at = this.opened;
    const lines = () => this.lines.slice(at, end);
    if (this.place === 'part') this.closePart(at, end);
    else if (this.place === 'trial') this.trials.push({ at, lines: lines() });
    else if (this.place === 'food') this.foods.push({ at, lines: lines() });
  }

  private closePart(at: number, end: number): void {
    if (this.parts.length < MOST_PARTS) {
      const named = this.lines[at]?.statement.kind === 'part';
      this.parts.push({ at, source: { named, lines: this.linesOfPart(at, end) } });
      return;
    }
    if (!this.isPastParts) this.misplaced.push({ at, fault: pastParts(this.lines[at] as Line) });
    this.isPastParts = true;
    this.isCut = true;
  }

  private linesOfPart(at: number, end: number): Line[] {
    const past = firstSaying(this.lines, at + MOST_IN_PART, end);
    if (past === undefined) return this.lines.slice(at, end);
    this.isCut = true;
    return [...this.lines.slice(at, past), pastPart(this.lines[past] as Line)];
  }

  private misplace(at: number, line: Line, detail: string): void {
    this.misplaced.push({ at, fault: faultAt(line, 'misplaced', detail) });
  }
}

/** The last line of the recipe's head, above its first part; undefined where the head has none below the recipe's own. */
export const lastAbove = ({ head, parts }: Outline): number | undefined =>
  head.findLast(({ at }) => at < (parts[0]?.at ?? Number.POSITIVE_INFINITY))?.at;

const isNote = ({ statement }: Line): boolean => statement.kind === 'text' && statement.field === 'note';

const OPENERS: ReadonlySet<StatementKind> = new Set(['recipe', 'part', 'trial', 'food']);

/** The outline when only lines inside one part have changed: that part is read again, the rest is moved. */
function editedWithinPart(lines: readonly Line[], before: Outline): Outline | undefined {
  const old = before.lines;
  if (before.isCut || lines.length > MOST_LINES) return undefined;
  const shift = lines.length - old.length;
  let first = 0;
  while (first < old.length && first < lines.length && old[first] === lines[first]) first++;
  let end = old.length;
  while (end > first && end + shift > first && old[end - 1] === lines[end - 1 + shift]) end--;
  const index = before.parts.findLastIndex((p) => p.at < first);
  const part = before.parts[index];
  if (part === undefined || part.at + part.source.lines.length < end) return undefined;
  // The lines above its first ingredient or step say where a nameless part begins.
  if (!part.source.named && !lines.slice(part.at, first).some(isBody)) return undefined;
  // A recipe line below the part is odd: read it all again.
  if ((before.recipe?.at ?? 0) > part.at) return undefined;
  for (let at = first; at < end; at++) if (OPENERS.has(old[at]?.statement.kind ?? 'blank')) return undefined;
  for (let at = first; at < end + shift; at++) if (OPENERS.has(lines[at]?.statement.kind ?? 'blank')) return undefined;
  const partEnd = part.at + part.source.lines.length;
  const scanner = new Scanner(lines);
  const above = countBefore(before.head, part.at);
  scanner.head.push(...before.head.slice(0, above));
  scanner.scan(part.at, partEnd + shift, part.source.named ? 'nowhere' : 'part');
  const again = scanner.parts.at(-1);
  if (again === undefined || scanner.isCut) return undefined;
  const moved = <T extends { readonly at: number }>(list: readonly T[], middle: readonly T[]): readonly T[] => {
    const from = countBefore(list, part.at);
    const to = countBefore(list, partEnd);
    // What stands as it stood is the same list, so that what hangs on it lives on.
    if (from === to && middle.length === 0 && (shift === 0 || to === list.length)) return list;
    const after = list.slice(to);
    return [
      ...list.slice(0, from),
      ...middle,
      ...(shift === 0 ? after : after.map((x) => ({ ...x, at: x.at + shift }))),
    ];
  };
  const { recipe } = before;
  return {
    lines,
    ...(recipe && { recipe }),
    head: moved(before.head, scanner.head.slice(above)),
    parts: moved(before.parts, [sameLines(again.source, part.source) ? part : again]),
    trials: moved(before.trials, []),
    foods: moved(before.foods, []),
    allows: moved(before.allows, scanner.allows),
    misplaced: moved(before.misplaced, scanner.misplaced),
    isCut: false,
  };
}

const isBody = ({ statement: { kind } }: Line): boolean => kind === 'ingredient' || kind === 'step';

/** How many of a list, in the order of the lines, stand above one. */
function countBefore(list: readonly { readonly at: number }[], line: number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((list[middle]?.at ?? 0) < line) low = middle + 1;
    else high = middle;
  }
  return low;
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
