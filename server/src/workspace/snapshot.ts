/**
 * Knows one file at one moment: its text, recipe and findings, worked out when asked for and then kept.
 * Refuses to change: an edit makes a new snapshot that shares all the edit did not reach.
 */

import type { Check, Scene } from '../checks/check.ts';
import type { House } from '../checks/house.ts';
import { CHECKS } from '../checks/index.ts';
import { CheckRunner, type Findings } from '../checks/run.ts';
import { type Document, editDocument, type PositionRange, parseDocument, printDocument } from '../notation/document.ts';
import { type Outline, outline } from '../notation/outline.ts';
import { bindRecipe, type Recipe } from '../recipe/recipe.ts';

/** A replaced range, or the whole text. */
export interface Change {
  readonly range?: PositionRange;
  readonly text: string;
}

const bugs: { check: string; error: unknown }[] = [];
const RUNNER = new CheckRunner(CHECKS, (check: Check, error: unknown) => {
  bugs.push({ check: check.code, error });
});

/** Checks that threw since the last call: bugs of Quern, for the log. */
export function takeBugs(): readonly { readonly check: string; readonly error: unknown }[] {
  return bugs.splice(0);
}

let snapshots = 0;

export class Snapshot implements Scene {
  readonly uri: string;
  readonly version: number;
  readonly document: Document;
  readonly house: House;
  /** No two snapshots have the same. */
  readonly serial = ++snapshots;
  private readonly before: { outline?: Outline; recipe?: Recipe };
  private madeOutline: Outline | undefined;
  private madeRecipe: Recipe | undefined;
  private madeFindings: Findings | undefined;

  private constructor(
    uri: string,
    version: number,
    document: Document,
    house: House,
    before: { outline?: Outline; recipe?: Recipe },
  ) {
    this.uri = uri;
    this.version = version;
    this.document = document;
    this.house = house;
    this.before = before;
  }

  static open(uri: string, version: number, text: string, house: House): Snapshot {
    return new Snapshot(uri, version, parseDocument(text), house, {});
  }

  /** The file after changes, each made to the text the one before it left. */
  edited(version: number, changes: readonly Change[]): Snapshot {
    let { document } = this;
    for (const { range, text } of changes)
      document = range === undefined ? parseDocument(text) : editDocument(document, range, text);
    return new Snapshot(this.uri, version, document, this.house, this.lent());
  }

  /** The same text under another house. */
  inHouse(house: House): Snapshot {
    return new Snapshot(
      this.uri,
      this.version,
      this.document,
      house,
      this.madeOutline === undefined ? {} : { outline: this.madeOutline },
    );
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

  get findings(): Findings {
    this.madeFindings ??= RUNNER.run(this);
    return this.madeFindings;
  }

  private lent(): { outline?: Outline; recipe?: Recipe } {
    const from = this.madeOutline ?? this.before.outline;
    const recipe = this.madeRecipe ?? this.before.recipe;
    return { ...(from && { outline: from }), ...(recipe && { recipe }) };
  }
}
