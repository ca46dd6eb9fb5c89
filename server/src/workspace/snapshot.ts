/**
 * Knows one file at one moment: its text, recipe and findings, worked out when asked for and then kept.
 * Refuses to change: an edit makes a new snapshot that shares all the edit did not reach.
 */

import type { Bug } from '../checks/asked.ts';
import type { BrokenLink, Check, OtherEncoding, PictureFile, Scene } from '../checks/check.ts';
import type { Findings } from '../checks/finding.ts';
import type { House } from '../checks/house.ts';
import { CHECKS } from '../checks/index.ts';
import { CheckRunner, type Run } from '../checks/run.ts';
import { applyEdits, type TextEdit } from '../edits/text-edit.ts';
import type { InPieces } from '../measure/in-pieces.ts';
import {
  type Document,
  editDocument,
  type PositionRange,
  parseDocument,
  parseTogether,
  printDocument,
} from '../notation/document.ts';
import { keptOn } from '../notation/kept.ts';
import { type Outline, outline } from '../notation/outline.ts';
import type { Recipe } from '../recipe/model.ts';
import { bindingRecipe, bindRecipe } from '../recipe/recipe.ts';
import type { Loads } from './inherit/writing.ts';
import { writeOut } from './inherit.ts';
import type { Bases, Loaded } from './ports.ts';
import { Recent } from './recent.ts';
import { variantFindings } from './variant.ts';
import { textOf, type WrittenOut } from './written.ts';

/** A replaced range, or the whole text. */
export interface Change {
  readonly range?: PositionRange;
  readonly text: string;
}

const RUNNER = new CheckRunner(CHECKS);

const isReading = ({ family }: Pick<Check, 'family'>): boolean => family === 'reading';
const READER = new CheckRunner(CHECKS.filter(isReading));

/** What an edit may leave as it is. */
interface Lent {
  readonly outline?: Outline;
  readonly recipe?: Recipe;
  readonly run?: Run;
  /** Of the recipe written out in full. */
  readonly whole?: Lent;
  /** The files that it builds on, as they were. */
  readonly loaded?: Below['loaded'];
}

/** What a base lists or says otherwise than a variant thinks leaves nothing out. */
const HARMLESS: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>([
  'nothing-to-change',
  'still-named',
  'in-several-parts',
]);

/** Of a base, as it stood with what it builds on. */
const BY_ITSELF = keptOn<
  Loaded,
  { readonly house: House; readonly rests: readonly Loaded[]; readonly findings: Findings['open']; readonly lent: Lent }
>();

/** What one recipe builds on, each file once, however many of its bases build on it. */
interface Below {
  readonly loaded: Map<string, Loaded | undefined>;
  readonly written: Loads['done'];
  /** What bases find by themselves. */
  readonly findings: Map<string, Findings['open']>;
}

const nothingBelow = (): Below => ({ loaded: new Map(), written: new Map(), findings: new Map() });

const NO_BASES: Bases = { load: () => undefined };

export class Snapshot implements Scene {
  readonly uri: string;
  readonly version: number;
  readonly document: Document;
  readonly house: House;
  readonly encoding: OtherEncoding | undefined;
  private readonly bases: Bases;
  private readonly before: Lent;
  private readonly below: Below;
  private readonly recent: Recent<Snapshot>;
  /** Where its lines come from, when it is a variant written out in full. */
  readonly writtenFrom: WrittenOut | undefined;
  private madeOutline: Outline | undefined;
  private madeRecipe: Recipe | undefined;
  private madeRun: Run | undefined;
  private madeFindings: Findings | undefined;
  private work: InPieces<void> | undefined;
  private madeWritten: { readonly written: WrittenOut | undefined } | undefined;
  private madeWhole: Snapshot | undefined;

  private constructor(
    uri: string,
    version: number,
    document: Document,
    house: House,
    bases: Bases,
    before: Lent,
    encoding?: OtherEncoding,
    writtenFrom?: WrittenOut,
    below: Below = nothingBelow(),
    recent: Recent<Snapshot> = new Recent(),
  ) {
    this.uri = uri;
    this.version = version;
    this.document = document;
    this.house = house;
    this.bases = bases;
    this.before = before;
    this.encoding = encoding;
    this.writtenFrom = writtenFrom;
    this.below = below;
    this.recent = recent;
  }

  /** `uri` may be a path; `bases` finds the files it builds on, from there. `encoding` is that of a file that is not UTF-8. */
  static open(
    uri: string,
    version: number,
    text: string,
    house: House,
    bases: Bases = NO_BASES,
    encoding?: OtherEncoding,
  ): Snapshot {
    return new Snapshot(uri, version, parseDocument(text), house, bases, {}, encoding);
  }

  /** The file after changes, each made to the text the one before it left. */
  edited(version: number, changes: readonly Change[]): Snapshot {
    let { document } = this;
    for (const { range, text } of changes)
      document = range === undefined ? parseDocument(text) : editDocument(document, range, text);
    return this.next(version, document, changes.at(-1)?.range?.start.line ?? 0);
  }

  /** The same file with edits made to it. */
  after(edits: readonly TextEdit[]): Snapshot {
    return this.next(this.version + 1, applyEdits(this.document, edits), edits[0]?.start.line ?? 0);
  }

  /** The file with another text, which goes on from this one, or from a state that had that text. */
  private next(version: number, document: Document, line: number): Snapshot {
    if (this.madeRun !== undefined) this.recent.add(this);
    const { uri, house, bases, encoding, recent } = this;
    const again = recent.like(document, line);
    const after = new Snapshot(
      uri,
      version,
      again?.document ?? document,
      house,
      bases,
      again?.lentAfter(this.lent()) ?? this.lent(),
      encoding,
      undefined,
      undefined,
      recent,
    );
    after.madeOutline = again?.madeOutline;
    after.madeRecipe = again?.madeRecipe;
    return after;
  }

  /** What it lends to a state of the same text: all, but which lines were seen last. */
  private lentAfter({ run: last }: Lent): Lent {
    const lent = this.lent();
    return last === undefined || lent.run === undefined ? lent : { ...lent, run: { ...lent.run, lines: last.lines } };
  }

  /** The same text under another house. */
  inHouse(house: House): Snapshot {
    return new Snapshot(
      this.uri,
      this.version,
      this.document,
      house,
      this.bases,
      this.madeOutline === undefined ? {} : { outline: this.madeOutline },
      this.encoding,
    );
  }

  /** The same text of a file that was saved in another encoding. */
  inEncoding(encoding: OtherEncoding | undefined): Snapshot {
    return new Snapshot(this.uri, this.version, this.document, this.house, this.bases, this.lent(), encoding);
  }

  get text(): string {
    return printDocument(this.document);
  }

  get outline(): Outline {
    this.madeOutline ??= outline(this.document, this.before.outline);
    return this.madeOutline;
  }

  get recipe(): Recipe {
    this.madeRecipe ??= bindRecipe(this.outline, this.house.world, this.before.recipe);
    return this.madeRecipe;
  }

  /** What is found in it; a variant is judged written out in full, and each finding placed where its writer can act. */
  get findings(): Findings {
    this.madeFindings ??= this.find();
    return this.madeFindings;
  }

  /** What is found of how it reads. Nothing else is asked for that, unless an `allow` may be idle by it, or a base has a say. */
  get misread(): Findings['open'] {
    if (this.madeFindings === undefined && this.outline.allows.length === 0 && !this.recipe.inherits)
      return READER.run(this).findings.open;
    return this.findings.open.filter(({ check }) => isReading(check));
  }

  /** Whether nothing but its findings' places is left to be worked out. */
  get isWorkedOut(): boolean {
    return this.madeFindings !== undefined;
  }

  /** Whether it goes on from nothing: no edit of it will be as long. */
  get isFresh(): boolean {
    return this.before.run === undefined;
  }

  /** Works out what is found in pieces, for all who wait for it; whoever cannot wait may still ask for it at once. */
  workingOut(): InPieces<void> {
    this.work ??= this.pieces();
    return this.work;
  }

  private *pieces(): InPieces<void> {
    const recipe = this.madeRecipe ?? (yield* bindingRecipe(this.outline, this.house.world, this.before.recipe));
    this.madeRecipe ??= recipe;
    const run = this.madeRun ?? (yield* RUNNER.inPieces(this, this.before.run));
    this.madeRun ??= run;
    if (this.whole !== this) yield* this.whole.workingOut();
    void this.findings;
  }

  /** Checks that threw when they were asked for its findings: bugs of Quern, for the log. */
  get bugs(): readonly Bug[] {
    void this.findings;
    const own = this.madeRun?.bugs ?? [];
    return this.whole === this ? own : [...own, ...this.whole.bugs];
  }

  /** Whether something that was found waits until nobody types; `refreshed` says it. */
  get holdsBack(): boolean {
    return this.madeRun?.holdsBack === true || this.madeWhole?.holdsBack === true;
  }

  /** The file written out in full with what it builds on; undefined when it builds on nothing. */
  get written(): WrittenOut | undefined {
    if (!this.recipe.inherits) return undefined;
    this.madeWritten ??= {
      written: writeOut(this.path, this.document, this.outline, this.house, this.bases, [], {
        count: 0,
        done: this.below.written,
      }),
    };
    return this.madeWritten.written;
  }

  /** Where it lies, as its bases would give it. */
  private get path(): string {
    return this.bases.pathOf?.(this.uri) ?? this.uri;
  }

  /** The recipe as a cook cooks it: the file itself, or a variant written out in full. */
  get whole(): Snapshot {
    const { written } = this;
    if (written === undefined || written.files.length === 0) return this;
    this.madeWhole ??= new Snapshot(
      this.uri,
      this.version,
      parseTogether(textOf(written)),
      this.house,
      NO_BASES,
      this.before.whole ?? {},
      undefined,
      written,
    );
    return this.madeWhole;
  }

  /** A file named in it as it stands, worked out in the same house; undefined when it is not there. */
  base(file: string): Snapshot | undefined {
    const base = this.bases.load(this.uri, file);
    return base === undefined ? undefined : Snapshot.open(base.path, 0, base.text, this.house, this.bases);
  }

  /** The picture that it names, as it would be written in this file; undefined where nobody can look. */
  picture(file: string): PictureFile | undefined {
    return this.bases.picture?.(this.uri, file);
  }

  /** Pictures and folders that go on from a name that is begun. */
  pictureNames(begun: string): readonly string[] {
    return this.bases.pictureNames?.(this.uri, begun) ?? [];
  }

  get broken(): readonly BrokenLink[] {
    return this.written?.broken ?? [];
  }

  /** Whether nothing of it is missing: every file and part that it builds on is there. */
  get isWhole(): boolean {
    return this.broken.every(({ kind }) => HARMLESS.has(kind));
  }

  /** The same text after a file it builds on has changed, or when nobody types any more. */
  refreshed(): Snapshot {
    return this.inEncoding(this.encoding);
  }

  private find(): Findings {
    this.madeRun ??= RUNNER.run(this, this.before.run);
    const own = this.madeRun.findings;
    const { written, whole } = this;
    if (written === undefined || whole === this) return own;
    const known = new Map<string, ReadonlySet<string>>();
    const baseHas = (path: string, line: number, code: string): boolean => {
      let at = known.get(path);
      if (at === undefined) {
        at = new Set(this.baseFindings(path).map((f) => `${f.at.line} ${f.code}`));
        known.set(path, at);
      }
      return at.has(`${line} ${code}`);
    };
    return variantFindings(own, this, { scene: whole, findings: whole.findings, written }, baseHas);
  }

  private baseFindings(path: string): Findings['open'] {
    let findings = this.below.findings.get(path);
    if (findings === undefined) {
      findings = this.foundInBase(path);
      this.below.findings.set(path, findings);
    }
    return findings;
  }

  /** What a base finds by itself is the same for all its variants. */
  private foundInBase(path: string): Findings['open'] {
    const base = this.baseAt(path);
    if (base === undefined) return [];
    const known = BY_ITSELF.get(base);
    if (known?.house === this.house && known.rests.every((on) => this.baseAt(on.path) === on)) return known.findings;
    const document = parseTogether(base.text);
    // All variants were given the same one before an edit of it.
    const last = this.before.loaded?.get(path);
    const lent = last && BY_ITSELF.get(last)?.lent;
    const byItself = new Snapshot(
      base.path,
      0,
      document,
      this.house,
      this.bases,
      // Whatever is being typed there is found.
      { ...lent, ...(lent?.run && { run: { ...lent.run, lines: document.lines } }) },
      undefined,
      undefined,
      this.below,
    );
    const { findings, written, isWhole } = byItself;
    const rests = (written?.files ?? []).flatMap((file) => this.baseAt(file) ?? []);
    // What is not there yet may come.
    const { outline, recipe, madeRun: run } = byItself;
    const now = { outline, recipe, ...(run && { run }) };
    if (isWhole) BY_ITSELF.set(base, { house: this.house, rests, findings: findings.open, lent: now });
    return findings.open;
  }

  private baseAt(path: string): Loaded | undefined {
    const { loaded } = this.below;
    if (!loaded.has(path)) loaded.set(path, this.bases.load(this.uri, path));
    return loaded.get(path);
  }

  private lent(): Lent {
    const from = this.madeOutline ?? this.before.outline;
    const recipe = this.madeRecipe ?? this.before.recipe;
    const run = this.madeRun ?? this.before.run;
    const whole = this.madeWhole?.lent() ?? this.before.whole;
    const loaded = this.below.loaded.size > 0 ? this.below.loaded : this.before.loaded;
    return {
      ...(from && { outline: from }),
      ...(recipe && { recipe }),
      ...(run && { run }),
      ...(whole && { whole }),
      ...(loaded && { loaded }),
    };
  }
}
