/**
 * Knows the trials of a recipe as read, and the fingerprint of what each tested: one short mark for every amount, time and temperature.
 * Refuses to judge what they measured.
 */

import type { Quantity, Range } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import { equalOf } from '../../notation/item-amounts.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Block, Outline } from '../../notation/outline.ts';
import type {
  AmountNode,
  DurationNode,
  IngredientNode,
  MeasuredNode,
  Statement,
  TemperatureNode,
  TextNode,
} from '../../notation/tree.ts';
import { placeNamed } from '../../prose/place-named.ts';
import type { Ingredient, Part, Recipe, Step } from '../model.ts';
import { wordsOf } from '../words.ts';

export interface Trial {
  /** The line of the document that opens it. */
  readonly at: number;
  readonly date: string;
  readonly by?: string;
  readonly took: readonly {
    readonly at: number;
    readonly duration: DurationNode;
    readonly verb?: TextNode;
    /** What it was in. */
    readonly place?: TextNode;
    /** How warm it was then, as the next line says. */
    readonly started?: Range;
  }[];
  readonly reached: readonly {
    readonly at: number;
    readonly temperature: TemperatureNode;
    readonly celsius: Range;
    readonly place?: TextNode;
  }[];
  readonly weighed: readonly { readonly at: number; readonly amount: MeasuredNode; readonly outOf?: TextNode }[];
  readonly used: readonly {
    readonly at: number;
    readonly amount: AmountNode;
    readonly name: TextNode;
    readonly part?: TextNode;
    readonly ingredient: IngredientNode;
  }[];
  readonly verdict?: string;
  /** What was seen, a line each. */
  readonly saw: readonly string[];
  /** The marks of what was tested, when the trial carries them. */
  readonly tested?: readonly string[];
}

/** The trials of a file, oldest first. */
export function readTrials({ trials: blocks }: Pick<Outline, 'trials'>): Trial[] {
  const trials = blocks.map(readTrial).filter((t): t is Trial => t !== undefined);
  return trials.sort((a, b) => (a.date === b.date ? a.at - b.at : a.date < b.date ? -1 : 1));
}

function readTrial({ at, lines }: Block): Trial | undefined {
  const first = lines[0]?.statement;
  if (first?.kind !== 'trial' || first.date === undefined) return undefined;
  const rows = lines.map((line, i) => ({ at: at + i, statement: line.statement }));
  const of = <K extends Statement['kind']>(kind: K) =>
    rows.filter((r): r is { at: number; statement: Extract<Statement, { kind: K }> } => r.statement.kind === kind);
  const verdict = of('verdict').at(-1)?.statement.value?.text;
  const tested = of('tested').at(-1)?.statement.value?.text;
  return {
    at,
    date: first.date.text,
    ...(first.by && { by: first.by.text }),
    took: of('took').flatMap(({ at, statement: { duration, to, in: place } }) => {
      if (duration === undefined) return [];
      const started = startedAfter(rows, at);
      return [{ at, duration, ...(to && { verb: to }), ...(place && { place }), ...(started && { started }) }];
    }),
    reached: of('reached').flatMap(({ at, statement: { temperature, place } }) =>
      temperature === undefined ? [] : [{ at, temperature, celsius: celsiusOf(temperature), ...(place && { place }) }],
    ),
    weighed: of('weighed').flatMap(({ at, statement: { amount, outOf } }) =>
      amount === undefined ? [] : [{ at, amount, ...(outOf && { outOf }) }],
    ),
    used: of('used').flatMap(({ at, statement: { amount, name, part, ingredient } }) =>
      amount === undefined || name === undefined || ingredient === undefined
        ? []
        : [{ at, amount, name, ...(part && { part }), ingredient }],
    ),
    ...(verdict !== undefined && { verdict }),
    saw: of('saw').flatMap(({ statement: { value } }) => value?.text.trim() ?? []),
    ...(tested !== undefined && { tested: marksOf(tested) }),
  };
}

/** `started at` is of the `took` above it; of the first below, where none is above. */
function startedAfter(rows: readonly { at: number; statement: Statement }[], took: number): Range | undefined {
  const isFirst = !rows.some(({ at, statement }) => at < took && statement.kind === 'took');
  const next = rows.find(({ at, statement }) => at > took && statement.kind === 'took')?.at ?? Number.POSITIVE_INFINITY;
  const own = rows.findLast(
    ({ at, statement }) => statement.kind === 'started' && at < next && (isFirst || at > took),
  )?.statement;
  return own?.kind === 'started' && own.temperature !== undefined ? celsiusOf(own.temperature) : undefined;
}

/** Whether a temperature was taken of what is round the food: `in the oven`. */
export const isOutsideFood = (place: TextNode | undefined): boolean =>
  place !== undefined && placeNamed(place.text) !== undefined;

/** One amount, time or temperature of the recipe, or of a step all of its, and its mark. */
export interface Fact {
  readonly part: number;
  /** The line in its part. */
  readonly line: number;
  readonly mark: string;
  /** The mark that the line had when less of it was read: a trial that carries it tested the same line. */
  readonly before?: string;
}

/** The facts a trial tests, in the order of the file. Wording, notes, layout and the spelling of units are none. */
export function factsOf(recipe: Recipe): Fact[] {
  return recipe.parts.flatMap(factsOfPart);
}

/** A part that no edit reached has the same facts, and so has a line or step. */
const FACTS = keptOn<Part, readonly Fact[]>();
const OF_LINE = keptOn<Ingredient, Fact>();
const OF_STEP = keptOn<Step, Fact | typeof NO_FACT>();
const NO_FACT = Symbol();

export function factsOfPart(part: Part): readonly Fact[] {
  let facts = FACTS.get(part);
  if (facts === undefined) {
    const made: Fact[] = [];
    let last: number | undefined;
    for (const ingredient of part.head.ingredients) {
      // What a line holds is one fact, however many foods it names.
      if (ingredient.line !== last) made.push(keptIn(part, OF_LINE.get(ingredient)) ?? lineFact(part, ingredient));
      last = ingredient.line;
    }
    for (const step of part.steps) {
      const kept = OF_STEP.get(step);
      const fact = kept === NO_FACT ? undefined : (keptIn(part, kept) ?? stepFactIn(part, step));
      if (fact !== undefined) made.push(fact);
    }
    facts = made;
    FACTS.set(part, facts);
  }
  return facts;
}

/** A fact of a part that has another place now is another. */
const keptIn = ({ index }: Part, fact: Fact | undefined): Fact | undefined => (fact?.part === index ? fact : undefined);

/** The fingerprint as a trial carries it. */
export const fingerprint = (recipe: Recipe): string =>
  factsOf(recipe)
    .map((f) => f.mark)
    .join('');

/** Facts that a fingerprint does not have: what was changed since, or added. */
export function changedSince(facts: readonly Fact[], tested: readonly string[]): Fact[] {
  const left = new Map<string, number>();
  for (const mark of tested) left.set(mark, (left.get(mark) ?? 0) + 1);
  const take = (mark: string | undefined): boolean => {
    const count = mark === undefined ? 0 : (left.get(mark) ?? 0);
    if (mark !== undefined && count > 0) left.set(mark, count - 1);
    return count > 0;
  };
  return facts.filter(({ mark, before }) => !take(mark) && !take(before));
}

/** Whether the recipe is, fact for fact, what a trial tested. */
export function isAsTested(facts: readonly Fact[], tested: readonly string[]): boolean {
  return facts.length === tested.length && changedSince(facts, tested).length === 0;
}

function lineFact(part: Part, ingredient: Ingredient): Fact {
  const { line } = ingredient;
  const text = part.head.source.lines[line]?.text ?? '';
  const mark = markOf(ingredientFact(ingredient, part));
  const before = markOf(factBefore(ingredient, text));
  const fact = { part: part.index, line, mark, ...(before !== mark && { before }) };
  OF_LINE.set(ingredient, fact);
  return fact;
}

function stepFactIn(part: Part, step: Step): Fact | undefined {
  const words = stepFact(step);
  const fact = words === '' ? undefined : { part: part.index, line: step.line, mark: markOf(words) };
  OF_STEP.set(step, fact ?? NO_FACT);
  return fact;
}

/** The whole line: its first item, and further ones behind it. */
function ingredientFact({ node, optional, line }: Ingredient, part: Part): string {
  const items = new Set(part.head.ingredients.flatMap((i) => (i.line === line ? [i.node] : [])));
  const more = [...items].filter((item) => item !== node);
  return [
    'i',
    wordsOf(node.name?.text ?? '').join(' '),
    amountFact(node.amount),
    amountFact(equalOf(node)),
    optional ? 'optional' : '',
    ...more.flatMap((item) => [wordsOf(item.name?.text ?? '').join(' '), amountFact(item.amount)]),
  ].join('|');
}

/** The same as it was when a line had one number and unit in front, an equal behind `=`, and all else to the comma was the name. */
function factBefore({ node, optional }: Ingredient, text: string): string {
  const { name, amount, beside = [], more = [], others = [], eachOf } = node;
  const isFirst = amount?.kind === 'measured';
  const last = [name, ...(isFirst ? (amount.plus ?? []) : []), ...more.map((m) => m.name), ...others];
  const end = Math.max(...last.map((span) => span?.end ?? 0));
  // The comma ended the name then as now.
  const called = isFirst
    ? (text.slice(name?.start === undefined ? amount.end : Math.min(amount.end, name.start), end).split(',')[0] ?? '')
    : '';
  const isLonger = isFirst && (amount.plus !== undefined || more.length > 0 || others.length > 0 || eachOf === true);
  const first = isFirst ? { ...amount, quantity: firstOf(amount.quantity) } : amount;
  const equal = beside.find((b) => b.sign === '=')?.amount;
  return [
    'i',
    wordsOf(isLonger ? called : (name?.text ?? '')).join(' '),
    amountFact(first),
    amountFact(equal),
    optional ? 'optional' : '',
  ].join('|');
}

const firstOf = ({ plus: _, upTo: __, bias: ___, ...first }: Quantity): Quantity => first;

function stepFact(step: Step): string {
  const facts = step.sentence.items.flatMap((item) => {
    if (item.kind === 'temperature') {
      const { low, high } = celsiusOf(item);
      return [`t${Math.round(low)}-${Math.round(high)}${item.fan ? 'fan' : ''}`];
    }
    if (item.kind === 'duration') return [`d${item.lowMin}-${item.highMin}`];
    if (item.kind === 'measured') return [amountFact(item)];
    if (item.kind === 'length') return [amountFact(item.measured)];
    return [];
  });
  return facts.length === 0 ? '' : `s|${facts.join('|')}`;
}

/** In base units, so that 1 kg is 1000 g. */
function amountFact(amount: AmountNode | undefined): string {
  if (amount === undefined) return '';
  if (amount.kind === 'free') return 'free';
  const { low, high, unit, size, count, each, plus, upTo, bias } = amount.quantity;
  if (plus !== undefined || upTo !== undefined) {
    const total = totalOf(amount.quantity, 'us');
    if (total !== undefined) return `${figure(total.low)}-${figure(total.high)} ${total.dimension}`;
  }
  const base = unit === undefined ? undefined : baseOf(unit, 'us');
  const number = (value: number) => figure(base === undefined ? value : value * base);
  const kind =
    unit === undefined
      ? [size, count].filter((w) => w !== undefined).join(' ')
      : base === undefined
        ? unit
        : dimensionOf(unit);
  return `${number(low)}-${number(high)} ${kind}${each === undefined ? '' : ` of ${each.low}`}${bias === undefined ? '' : ` ${bias.words[0]}`}`;
}

const figure = (value: number): string => String(Number(value.toPrecision(6)));

const MARK_LENGTH = 3;
const DIGITS = '0123456789abcdefghjkmnpqrstvwxyz';

/** Three digits to the base 32 of the FNV-1a hash of the words: one in 32,768 that a change goes unseen. */
function markOf(words: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < words.length; i++) hash = Math.imul(hash ^ words.charCodeAt(i), 0x01000193);
  let mark = '';
  for (let i = 0; i < MARK_LENGTH; i++) mark += DIGITS[(hash >>> (5 * i + 7)) & 31];
  return mark;
}

function marksOf(text: string): string[] {
  const bare = text.replace(/\s+/g, '');
  return Array.from({ length: Math.ceil(bare.length / MARK_LENGTH) }, (_, i) =>
    bare.slice(i * MARK_LENGTH, (i + 1) * MARK_LENGTH),
  );
}
