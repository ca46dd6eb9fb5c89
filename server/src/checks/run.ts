/**
 * Knows what of a recipe the checks are to be asked again: each over its own scope, again only where that changed, and accepted findings set apart.
 * Refuses to know any single check. A check that throws is reported as that check's own bug, and the others go on.
 */
import { atOnce, eachInPieces, type InPieces } from '../measure/in-pieces.ts';
import { onceByObject } from '../measure/once.ts';
import { type Kept, keptOn } from '../notation/kept.ts';
import { MOST_LINES } from '../notation/limits.ts';
import type { Line } from '../notation/tree.ts';
import { following, lendJourneys } from '../recipe/journey/fold.ts';
import { isUnderstood } from '../recipe/list/not-understood.ts';
import { areSameLists } from '../recipe/measures/contents.ts';
import type { Kind } from '../recipe/measures/kind.ts';
import type { Ingredient, Part, PartHead, Recipe } from '../recipe/model.ts';
import { sameItems } from '../recipe/steps.ts';
import { type PlacedAllow, sortAccepted } from './accepted.ts';
import type { AllowCheck, Check, Found, LineCheck, ListCheck, PartCheck, Scene } from './check.ts';
import type { Finding, Findings } from './finding.ts';
import type { House } from './house.ts';
import { understoodOnly } from './one-a-line.ts';
import { lendParts } from './over-parts.ts';
import {
  byOrder,
  type Chunk,
  type Local,
  type Loose,
  merged,
  NONE,
  place,
  placeAll,
  sortLoose,
  stands,
  standsStill,
} from './placed.ts';

/** One run of the checks over a file, which lends the next what has not changed. */
export interface Run {
  readonly house: House;
  readonly recipe: Recipe;
  readonly lines: readonly Line[];
  readonly findings: Findings;
  /** By part. */
  readonly chunks: readonly Chunk[];
  /** By part: nothing was found in it. */
  readonly quiet: readonly boolean[];
  /** By part: the line of the document after it. */
  readonly ends: readonly number[];
  readonly files: readonly OfFile[];
  /** What was found in its own part's lines or outside the parts, by place. */
  readonly near: readonly Finding[];
  /** What was found elsewhere than in its own part's lines, as it was found, and by place. */
  readonly loose: readonly Loose[];
  readonly sorted: readonly Loose[];
  /** Both, by place. */
  readonly all: readonly Finding[];
  /** Something was found that is not among the findings, as its line is being typed. */
  readonly holdsBack: boolean;
  /** Checks that threw. */
  readonly bugs: readonly Bug[];
}

/** A check that threw, and what. */
export interface Bug {
  readonly check: string;
  readonly error: unknown;
}

/** What one check found in the whole file. */
interface OfFile {
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
  readonly includes: readonly PartHead[];
  readonly locals: readonly Local[];
}

/** What is known of one house's files. */
interface Known {
  readonly chunks: Kept<Part, Chunk>;
  /** Of lines outside the parts. */
  readonly lines: Kept<Line, { readonly at: number; readonly findings: readonly Finding[] }>;
  readonly ofFile: Kept<Found<unknown>, Loose>;
  /** The checks that the house has not turned off. */
  readonly faultChecks: readonly LineCheck[];
  /** The line checks by the statement they ask about. */
  readonly byStatement: ReadonlyMap<string, readonly LineCheck[]>;
  readonly checksOf: (kind: Kind | undefined) => PartChecks;
  /** What was found of a list, by what stands on it. */
  readonly ofList: Kept<readonly Ingredient[], OfList>;
  readonly fileFinders: readonly FileFinder[];
}

export class CheckRunner {
  private readonly checks: readonly Check[];
  private readonly allowChecks: readonly AllowCheck[];
  private readonly codes: ReadonlySet<string>;
  private readonly houses = new WeakMap<House, Known>();

  constructor(checks: readonly Check[]) {
    this.checks = checks;
    this.allowChecks = checks.filter((c) => c.scope === 'allows');
    this.codes = new Set(checks.map((c) => c.code));
  }

  /** All findings of a file, in the order of its lines. `last` is the run over the file before it was edited. */
  run(scene: Scene, last?: Run): Run {
    return atOnce(this.inPieces(scene, last));
  }

  /** The same, in pieces of a part or a check each. */
  *inPieces(scene: Scene, last?: Run): InPieces<Run> {
    const { house, recipe, document } = scene;
    const before = last?.house === house ? last : undefined;
    if (before !== undefined) {
      lendParts(recipe, before.recipe);
      lendJourneys(recipe, before.recipe);
    }
    const known = this.knownOf(house);
    // Where no part has moved, what was placed for a part that is the same stands.
    const still =
      before?.recipe.inherits === recipe.inherits && sameItems(before.recipe.partsAt, recipe.partsAt)
        ? before
        : undefined;
    const bugs: Bug[] = [];
    const found: Finding[] = [];
    const loose: Loose[] = [];
    const chunks: Chunk[] = [];
    const quiet: boolean[] = [];
    const ends: number[] = [];
    let next = 0;
    for (let i = 0; i < recipe.parts.length; i++) {
      const part = recipe.parts[i] as Part;
      const at = recipe.partsAt[i] ?? 0;
      if (next < at) this.between(next, at, scene, known, found, bugs);
      const old = before?.chunks[i];
      // Nearly all parts of a file are as they were: what they gave is not even looked at where it is nothing.
      const stood = still?.recipe.parts[i] === part ? still : undefined;
      const isPlaced = stood !== undefined || (still === undefined && stands(old, part, recipe));
      const chunk = old !== undefined && isPlaced ? old : yield* this.chunkOf(part, scene, known, bugs);
      const isQuiet = stood?.quiet[i] ?? (chunk.own.length === 0 && chunk.elsewhere.length === 0);
      next = stood?.ends[i] ?? at + chunk.size;
      chunks.push(chunk);
      quiet.push(isQuiet);
      ends.push(next);
      if (isQuiet) continue;
      for (const finding of chunk.own) found.push(finding);
      for (const finding of chunk.elsewhere) loose.push(finding);
    }
    this.between(next, Math.min(document.lines.length, MOST_LINES), scene, known, found, bugs);
    yield* followed(recipe);
    const files = yield* eachInPieces(known.fileFinders, (finder, i) =>
      ofFile(finder, scene, known, still?.files[i], bugs),
    );
    for (const { placed } of files) for (const finding of placed) loose.push(finding);
    const same = before !== undefined && sameItems(before.loose, loose);
    const sorted = same ? before.sorted : sortLoose(loose);
    const near = before !== undefined && sameItems(before.near, found) ? before.near : found;
    const all = same && near === before.near ? before.all : merged(near, sorted);
    const typed = before === undefined ? undefined : lineBeingTyped(document.lines, before.lines);
    const shown =
      typed === undefined ? all : all.filter((f) => f.at.line !== typed || f.check.family !== 'bookkeeping');
    const findings = this.accept(shown, scene, before?.findings, bugs);
    return {
      house,
      recipe,
      lines: document.lines,
      findings,
      chunks,
      quiet,
      ends,
      files,
      near,
      loose,
      sorted,
      all,
      holdsBack: shown.length < all.length,
      bugs,
    };
  }

  private knownOf(house: House): Known {
    let known = this.houses.get(house);
    if (known === undefined) {
      const checks = this.checks.filter((c) => house.severities[c.code] !== 'off');
      const lineChecks = checks.filter((c) => c.scope === 'line');
      known = {
        chunks: keptOn(),
        lines: keptOn(),
        ofFile: keptOn(),
        faultChecks: lineChecks.filter((c) => c.asks === 'faulty'),
        byStatement: new Map(lineChecks.map(({ asks }) => [asks, lineChecks.filter((c) => c.asks === asks)])),
        checksOf: checksByKind(checks),
        ofList: keptOn(),
        fileFinders: checks.flatMap((check) => {
          if (check.scope === 'allows') return [];
          const find = check.scope === 'recipe' ? check.find : check.findInFile;
          return find === undefined ? [] : [{ check, find }];
        }),
      };
      this.houses.set(house, known);
    }
    return known;
  }

  /** What the line checks find in lines outside the parts. */
  private between(from: number, to: number, scene: Scene, known: Known, near: Finding[], bugs: Bug[]): void {
    for (let at = from; at < to; at++) {
      const line = scene.document.lines[at];
      if (line === undefined || !isAsked(line, known)) continue;
      let kept = known.lines.get(line);
      if (kept?.at !== at) {
        const locals: Local[] = [];
        askLine(line, at, scene.house, known, locals, bugs);
        kept = { at, findings: locals.sort(byOrder).map((local) => place(local, scene, 0)) };
        known.lines.set(line, kept);
      }
      for (const finding of kept.findings) near.push(finding);
    }
  }

  private *chunkOf(part: Part, scene: Scene, known: Known, bugs: Bug[]): InPieces<Chunk> {
    const { recipe } = scene;
    const whole = !recipe.inherits;
    const kept = known.chunks.get(part);
    if (kept !== undefined && stands(kept, part, recipe)) return kept;
    const locals =
      kept !== undefined && kept.whole === whole ? kept.locals : yield* localsOf(part, whole, scene.house, known, bugs);
    const at = recipe.partsAt[part.index] ?? 0;
    const size = part.head.source.lines.length;
    const chunk =
      locals.length === 0
        ? { part, at, size, whole, locals, own: NONE, elsewhere: NONE, others: NONE }
        : placeAll(locals, part, at, whole, scene);
    known.chunks.set(part, chunk);
    return chunk;
  }

  /** Sets apart what is accepted; an `allow` that accepts nothing is found itself. */
  private accept(all: readonly Finding[], scene: Scene, before: Findings | undefined, bugs: Bug[]): Findings {
    const sorted = sortAccepted(all, scene);
    const { accepted } = sorted;
    const open = understoodOnly(sorted.open, scene.recipe);
    // What is not judged may be found again once every line is understood.
    const idle = isUnderstood(scene.recipe)
      ? sorted.idle
      : sorted.idle.filter(({ code }) => !this.codes.has(code.text));
    const found =
      scene.recipe.inherits || idle.length === 0 ? open : merged(open, this.ofIdleAllows(idle, scene, bugs));
    if (before !== undefined && accepted.length === 0 && before.accepted.length === 0 && sameItems(found, before.open))
      return before;
    return { open: found, accepted };
  }

  private ofIdleAllows(idle: readonly PlacedAllow[], scene: Scene, bugs: Bug[]): readonly Loose[] {
    const { severities } = scene.house;
    const loose: Loose[] = [];
    for (const check of this.allowChecks) {
      if (severities[check.code] === 'off') continue;
      for (const { at, code } of idle) {
        const allow = { line: at, code, known: this.codes.has(code.text), off: severities[code.text] === 'off' };
        const locals: Local[] = [];
        ask(check, () => check.find(allow), 0, undefined, locals, bugs);
        for (const local of locals) loose.push({ finding: place(local, scene, 0), of: Number.POSITIVE_INFINITY });
      }
    }
    return sortLoose(loose);
  }
}

/** Follows the recipe in pieces; where that fails, so does the first check that asks, and says it. */
function* followed(recipe: Recipe): InPieces<void> {
  try {
    yield* following(recipe);
  } catch {
    return;
  }
}

const NOTHING: OfFile = { found: NONE, placed: NONE };

function askLine(line: Line, at: number, house: House, known: Known, locals: Local[], bugs: Bug[]): void {
  if (line.faults.length > 0)
    for (const check of known.faultChecks) ask(check, () => check.find(line, house), at, undefined, locals, bugs);
  for (const check of known.byStatement.get(line.statement.kind) ?? NONE)
    ask(check, () => check.find(line, house), at, undefined, locals, bugs);
}

/** `Pastry` alone on a line, where a part is called so, is no line that cannot be read. */
const takesPart = ({ head }: Part, at: number): boolean =>
  head.ingredients.some(({ line, ofPart }) => line === at && ofPart !== undefined);

/** What the checks of lines and parts find in a part, by place; a variant is not judged as a finished recipe, as what it inherits is not here to be counted. */
function* localsOf(part: Part, whole: boolean, house: House, known: Known, bugs: Bug[]): InPieces<readonly Local[]> {
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
      yield* asking(check, () => check.find(part, house), 0, part.index, locals, bugs);
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
  const { index, head, includes } = part;
  const kept = known.ofList.get(head.ingredients);
  if (kept?.index === index && areSameLists(kept.includes, includes)) return kept.locals;
  const locals: Local[] = [];
  for (const check of checks) yield* asking(check, () => check.find(part, house), 0, index, locals, bugs);
  known.ofList.set(head.ingredients, { index, includes, locals });
  return locals;
}

/** Adds what a check finds, or nothing of it where it throws. */
const ask = (...asked: Parameters<typeof asking>): void => atOnce(asking(...asked));

/** The same, in pieces of what is found each. */
function* asking(
  check: Check,
  find: () => Iterable<Found<unknown>>,
  line: number,
  part: number | undefined,
  locals: Local[],
  bugs: Bug[],
): InPieces<void> {
  const before = locals.length;
  try {
    for (const found of find()) {
      locals.push({ check, found, said: check.say(found.values), line, part });
      yield;
    }
    yield;
  } catch (error) {
    locals.length = before;
    bugs.push({ check: check.code, error });
  }
}

/** What a check finds in the whole file; where it gives the same objects again they are placed already. */
function ofFile(
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

const isAsked = (line: Line, { byStatement }: Known): boolean =>
  line.faults.length > 0 || byStatement.has(line.statement.kind);

/** The function that gives the checks to ask about a part of a kind: the others hold measures against bands that the kind does not have. */
function checksByKind(checks: readonly Check[]): Known['checksOf'] {
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

/** The last line of a text whose other lines were seen before, while it has no line end: it is being typed. */
function lineBeingTyped(lines: readonly Line[], seen: readonly Line[]): number | undefined {
  const last = lines.length - 1;
  const line = lines[last];
  if (line === undefined || line.statement.kind === 'blank' || seen.at(-1) === line || seen.includes(line))
    return undefined;
  const other = lines.find((l) => l.statement.kind !== 'blank');
  return other !== undefined && seen.includes(other) ? last : undefined;
}
