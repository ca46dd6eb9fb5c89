/**
 * Knows what of a recipe the checks are to be asked again: each over its own scope, again only where that changed, and accepted findings set apart.
 * Refuses to know any single check. A check that throws is reported as that check's own bug, and the others go on.
 */
import { atOnce, eachInPieces, type InPieces } from '../measure/in-pieces.ts';
import { keptOn } from '../notation/kept.ts';
import { MOST_LINES } from '../notation/limits.ts';
import type { Line } from '../notation/tree.ts';
import { following, lendJourneys } from '../recipe/journey/fold.ts';
import { isUnderstood } from '../recipe/list/not-understood.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import { sameItems } from '../recipe/steps.ts';
import { type PlacedAllow, sortAccepted } from './accepted.ts';
import { ask, askLine, type Bug, checksByKind, isAsked, type Known, localsOf, type OfFile, ofFile } from './asked.ts';
import type { AllowCheck, Check, Scene } from './check.ts';
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
    if (known.follows) yield* followed(recipe);
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
        follows: checks.some(({ family }) => family !== 'reading'),
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
        ask(check, allow, scene.house, 0, undefined, locals, bugs);
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

/** The last line of a text whose other lines were seen before, while it has no line end: it is being typed. */
function lineBeingTyped(lines: readonly Line[], seen: readonly Line[]): number | undefined {
  const last = lines.length - 1;
  const line = lines[last];
  if (line === undefined || line.statement.kind === 'blank' || seen.at(-1) === line || seen.includes(line))
    return undefined;
  const other = lines.find((l) => l.statement.kind !== 'blank');
  return other !== undefined && seen.includes(other) ? last : undefined;
}
