/**
 * Knows what a cook would do otherwise by one recipe than by another: amounts against the batch, measures, heat, times, steps.
 * Refuses to know how it is said (`diff-words.ts`), and what differs in layout alone.
 */
import { likelyGrams } from '../food/weigh.ts';
import { middle, type Range } from '../measure/quantity.ts';
import type { Block, PlacedLine } from '../notation/outline.ts';
import type { AmountNode, Line } from '../notation/tree.ts';
import { recipeTimes } from '../recipe/duration.ts';
import type { HeatReading, TimeReading } from '../recipe/heat.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import { type MeasureName, measureText } from '../recipe/measures.ts';
import type { Part, Recipe, Step } from '../recipe/recipe.ts';
import { wordsOf } from '../recipe/words.ts';
import { align, type Pairing } from './align.ts';
import { measuresOf } from './report.ts';

export interface RecipeDiff {
  /** How many times the first recipe's batch the second is, by most of the amounts; 1 where it is the same. */
  readonly batch: number;
  /** The yield went with the batch, so that it is no change of its own. */
  readonly yield?: { readonly from: string; readonly to: string };
  readonly changes: readonly Change[];
}

/** Grams are null where they are not known; `expected` is the first amount at the second's batch. */
export type Change =
  | { readonly kind: 'field'; readonly field: string; readonly from: string | null; readonly to: string | null }
  | {
      readonly kind: 'yield';
      readonly from: string | null;
      readonly to: string | null;
      readonly eachFromG: number | null;
      readonly eachToG: number | null;
    }
  | { readonly kind: 'part-added' | 'part-dropped'; readonly part: string; readonly of: readonly string[] }
  | { readonly kind: 'part-renamed' | 'part-kind'; readonly part: string; readonly from: string; readonly to: string }
  | { readonly kind: 'part-moved'; readonly part: string; readonly from: number; readonly to: number }
  | {
      readonly kind: 'amount';
      readonly part: string;
      readonly name: string;
      readonly from: string;
      readonly to: string;
      readonly fromG: number | null;
      readonly toG: number | null;
      readonly expectedG: number | null;
    }
  | {
      readonly kind: 'measured';
      readonly part: string;
      readonly name: string;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'ingredient-added' | 'ingredient-dropped';
      readonly part: string;
      readonly name: string;
      readonly amount: string;
    }
  | {
      readonly kind: 'ingredient-swapped';
      readonly part: string;
      readonly from: string;
      readonly to: string;
      readonly fromAmount: string;
      readonly toAmount: string;
    }
  | { readonly kind: 'ingredient-moved'; readonly name: string; readonly from: string; readonly to: string }
  | {
      readonly kind: 'preparation';
      readonly part: string;
      readonly name: string;
      readonly from: string | null;
      readonly to: string | null;
    }
  | { readonly kind: 'optional'; readonly part: string; readonly name: string; readonly optional: boolean }
  | {
      readonly kind: 'measure';
      readonly part: string;
      readonly name: MeasureName;
      readonly from: Range;
      readonly to: Range;
    }
  | {
      readonly kind: 'time';
      readonly part: string;
      readonly step: number;
      readonly verb: string | null;
      readonly fromMin: Range;
      readonly toMin: Range;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'temperature';
      readonly part: string;
      readonly step: number;
      readonly verb: string | null;
      readonly role: HeatReading['role'];
      readonly fromC: Range;
      readonly toC: Range;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'portion';
      readonly part: string;
      readonly step: number;
      readonly from: string;
      readonly to: string;
    }
  | {
      readonly kind: 'step-added' | 'step-dropped';
      readonly part: string;
      readonly step: number;
      readonly text: string;
    }
  | {
      readonly kind: 'step-moved';
      readonly part: string;
      readonly toPart: string;
      readonly from: number;
      readonly to: number;
      readonly text: string;
    }
  | {
      readonly kind: 'step-reworded';
      readonly part: string;
      readonly step: number;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: 'total-time'; readonly fromMin: number; readonly toMin: number }
  | { readonly kind: 'trial-added' | 'trial-dropped'; readonly trial: string }
  | { readonly kind: 'accepts' | 'accepts-no-more'; readonly code: string; readonly reason: string }
  | { readonly kind: 'food-added' | 'food-dropped'; readonly food: string }
  | { readonly kind: 'food'; readonly food: string; readonly from: string | null; readonly to: string | null };

export function diffRecipes(before: Recipe, after: Recipe): RecipeDiff {
  const parts = pairParts(before.parts, after.parts);
  const pairs = parts.both.flatMap(([a, b]) => pairIngredients(a, b).both);
  const made = yieldsOf(before, after);
  const batch = batchOf(pairs, made.ratio);
  const yieldFollows = batch !== 1 && made.ratio !== undefined && near(made.ratio, batch);
  const changes: Change[] = [
    ...fieldChanges(before, after, batch),
    ...(yieldFollows ? [] : yieldChange(before, after)),
    ...partChanges(parts, before.parts.length, after.parts.length),
    ...ingredientChanges(parts, batch),
    ...parts.both.flatMap(([a, b]) => measureChanges(a, b)),
    ...stepChanges(parts, batch),
    ...timeChange(before, after),
    ...trialChanges(before, after),
    ...allowChanges(before, after),
    ...foodChanges(before.outline.foods, after.outline.foods),
  ];
  const both = yieldFollows && made.from !== undefined && made.to !== undefined;
  return { batch, ...(both && { yield: { from: made.from, to: made.to } }), changes };
}

// The batch.

/** Amounts this near each other are the same but for rounding in the kitchen. */
const NEAR = 0.02;
const near = (a: number, b: number): boolean => Math.abs(a / b - 1) <= NEAR;

/** The factor that most amounts agree on; 1 unless more than half of them, and two at least, say otherwise. */
function batchOf(pairs: readonly (readonly [Ingredient, Ingredient])[], byYield: number | undefined): number {
  const ratios = pairs.flatMap(([a, b]) => ratioOf(a, b) ?? []);
  const votes = (of: number) => ratios.filter((r) => near(r, of)).length;
  let best = 1;
  for (const candidate of [...(byYield === undefined ? [] : [byYield]), ...ratios])
    if (votes(candidate) > votes(best)) best = candidate;
  const won = votes(best) >= 2 && votes(best) > ratios.length / 2 && !near(best, 1);
  return won ? plainFactor(best, byYield) : 1;
}

/** 1.4968 is one and a half: the yield's own ratio, or the nearest plain number. */
function plainFactor(factor: number, byYield: number | undefined): number {
  if (byYield !== undefined && near(byYield, factor)) return byYield;
  const plain = Math.round(factor * 12) / 12;
  return plain > 0 && near(plain, factor) ? plain : factor;
}

function ratioOf(a: Ingredient, b: Ingredient): number | undefined {
  const fromG = gramsOf(a);
  const toG = gramsOf(b);
  return fromG === null || toG === null || fromG <= 0 ? undefined : toG / fromG;
}

const gramsOf = ({ weighed }: Ingredient): number | null => (weighed.known ? likelyGrams(weighed) : null);

// The head.

interface Yields {
  readonly from?: string;
  readonly to?: string;
  readonly ratio?: number;
}

function yieldsOf(before: Recipe, after: Recipe): Yields {
  const [a, b] = [before.yield?.node, after.yield?.node];
  const from = a === undefined ? undefined : yieldText(before);
  const to = b === undefined ? undefined : yieldText(after);
  const same = a?.amount?.unit?.symbol === b?.amount?.unit?.symbol;
  const [low, high] = [a?.amount && middle(a.amount.quantity), b?.amount && middle(b.amount.quantity)];
  return {
    ...(from !== undefined && { from }),
    ...(to !== undefined && { to }),
    ...(same && low !== undefined && high !== undefined && low > 0 && high > 0 && { ratio: high / low }),
  };
}

function yieldText(recipe: Recipe): string {
  const line = recipe.yield === undefined ? undefined : recipe.outline.head.find((h) => h.at === recipe.yield?.at);
  return line === undefined ? '' : saidBy(line);
}

function yieldChange(before: Recipe, after: Recipe): Change[] {
  const from = before.yield === undefined ? null : yieldText(before);
  const to = after.yield === undefined ? null : yieldText(after);
  return sameWords(from, to) ? [] : [{ kind: 'yield', from, to, eachFromG: eachG(before), eachToG: eachG(after) }];
}

function eachG({ parts, yield: made }: Recipe): number | null {
  const amount = made?.node.amount;
  if (amount === undefined || amount.unit !== undefined || !(amount.quantity.low > 0)) return null;
  if (!parts.every((p) => p.head.massG.complete && !p.head.nominal)) return null;
  return parts.reduce((sum, p) => sum + middle(p.head.massG), 0) / middle(amount.quantity);
}

const FIELDS = new Set(['text', 'pan', 'oven', 'tags', 'from']);

function fieldChanges(before: Recipe, after: Recipe, batch: number): Change[] {
  const changes: Change[] = [];
  if (before.name !== after.name) changes.push({ kind: 'field', field: 'name', from: before.name, to: after.name });
  const [a, b] = [fieldsOf(before.outline.head), fieldsOf(after.outline.head)];
  // As many more pans as the batch is bigger are no change of their own.
  if (batch !== 1 && moreOfThePan(before, after, batch)) for (const fields of [a, b]) fields.delete('pan');
  for (const field of new Set([...a.keys(), ...b.keys()])) {
    const [was, is] = [a.get(field) ?? [], b.get(field) ?? []];
    const dropped = was.filter((text) => !is.some((other) => sameWords(text, other)));
    const added = is.filter((text) => !was.some((other) => sameWords(text, other)));
    for (let i = 0; i < Math.max(dropped.length, added.length); i++)
      changes.push({ kind: 'field', field, from: dropped[i] ?? null, to: added[i] ?? null });
  }
  return changes;
}

function moreOfThePan({ pan: a }: Recipe, { pan: b }: Recipe, batch: number): boolean {
  if (a === undefined || b === undefined || a.node.shape !== b.node.shape) return false;
  const sizes = [a, b].map(({ node }) => `${node.sizes.map((n) => n.value).join(' ')} ${node.unit?.symbol ?? ''}`);
  return sizes[0] === sizes[1] && near(b.node.count, a.node.count * batch);
}

function fieldsOf(head: readonly PlacedLine[]): Map<string, string[]> {
  const fields = new Map<string, string[]>();
  for (const placed of head) {
    const { statement } = placed.line;
    if (!FIELDS.has(statement.kind)) continue;
    const field = statement.kind === 'text' ? statement.field : statement.kind;
    fields.set(field, [...(fields.get(field) ?? []), saidBy(placed)]);
  }
  return fields;
}

/** What a line says after its keyword. */
function saidBy({ line }: { readonly line: Line }): string {
  const end = line.comment?.start ?? line.text.length;
  return collapse(line.text.slice(line.keyword?.end ?? 0, end));
}

const collapse = (text: string): string => text.trim().replace(/\s+/g, ' ');
const sameWords = (a: string | null, b: string | null): boolean =>
  a === b || (a !== null && b !== null && collapse(a) === collapse(b));

// Parts.

interface Paired<T> {
  readonly both: readonly (readonly [T, T])[];
  readonly dropped: readonly T[];
  readonly added: readonly T[];
}

function pairParts(before: readonly Part[], after: readonly Part[]): Paired<Part> {
  const byName = pairBy(before, after, (a, b) => nameKey(a.head.name) === nameKey(b.head.name));
  const alike = pairBy(byName.dropped, byName.added, (a, b) => likeness(a, b) >= 0.5);
  // One part each side, whatever they are called, is one recipe.
  const only =
    alike.both.length + byName.both.length === 0 && before.length === 1 && after.length === 1
      ? pairBy(alike.dropped, alike.added, () => true)
      : alike;
  const both = [...byName.both, ...only.both, ...(only === alike ? [] : alike.both)];
  return { both: both.sort(([, a], [, b]) => a.index - b.index), dropped: only.dropped, added: only.added };
}

const nameKey = (name: string): string => wordsOf(name).join(' ');

/** The share of the ingredients that two parts have in common. */
function likeness(a: Part, b: Part): number {
  const names = new Set(a.head.ingredients.map((i) => nameKey(i.name)));
  const common = b.head.ingredients.filter((i) => names.has(nameKey(i.name))).length;
  const most = Math.max(names.size, b.head.ingredients.length);
  return most === 0 ? 0 : common / most;
}

/** Each of the first with the first of the second that fits and is still free. */
function pairBy<T>(before: readonly T[], after: readonly T[], fits: (a: T, b: T) => boolean): Paired<T> {
  const free = new Set(after);
  const both: [T, T][] = [];
  const dropped: T[] = [];
  for (const a of before) {
    const b = [...free].find((candidate) => fits(a, candidate));
    if (b === undefined) dropped.push(a);
    else {
      free.delete(b);
      both.push([a, b]);
    }
  }
  return { both, dropped, added: [...free] };
}

function partChanges(parts: Paired<Part>, beforeCount: number, afterCount: number): Change[] {
  const changes: Change[] = [];
  const of = (part: Part) => part.head.ingredients.map((i) => i.name);
  for (const part of parts.dropped) changes.push({ kind: 'part-dropped', part: part.head.name, of: of(part) });
  for (const part of parts.added) changes.push({ kind: 'part-added', part: part.head.name, of: of(part) });
  let last = -1;
  for (const [a, b] of parts.both) {
    if (nameKey(a.head.name) !== nameKey(b.head.name))
      changes.push({ kind: 'part-renamed', part: b.head.name, from: a.head.name, to: b.head.name });
    const [from, to] = [a.head.kindNode?.text ?? '', b.head.kindNode?.text ?? ''];
    if (from !== to) changes.push({ kind: 'part-kind', part: b.head.name, from, to });
    if (a.index < last && beforeCount === afterCount)
      changes.push({ kind: 'part-moved', part: b.head.name, from: a.index + 1, to: b.index + 1 });
    last = Math.max(last, a.index);
  }
  return changes;
}

// Ingredients.

function pairIngredients(a: Part, b: Part): Paired<Ingredient> {
  const [was, is] = [a.head.ingredients, b.head.ingredients];
  const byName = pairBy(was, is, (x, y) => nameKey(x.name) === nameKey(y.name) && sameForm(x, y));
  const looser = pairBy(byName.dropped, byName.added, (x, y) => nameKey(x.name) === nameKey(y.name));
  const byFood = pairBy(looser.dropped, looser.added, (x, y) => x.food !== undefined && x.food === y.food);
  const both = [...byName.both, ...looser.both, ...byFood.both].sort(([, x], [, y]) => x.line - y.line);
  return { both, dropped: byFood.dropped, added: byFood.added };
}

/** Lines of one name in a part are told apart by how they are prepared. */
const sameForm = (a: Ingredient, b: Ingredient): boolean => a.node.preparation?.text === b.node.preparation?.text;

interface Loose {
  readonly part: Part;
  readonly ingredient: Ingredient;
}

function ingredientChanges(parts: Paired<Part>, batch: number): Change[] {
  const changes: Change[] = [];
  const dropped: Loose[] = [];
  const added: Loose[] = [];
  for (const [a, b] of parts.both) {
    const pairs = pairIngredients(a, b);
    for (const [x, y] of pairs.both) changes.push(...amountChanges(a, b, x, y, batch));
    dropped.push(...pairs.dropped.map((ingredient) => ({ part: a, ingredient })));
    added.push(...pairs.added.map((ingredient) => ({ part: b, ingredient })));
  }
  const inPart = pairBy(
    dropped,
    added,
    (x, y) =>
      x.part.head.name === y.part.head.name &&
      x.ingredient.food !== undefined &&
      x.ingredient.food.class === y.ingredient.food?.class,
  );
  for (const [x, y] of inPart.both)
    changes.push({
      kind: 'ingredient-swapped',
      part: y.part.head.name,
      from: x.ingredient.name,
      to: y.ingredient.name,
      fromAmount: writtenAmount(x.part, x.ingredient),
      toAmount: writtenAmount(y.part, y.ingredient),
    });
  const moved = pairBy(
    [...inPart.dropped, ...parts.dropped.flatMap(looseOf)],
    [...inPart.added, ...parts.added.flatMap(looseOf)],
    (x, y) => nameKey(x.ingredient.name) === nameKey(y.ingredient.name),
  );
  for (const [x, y] of moved.both)
    changes.push({ kind: 'ingredient-moved', name: y.ingredient.name, from: x.part.head.name, to: y.part.head.name });
  for (const { part, ingredient } of moved.dropped.filter(({ part }) => !parts.dropped.includes(part)))
    changes.push({
      kind: 'ingredient-dropped',
      part: part.head.name,
      name: ingredient.name,
      amount: writtenAmount(part, ingredient),
    });
  for (const { part, ingredient } of moved.added.filter(({ part }) => !parts.added.includes(part)))
    changes.push({
      kind: 'ingredient-added',
      part: part.head.name,
      name: ingredient.name,
      amount: writtenAmount(part, ingredient),
    });
  return changes;
}

const looseOf = (part: Part): Loose[] => part.head.ingredients.map((ingredient) => ({ part, ingredient }));

function amountChanges(a: Part, b: Part, was: Ingredient, is: Ingredient, batch: number): Change[] {
  const changes: Change[] = [];
  const part = b.head.name;
  const { name } = is;
  const [from, to] = [writtenAmount(a, was), writtenAmount(b, is)];
  const [fromG, toG] = [gramsOf(was), gramsOf(is)];
  const expectedG = fromG === null ? null : fromG * batch;
  const known = expectedG !== null && toG !== null && (batch === 1 || expectedG > 0);
  const same = known
    ? Math.abs(toG - expectedG) <= (batch === 1 ? 0.001 : Math.max(NEAR * expectedG, rounding(toG)))
    : sameAmount(was.node.amount, is.node.amount, batch) || sameWords(from, to);
  if (!same) changes.push({ kind: 'amount', part, name, from, to, fromG, toG, expectedG });
  else if (batch === 1 && !sameAmount(was.node.amount, is.node.amount, 1) && !sameWords(from, to))
    changes.push({ kind: 'measured', part, name, from, to });
  const [prepared, prepares] = [was.node.preparation?.text ?? null, is.node.preparation?.text ?? null];
  if (!sameWords(prepared, prepares)) changes.push({ kind: 'preparation', part, name, from: prepared, to: prepares });
  if (was.optional !== is.optional) changes.push({ kind: 'optional', part, name, optional: is.optional });
  return changes;
}

/** A scale shows whole grams, and tenths below ten. */
const rounding = (grams: number): number => (grams < 10 ? 0.06 : 0.6);

function sameAmount(a: AmountNode | undefined, b: AmountNode | undefined, batch: number): boolean {
  if (a?.kind === 'free' || b?.kind === 'free' || a === undefined || b === undefined) return a?.kind === b?.kind;
  const [x, y] = [a.quantity, b.quantity];
  const alike = x.unit === y.unit && x.count === y.count && x.size === y.size && x.about === y.about;
  return alike && near(y.low, x.low * batch) && near(y.high, x.high * batch);
}

function writtenAmount(part: Part, { node, line }: Ingredient): string {
  if (node.amount === undefined) return '';
  const text = part.head.source.lines[line]?.text ?? '';
  return collapse(text.slice(node.amount.start, Math.max(node.amount.end, node.equals?.end ?? 0)));
}

// Measures.

function measureChanges(a: Part, b: Part): Change[] {
  const was = new Map(measuresOf(a).map((m) => [m.name, m]));
  return measuresOf(b).flatMap((is): Change[] => {
    const before = was.get(is.name);
    if (before === undefined || before.value_low === null || before.value_high === null) return [];
    if (is.value_low === null || is.value_high === null) return [];
    const from = { low: before.value_low, high: before.value_high };
    const to = { low: is.value_low, high: is.value_high };
    // What rounds alike, or moves by less than a kitchen's scale shows, is no change.
    const same = measureText(is.name, from.low, from.high) === measureText(is.name, to.low, to.high);
    const slight = Math.abs(middle(to) - middle(from)) <= 0.015 * Math.abs(middle(from));
    return same || slight ? [] : [{ kind: 'measure', part: b.head.name, name: is.name, from, to }];
  });
}

// Steps.

interface PlacedStep {
  readonly part: Part;
  readonly step: Step;
  /** From 1. */
  readonly number: number;
  readonly text: string;
  readonly words: readonly string[];
}

function stepChanges(parts: Paired<Part>, batch: number): Change[] {
  const changes: Change[] = [];
  const dropped: PlacedStep[] = [];
  const added: PlacedStep[] = [];
  for (const [a, b] of parts.both) {
    const pairing: Pairing<PlacedStep> = align(stepsOf(a), stepsOf(b), similarity);
    for (const [was, is] of pairing.both) changes.push(...stepChange(was, is, batch));
    dropped.push(...pairing.left);
    added.push(...pairing.right);
  }
  const moved = pairBy(dropped, added, (a, b) => similarity(a, b) >= 0.85);
  for (const [was, is] of moved.both) {
    changes.push({
      kind: 'step-moved',
      part: was.part.head.name,
      toPart: is.part.head.name,
      from: was.number,
      to: is.number,
      text: is.text,
    });
    changes.push(...stepChange(was, is, batch));
  }
  for (const { part, number, text } of moved.dropped)
    changes.push({ kind: 'step-dropped', part: part.head.name, step: number, text });
  for (const { part, number, text } of moved.added)
    changes.push({ kind: 'step-added', part: part.head.name, step: number, text });
  return changes;
}

function stepsOf(part: Part): PlacedStep[] {
  return part.steps.map((step, i) => {
    const line = part.head.source.lines[step.line]?.text ?? '';
    const text = collapse(line.slice(step.sentence.start, step.sentence.end));
    return { part, step, number: i + 1, text, words: keyWords(step) };
  });
}

const NUMBERS = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** Numbers in words, as in `divide in two`, that do not go with the batch. */
function countsDiffer(was: PlacedStep, is: PlacedStep, batch: number): boolean {
  const counts = ({ step }: PlacedStep) =>
    step.sentence.items.flatMap((i) =>
      i.kind === 'word' && NUMBERS.includes(i.word) ? NUMBERS.indexOf(i.word) + 1 : [],
    );
  const [a, b] = [counts(was), counts(is)];
  return a.length !== b.length || a.some((n, i) => b[i] !== n && !near(b[i] ?? 0, n * batch));
}

/** The words of a step with every figure taken out. */
function keyWords({ sentence }: Step): string[] {
  return sentence.items.flatMap((item) => {
    if (item.kind === 'word') return [NUMBERS.includes(item.word) ? 'number' : item.word];
    if (item.kind === 'forced') return wordsOf(item.name.text);
    return item.kind === 'mark' ? [] : [item.kind];
  });
}

/** Twice the words in common over all words: 1 for the same, 0 for nothing alike. */
function similarity(a: PlacedStep, b: PlacedStep): number {
  const left = new Map<string, number>();
  for (const word of a.words) left.set(word, (left.get(word) ?? 0) + 1);
  let common = 0;
  for (const word of b.words) {
    const more = left.get(word) ?? 0;
    if (more === 0) continue;
    left.set(word, more - 1);
    common++;
  }
  const all = a.words.length + b.words.length;
  return all === 0 ? 1 : (2 * common) / all;
}

function stepChange(was: PlacedStep, is: PlacedStep, batch: number): Change[] {
  const changes: Change[] = [];
  const part = is.part.head.name;
  const step = is.number;
  const [times, heats] = [pairReadings(was.step.times, is.step.times), pairReadings(was.step.heat, is.step.heat)];
  for (const [a, b] of times ?? []) {
    const [fromMin, toMin] = [minutesOf(a), minutesOf(b)];
    if (fromMin.low === toMin.low && fromMin.high === toMin.high) continue;
    const verb = b.verb ?? a.verb ?? null;
    changes.push({
      kind: 'time',
      part,
      step,
      verb,
      fromMin,
      toMin,
      from: spanText(was, a.node),
      to: spanText(is, b.node),
    });
  }
  for (const [a, b] of heats ?? []) {
    if (near0(a.celsius.low, b.celsius.low) && near0(a.celsius.high, b.celsius.high) && a.node.fan === b.node.fan)
      continue;
    changes.push({
      kind: 'temperature',
      part,
      step,
      verb: b.verb ?? a.verb ?? null,
      role: b.role,
      fromC: a.celsius,
      toC: b.celsius,
      from: spanText(was, a.node),
      to: spanText(is, b.node),
    });
  }
  const portions = pairReadings(amountsOf(was), amountsOf(is));
  for (const [a, b] of portions ?? [])
    if (!sameAmount(a, b, 1) && !sameAmount(a, b, batch))
      changes.push({ kind: 'portion', part, step, from: spanText(was, a), to: spanText(is, b) });
  const figures = times === undefined || heats === undefined || portions === undefined;
  if (figures || was.words.join(' ') !== is.words.join(' ') || countsDiffer(was, is, batch))
    changes.push({ kind: 'step-reworded', part, step, from: was.text, to: is.text });
  return changes;
}

const minutesOf = ({ node }: TimeReading): Range => ({ low: node.lowMin, high: node.highMin });
const near0 = (a: number, b: number): boolean => Math.abs(a - b) < 0.5;

const amountsOf = ({ step }: PlacedStep) =>
  step.sentence.items.flatMap((item) =>
    item.kind === 'measured' ? [item] : item.kind === 'length' ? [item.measured] : [],
  );

/** Readings one to one, in order; undefined where one side has more. */
function pairReadings<T>(a: readonly T[], b: readonly T[]): (readonly [T, T])[] | undefined {
  if (a.length !== b.length) return undefined;
  return a.flatMap((x, i) => {
    const y = b[i];
    return y === undefined ? [] : [[x, y] as const];
  });
}

function spanText({ part, step }: PlacedStep, span: { readonly start: number; readonly end: number }): string {
  return collapse((part.head.source.lines[step.line]?.text ?? '').slice(span.start, span.end));
}

function timeChange(before: Recipe, after: Recipe): Change[] {
  const [from, to] = [recipeTimes(before).total, recipeTimes(after).total];
  return from === null || to === null || from === to ? [] : [{ kind: 'total-time', fromMin: from, toMin: to }];
}

// What hangs on the recipe.

function trialChanges(before: Recipe, after: Recipe): Change[] {
  const [a, b] = [before.outline.trials.map(titleOf), after.outline.trials.map(titleOf)];
  return [
    ...a.filter((t) => !b.includes(t)).map((trial): Change => ({ kind: 'trial-dropped', trial })),
    ...b.filter((t) => !a.includes(t)).map((trial): Change => ({ kind: 'trial-added', trial })),
  ];
}

function allowChanges(before: Recipe, after: Recipe): Change[] {
  const [a, b] = [allowsOf(before), allowsOf(after)];
  const same = (x: Allow) => (y: Allow) => x.code === y.code && x.reason === y.reason;
  return [
    ...a.filter((x) => !b.some(same(x))).map((x): Change => ({ kind: 'accepts-no-more', ...x })),
    ...b.filter((x) => !a.some(same(x))).map((x): Change => ({ kind: 'accepts', ...x })),
  ];
}

interface Allow {
  readonly code: string;
  readonly reason: string;
}

const allowsOf = ({ outline }: Recipe): Allow[] =>
  outline.allows.flatMap(({ line: { statement } }) =>
    statement.kind === 'allow' && statement.code !== undefined
      ? [{ code: statement.code.text, reason: statement.reason?.text ?? '' }]
      : [],
  );

function foodChanges(before: readonly Block[], after: readonly Block[]): Change[] {
  const [a, b] = [before, after].map((blocks) => new Map(blocks.map((block) => [titleOf(block), block] as const)));
  const changes: Change[] = [];
  for (const [food, block] of b ?? []) {
    const was = a?.get(food);
    if (was === undefined) changes.push({ kind: 'food-added', food });
    else changes.push(...foodLines(food, was, block));
  }
  for (const food of a?.keys() ?? []) if (b?.has(food) !== true) changes.push({ kind: 'food-dropped', food });
  return changes;
}

function foodLines(food: string, was: Block, is: Block): Change[] {
  const said = (block: Block) =>
    block.lines.slice(1).flatMap((line) => (line.statement.kind === 'blank' ? [] : [wholeOf(line)]));
  const pairs = pairBy(said(was), said(is), (x, y) => x === y);
  const byWord = pairBy(pairs.dropped, pairs.added, (x, y) => x.split(' ')[0] === y.split(' ')[0]);
  return [
    ...byWord.both.map(([from, to]): Change => ({ kind: 'food', food, from, to })),
    ...byWord.dropped.map((from): Change => ({ kind: 'food', food, from, to: null })),
    ...byWord.added.map((to): Change => ({ kind: 'food', food, from: null, to })),
  ];
}

const titleOf = (block: Block): string => {
  const [first] = block.lines;
  return first === undefined ? '' : saidBy({ line: first });
};
const wholeOf = (line: Line): string => collapse(line.text.slice(0, line.comment?.start ?? line.text.length));
