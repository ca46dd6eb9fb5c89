/**
 * Knows a folder of recipes as an index: what each file holds, and who builds on whom.
 * Refuses to work any recipe out; it reads each file once, until told that it changed.
 */
import { onceByText } from '../measure/once.ts';
import type { Document } from '../notation/document.ts';
import { KEYWORDS } from '../notation/keywords.ts';
import { outline } from '../notation/outline.ts';
import { readLine } from '../notation/statements.ts';
import type { Line, Span, TextNode } from '../notation/tree.ts';
import { titleOf } from '../recipe/names/title.ts';
import type { Files } from './ports.ts';

/** A name and the line it stands on. */
export interface Named {
  readonly name: string;
  readonly at: number;
  readonly span: Span;
}

/** `from FILE`, or `part … from FILE : PART`. */
export interface Link {
  readonly at: number;
  /** The file's name as written. */
  readonly span: Span;
  readonly written: string;
  readonly path: string;
  readonly part?: string;
}

export interface Entry {
  readonly path: string;
  readonly recipe?: Named;
  readonly parts: readonly Named[];
  readonly foods: readonly Named[];
  readonly trials: readonly Named[];
  readonly tags: readonly string[];
  readonly links: readonly Link[];
  /** Where they would lie; none is looked for. */
  readonly pictures: readonly Link[];
}

export class Folder {
  readonly root: string;
  private readonly most: number | undefined;
  private readonly files: Files;
  private readonly byPath = new Map<string, Entry>();
  private paths: readonly string[] | undefined;
  private lastPaths: readonly string[] = [];

  /** Of a folder that nobody opened, so many files and folders are looked at. */
  constructor(files: Files, root: string, most?: number) {
    this.files = files;
    this.root = root;
    this.most = most;
  }

  /** The path of every recipe file, in order. */
  allPaths(): readonly string[] {
    this.paths ??= this.files.recipesBelow(this.root, this.most);
    this.lastPaths = this.paths;
    return this.paths;
  }

  /** The files it has heard of: none is looked for. */
  knownPaths(): readonly string[] {
    return [...new Set([...this.lastPaths, ...this.byPath.keys()])];
  }

  /** The files that were read for it. */
  get size(): number {
    return this.byPath.size;
  }

  /** Every recipe file, in the order of their paths. */
  entries(): readonly Entry[] {
    return this.allPaths()
      .map((path) => this.entry(path))
      .filter((e): e is Entry => e !== undefined);
  }

  entry(path: string): Entry | undefined {
    let entry = this.byPath.get(path);
    if (entry === undefined) {
      const text = this.files.read(path);
      if (text === undefined) return undefined;
      entry = readEntry(path, text, this.files);
      this.byPath.set(path, entry);
    }
    return entry;
  }

  /** The files that build on a file, with the line where they say so. */
  usersOf(path: string): readonly { readonly entry: Entry; readonly link: Link }[] {
    return this.entries().flatMap((entry) =>
      entry.links.filter((l) => l.path === path).map((link) => ({ entry, link })),
    );
  }

  /** What a file says was changed; which files there are was not. */
  edited(path: string): void {
    this.byPath.delete(path);
  }

  /** A file was changed, made or deleted. */
  forget(path: string): void {
    this.byPath.delete(path);
    this.paths = undefined;
  }
}

function readEntry(path: string, text: string, files: Files): Entry {
  const document = skim(text);
  const of = outline(document);
  const { name: title } = titleOf(of.recipe?.line.statement);
  const named = (at: number, node: (Span & { readonly text: string }) | undefined): Named[] =>
    node === undefined ? [] : [{ name: node.text, at, span: { start: node.start, end: node.end } }];
  const links: Link[] = [];
  const linkTo = (at: number, { start, end, text: written }: TextNode, part?: string): Link => ({
    at,
    span: { start, end },
    written,
    path: files.beside(path, written),
    ...(part !== undefined && { part }),
  });
  const link = (at: number, file: TextNode | undefined, part: string | undefined) => {
    if (file !== undefined) links.push(linkTo(at, file, part));
  };
  for (const { at, line } of of.head) if (line.statement.kind === 'from') link(at, line.statement.file, undefined);
  for (const { at, source } of of.parts) {
    const header = source.lines[0]?.statement;
    if (header?.kind === 'part') link(at, header.file, header.filePart?.text ?? titleOf(header).name?.text);
  }
  const first = (block: { readonly at: number }) => document.lines[block.at]?.statement;
  return {
    path,
    ...(of.recipe !== undefined &&
      title !== undefined && { recipe: { name: title.text, at: of.recipe.at, span: title } }),
    parts: of.parts.flatMap(({ at, source }) => {
      const header = source.lines[0]?.statement;
      return header?.kind === 'part' ? named(at, titleOf(header).name) : [];
    }),
    foods: of.foods.flatMap((block) => {
      const statement = first(block);
      return statement?.kind === 'food' ? named(block.at, statement.name) : [];
    }),
    trials: of.trials.flatMap((block) => {
      const statement = first(block);
      return statement?.kind === 'trial' ? named(block.at, statement.date) : [];
    }),
    tags: of.head.flatMap(({ line: { statement } }) =>
      statement.kind === 'tags' ? statement.tags.map(({ text }) => text) : [],
    ),
    links,
    pictures: document.lines.flatMap(({ statement }, at) =>
      statement.kind === 'picture' && statement.file !== undefined ? [linkTo(at, statement.file)] : [],
    ),
  };
}

/** Lines the index is made of. */
const READ = /^\s*(?:recipe|part|from|trial|food|tags|picture)(?![\p{L}\p{N}])/u;
const WORDS: ReadonlySet<string> = new Set(KEYWORDS);
/** The text with only the lines read that the index is made of; in the place of each other one stands one of its kind. */
function skim(text: string): Document {
  const lines = text.split(/\r\n|\n|\r/).map((line) => (READ.test(line) ? readLine(line) : standIn(line)));
  return { lines, eols: lines.map((_, i) => (i === lines.length - 1 ? '' : '\n')) };
}

function standIn(line: string): Line {
  const first = /^\s*([^\s#]+)/.exec(line)?.[1] ?? '';
  return readAgain(first === '' ? '' : WORDS.has(first) ? first : '1 g food');
}

const readAgain = onceByText(readLine, { texts: 100 });
