/**
 * Knows how one check is asked of a line, a list, a part or a file, and what is kept of what it found there.
 * Refuses to know which are to be asked again. A check that throws is its own bug, and the others go on.
 */
import { atOnce, type InPieces } from '../measure/in-pieces.ts';
import { onceByObject } from '../measure/once.ts';
import type { Kept } from '../notation/kept.ts';
import type { Line } from '../notation/tree.ts';
import { areSameLists } from '../recipe/measures/contents.ts';
import type { Kind } from '../recipe/measures/kind.ts';
import type { Ingredient, Part, PartHead } from '../recipe/model.ts';
import { sameItems } from '../recipe/steps.ts';
import type { Check, Found, LineCheck, ListCheck, PartCheck, Scene } from './check.ts';
import type { Finding } from './finding.ts';
import type { House } from './house.ts';
import { byOrder, type Chunk, type Local, type Loose, NONE, place, standsStill } from './placed.ts';

/** A check that threw, and what. */
export interface Bug {
  readonly check: string;
  readonly error: unknown;
}

/** What one check found in the whole file. */
export interface OfFile {
  readonly found: readonly Found<unknown>[];
  readonly placed: readonly Loose[];
}

interface FileFinder {
  readonly check: Check;
  readonly find: (scene: Scene) => readonly Found<unknown>[];
}

/** What is asked about a part. */
interface PartChecks {
  readonly lists: readonly ListCheck[];
  readonly parts: readonly PartCheck[];
}

interface OfList {
  readonly index: number;
  readonly mixes: readonly PartHead[];
  readonly locals: readonly Local[];
}

/** What is known of one house's files. */
export interface Known {
  readonly chunks: Kept<Part, Chunk>;
  /** Of lines outside the parts. */
  readonly lines: Kept<Line, { readonly at: number; readonly findings: readonly Finding[] }>;
  readonly ofFile: Kept<Found<unknown>, Loose>;
  /** The checks that the house has not turned off. */
  readonly faultChecks: readonly LineCheck[];
  /** The line checks by the statement they ask about. */
  readonly byStatement: ReadonlyMap<string, readonly LineCheck[]>;
  /** Any of them asks where the foods go; what is only misread does not. */
  readonly follows: boolean;
  readonly checksOf: (kind: Kind | undefined) => PartChecks;
  /** What was found of a list, by what stands on it. */
  readonly ofList: Kept<readonly Ingredient[], OfList>;
  readonly fileFinders: readonly FileFinder[];
}

const NOTHING: OfFile = { found: NONE, placed: NONE };

export function askLine(line: Line, at: number, house: House, known: Known, locals: Local[], bugs: Bug[]): void {
  if (line.faults.length > 0)
    for (const check of known.faultChecks) ask(check, line, house, at, undefined, locals, bugs);
  for (const check of known.byStatement.get(line.statement.kind) ?? NONE)
    ask(check, line, house, at, undefined, locals, bugs);
}

/** `Pastry` alone on a line, where a part is called so, is no line that cannot be read. */
const takesPart = ({ head }: Part, at: number): boolean =>
  head.ingredients.some(({ line, ofPart }) => line === at && ofPart !== undefined);

/** What the checks of lines and parts find in a part, by place; a variant is not judged as a finished recipe, as what it inherits is not here to be counted. */
export function* localsOf(
  part: Part,
  whole: boolean,
  house: House,
  known: Known,
  bugs: Bug[],
): InPieces<readonly Local[]> {
  const locals: Local[] = [];
  const { lines } = part.head.source;
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] as Line;
    if (isAsked(line, known) && !(line.faults.length > 0 && takesPart(part, at)))
      askLine(line, at, house, known, locals, bugs);
  }
  if (whole) {
    const { lists, parts } = known.checksOf(part.head.kind);
    for (const local of yield* ofList(part, lists, house, known, bugs)) locals.push(local);
    for (const check of parts) {
      const more = asked(check, part, house, 0, part.index, locals, bugs);
      if (more !== undefined) yield* more;
      yield;
    }
  }
  return locals.length === 0 ? NONE : locals.sort(byOrder);
}

/** What is found of the list of a part, and of those that it takes in: the same again while they are. */
function* ofList(
  part: Part,
  checks: readonly ListCheck[],
  house: House,
  known: Known,
  bugs: Bug[],
): InPieces<readonly Local[]> {
  const { index, head, mixes } = part;
  const kept = known.ofList.get(head.ingredients);
  if (kept?.index === index && areSameLists(kept.mixes, mixes)) return kept.locals;
  const locals: Local[] = [];
  for (const check of checks) {
    const more = asked(check, part, house, 0, index, locals, bugs);
    if (more !== undefined) yield* more;
    yield;
  }
  known.ofList.set(head.ingredients, { index, mixes, locals });
  return locals;
}

/** A check that is asked about one thing of the file. */
type Asks<T> = Check & { readonly find: (of: T, house: House) => Iterable<Found<unknown>> };

/** Adds what a check finds, or nothing of it where it throws. */
export function ask<T>(...question: Parameters<typeof asked<T>>): void {
  const more = asked(...question);
  if (more !== undefined) atOnce(more);
}

/** The same, in pieces of what is found each; undefined where nothing is, as mostly. */
function asked<T>(
  check: Asks<T>,
  of: T,
  house: House,
  line: number,
  part: number | undefined,
  locals: Local[],
  bugs: Bug[],
): InPieces<void> | undefined {
  try {
    const all = check.find(of, house)[Symbol.iterator]();
    const { done, value } = all.next();
    return done === true ? undefined : adding(check, value, all, line, part, locals, bugs);
  } catch (error) {
    bugs.push({ check: check.code, error });
    return undefined;
  }
}

function* adding(
  check: Check,
  first: Found<unknown>,
  others: Iterator<Found<unknown>>,
  line: number,
  part: number | undefined,
  locals: Local[],
  bugs: Bug[],
): InPieces<void> {
  const before = locals.length;
  try {
    for (let found = first; ; ) {
      locals.push({ check, found, said: check.say(found.values), line, part });
      yield;
      const { done, value } = others.next();
      if (done === true) return;
      found = value;
    }
  } catch (error) {
    locals.length = before;
    bugs.push({ check: check.code, error });
  }
}

/** What a check finds in the whole file; where it gives the same objects again they are placed already. */
export function ofFile(
  { check, find }: FileFinder,
  scene: Scene,
  known: Known,
  before: OfFile | undefined,
  bugs: Bug[],
): OfFile {
  const judged = !scene.recipe.inherits || check.family === 'reading' || check.family === 'safety';
  if (!judged) return NOTHING;
  try {
    const found = find(scene);
    if (before !== undefined && sameItems(before.found, found)) return before;
    const placed: Loose[] = [];
    for (const each of found) {
      let loose = known.ofFile.get(each);
      if (loose === undefined || !standsStill(loose.finding, scene)) {
        const said = loose?.finding.said ?? check.say(each.values);
        const local = { check, found: each, said, line: 0, part: undefined };
        loose = { finding: place(local, scene, 0), of: Number.POSITIVE_INFINITY };
        known.ofFile.set(each, loose);
      }
      placed.push(loose);
    }
    return placed.length === 0 ? NOTHING : { found, placed };
  } catch (error) {
    bugs.push({ check: check.code, error });
    return NOTHING;
  }
}

export const isAsked = (line: Line, { byStatement }: Known): boolean =>
  line.faults.length > 0 || byStatement.has(line.statement.kind);

/** The function that gives the checks to ask about a part of a kind: the others hold measures against bands that the kind does not have. */
export function checksByKind(checks: readonly Check[]): Known['checksOf'] {
  const [lists, parts] = [checks.filter((c) => c.scope === 'list'), checks.filter((c) => c.scope === 'part')];
  const fitting = (fits: (measures: PartCheck['measures']) => boolean): PartChecks => ({
    lists: lists.filter(({ measures }) => fits(measures)),
    parts: parts.filter(({ measures }) => fits(measures)),
  });
  const ofKind = onceByObject((kind: Kind) => {
    const judged = new Set(kind.measures.map((m) => m.measure));
    return fitting((measures) => measures?.some((m) => judged.has(m)) ?? true);
  });
  const ofNone = fitting((measures) => measures === undefined);
  return (kind) => (kind === undefined ? ofNone : ofKind(kind));
}
