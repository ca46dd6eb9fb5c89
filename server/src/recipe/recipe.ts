/**
 * Knows the recipe worked out: its parts with their steps, what each step mentions, and the ledger of every ingredient.
 * Refuses to judge. Whatever an edit did not reach is the same object as before, so that findings can hang on it.
 */
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Outline, PartSource } from '../notation/outline.ts';
import type { Line, PanNode, Sentence, Statement, TemperatureNode } from '../notation/tree.ts';
import { celsiusOf, type HeatReading, readHeat, readTimes, type TimeReading } from './heat.ts';
import { type LedgerEntry, settle, type Use } from './ledger.ts';
import { findMentions, type Mention } from './mentions.ts';
import { NameIndex, type PartNames } from './names.ts';
import { bindPart, listedNames, type PartHead } from './part.ts';
import type { World } from './world.ts';

export interface Step {
  /** The line in its part, from 0. */
  readonly line: number;
  readonly sentence: Sentence;
  readonly mentions: readonly Mention[];
  readonly heat: readonly HeatReading[];
  readonly times: readonly TimeReading[];
}

/** One part with its steps and ledger. Knows its number among the parts, and no place in the file. */
export interface Part {
  readonly index: number;
  readonly head: PartHead;
  readonly steps: readonly Step[];
  /** By ingredient, in the order of the list. */
  readonly ledger: readonly LedgerEntry[];
  /** Earlier parts whose names its steps mention, with what they hold. */
  readonly includes: readonly PartHead[];
  /** The heads of all parts as they were when this one was bound; those before it have the same names still. */
  readonly heads: readonly PartHead[];
  /** What later parts take of this part or its ingredients. */
  readonly usesByLater: readonly OutsideUse[];
  /** The oven in force when the part begins: from the recipe's head or an earlier step. */
  readonly ovenBefore: OvenSetting | undefined;
  readonly isLast: boolean;
}

/** A step that takes from an earlier part: one ingredient of it, or the part itself. */
export interface OutsideUse {
  readonly of: number;
  readonly ingredient?: number;
  readonly use: Use;
}

export interface OvenSetting {
  readonly celsiusLow: number;
  readonly fan: boolean;
}

export interface Recipe {
  readonly outline: Outline;
  readonly name: string;
  readonly parts: readonly Part[];
  /** The line in the document at which each part begins. */
  readonly partsAt: readonly number[];
  readonly yield?: { readonly at: number; readonly node: Extract<Statement, { kind: 'yield' }> };
  readonly pan?: { readonly at: number; readonly node: PanNode };
  readonly oven?: { readonly at: number; readonly node: TemperatureNode };
  readonly world: World;
  readonly names: NameIndex;
  /** It, or a part of it, builds on another file, so that what stands here is not the whole. */
  readonly inherits: boolean;
}

/** The recipe of a document's outline. `before` lends what has not changed. */
export function bindRecipe(outline: Outline, world: World, before?: Recipe): Recipe {
  const fields = headFields(outline);
  const only = outline.parts.length === 1;
  const recipeStatement = outline.recipe?.line.statement;
  const recipeKind = only && recipeStatement?.kind === 'recipe' ? recipeStatement.as : undefined;
  const batchG = only ? yieldG(fields.yield?.node) : undefined;
  const heads = outline.parts.map(({ source }) => bindPart(source, world, batchG, recipeKind));
  const names = nameIndex(heads, before?.names);
  const boundOf = within(BOUND, names, () => new Map<number, PartCache>());
  const bound = heads.map((head, index) => bindSteps(head.source, index, names, boundOf));
  const outside = usesOutside(bound);
  let oven = settingOf(fields.oven?.node);
  const taken = takenIn(heads, bound);
  const parts = heads.map((head, index): Part => {
    const here = bound[index] as BoundSteps;
    const now = {
      index,
      head,
      steps: here.steps,
      includes: taken(index),
      heads,
      usesByLater: outside.get(index) ?? NO_USES,
      ovenBefore: oven,
      isLast: index === heads.length - 1,
    };
    oven = here.lastOven ?? oven;
    return samePart(before?.parts[index], now) ?? { ...now, ledger: settleAll(now, here.own, world) };
  });
  return {
    outline,
    name: recipeStatement?.kind === 'recipe' ? (recipeStatement.name?.text ?? '') : '',
    parts,
    partsAt: outline.parts.map((p) => p.at),
    ...fields,
    world,
    names,
    inherits:
      outline.head.some(({ line }) => line.statement.kind === 'from') ||
      outline.parts.some(({ source }) => buildsOnFile(source)),
  };
}

const NO_PARTS: readonly PartHead[] = [];

/** The earlier parts that each takes in: by a mention in its steps, or by a line of its list (`200 g poolish`). */
function takenIn(heads: readonly PartHead[], bound: readonly BoundSteps[]): (index: number) => readonly PartHead[] {
  let byName: Map<string, number> | undefined;
  return (index) => {
    const mentioned = bound[index]?.includes ?? [];
    const listed = heads[index] === undefined ? undefined : listedNames(heads[index]);
    if (mentioned.length === 0 && (listed === undefined || listed.size === 0)) return NO_PARTS;
    const indexes = new Set(mentioned);
    if (listed !== undefined && listed.size > 0) {
      byName ??= new Map(heads.map((head, i) => [head.name.toLowerCase(), i]));
      for (const name of listed.keys()) {
        const at = byName.get(name);
        if (at !== undefined && at < index) indexes.add(at);
      }
    }
    return [...indexes].map((i) => heads[i]).filter((h): h is PartHead => h !== undefined);
  };
}

function buildsOnFile(source: PartSource): boolean {
  const first = source.lines[0]?.statement;
  return first?.kind === 'part' && first.file !== undefined;
}

type Fields = Pick<Recipe, 'yield' | 'pan' | 'oven'>;

function headFields(outline: Outline): Fields {
  let fields: Fields = {};
  for (const { at, line } of outline.head) {
    const { statement } = line;
    if (statement.kind === 'yield') fields = { ...fields, yield: { at, node: statement } };
    else if (statement.kind === 'pan' && statement.pan) fields = { ...fields, pan: { at, node: statement.pan } };
    else if (statement.kind === 'oven' && statement.temperature)
      fields = { ...fields, oven: { at, node: statement.temperature } };
  }
  return fields;
}

/** The yield in grams, when it is a weight. */
function yieldG(node: Extract<Statement, { kind: 'yield' }> | undefined): number | undefined {
  const unit = node?.amount?.unit?.symbol;
  if (node?.amount === undefined || unit === undefined || dimensionOf(unit) !== 'mass') return undefined;
  return node.amount.quantity.low * (baseOf(unit, 'us') ?? 1);
}

function settingOf(node: TemperatureNode | undefined): OvenSetting | undefined {
  return node === undefined ? undefined : { celsiusLow: celsiusOf(node).low, fan: node.fan };
}

const NAMES_OF = new WeakMap<NameIndex, readonly PartNames[]>();

/** The index of all names; the old one when no name changed. */
function nameIndex(heads: readonly PartHead[], before: NameIndex | undefined): NameIndex {
  const lists = heads.map((h) => h.names);
  const old = before === undefined ? undefined : NAMES_OF.get(before);
  if (before !== undefined && old !== undefined && sameItems(old, lists)) return before;
  const index = new NameIndex(lists);
  NAMES_OF.set(index, lists);
  return index;
}

/** The steps of a part with what its mentions take, from its own list and from others. */
interface BoundSteps {
  readonly steps: readonly Step[];
  /** By own ingredient. */
  readonly own: ReadonlyMap<number, readonly Use[]>;
  readonly outside: readonly OutsideUse[];
  readonly includes: readonly number[];
  readonly lastOven: OvenSetting | undefined;
}

type PartCache = WeakMap<PartSource, BoundSteps>;
const BOUND = new WeakMap<NameIndex, Map<number, PartCache>>();
const READ = new WeakMap<NameIndex, Map<number, WeakMap<Line, Omit<Step, 'line'>>>>();

function bindSteps(source: PartSource, index: number, names: NameIndex, boundOf: Map<number, PartCache>): BoundSteps {
  const cache = within(boundOf, index, () => new WeakMap());
  let bound = cache.get(source);
  if (bound === undefined) {
    bound = sortUses(readSteps(source, index, names), index, NAMES_OF.get(names) ?? []);
    cache.set(source, bound);
  }
  return bound;
}

function readSteps(source: PartSource, index: number, names: NameIndex): Step[] {
  const cache = within(
    within(READ, names, () => new Map<number, WeakMap<Line, Omit<Step, 'line'>>>()),
    index,
    () => new WeakMap(),
  );
  const steps: Step[] = [];
  source.lines.forEach((line, at) => {
    if (line.statement.kind !== 'step') return;
    let read = cache.get(line);
    if (read === undefined) {
      const { sentence } = line.statement;
      read = {
        sentence,
        mentions: findMentions(sentence, index, names),
        heat: readHeat(sentence),
        times: readTimes(sentence),
      };
      cache.set(line, read);
    }
    steps.push({ line: at, ...read });
  });
  return steps;
}

function sortUses(steps: readonly Step[], index: number, names: readonly PartNames[]): BoundSteps {
  const own = new Map<number, Use[]>();
  const outside: OutsideUse[] = [];
  const includes = new Set<number>();
  let lastOven: OvenSetting | undefined;
  steps.forEach((step, s) => {
    for (const mention of step.mentions) {
      const use: Use = { part: index, step: s, line: step.line, mention };
      if (mention.part !== undefined && mention.part !== index) {
        includes.add(mention.part);
        outside.push({ of: mention.part, use });
      }
      for (const ref of isShared(mention, names) ? mention.ingredients : chosen(mention.ingredients, own)) {
        if (ref.part === index) push(own, ref.ingredient, use);
        else outside.push({ of: ref.part, ingredient: ref.ingredient, use });
      }
    }
    for (const reading of step.heat)
      if (reading.role === 'oven') lastOven = { celsiusLow: reading.celsius.low, fan: reading.node.fan };
  });
  return { steps, own, outside, includes: [...includes], lastOven };
}

/** All that fit are meant, or it is not known which: each then has a use. Lines of one name are taken in turn instead. */
function isShared(mention: Mention, names: readonly PartNames[]): boolean {
  if (mention.every) return true;
  return new Set(mention.ingredients.map((r) => names[r.part]?.ingredients[r.ingredient]?.name)).size > 1;
}

/** Of several that fit, the first that no step has taken from. */
function chosen(refs: Mention['ingredients'], own: ReadonlyMap<number, readonly Use[]>): Mention['ingredients'] {
  const fresh = refs.find((r) => !own.has(r.ingredient));
  const [first] = refs;
  return fresh !== undefined ? [fresh] : first !== undefined ? [first] : [];
}

const NO_USES: readonly OutsideUse[] = [];

/** What later parts take of each part, in order. */
function usesOutside(bound: readonly BoundSteps[]): ReadonlyMap<number, readonly OutsideUse[]> {
  const byPart = new Map<number, OutsideUse[]>();
  for (const { outside } of bound) for (const use of outside) push(byPart, use.of, use);
  return byPart;
}

/** The part as it was, when nothing it is made of has changed. */
function samePart(before: Part | undefined, now: Omit<Part, 'ledger'>): Part | undefined {
  if (before === undefined) return undefined;
  const same =
    before.index === now.index &&
    before.head === now.head &&
    before.steps === now.steps &&
    before.isLast === now.isLast &&
    before.ovenBefore?.celsiusLow === now.ovenBefore?.celsiusLow &&
    before.ovenBefore?.fan === now.ovenBefore?.fan &&
    sameItems(before.includes, now.includes) &&
    sameItems(before.usesByLater, now.usesByLater);
  return same ? before : undefined;
}

function settleAll(part: Omit<Part, 'ledger'>, own: BoundSteps['own'], world: World): LedgerEntry[] {
  return part.head.ingredients.map((ingredient, i) => {
    const later = part.usesByLater.filter((u) => u.ingredient === i).map((u) => u.use);
    return settle(ingredient, [...(own.get(i) ?? []), ...later], world);
  });
}

function within<K extends object | number, V>(
  map: { get(key: K): V | undefined; set(key: K, value: V): unknown },
  key: K,
  make: () => V,
): V {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}
