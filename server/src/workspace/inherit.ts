/**
 * Knows how a file that builds on others is written out in full: a text of its own, each line with where it comes from.
 * Refuses to judge it: the text is worked out like any other, and what is found in it is placed back by `variant.ts`.
 */

import type { BrokenLink } from '../checks/check.ts';
import type { House } from '../checks/house.ts';
import { scaleAmount } from '../edits/amount-text.ts';
import { applyEdits, replaceSpan, type TextEdit } from '../edits/text-edit.ts';
import { likelyGrams } from '../food/weigh.ts';
import { type Document, parseTogether } from '../notation/document.ts';
import { measuresOf } from '../notation/item-amounts.ts';
import { keptOn } from '../notation/kept.ts';
import { type Outline, outline } from '../notation/outline.ts';
import type { IngredientNode, Line, Span, Statement } from '../notation/tree.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import { bindRecipe, type Recipe } from '../recipe/recipe.ts';
import { titleOf } from '../recipe/title.ts';
import { sameName, wordsOf } from '../recipe/words.ts';
import type { Bases, Loaded } from './ports.ts';
import { withOven } from './taken-oven.ts';
import {
  afterList,
  type Block,
  type Blocks,
  blocksOf,
  fieldName,
  ingredientName,
  ingredientText,
  kindOf,
  namesIt,
  type Origin,
  spaced,
  statementOf,
  type WrittenLine,
  type WrittenOut,
  withKind,
} from './written.ts';

/** Without what is missing, nothing that builds on it is whole. */
export const MISSING: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>(['missing-file', 'missing-below']);

const CIRCLES: ReadonlySet<BrokenLink['kind']> = new Set<BrokenLink['kind']>(['itself', 'circle', 'circle-below']);

/** More files than this one on another are a mistake. */
const DEEPEST = 20;

/** The file written out; undefined when it builds on no other. */
export function writeOut(
  path: string,
  document: Document,
  of: Outline,
  house: House,
  bases: Bases,
  above: readonly string[] = [],
): WrittenOut | undefined {
  const from = of.head.find(({ line }) => line.statement.kind === 'from');
  const parts = of.parts.some(({ source }) => fileOf(source.lines[0]) !== undefined);
  if (from === undefined && !parts) return undefined;
  return new Writing(path, document, of, house, bases, [...above, path]).whole();
}

interface BoundBlock {
  readonly document: Document;
  readonly recipe: Recipe;
}

/** Of a file that builds on no other. */
const ALONE = keptOn<Loaded, Blocks>();
const BOUND = keptOn<Block, BoundBlock>();

class Writing {
  private readonly broken: BrokenLink[] = [];
  /** Where steps of a base name what was dropped: the words, and the line that drops it. */
  private readonly dropped: {
    readonly at: number;
    readonly name: Span;
    readonly step: WrittenLine;
    readonly words: string;
  }[] = [];
  private readonly files = new Set<string>();
  private readonly path: string;
  private readonly document: Document;
  private readonly of: Outline;
  private readonly house: House;
  private readonly bases: Bases;
  private readonly above: readonly string[];

  constructor(path: string, document: Document, of: Outline, house: House, bases: Bases, above: readonly string[]) {
    this.path = path;
    this.document = document;
    this.of = of;
    this.house = house;
    this.bases = bases;
    this.above = above;
  }

  whole(): WrittenOut {
    const base = this.baseOfHead();
    const own = this.of.parts.map(({ at, source }): Block => {
      const header = source.lines[0]?.statement;
      const lines = source.lines.map(
        (line, i): WrittenLine => ({ text: line.text, origin: { kind: 'own', line: at + i } }),
      );
      const block = { name: header?.kind === 'part' ? (titleOf(header).name?.text ?? '') : '', lines };
      return this.withPartFrom(block);
    });
    const changed = this.changeHead(base.blocks);
    const blocks = this.place(changed, own);
    this.sayStillNamed(blocks);
    const trials = this.of.trials.map((block) =>
      block.lines.map((line, i): WrittenLine => ({ text: line.text, origin: { kind: 'own', line: block.at + i } })),
    );
    const lines = [...this.head(base), ...blocks.flatMap((b) => spaced(b.lines)), ...trials.flatMap(spaced)];
    return { lines, broken: this.broken, files: [...this.files] };
  }

  /** The base of the whole recipe, written out itself. */
  private baseOfHead(): Blocks {
    const from = this.of.head.find(({ line }) => line.statement.kind === 'from');
    const { statement } = from?.line ?? {};
    if (from === undefined || statement?.kind !== 'from' || statement.file === undefined)
      return { head: [], blocks: [] };
    return this.load(statement.file.text, from.at, statement.file) ?? { head: [], blocks: [] };
  }

  /** Another file as blocks; undefined, and said, when it is not there or comes round in a circle. */
  private load(file: string, at: number, span: Span): Blocks | undefined {
    const loaded = this.bases.load(this.path, file);
    if (loaded === undefined) {
      this.say('missing-file', at, span, file, this.bases.near?.(this.path, file) ?? []);
      return undefined;
    }
    if (this.above.includes(loaded.path) || this.above.length > DEEPEST) {
      this.say(loaded.path === this.path ? 'itself' : 'circle', at, span, file, [], loaded.path);
      return undefined;
    }
    this.files.add(loaded.path);
    const alone = ALONE.get(loaded);
    if (alone !== undefined) return this.saidEmpty(alone, at, span, file);
    const document = parseTogether(loaded.text);
    const of = outline(document);
    const inner = writeOut(loaded.path, document, of, this.house, this.bases, this.above);
    for (const path of inner?.files ?? []) this.files.add(path);
    if (inner !== undefined) this.sayOfBelow(inner.broken, at, span, file);
    const lines =
      inner === undefined
        ? document.lines.map(
            (line, i): WrittenLine => ({ text: line.text, origin: { kind: 'base', path: loaded.path, line: i } }),
          )
        : inner.lines.map(
            ({ text, origin }): WrittenLine => ({
              text,
              origin: origin.kind === 'own' ? { kind: 'base', path: loaded.path, line: origin.line } : origin,
            }),
          );
    const blocks = blocksOf(lines);
    if (inner === undefined) ALONE.set(loaded, blocks);
    return this.saidEmpty(blocks, at, span, file);
  }

  /** A file of foods, or one that is begun, brings nothing; of what is broken below, that is said. */
  private saidEmpty(blocks: Blocks, at: number, span: Span, file: string): Blocks {
    if (blocks.blocks.length === 0 && !this.broken.some(({ line }) => line === at))
      this.say('nothing-in-it', at, span, file, []);
    return blocks;
  }

  /** What a base itself builds on in vain. */
  private sayOfBelow(broken: readonly BrokenLink[], at: number, span: Span, file: string): void {
    const circle = broken.find(({ kind }) => CIRCLES.has(kind));
    // This file is in the circle too where that closes here or above.
    const through = broken.find(({ kind, round }) => kind === 'circle' && this.above.includes(round ?? ''));
    if (through !== undefined) this.say('circle', at, span, file, [], through.round);
    else if (circle !== undefined) this.say('circle-below', at, span, file, []);
    else if (broken.some(({ kind }) => MISSING.has(kind))) this.say('missing-below', at, span, file, []);
  }

  /** The recipe's line and fields: the file's own, then what only the base says. */
  private head(base: Blocks): WrittenLine[] {
    const own: WrittenLine[] = [];
    const end = this.of.parts[0]?.at ?? this.of.trials[0]?.at ?? this.of.foods[0]?.at ?? this.document.lines.length;
    const kind = base.head.map(({ text }) => statementOf(text)).find((s) => s.kind === 'recipe');
    const said = new Set<string>();
    for (let at = 0; at < end; at++) {
      const line = this.document.lines[at];
      if (line === undefined) continue;
      const { statement } = line;
      if (
        statement.kind === 'from' ||
        statement.kind === 'swap' ||
        statement.kind === 'drop' ||
        statement.kind === 'add'
      )
        continue;
      said.add(fieldName(statement));
      const as = statement.kind === 'recipe' && titleOf(statement).as === undefined ? titleOf(kind).as : undefined;
      own.push({ text: as === undefined ? line.text : withKind(line, as.text), origin: { kind: 'own', line: at } });
    }
    const theirs = base.head.filter(({ text }) => {
      const statement = statementOf(text);
      const name = fieldName(statement);
      return name !== '' && name !== 'recipe' && name !== 'by' && (name === 'note' || !said.has(name));
    });
    const trimmedOwn = own.toReversed();
    while (trimmedOwn[0] !== undefined && trimmedOwn[0].text.trim() === '') trimmedOwn.shift();
    return [...trimmedOwn.toReversed(), ...theirs];
  }

  /** A part that comes from another file, with the file's own lines laid over it. */
  private withPartFrom(block: Block): Block {
    const [header] = block.lines;
    const statement = header === undefined ? undefined : statementOf(header.text);
    if (
      header === undefined ||
      statement?.kind !== 'part' ||
      statement.file === undefined ||
      header.origin.kind !== 'own'
    )
      return block;
    const loaded = this.load(statement.file.text, header.origin.line, statement.file);
    if (loaded === undefined) return block;
    const wanted = statement.filePart?.text ?? block.name;
    const found =
      loaded.blocks.find((b) => sameName(b.name, wanted)) ??
      (statement.filePart === undefined && loaded.blocks.length === 1 ? loaded.blocks[0] : undefined);
    if (found === undefined) {
      // What is not whole may have the part once it is mended.
      if (this.broken.some(({ line }) => line === header.origin.line)) return block;
      const span = statement.filePart ?? statement.file;
      this.say(
        'unknown-part',
        header.origin.line,
        span,
        wanted,
        loaded.blocks.map((b) => b.name).filter((n) => n !== ''),
      );
      return block;
    }
    const own = titleOf(statement);
    const title = header.text.slice(0, (own.as?.end ?? own.name?.end) || undefined);
    const kinds = [...found.lines.slice(0, 1), ...(found.name === '' ? loaded.head : [])].map(kindOf);
    const inherited = kinds.find((kind) => kind !== undefined);
    const as = own.as === undefined && inherited !== undefined ? ` as ${inherited}` : '';
    const lines = withOven(found, loaded, this.house.world);
    return this.merge(
      { name: block.name, lines },
      { ...block, lines: [{ ...header, text: title + as }, ...block.lines.slice(1)] },
    );
  }

  /** Swaps, drops and adds of the recipe's head, made to the base's parts. */
  private changeHead(blocks: readonly Block[]): readonly Block[] {
    let changed = blocks;
    for (const { at, line } of this.of.head) {
      const { statement } = line;
      if (statement.kind !== 'swap' && statement.kind !== 'drop' && statement.kind !== 'add') continue;
      const before = changed;
      const reached = this.reachOf(before, statement, at);
      changed = changed.map((b) => this.change(b, statement, at, reached.get(b)));
      if (statement.kind === 'swap') {
        const holding = before.filter((b, i) => b !== changed[i]);
        changed = renamed(changed, this.namedElsewhere(before, holding, statement));
      }
      if (statement.kind === 'add') changed = this.added(before, statement.ingredient, at, line);
      else if (changed.every((b, i) => b === before[i])) this.nothingToChange(statement, at, before);
    }
    return changed;
  }

  /** What each part gets of a swap that reaches several: its share of the new amount by what it had of the old, where both are known. */
  private reachOf(blocks: readonly Block[], statement: Statement, at: number): ReadonlyMap<Block, string> {
    const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
    const holding = old === undefined ? [] : blocks.filter((b) => lineOf(b, old.text) >= 0);
    const gets = new Map<Block, string>();
    if (old === undefined || holding.length < 2) return gets;
    if (statement.kind === 'swap') {
      const text = ingredientText(this.document.lines[at]?.text ?? '', statement.ingredient);
      const grams = holding.map((b) => this.gramsIn(b, lineOf(b, old.text)));
      const whole = grams.reduce<number>((sum, g) => sum + (g ?? Number.NaN), 0);
      holding.forEach((b, i) => {
        gets.set(b, whole > 0 ? sharedText(text, (grams[i] ?? 0) / whole) : text);
      });
    }
    const reaches = holding.map((b) => {
      const get = gets.get(b);
      return { part: b.name, ...(get !== undefined && { gets: get }) };
    });
    const { start, end } = old;
    this.broken.push({ kind: 'in-several-parts', line: at, span: { start, end }, name: old.text, near: [], reaches });
    return gets;
  }

  /** What an ingredient line of a block weighs, likeliest. */
  private gramsIn(block: Block, line: number): number | undefined {
    const { recipe } = this.boundAlone(block);
    const weighed = ingredientAt(recipe, line)?.weighed;
    return weighed?.known === true && recipe.parts[0]?.head.nominal === false ? likelyGrams(weighed) : undefined;
  }

  private nothingToChange(
    statement: Extract<Statement, { kind: 'swap' | 'drop' }>,
    at: number,
    blocks: readonly Block[],
  ): void {
    const names = blocks.flatMap((b) => b.lines.map((l) => ingredientName(l.text)).filter((n) => n !== undefined));
    if (blocks.length > 0) this.sayNothing(statement, at, names);
  }

  private sayNothing(
    statement: Extract<Statement, { kind: 'swap' | 'drop' }>,
    at: number,
    names: readonly string[],
  ): void {
    // What cannot be read is said to be, and that is enough.
    if (statement.kind === 'swap' && statement.ingredient.name === undefined) return;
    const name = statement.kind === 'swap' ? statement.old : statement.name;
    if (name !== undefined) this.say('nothing-to-change', at, name, name.text, names);
  }

  /** The ingredient after the list of the last part that has one. */
  private added(blocks: readonly Block[], node: IngredientNode, at: number, line: Line): readonly Block[] {
    const text = `  ${ingredientText(line.text, node)}`;
    const last = blocks.findLastIndex((b) => b.lines.some((l) => ingredientName(l.text) !== undefined));
    return blocks.map((b, i) =>
      i === last ? { ...b, lines: afterList(b.lines, [{ text, origin: { kind: 'own', line: at } }]) } : b,
    );
  }

  /** One swap or drop in one part, which gets so much of a swap that is shared; the same block when it does not have the ingredient. */
  private change(block: Block, statement: Statement, at: number, gets?: string): Block {
    const old = statement.kind === 'swap' ? statement.old : statement.kind === 'drop' ? statement.name : undefined;
    if (old === undefined) return block;
    const index = lineOf(block, old.text);
    if (index < 0) return block;
    if (statement.kind === 'drop') {
      for (const { line, mention, words } of this.mentionsOf(block, index).mentions) {
        const step = block.lines[line - 1];
        if (step !== undefined && mention.ingredients.length === 1) this.dropped.push({ at, name: old, step, words });
      }
      return { ...block, lines: block.lines.toSpliced(index, 1) };
    }
    if (statement.kind !== 'swap') return block;
    const own = this.document.lines[at]?.text ?? '';
    const renamed = this.renameMentions(block, index, statement.ingredient.name?.text ?? old.text);
    const text = `  ${gets ?? ingredientText(own, statement.ingredient)}`;
    return { ...block, lines: renamed.with(index, { text, origin: { kind: 'own', line: at } }) };
  }

  /** The steps of a block with an ingredient's mentions in its new name, where the old words no longer fit it. */
  private renameMentions(block: Block, ingredientLine: number, name: string): readonly WrittenLine[] {
    const { document, mentions } = this.mentionsOf(block, ingredientLine);
    const edits: TextEdit[] = mentions
      .filter(({ words }) => !namesIt(name, words))
      .map(({ line, mention }) => replaceSpan(line, mention, name));
    const edited = applyEdits(document, edits);
    return block.lines.map((l, i) => ({ ...l, text: edited.lines[i + 1]?.text ?? l.text }));
  }

  /** The lines of parts that name what another part lists and a swap takes away, by where they come from, in the new name. */
  private namedElsewhere(
    blocks: readonly Block[],
    holding: readonly Block[],
    { old, ingredient }: Extract<Statement, { kind: 'swap' }>,
  ): Renamed {
    const texts = new Map<Origin, { readonly was: string; readonly text: string }>();
    const word = wordsOf(old?.text ?? '').at(-1);
    const name = ingredient.name?.text;
    const others = blocks.filter((b) => !holding.includes(b));
    if (old === undefined || name === undefined || word === undefined || holding.length === 0) return texts;
    if (!others.some((b) => b.lines.some(({ text }) => wordsOf(text).includes(word)))) return texts;
    const lines = blocks.flatMap((b) => b.lines);
    const document = parseTogether(['recipe x', ...lines.map((l) => l.text)].join('\n'));
    const { parts, partsAt } = bindRecipe(outline(document), this.house.world);
    const gone = new Set(holding.map((b) => b.lines[lineOf(b, old.text)]));
    const elsewhere = new Set(others.flatMap((b) => b.lines));
    const edits = new Map<string, TextEdit>();
    const named = new Map<number, WrittenLine>();
    for (const { ingredient, uses } of parts.flatMap(({ ledger }) => ledger)) {
      const part = parts.find(({ head }) => head.ingredients.includes(ingredient));
      if (part === undefined || !gone.has(lines[(partsAt[part.index] ?? 0) + ingredient.line - 1])) continue;
      for (const use of uses) {
        const at = (partsAt[use.part] ?? 0) + use.line;
        const from = lines[at - 1];
        const { start, end } = use.mention;
        if (from === undefined || !elsewhere.has(from)) continue;
        if (namesIt(name, document.lines[at]?.text.slice(start, end) ?? '')) continue;
        edits.set(`${at}:${start}`, replaceSpan(at, use.mention, name));
        named.set(at, from);
      }
    }
    const edited = applyEdits(document, [...edits.values()]);
    for (const [at, { origin, text: was }] of named) texts.set(origin, { was, text: edited.lines[at]?.text ?? was });
    return texts;
  }

  /** Where the steps of a block name an ingredient of its list; the block stands a line lower in the document. */
  private mentionsOf(block: Block, ingredientLine: number) {
    const { document, recipe } = this.boundAlone(block);
    const part = recipe.parts[0];
    const offset = recipe.partsAt[0] ?? 0;
    const ingredient = ingredientAt(recipe, ingredientLine);
    const mentions = (part?.ledger.find((e) => e.ingredient === ingredient)?.uses ?? []).map(({ line, mention }) => ({
      line: offset + line,
      mention,
      words: document.lines[offset + line]?.text.slice(mention.start, mention.end) ?? '',
    }));
    return { document, mentions };
  }

  /** A base's own block is bound once for all its variants. */
  private boundAlone(block: Block): BoundBlock {
    const { world } = this.house;
    const known = BOUND.get(block);
    if (known?.recipe.world === world) return known;
    const document = parseTogether(['recipe x', ...block.lines.map((l) => l.text)].join('\n'));
    const bound = { document, recipe: bindRecipe(outline(document), world) };
    BOUND.set(block, bound);
    return bound;
  }

  /** Steps that stay, of those that name what was dropped, where nothing else in their part is called so. */
  private sayStillNamed(blocks: readonly Block[]): void {
    for (const { at, name, step, words } of this.dropped) {
      const block = blocks.find((b) => b.lines.some((l) => l.origin === step.origin && l.text.includes(words)));
      const other = block?.lines.some((l) => namesIt(ingredientName(l.text), words)) ?? true;
      const said = this.broken.some((b) => b.kind === 'still-named' && b.line === at);
      if (!other && !said) this.say('still-named', at, name, words, []);
    }
  }

  /** The base's parts with the file's own of the same name laid over them, and its new ones where it puts them. */
  private place(base: readonly Block[], own: readonly Block[]): readonly Block[] {
    const overs = base.map((b) => own.find((o) => sameName(o.name, b.name)));
    const merged = base.map((b, i) => (overs[i] === undefined ? b : this.merge(b, overs[i])));
    const blocks = [...this.renamedElsewhere(base, overs, merged)];
    own.forEach((o, i) => {
      if (base.some((b) => sameName(b.name, o.name))) return;
      this.sayNothingToChange(o, base);
      const next = own.slice(i + 1).find((n) => base.some((b) => sameName(b.name, n.name)));
      const before = next === undefined ? -1 : blocks.findIndex((b) => sameName(b.name, next.name));
      blocks.splice(before < 0 ? blocks.length : before, 0, o);
    });
    return blocks;
  }

  /** The parts laid over, each with what the others swapped in its new name. */
  private renamedElsewhere(
    base: readonly Block[],
    overs: readonly (Block | undefined)[],
    merged: readonly Block[],
  ): readonly Block[] {
    let before = base;
    let blocks = merged;
    overs.forEach((over, i) => {
      for (const { text } of over?.lines ?? []) {
        const statement = statementOf(text);
        const from = before[i];
        if (statement.kind !== 'swap' || from === undefined) continue;
        const lines = this.namedElsewhere(before, [from], statement);
        before = renamed(before, lines);
        blocks = renamed(blocks, lines);
      }
    });
    return blocks;
  }

  /** A part that is the file's own alone has nothing for a swap or a drop to change. */
  private sayNothingToChange({ lines }: Block, base: readonly Block[]): void {
    const statement = statementOf(lines[0]?.text ?? '');
    const taken = statement.kind === 'part' && statement.file !== undefined;
    // Of a base that is missing, that is said already.
    if (taken || (base.length === 0 && this.of.head.some(({ line }) => line.statement.kind === 'from'))) return;
    for (const { text, origin } of lines) {
      const statement = statementOf(text);
      if (origin.kind === 'own' && (statement.kind === 'swap' || statement.kind === 'drop'))
        this.sayNothing(statement, origin.line, []);
    }
  }

  /** Own lines over a base's part: a line of the same name instead of it, steps instead of all its steps, the rest beside. */
  private merge(base: Block, own: Block): Block {
    let block = base;
    const [header] = own.lines;
    const named = header !== undefined && statementOf(header.text).kind === 'part';
    const lines = named ? own.lines.slice(1) : own.lines;
    const extra: WrittenLine[] = [];
    const steps: WrittenLine[] = [];
    // What is accepted at the head is so for the part; below it, for the next line, wherever that comes to stand.
    const said = lines.filter((l) => statementOf(l.text).kind !== 'blank');
    const below = said.findIndex((l) => statementOf(l.text).kind !== 'allow');
    const atHead = said.slice(0, below < 0 ? said.length : below);
    let allows: WrittenLine[] = [];
    for (const line of said.slice(atHead.length)) {
      const statement = statementOf(line.text);
      const at = line.origin.kind === 'own' ? line.origin.line : 0;
      if (statement.kind === 'allow') {
        allows.push(line);
        continue;
      }
      if (statement.kind === 'swap' || statement.kind === 'drop') {
        const changed = this.change(block, statement, at);
        if (changed === block && line.origin.kind === 'own') this.nothingToChange(statement, at, [block]);
        const index = changed.lines.findIndex(({ origin }) => origin.kind === 'own' && origin.line === at);
        block = index < 0 ? changed : { ...changed, lines: changed.lines.toSpliced(index, 0, ...allows) };
      } else if (statement.kind === 'add')
        extra.push(...allows, { ...line, text: `  ${ingredientText(line.text, statement.ingredient)}` });
      else if (statement.kind === 'ingredient') {
        const index = block.lines.findIndex((l) =>
          sameName(ingredientName(l.text) ?? '', ingredientName(line.text) ?? '?'),
        );
        if (index < 0) extra.push(...allows, line);
        else block = { ...block, lines: block.lines.toSpliced(index, 1, ...allows, line) };
      } else if (statement.kind === 'step') steps.push(...allows, line);
      allows = [];
    }
    const kept =
      steps.length === 0 ? block.lines : [...block.lines.filter((l) => statementOf(l.text).kind !== 'step'), ...steps];
    const merged = afterList(kept, [...extra, ...allows]);
    if (!named || header === undefined) return { ...block, lines: [...atHead, ...merged] };
    const inherited = kindOf(header) === undefined ? kindOf(merged[0]) : undefined;
    const as = inherited === undefined ? '' : ` as ${inherited}`;
    // The nameless part of a recipe without parts has no header to give up.
    const rest = statementOf(merged[0]?.text ?? '').kind === 'part' ? merged.slice(1) : merged;
    return { ...block, lines: [{ ...header, text: header.text.trimEnd() + as }, ...atHead, ...rest] };
  }

  private say(
    kind: BrokenLink['kind'],
    line: number,
    { start, end }: Span,
    name: string,
    near: readonly string[],
    round?: string,
  ): void {
    this.broken.push({ kind, line, span: { start, end }, name, near, ...(round !== undefined && { round }) });
  }
}

/** Lines in a new name, by where they come from. */
type Renamed = ReadonlyMap<Origin, { readonly was: string; readonly text: string }>;

function renamed(blocks: readonly Block[], lines: Renamed): readonly Block[] {
  if (lines.size === 0) return blocks;
  return blocks.map((block) => ({
    ...block,
    lines: block.lines.map((line) => {
      const now = lines.get(line.origin);
      return now?.was === line.text ? { ...line, text: now.text } : line;
    }),
  }));
}

/** The line of a block that names an ingredient, or -1. */
const lineOf = (block: Block, name: string): number =>
  block.lines.findIndex((l) => namesIt(ingredientName(l.text), name));

/** The ingredient of a block's line, in the recipe of that block alone, where it stands a line lower. */
function ingredientAt(recipe: Recipe, line: number): Ingredient | undefined {
  const offset = recipe.partsAt[0] ?? 0;
  return recipe.parts[0]?.head.ingredients.find((i) => offset + i.line - 1 === line);
}

/** An ingredient line with so much of its amounts. */
function sharedText(text: string, share: number): string {
  const document = parseTogether(text);
  const statement = document.lines[0]?.statement;
  if (statement?.kind !== 'ingredient') return text;
  const edits = measuresOf(statement).flatMap((amount) => scaleAmount(0, amount, share));
  return applyEdits(document, edits).lines[0]?.text ?? text;
}

function fileOf(line: Line | undefined): string | undefined {
  return line?.statement.kind === 'part' ? line.statement.file?.text : undefined;
}
