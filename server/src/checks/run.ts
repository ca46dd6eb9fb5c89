/**
 * Knows how the checks are run over a recipe: each over its own scope, again only where that changed, and accepted findings set apart.
 * Refuses to know any single check. A check that throws is reported as that check's own bug, and the others go on.
 */
import type { PartSource } from '../notation/outline.ts';
import type { Line, TextNode } from '../notation/tree.ts';
import type { Part } from '../recipe/recipe.ts';
import type { AllowCheck, Check, Fix, Found, LineCheck, PartCheck, Place, Said, Scene, Severity } from './check.ts';
import type { House } from './house.ts';

/** A finding at its place in the document. */
export interface Finding {
  readonly check: Check;
  readonly code: string;
  readonly severity: Severity;
  /** By line of the document. */
  readonly at: { readonly line: number; readonly start: number; readonly end: number };
  readonly said: Said;
  readonly related: readonly {
    readonly at: { readonly line: number; readonly start: number; readonly end: number };
    readonly message: string;
    /** The path of another file it stands in. */
    readonly file?: string;
  }[];
  readonly found: Found<unknown>;
  /** Fixes already placed back, of what was found in a variant written out. */
  readonly fixes?: () => readonly Fix[];
  /** The part it belongs to, for `allow`. */
  readonly part?: number;
}

export interface AcceptedFinding extends Finding {
  readonly reason: string;
}

export interface Findings {
  readonly open: readonly Finding[];
  readonly accepted: readonly AcceptedFinding[];
}

/** A finding as its unit gave it, before it has a place in the document. */
interface Local {
  readonly check: Check;
  readonly found: Found<unknown>;
  readonly said: Said;
}

type Report = (check: Check, error: unknown) => void;

export class CheckRunner {
  private readonly lineChecks: readonly LineCheck[];
  private readonly partChecks: readonly PartCheck[];
  private readonly fileFinders: readonly {
    readonly check: Check;
    readonly find: (scene: Scene) => Iterable<Found<unknown>>;
  }[];
  private readonly byPartLines = new WeakMap<
    House,
    WeakMap<PartSource, readonly { readonly local: Local; readonly at: number }[]>
  >();
  private readonly allowChecks: readonly AllowCheck[];
  private readonly codes: ReadonlySet<string>;
  private readonly byLine = new WeakMap<House, WeakMap<Line, readonly Local[]>>();
  private readonly byPart = new WeakMap<House, WeakMap<Part, readonly Local[]>>();
  private readonly report: Report;

  constructor(checks: readonly Check[], report: Report) {
    this.lineChecks = checks.filter((c) => c.scope === 'line');
    this.partChecks = checks.filter((c) => c.scope === 'part');
    this.fileFinders = checks.flatMap((check) => {
      if (check.scope === 'allows') return [];
      const find = check.scope === 'recipe' ? check.find : check.findInFile;
      return find === undefined ? [] : [{ check, find }];
    });
    this.allowChecks = checks.filter((c) => c.scope === 'allows');
    this.codes = new Set(checks.map((c) => c.code));
    this.report = report;
  }

  /** All findings of a file, in the order of its lines. */
  run(scene: Scene): Findings {
    const { house, recipe } = scene;
    const findings: Finding[] = [];
    const typed = this.lineBeingTyped(scene);
    const add = (local: Local, base: number, part: number | undefined) => {
      const finding = place(local, scene, base, part);
      if (finding === undefined || (finding.at.line === typed && local.check.family === 'bookkeeping')) return;
      findings.push(finding);
    };
    this.eachLine(scene, (local, at) => add(local, at, undefined));
    // A variant is not judged as a finished recipe: what it inherits is not here to be counted.
    const whole = !recipe.inherits;
    const parts = cacheFor(this.byPart, house);
    for (const part of whole ? recipe.parts : []) {
      let locals = parts.get(part);
      if (locals === undefined) {
        locals = this.collect(this.partChecks, part, house);
        parts.set(part, locals);
      }
      for (const local of locals) add(local, recipe.partsAt[part.index] ?? 0, part.index);
    }
    for (const { check, find } of this.fileFinders) {
      const judged = whole || check.family === 'reading' || check.family === 'safety';
      if (house.severities[check.code] === 'off' || !judged) continue;
      for (const local of this.guard(check, () => find(scene))) add(local, 0, undefined);
    }
    findings.sort(byPlace);
    const { open, accepted, idle } = sortAccepted(findings, scene);
    if (!whole || idle.length === 0) return { open, accepted };
    return { open: [...open, ...this.ofIdleAllows(idle, scene)].sort(byPlace), accepted };
  }

  private ofIdleAllows(idle: readonly PlacedAllow[], scene: Scene): readonly Finding[] {
    const { severities } = scene.house;
    return this.allowChecks.flatMap((check) =>
      idle.flatMap(({ at, code }) => {
        const allow = { line: at, code, known: this.codes.has(code.text), off: severities[code.text] === 'off' };
        return this.guard(check, () => check.find(allow)).flatMap((local) => place(local, scene, 0, undefined) ?? []);
      }),
    );
  }

  /** The last line of a text whose other lines were seen before, while it has no line end: it is being typed. */
  private lineBeingTyped({ document: { lines }, house }: Scene): number | undefined {
    const seen = cacheFor(this.byLine, house);
    const last = lines.length - 1;
    const line = lines[last];
    if (line === undefined || line.statement.kind === 'blank' || seen.has(line)) return undefined;
    const other = lines.find((l) => l.statement.kind !== 'blank');
    return other !== undefined && seen.has(other) ? last : undefined;
  }

  /** What the line checks find, with each line's number; the lines of an unchanged part are not looked at. */
  private eachLine(scene: Scene, give: (local: Local, at: number) => void): void {
    const { house, document, outline } = scene;
    const byPart = cacheFor(this.byPartLines, house);
    let next = 0;
    for (const { at, source } of outline.parts) {
      for (; next < at; next++) for (const local of this.ofLine(document.lines[next], house)) give(local, next);
      let rows = byPart.get(source);
      if (rows === undefined) {
        rows = source.lines.flatMap((line, i) => this.ofLine(line, house).map((local) => ({ local, at: i })));
        byPart.set(source, rows);
      }
      for (const row of rows) give(row.local, at + row.at);
      next = at + source.lines.length;
    }
    for (; next < document.lines.length; next++)
      for (const local of this.ofLine(document.lines[next], house)) give(local, next);
  }

  private ofLine(line: Line | undefined, house: House): readonly Local[] {
    if (line === undefined || line.statement.kind === 'blank') return NONE;
    const lines = cacheFor(this.byLine, house);
    let locals = lines.get(line);
    if (locals === undefined) {
      locals = this.collect(this.lineChecks, line, house);
      lines.set(line, locals);
    }
    return locals;
  }

  private collect<U>(
    checks: readonly { code: string; find: (unit: U, house: House) => Iterable<Found<unknown>> }[],
    unit: U,
    house: House,
  ): readonly Local[] {
    let locals: Local[] | undefined;
    for (const check of checks) {
      if (house.severities[check.code] === 'off') continue;
      const found = this.guard(check as unknown as Check, () => check.find(unit, house));
      if (found.length > 0) locals = locals === undefined ? found : [...locals, ...found];
    }
    return locals ?? NONE;
  }

  private guard(check: Check, find: () => Iterable<Found<unknown>>): Local[] {
    try {
      const locals: Local[] = [];
      for (const found of find()) locals.push({ check, found, said: check.say(found.values) });
      return locals;
    } catch (error) {
      this.report(check, error);
      return [];
    }
  }
}

const NONE: readonly Local[] = [];

/** The fixes of a finding, worked out when asked for. */
export function fixesOf(finding: Finding, scene: Scene): readonly Fix[] {
  return finding.fixes?.() ?? finding.check.fix?.(finding.found.values, scene, finding.at) ?? [];
}

/** A place in the document: the first line of its unit, or of the part it names, added. */
export function documentLine(at: Place, scene: Scene, base: number): number {
  return at.line + (at.part === undefined ? base : (scene.recipe.partsAt[at.part] ?? 0));
}

function place(local: Local, scene: Scene, base: number, part: number | undefined): Finding | undefined {
  const { check, found, said } = local;
  const set = scene.house.severities[check.code];
  if (set === 'off') return undefined;
  const severity = set ?? found.severity ?? check.severity;
  const absolute = (at: Place) => ({ line: documentLine(at, scene, base), start: at.start, end: at.end });
  const related = (said.related ?? []).map((r) => ({ at: absolute(r.at), message: r.message }));
  const owner = found.at.part ?? part;
  return {
    check,
    code: check.code,
    severity,
    at: absolute(found.at),
    said,
    related,
    found,
    ...(owner !== undefined && { part: owner }),
  };
}

function cacheFor<K extends object, V>(caches: WeakMap<House, WeakMap<K, V>>, house: House): WeakMap<K, V> {
  let cache = caches.get(house);
  if (cache === undefined) {
    cache = new WeakMap();
    caches.set(house, cache);
  }
  return cache;
}

const byPlace = (a: Finding, b: Finding): number =>
  a.at.line - b.at.line || a.at.start - b.at.start || (a.code < b.code ? -1 : 1);

interface PlacedAllow {
  readonly at: number;
  readonly code: TextNode;
}

/** `allow CODE because REASON` accepts a finding on the next line, or on the part or recipe at whose head it stands. */
function sortAccepted(
  findings: readonly Finding[],
  scene: Scene,
): Findings & { readonly idle: readonly PlacedAllow[] } {
  const allows = scene.outline.allows.flatMap(({ at, line }) => {
    const { statement } = line;
    if (statement.kind !== 'allow' || statement.code === undefined || statement.reason === undefined) return [];
    return [
      {
        at,
        code: statement.code,
        reason: statement.reason.text,
        next: nextStatement(scene, at),
        reach: reachOf(scene, at),
      },
    ];
  });
  if (allows.length === 0) return { open: findings, accepted: [], idle: [] };
  const open: Finding[] = [];
  const accepted: AcceptedFinding[] = [];
  const used = new Set<PlacedAllow>();
  for (const finding of findings) {
    const fitting = allows.filter(
      (a) =>
        a.code.text === finding.code &&
        (a.next === finding.at.line || a.reach === 'recipe' || (a.reach !== undefined && a.reach === finding.part)),
    );
    const [allow] = fitting;
    for (const each of fitting) used.add(each);
    if (allow === undefined) open.push(finding);
    else accepted.push({ ...finding, reason: allow.reason });
  }
  return { open, accepted, idle: allows.filter((a) => !used.has(a)) };
}

/** The next line that says something. */
function nextStatement(scene: Scene, from: number): number {
  const { lines } = scene.document;
  for (let at = from + 1; at < lines.length; at++) {
    const kind = lines[at]?.statement.kind;
    if (kind !== 'blank' && kind !== 'allow') return at;
  }
  return -1;
}

/** The part, or the recipe, at whose head the line stands: nothing but its own fields and other allows before it. */
function reachOf(scene: Scene, at: number): number | 'recipe' | undefined {
  const { partsAt } = scene.recipe;
  const part = partsAt.findLastIndex((start) => start <= at);
  if (part < 0) return scene.outline.recipe !== undefined && scene.outline.recipe.at < at ? 'recipe' : undefined;
  const start = partsAt[part] ?? 0;
  const named = scene.outline.parts[part]?.source.named ?? false;
  for (let line = named ? start + 1 : start; line < at; line++) {
    const kind = scene.document.lines[line]?.statement.kind;
    if (kind !== 'blank' && kind !== 'allow') return undefined;
  }
  return part;
}
