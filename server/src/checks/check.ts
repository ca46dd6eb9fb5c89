/**
 * Knows what a check is: one finding's meaning, what it computes, its source, its words, its fixes and its examples, in one file.
 * Refuses to know where findings are shown.
 */
import type { TextEdit } from '../edits/text-edit.ts';
import type { Document } from '../notation/document.ts';
import type { Outline } from '../notation/outline.ts';
import type { Line, Span, StatementKind, TextNode } from '../notation/tree.ts';
import type { MeasureName } from '../recipe/measures/kind.ts';
import type { Part, Recipe } from '../recipe/model.ts';
import type { ListedPart } from '../recipe/recipe.ts';
import type { House } from './house.ts';
import type { Severity } from './severity.ts';

export type Family = 'reading' | 'bookkeeping' | 'method' | 'formula' | 'safety' | 'testing';

export type Source =
  | { readonly kind: 'publication'; readonly title: string }
  | { readonly kind: 'common practice, no source' }
  | { readonly kind: 'from memory'; readonly title: string };

/** Where a finding stands. `line` counts from the unit's first line, or from that of part `part` when given. */
export interface Place {
  readonly line: number;
  readonly start: number;
  readonly end: number;
  readonly part?: number;
}

export interface Found<V> {
  readonly at: Place;
  readonly values: V;
  /** Softer than the check's own severity: between the usual band and the implausible one. */
  readonly severity?: Severity;
}

export interface Said {
  /** What was computed, what is usual, what to do; one or two sentences. */
  readonly message: string;
  /** How the message begins where it says of which part it speaks, which who sees it in its place knows: `The dough:`. */
  readonly about?: string;
  readonly value?: number;
  /** `1` for a ratio, else the unit's symbol. */
  readonly unit?: string;
  readonly band?: readonly [number | null, number | null];
  readonly source?: string;
  readonly related?: readonly { readonly at: Place; readonly message: string }[];
}

/** layout: blanks and spelling. words: no gram changes. amounts: grams or degrees change. */
export type Effect = 'layout' | 'words' | 'amounts';

export interface Fix {
  /** What it does, as an order: `Write 75 g water`. */
  readonly title: string;
  readonly effect: Effect;
  /** It invents nothing, and may be made with nobody looking, where that leaves all else as it was (`workspace/unattended.ts`). */
  readonly unattended?: true;
  /** By line of the document. */
  readonly edits: readonly TextEdit[];
}

/** Something a file asks of another that is not there. */
export interface BrokenLink {
  readonly kind:
    | 'missing-file'
    | 'missing-below'
    | 'outside'
    | 'unreadable'
    | 'too-many'
    | 'nothing-in-it'
    | 'itself'
    | 'circle'
    | 'circle-below'
    | 'unknown-part'
    | 'nothing-to-change'
    | 'still-named'
    | 'in-several-parts';
  readonly line: number;
  readonly span: Span;
  /** The file, part or ingredient that was named; of what was dropped, the words of the step that still names it. */
  readonly name: string;
  /** Names that are there. */
  readonly near: readonly string[];
  /** Of a file that cannot be read, why: after its name. */
  readonly why?: string;
  /** Of a circle, the path of the file at which it closes. */
  readonly round?: string;
  /** Of a change that reaches several parts, each with the ingredient it gets there; that is absent of what is dropped. */
  readonly reaches?: readonly { readonly part: string; readonly gets?: string }[];
}

/** What a file is written in, where that is not UTF-8. */
export interface OtherEncoding {
  /** Absent where nothing says which. */
  readonly name?: 'UTF-16' | 'UTF-16 without a mark' | 'UTF-32';
  /** Its text is read all the same. */
  readonly isRead: boolean;
  /** The first byte that cannot be UTF-8, and its line, from 0. */
  readonly byte?: number;
  readonly line?: number;
}

/** Where the file of a picture lies; not read, only looked for. */
export type PictureFile =
  | { readonly kind: 'there'; readonly path: string }
  | { readonly kind: 'outside' }
  /** `near` has names that are there. */
  | { readonly kind: 'missing'; readonly near: readonly string[] };

/** A file read and worked out, for checks of the whole recipe and for fixes. */
export interface Scene {
  readonly document: Document;
  readonly outline: Outline;
  readonly recipe: Recipe;
  readonly house: House;
  /** Of a file that builds on others. */
  readonly broken?: readonly BrokenLink[];
  /** The picture that it names; undefined where nobody can look. */
  readonly picture?: (file: string) => PictureFile | undefined;
  /** Of a file that is not UTF-8. */
  readonly encoding?: OtherEncoding | undefined;
}

export interface Example {
  readonly text: string;
  /** The text after the fix of the given title. */
  readonly after?: Readonly<Record<string, string>>;
}

interface Declaration<V> {
  /** Permanent; names the bad state and reads after "allow". */
  readonly code: string;
  /** One line in a cook's words, no full stop. */
  readonly title: string;
  readonly family: Family;
  readonly severity: Severity;
  readonly source: Source;
  /** The figure it stands on may not be what is meant: like that of an error, it is not converted before it is mended. */
  readonly doubtsFigure?: true;
  /** What, why it matters, what to do, and when it stays silent. Markdown. */
  readonly explain: string;
  readonly say: (values: V) => Said;
  /** Called only when asked for; `at.line` is the document's. Gives nothing when unsure. */
  readonly fix?: (values: V, scene: Scene, at: Place) => readonly Fix[];
  /** The arithmetic of a finding that is computed, line by line, in Markdown; of a measure held against a band it is known without. */
  readonly work?: (values: V, scene: Scene) => readonly string[];
  /** Marked fixtures: see `tests/support/marks.ts`. */
  readonly examples: { readonly good: readonly string[]; readonly bad: readonly (string | Example)[] };
}

export interface LineCheck<V = unknown> extends Declaration<V> {
  readonly scope: 'line';
  /** The lines it is asked about: those with a fault, or of one kind. */
  readonly asks: 'faulty' | StatementKind;
  /** What no line shows by itself; run at every edit, so it must be cheap, and give the same objects again. */
  readonly findInFile?: (scene: Scene) => readonly Found<V>[];
  readonly find: (line: Line, house: House) => Iterable<Found<V>>;
}

export interface PartCheck<V = unknown> extends Declaration<V> {
  readonly scope: 'part';
  /** Asked only about parts whose kind is judged by one of these; about every part where absent. */
  readonly measures?: readonly MeasureName[];
  /** What no part shows by itself; run at every edit, so it must be cheap, and give the same objects again. */
  readonly findInFile?: (scene: Scene) => readonly Found<V>[];
  readonly find: (part: Part, house: House) => Iterable<Found<V>>;
}

/** Of what a part's list comes to, with those of the parts that it takes in: a change of its steps asks nothing. */
export interface ListCheck<V = unknown> extends Omit<PartCheck<V>, 'scope' | 'find'> {
  readonly scope: 'list';
  readonly find: (part: ListedPart, house: House) => Iterable<Found<V>>;
}

export interface RecipeCheck<V = unknown> extends Declaration<V> {
  readonly scope: 'recipe';
  /** Run at every edit: what it asks of each part it keeps with `overParts`, and what it finds there it gives as the same object again. */
  readonly find: (scene: Scene) => readonly Found<V>[];
}

/** An `allow` line with a reason that accepts nothing. */
export interface IdleAllow {
  readonly line: number;
  readonly code: TextNode;
  /** There is a check of that name. */
  readonly known: boolean;
  /** The house has turned it off. */
  readonly off: boolean;
}

/** Run last, on what the other checks left unaccepted. */
export interface AllowCheck<V = unknown> extends Declaration<V> {
  readonly scope: 'allows';
  readonly find: (idle: IdleAllow) => Iterable<Found<V>>;
}

export type Check = LineCheck | ListCheck | PartCheck | RecipeCheck | AllowCheck;

/** A check with its values' type closed over, so that all checks fit one list. */
export function defineCheck<V>(
  check: LineCheck<V> | ListCheck<V> | PartCheck<V> | RecipeCheck<V> | AllowCheck<V>,
): Check {
  // Only `find` makes values, and only the same check's `say` and `fix` are given them.
  return check as unknown as Check;
}
