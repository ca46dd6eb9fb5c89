/**
 * Knows how a whole recipe, or one part, is written at another size: list, portions in the sentences, pieces, yield and pan.
 * Refuses to touch temperatures, times, percentages and trials; what does not scale by itself is said.
 */

import { likelyGrams } from '../food/weigh.ts';
import { kitchenGrams } from '../measure/kitchen.ts';
import { significant, trimmed } from '../measure/number-text.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Document } from '../notation/document.ts';
import { measuresOf, statedSpan, takesOf } from '../notation/item-amounts.ts';
import type { IngredientNode, MeasuredNode, PanNode } from '../notation/tree.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import { isEach } from '../recipe/line-weight.ts';
import type { Part, Recipe, Step } from '../recipe/recipe.ts';
import { sameName, wordsOf } from '../recipe/words.ts';
import type { World } from '../recipe/world.ts';
import { grownBy, keepColumn } from './amount-text.ts';
import { closingPortion, type Written } from './closing-portions.ts';
import { whatDoesNotScale } from './not-in-proportion.ts';
import { fileOf, massIn, type ScaleTarget, type Sizes, sizesFor } from './scale-target.ts';
import { sizeYield } from './scale-yield.ts';
import { sentenceAmounts } from './sentence-amounts.ts';
import { countInWords, type Manner, nounFor, pluralOf, type SizedAmount, sizeAmount } from './sized-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export { panVolumeMl } from '../recipe/pan-size.ts';
export { readTarget, type ScaleTarget } from './scale-target.ts';

export interface Scaling {
  /** What fills the pan, and everything where no part lines it, becomes so many times as large. */
  readonly by: number;
  readonly edits: readonly TextEdit[];
  /** One line a change: `plain flour 240 g → 480 g`, with the error of rounding where it is worth a word. */
  readonly changes: readonly string[];
  /** What does not scale by itself, and what rounding did. */
  readonly said: readonly string[];
  readonly rounding: Rounding;
}

/** What rounding to kitchen measures did to the amounts of the list. */
export interface Rounding {
  /** The amount furthest off: what is written over what it should be, less one. */
  readonly worst?: { readonly name: string; readonly error: number };
  /** By how much the ratio of two weights of one part moves at most. */
  readonly ratio: number;
}

export type ScaleResult =
  | { readonly ok: true; readonly scaling: Scaling }
  | {
      readonly ok: false;
      readonly why: string;
      /** What is to be scaled lies in another file. */
      readonly inherits?: true;
    };

/** The recipe at another size; `partName`, or the target's own part, limits it to one part. */
export function scaleRecipe(
  document: Document,
  recipe: Recipe,
  target: ScaleTarget,
  partName = target.part,
): ScaleResult {
  const parts = partName === undefined ? recipe.parts : recipe.parts.filter((p) => sameName(p.head.name, partName));
  if (recipe.outline.head.some(({ line }) => line.statement.kind === 'from'))
    return {
      ok: false,
      inherits: true,
      why: 'the recipe builds on another file: scale that one, or write this one out in full first',
    };
  if (parts.length === 0) {
    const names = recipe.parts.map((p) => p.head.name).filter((n) => n !== '');
    return {
      ok: false,
      why:
        partName === undefined
          ? 'there is nothing to scale: the file has no ingredients'
          : `there is no part \`${partName}\`; the parts are ${names.join(', ') || 'nameless'}`,
    };
  }
  const [taken] = parts.filter((p) => fileOf(p) !== undefined);
  if (taken !== undefined && (parts.length === 1 || weighs(target)))
    return {
      ok: false,
      inherits: true,
      why: `${taken.head.name} comes from ${fileOf(taken)}: scale that file, or write this one out in full first`,
    };
  const sizes = sizesFor(recipe, parts, target);
  if (typeof sizes === 'string') return { ok: false, why: sizes };
  if (![sizes.by, ...sizes.lining.values()].every((by) => by > 0.001 && by < 1000))
    return { ok: false, why: 'a recipe is scaled by more than 0.001 and less than 1000' };
  const work = new Scaler(document, recipe, parts, sizes, {
    measures: recipe.world.measures,
    exact: target.exact === true,
  });
  return { ok: true, scaling: work.scale(target) };
}

/** Whether a size is a weight, for which every part must be here. */
const weighs = (target: ScaleTarget): boolean =>
  target.kind === 'mass' ||
  (target.kind === 'yield' && massIn(target.words.replace(/^.*? (?:of|at) (?=\d)/, '')) !== undefined);

/** An error below this is not worth a word. */
const WORTH_A_WORD = 0.005;
/** Nor one below this a sentence: no kitchen scale and no cook is nearer. */
const WORTH_SAYING = 0.01;

/** An amount that a step takes of a line, at its new size. */
interface Portion extends Written {
  readonly edits: readonly TextEdit[];
  readonly node: MeasuredNode;
  readonly line: number;
  readonly part: number;
}

/** One scaling under way. */
class Scaler {
  private readonly document: Document;
  private readonly recipe: Recipe;
  private readonly parts: readonly Part[];
  private readonly sizes: Sizes;
  private readonly manner: Manner;
  private readonly edits: TextEdit[] = [];
  private readonly changes: string[] = [];
  private readonly said: string[] = [];
  private readonly stays: string[] = [];
  /** What lines are written as, and the portions that steps take of them. */
  private readonly written = new Map<Ingredient, Written>();
  private readonly portions = new Map<Ingredient, Portion[]>();
  private worst: { readonly name: string; readonly error: number } | undefined;
  private ratio = 0;

  constructor(document: Document, recipe: Recipe, parts: readonly Part[], sizes: Sizes, manner: Manner) {
    this.document = document;
    this.recipe = recipe;
    this.parts = parts;
    this.sizes = sizes;
    this.manner = manner;
  }

  scale(target: ScaleTarget): Scaling {
    for (const part of this.parts) {
      const file = fileOf(part);
      if (file === undefined) this.scaleList(part);
      else
        this.said.push(
          `${part.head.name} comes from ${file}, and stays as it is there: make ${trimmed(this.factorOf(part.index), 2)} times as much of it.`,
        );
    }
    for (const part of this.recipe.parts) for (const step of part.steps) this.scaleStep(part, step);
    this.closePortions();
    for (const part of this.parts) this.scalePartPan(part);
    let pans = 'as written';
    if (this.parts.length === this.recipe.parts.length) {
      this.scaleYield();
      pans = this.scalePan();
    }
    return {
      by: this.sizes.by,
      edits: this.edits.filter((e) => this.textAt(e) !== e.text),
      changes: this.changes,
      said: [
        ...this.sizes.said,
        ...this.sayRounding(),
        ...this.said,
        ...whatDoesNotScale(this.recipe, this.parts, this.sizes, target, pans === 'as written', this.stays),
      ],
      rounding: { ...(this.worst && { worst: this.worst }), ratio: this.ratio },
    };
  }

  private textAt(edit: TextEdit): string {
    return this.document.lines[edit.start.line]?.text.slice(edit.start.character, edit.end.character) ?? '';
  }

  private factorOf(part: number): number {
    return this.parts.some((p) => p.index === part) ? (this.sizes.lining.get(part) ?? this.sizes.by) : 1;
  }

  private scaleList(part: Part): void {
    const by = this.factorOf(part.index);
    const errors: number[] = [];
    const done = new Map<IngredientNode, SizedAmount | undefined>();
    for (const ingredient of part.head.ingredients) {
      const { node } = ingredient;
      const line = (this.recipe.partsAt[part.index] ?? 0) + ingredient.line;
      // Several foods that share an amount are one on their line.
      const shared = done.get(node);
      if (shared !== undefined) this.written.set(ingredient, shared);
      if (done.has(node)) continue;
      const sized = this.scaleIngredient(line, ingredient, by);
      done.set(node, sized);
      const byMass = unitOfAmount(ingredient) !== undefined && dimensionIs(ingredient, 'mass');
      if (sized !== undefined && byMass) errors.push(sized.error);
    }
    if (errors.length > 1) this.ratio = Math.max(this.ratio, (1 + Math.max(...errors)) / (1 + Math.min(...errors)) - 1);
  }

  private scaleIngredient(line: number, ingredient: Ingredient, by: number): SizedAmount | undefined {
    const { node } = ingredient;
    const { amount } = node;
    const { text } = this.document.lines[line] ?? { text: '' };
    const manner: Manner = { ...this.manner, sums: true };
    const near = countTolerance(ingredient);
    const measured = amount?.kind === 'measured' && amount.unit?.symbol !== '%' ? amount : undefined;
    const sized = measured && sizeAmount(line, text, measured, by, manner, near);
    if (sized !== undefined) this.written.set(ingredient, sized);
    const edits: TextEdit[] = [...(sized?.edits ?? [])];
    for (const other of followers(ingredient, this.recipe.world))
      edits.push(...sizeAmount(line, text, other, by, manner, near).edits);
    const end = statedSpan(node)?.end ?? 0;
    const beaten = sized && measured && this.beatenGrams(ingredient, measured, by, sized.value);
    if (beaten !== undefined) edits.push(replaceSpan(line, { start: end, end }, ` = ${beaten} g`));
    const before = edits.filter((e) => e.start.character <= end);
    const opens = text.slice(0, amount?.start ?? 0).trim() === '';
    this.edits.push(
      ...edits,
      ...(opens && measured !== undefined ? keepColumn(line, text, end, grownBy(before)) : []),
      ...(sized === undefined ? [] : nameInNumber(line, ingredient, sized.value)),
    );
    if (sized === undefined) return undefined;
    const error = beaten === undefined ? sized.error : 0;
    const off = Math.abs(error) < WORTH_A_WORD ? '' : ` (${percentOff(error)})`;
    const weight = beaten === undefined ? '' : `, ${beaten} g${ingredient.food?.class === 'egg' ? ' beaten' : ''}`;
    if (edits.length > 0) this.changes.push(`${ingredient.name} ${sized.before} → ${sized.after}${weight}${off}`);
    if (Math.abs(error) > Math.abs(this.worst?.error ?? 0)) this.worst = { name: ingredient.name, error };
    return { ...sized, error };
  }

  /** The weight of pieces that are no whole number and matter to the formula: eggs, gelatine, sticks of fat. */
  private beatenGrams(ingredient: Ingredient, amount: MeasuredNode, by: number, count: number): string | undefined {
    const { weighed, food, node, bare } = ingredient;
    if (this.manner.exact || amount.unit !== undefined || !weighed.known || !matters(ingredient)) return undefined;
    const wanted = amount.low.value * by;
    if (Number.isInteger(count) && Math.abs(count / wanted - 1) <= 0.02) return undefined;
    if (amount.high !== undefined || food === undefined || (node.name?.start ?? 0) < amount.end) return undefined;
    if (node.beside !== undefined || takesOf(node) !== undefined || bare === true) return undefined;
    return gramsOf(likelyGrams(weighed) * by);
  }

  private scaleStep(part: Part, step: Step): void {
    const line = (this.recipe.partsAt[part.index] ?? 0) + step.line;
    const { text } = this.document.lines[line] ?? { text: '' };
    const scaled = this.parts.includes(part);
    for (const amount of sentenceAmounts(this.recipe, part, step)) {
      if (amount.kind === 'amount') {
        const by = this.factorOf(amount.part);
        const sized = sizeAmount(line, text, amount.node, by, this.manner);
        const of =
          amount.ingredient === undefined
            ? undefined
            : this.recipe.parts[amount.part]?.head.ingredients[amount.ingredient];
        if (of === undefined || by === 1) this.edits.push(...sized.edits);
        else
          this.portions.set(of, [
            ...(this.portions.get(of) ?? []),
            { ...sized, node: amount.node, line, part: amount.part },
          ]);
      } else if (!scaled) continue;
      else if (amount.kind === 'each') this.sizeEach(line, text, amount.node);
      else if (amount.kind === 'unclear') this.stays.push(text.slice(amount.node.start, amount.node.end));
      else {
        const wanted = amount.count * this.sizes.pieces;
        const count = this.wholePieces(wanted, text.slice(amount.span.start, amount.span.end));
        this.edits.push(replaceSpan(line, amount.span, amount.inWords ? countInWords(count) : String(count)));
        const { noun } = amount;
        if (noun !== undefined && count > 1 !== amount.count > 1)
          this.edits.push(replaceSpan(line, noun, nounFor(count, text.slice(noun.start, noun.end))));
      }
    }
  }

  /** What the steps take of a line adds up to it still, when each portion is rounded. */
  private closePortions(): void {
    for (const [ingredient, portions] of this.portions) {
      const entry = this.recipe.parts[portions[0]?.part ?? -1]?.ledger.find((e) => e.ingredient === ingredient);
      const line = this.written.get(ingredient);
      const closing =
        entry === undefined || line === undefined || this.manner.exact
          ? undefined
          : closingPortion(entry, line, portions, this.manner.measures);
      portions.forEach((portion, i) => {
        const [number, ...rest] = portion.edits;
        if (closing === undefined || i < portions.length - 1 || number === undefined) this.edits.push(...portion.edits);
        else this.edits.push({ ...number, text: number.text.replace(/^[^\p{L}]*[\d\p{No}]/u, closing) }, ...rest);
      });
    }
  }

  /** `balls of 60 g` stay, unless another weight was asked for. */
  private sizeEach(line: number, text: string, node: MeasuredNode): void {
    const unit = node.unit?.symbol;
    const { eachG } = this.sizes;
    if (eachG === undefined || unit === undefined || dimensionOf(unit) !== 'mass' || node.high !== undefined) return;
    const by = eachG / (node.low.value * (baseOf(unit, 'us') ?? 1));
    this.edits.push(...sizeAmount(line, text, node, by, this.manner).edits);
  }

  private wholePieces(wanted: number, written: string): number {
    const count = Math.max(1, Math.round(wanted));
    const off = count / wanted - 1;
    if (count === 1 && written !== '1') this.said.push('One piece is left: the step that divides can go.');
    else if (Math.abs(off) > 0.02)
      this.said.push(
        `The number of pieces, ${written}, becomes ${count} (exactly ${trimmed(wanted, 2)}), so each is ${percentOff(1 / (1 + off) - 1)}.`,
      );
    return count;
  }

  private scaleYield(): void {
    if (this.recipe.yield === undefined) return;
    const { at, node } = this.recipe.yield;
    const sized = sizeYield(at, this.document.lines[at]?.text ?? '', node, this.sizes, this.manner);
    if (sized === undefined) return;
    this.edits.push(...sized.edits);
    this.changes.push(sized.change);
    if (sized.said !== undefined) this.said.push(sized.said);
  }

  /** A part's own pans, where that comes out whole. */
  private scalePartPan(part: Part): void {
    const { pan } = part.head;
    if (pan === undefined) return;
    const line = (this.recipe.partsAt[part.index] ?? 0) + pan.line;
    const written = (this.document.lines[line]?.text ?? '').slice(pan.node.start, pan.node.end);
    const after = pansAtSize(pan.node, written, this.sizes.lining.get(part.index) ?? this.sizes.by, this.manner);
    if (after === undefined) {
      this.said.push(
        `The pan of the ${part.head.name} stays as written: choose one of ${trimmed(this.sizes.by, 2)} times the volume.`,
      );
      return;
    }
    this.edits.push(replaceSpan(line, pan.node, after));
    this.changes.push(`pan ${written} → ${after}`);
  }

  /** The pan asked for; else so many times the pans where that is a whole number. Says what became of it. */
  private scalePan(): 'as asked' | 'more pans' | 'as written' {
    const { pan } = this.recipe;
    if (pan === undefined) return this.sizes.pan === undefined ? 'as written' : 'as asked';
    const { text } = this.document.lines[pan.at] ?? { text: '' };
    const written = text.slice(pan.node.start, pan.node.end);
    if (this.sizes.pan !== undefined) {
      this.edits.push(replaceSpan(pan.at, pan.node, this.sizes.pan));
      this.changes.push(`pan ${written} → ${this.sizes.pan}`);
      return 'as asked';
    }
    const after = pansAtSize(pan.node, written, this.sizes.by, this.manner);
    if (after === undefined) return 'as written';
    this.edits.push(replaceSpan(pan.at, pan.node, after));
    this.changes.push(`pan ${written} → ${after}`);
    return 'more pans';
  }

  private sayRounding(): string[] {
    if (this.manner.exact) return ['The amounts are exact, and not rounded to what a kitchen can measure.'];
    if (this.worst === undefined || Math.abs(this.worst.error) < WORTH_SAYING) return [];
    const { name, error } = this.worst;
    const ratio =
      this.ratio < WORTH_SAYING ? '' : `; the ratio of two weights moves by at most ${trimmed(this.ratio * 100, 1)} %`;
    return [
      `Rounded to what a kitchen can measure. Furthest off: ${name}, ${percentOff(error)}${ratio}. Ask for exact figures to have them unrounded.`,
    ];
  }
}

/** The other amounts of a line that grow with its first: said again in another measure, bought, taken besides, or of an alternative. */
function followers({ node, match }: Ingredient, world: World): readonly MeasuredNode[] {
  const { amount } = node;
  const ofEach = (node.beside ?? []).filter((b) => amount?.kind === 'measured' && isEach(amount, b, match, world));
  return measuresOf(node).filter((m) => m !== amount && !ofEach.some((b) => b.amount === m));
}

const unitOfAmount = ({ node: { amount } }: Ingredient) =>
  amount?.kind === 'measured' ? amount.unit?.symbol : undefined;

function dimensionIs(ingredient: Ingredient, dimension: 'mass' | 'volume'): boolean {
  const unit = unitOfAmount(ingredient);
  return unit !== undefined && dimensionOf(unit) === dimension;
}

/** `2.3 % more`, `0.8 % less`. */
export const percentOff = (error: number): string =>
  `${significant(Math.abs(error) * 100, 2)} % ${error < 0 ? 'less' : 'more'}`;

const gramsOf = (grams: number): string => trimmed(kitchenGrams(grams), 2);

/** Pieces whose number is part of a formula: what a quarter off would change. */
function matters({ food, node: { amount } }: Ingredient): boolean {
  if (food === undefined) return false;
  const word = amount?.kind === 'measured' ? amount.quantity.count : undefined;
  return (
    food.class === 'egg' ||
    food.class === 'gelling' ||
    food.class === 'yeast' ||
    food.class === 'leavening' ||
    word === 'stick'
  );
}

/** How far off a whole number of pieces may be: little where it matters, more for an onion. */
const countTolerance = (ingredient: Ingredient): number => (matters(ingredient) ? 0.02 : 0.06);

/** `1 egg` becomes `2 eggs`: the name goes with the number, where nothing stands between them. */
function nameInNumber(line: number, { node, food }: Ingredient, count: number): TextEdit[] {
  const { amount, name } = node;
  if (
    amount?.kind !== 'measured' ||
    name === undefined ||
    amount.unit !== undefined ||
    amount.counted !== undefined ||
    food === undefined
  )
    return [];
  const last = /\p{L}+$/u.exec(name.text)?.[0];
  const was = amount.quantity.high;
  if (last === undefined || was > 1 === count > 1 || amount.each !== undefined) return [];
  const one = wordsOf(last)[0] ?? last;
  const [singularForm, pluralForm] = [one.toLowerCase() === last.toLowerCase() ? last : one, pluralOf(one)];
  const now = count > 1 ? pluralForm : singularForm;
  const known = [food.name, ...food.names].some((n) => {
    const words = wordsOf(n);
    // What is taken out of a lemon is lemon juice.
    return words.at(-1) === one || (node.takes !== undefined && words.includes(one));
  });
  if (!known || wordsOf(now)[0] !== one || now === last) return [];
  return [replaceSpan(line, { start: name.end - last.length, end: name.end }, now)];
}

/** Several pans become more or fewer, and one becomes two or three, where that comes out whole; a volume is another volume. */
function pansAtSize(pan: PanNode, written: string, by: number, manner: Manner): string | undefined {
  if (pan.volume !== undefined && pan.countNode === undefined && pan.form === undefined) {
    const base = pan.start;
    const shifted = shiftedBy(pan.volume, -base);
    return sizeAmount(0, written, shifted, by, manner).after;
  }
  const count = pan.count * by;
  const whole = Math.round(count);
  if (whole < 1 || Math.abs(count / whole - 1) > 0.001 || whole === pan.count) return undefined;
  if (pan.countNode === undefined) return `${whole} x ${written}`;
  const { start, end } = pan.countNode;
  const behind = written.slice(end - pan.start);
  const rest = behind.replace(/^\s*[x×]\s*/, '');
  // `12 x round 7 x 3 cm`; of `muffin tin, 12` and `12 ramekins` the number alone changes.
  if (start !== pan.start || rest === behind) return `${written.slice(0, start - pan.start)}${whole}${behind}`;
  return whole === 1 ? rest : `${whole} x ${rest}`;
}

function shiftedBy(node: MeasuredNode, by: number): MeasuredNode {
  const shift = <T extends { readonly start: number; readonly end: number }>(span: T): T => ({
    ...span,
    start: span.start + by,
    end: span.end + by,
  });
  const { high, unit } = node;
  return {
    ...shift(node),
    low: shift(node.low),
    ...(high && { high: shift(high) }),
    ...(unit && { unit: shift(unit) }),
  };
}
