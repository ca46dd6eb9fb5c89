/**
 * Knows how a whole recipe, or one part, is written at another size: list, portions in the sentences, counts of pieces, yield and pan.
 * Refuses to touch temperatures, times, percentages and trials, and says what does not scale by itself.
 */
import { baseOf, dimensionOf } from '../measure/unit.ts';
import type { Document } from '../notation/document.ts';
import { parseDocument } from '../notation/document.ts';
import type { MeasuredNode, NumeralNode, PanNode, SentenceItem } from '../notation/tree.ts';
import type { Ingredient } from '../recipe/ingredient.ts';
import type { Part, Recipe } from '../recipe/recipe.ts';
import { singular, wordsOf } from '../recipe/words.ts';
import { factorText, scaleAmount, scaledText } from './amount-text.ts';
import { inColumn } from './set-amount.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface Scaling {
  readonly by: number;
  readonly edits: readonly TextEdit[];
  /** One line a change: `plain flour 240 g → 480 g`. */
  readonly changes: readonly string[];
  /** What does not scale by itself. */
  readonly said: readonly string[];
}

export type ScaleTarget =
  | { readonly kind: 'by'; readonly by: number }
  | { readonly kind: 'yield'; readonly words: string }
  | { readonly kind: 'mass'; readonly words: string }
  | { readonly kind: 'pan'; readonly words: string }
  | { readonly kind: 'have'; readonly words: string };

export type ScaleResult =
  | { readonly ok: true; readonly scaling: Scaling }
  | { readonly ok: false; readonly why: string };

/** The recipe at another size; `partName` limits it to one part. */
export function scaleRecipe(document: Document, recipe: Recipe, target: ScaleTarget, partName?: string): ScaleResult {
  const parts = partName === undefined ? recipe.parts : recipe.parts.filter((p) => sameName(p.head.name, partName));
  if (recipe.inherits)
    return { ok: false, why: 'the recipe builds on another file: scale that one, or write this one out in full first' };
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
  const factor = factorFor(recipe, parts, target);
  if (typeof factor === 'string') return { ok: false, why: factor };
  if (!(factor > 0.001 && factor < 1000))
    return { ok: false, why: 'a recipe is scaled by more than 0.001 and less than 1000' };
  return { ok: true, scaling: scaleParts(document, recipe, parts, factor, target, partName === undefined) };
}

/** `by 1.5`, `half`, `double`, `to 12 slices`, `to 900 g`, `to round 28 x 3 cm`, `for 230 g plums`: what a cook says. */
export function readTarget(words: string): ScaleTarget | undefined {
  const text = words.trim().replace(/\s+/g, ' ');
  const named: Record<string, number> = {
    half: 0.5,
    halve: 0.5,
    double: 2,
    twice: 2,
    triple: 3,
    treble: 3,
    quarter: 0.25,
  };
  const factor = named[text.toLowerCase()];
  if (factor !== undefined) return { kind: 'by', by: factor };
  const match = /^(by|to|for|x|×)?\s*(.+)$/i.exec(text);
  const lead = match?.[1]?.toLowerCase();
  const rest = match?.[2] ?? '';
  const number = /^[\d./½⅓⅔¼¾⅛⅜⅝⅞ ]+$/.test(rest) ? measuredIn(rest)?.quantity.low : undefined;
  if (number !== undefined && lead !== 'to' && lead !== 'for') return { kind: 'by', by: number };
  if (lead === 'by') return undefined;
  if (lead === 'for') return { kind: 'have', words: rest };
  if (/^(?:\d+ ?[x×] ?)?(?:round|square|rectangle|loaf|ring)\b/i.test(rest)) return { kind: 'pan', words: rest };
  return rest === '' ? undefined : { kind: 'yield', words: rest };
}

function factorFor(recipe: Recipe, parts: readonly Part[], target: ScaleTarget): number | string {
  switch (target.kind) {
    case 'by':
      return target.by;
    case 'yield':
      return yieldFactor(recipe, parts, target.words);
    case 'mass': {
      const want = massIn(target.words);
      if (want === undefined) return `\`${target.words}\` is no weight; write one such as \`900 g\``;
      const mass = massOf(parts);
      return mass === undefined ? 'the weight of the recipe is not known, so it cannot be scaled to one' : want / mass;
    }
    case 'pan': {
      const want = panIn(target.words);
      const volume = want === undefined ? undefined : panVolumeMl(want);
      if (volume === undefined) return `\`${target.words}\` is no pan; write one such as \`round 28 x 3 cm\``;
      const has = recipe.pan === undefined ? undefined : panVolumeMl(recipe.pan.node);
      return has === undefined
        ? 'the recipe names no pan to compare with; add a line such as `pan round 24 x 3 cm`'
        : volume / has;
    }
    case 'have':
      return haveFactor(parts, target.words);
  }
}

function yieldFactor(recipe: Recipe, parts: readonly Part[], words: string): number | string {
  const want = measuredIn(words);
  if (want === undefined) return `write how many of what, such as \`12 slices\`; \`${words}\` has no number`;
  const made = recipe.yield?.node.amount;
  const wantMass = massIn(words);
  const madeUnit = made?.unit?.symbol;
  const madeMass =
    made !== undefined && madeUnit !== undefined && dimensionOf(madeUnit) === 'mass'
      ? made.quantity.low * (baseOf(madeUnit, 'us') ?? 1)
      : undefined;
  if (wantMass !== undefined) {
    const mass = madeMass ?? massOf(parts);
    return mass === undefined
      ? 'the weight of the recipe is not known, so it cannot be scaled to one'
      : wantMass / mass;
  }
  if (made === undefined) return 'the recipe has no yield; add a line such as `yield 12 slices`';
  const wantOf = wordsOf(words).at(-1) ?? '';
  const madeOf = wordsOf(recipe.yield?.node.of?.text ?? '').map(singular);
  if (/\p{L}/u.test(wantOf) && madeOf.length > 0 && !madeOf.includes(singular(wantOf))) {
    return `the recipe yields ${made.quantity.low} ${recipe.yield?.node.of?.text ?? ''}; ask for a number of those, not of ${wantOf}`;
  }
  return made.quantity.low > 0 ? want.quantity.low / made.quantity.low : 'the recipe yields nothing';
}

function haveFactor(parts: readonly Part[], words: string): number | string {
  const node = parseDocument(words).lines[0]?.statement;
  if (node?.kind !== 'ingredient' || node.name === undefined || node.amount?.kind !== 'measured')
    return `write an amount and a food, such as \`230 g plums\``;
  const wanted = wordsOf(node.name.text);
  const found = parts.flatMap((p) => p.head.ingredients).filter((i) => endsWith(wordsOf(i.name), wanted));
  const [ingredient] = found;
  if (ingredient === undefined) return `there is no ${node.name.text} in the list`;
  if (found.length > 1) return `several lines are ${node.name.text}; name one in full`;
  const has = ingredient.node.amount;
  if (has?.kind === 'measured' && has.unit?.symbol === node.amount.unit?.symbol)
    return node.amount.quantity.low / has.quantity.low;
  const grams = massIn(words);
  if (grams === undefined || !ingredient.weighed.known)
    return `give the ${node.name.text} in the unit of the list, or in grams`;
  return (2 * grams) / (ingredient.weighed.grams.low + ingredient.weighed.grams.high);
}

function scaleParts(
  document: Document,
  recipe: Recipe,
  parts: readonly Part[],
  by: number,
  target: ScaleTarget,
  whole: boolean,
): Scaling {
  const edits: TextEdit[] = [];
  const changes: string[] = [];
  for (const part of parts) {
    const base = recipe.partsAt[part.index] ?? 0;
    for (const ingredient of part.head.ingredients) {
      const line = base + ingredient.line;
      const own = ingredientEdits(line, ingredient, by);
      edits.push(...inColumn(recipe, part.index, ingredient, own.edits));
      if (own.change !== undefined) changes.push(own.change);
    }
    for (const step of part.steps) {
      const line = base + step.line;
      for (const item of amountsInStep(part, step.sentence.items, step.mentions, parts))
        edits.push(...scaleAmount(line, item, by));
    }
  }
  if (whole) {
    const made = recipe.yield?.node.amount;
    if (recipe.yield !== undefined && made !== undefined) {
      edits.push(...scaleAmount(recipe.yield.at, made, by));
      changes.push(
        `yield ${made.quantity.low} → ${scaledText(made.low, made, by)} ${recipe.yield.node.of?.text ?? made.unit?.symbol ?? ''}`.trim(),
      );
    }
    if (recipe.pan !== undefined && target.kind === 'pan') {
      edits.push(replaceSpan(recipe.pan.at, recipe.pan.node, target.words));
      changes.push(
        `pan ${document.lines[recipe.pan.at]?.text.slice(recipe.pan.node.start, recipe.pan.node.end)} → ${target.words}`,
      );
    }
  }
  return {
    by,
    edits: edits.filter((e) => !isSame(document, e)),
    changes,
    said: whatDoesNotScale(recipe, parts, by, target),
  };
}

const isSame = (document: Document, edit: TextEdit): boolean =>
  document.lines[edit.start.line]?.text.slice(edit.start.character, edit.end.character) === edit.text;

function ingredientEdits(line: number, ingredient: Ingredient, by: number): { edits: TextEdit[]; change?: string } {
  const { amount, equals, bought } = ingredient.node;
  const edits: TextEdit[] = [];
  for (const node of [amount, equals, bought])
    if (node?.kind === 'measured') edits.push(...scaleAmount(line, node, by));
  if (amount?.kind !== 'measured' || amount.unit?.symbol === '%') return { edits };
  const unit = amount.unit?.symbol ?? amount.counted?.text ?? amount.sized?.text ?? '';
  const range = (from: (n: NumeralNode) => string) =>
    amount.high === undefined ? from(amount.low) : `${from(amount.low)}-${from(amount.high)}`;
  const before = range((n) => String(Number(n.value.toFixed(3))));
  const after = range((n) => scaledText(n, amount, by));
  return { edits, change: `${ingredient.name} ${before} → ${after} ${unit}`.trim() };
}

/** What a dough or batch is cut into. */
const PIECES = new Set([
  'piece',
  'ball',
  'roll',
  'bun',
  'portion',
  'round',
  'loaf',
  'slice',
  'square',
  'bar',
  'strip',
  'cake',
  'tart',
  'pie',
  'cookie',
  'scone',
  'puff',
  'eclair',
  'ramekin',
  'glass',
  'jar',
  'mould',
  'patty',
  'dumpling',
  'ravioli',
  'pancake',
  'crepe',
  'flatbread',
  'pot',
  'bowl',
  'serving',
  'finger',
  'wedge',
]);

/** Amounts in a sentence that follow the list: portions of what is scaled, and numbers of pieces. */
function amountsInStep(
  part: Part,
  items: readonly SentenceItem[],
  mentions: Part['steps'][number]['mentions'],
  scaled: readonly Part[],
): MeasuredNode[] {
  const indexes = new Set(scaled.map((p) => p.index));
  const amounts = new Set<MeasuredNode>();
  for (const { portion, ingredients } of mentions) {
    if (portion.kind !== 'amount') continue;
    if (ingredients.some((r) => indexes.has(r.part))) amounts.add(portion.measured);
  }
  items.forEach((item, i) => {
    if (item.kind !== 'measured' || amounts.has(item)) return;
    const next = items[i + 1];
    const counted = item.counted?.text ?? (next?.kind === 'word' ? next.word : '');
    if (item.unit === undefined && item.quantity.size === undefined && PIECES.has(singular(counted.toLowerCase())))
      amounts.add(item);
  });
  return [...amounts].filter((a) => items.includes(a) && part.steps.length > 0);
}

function whatDoesNotScale(recipe: Recipe, parts: readonly Part[], by: number, target: ScaleTarget): string[] {
  if (Math.abs(by - 1) < 0.02) return [];
  const said: string[] = [];
  const steps = parts.flatMap((p) => p.steps);
  const more = by > 1;
  if (steps.some((s) => s.heat.some((h) => h.role === 'oven'))) {
    said.push(
      `Baking and roasting times stay as written; a ${more ? 'deeper or larger' : 'shallower or smaller'} piece takes ${more ? 'longer' : 'less time'}: go by the signs of doneness and the temperature inside.`,
    );
  }
  if (recipe.pan !== undefined && target.kind !== 'pan') {
    said.push(
      `The pan stays as written, and now holds ${factorText(by)} times as much: choose one of that volume, or bake in batches.`,
    );
  }
  const foods = parts.flatMap((p) => p.head.ingredients).map((i) => i.food?.class);
  if (foods.some((c) => c === 'leavening' || c === 'yeast') && (by >= 2 || by <= 0.5)) {
    said.push(
      'Yeast and leavening were multiplied like the rest; in large batches the dough keeps its warmth and rises faster, in small ones more slowly.',
    );
  }
  if (foods.some((c) => c === 'spice' || c === 'dried herb') && (by >= 2 || by <= 0.5))
    said.push('Taste for spice and salt: strong seasonings seldom need the whole factor.');
  if (
    steps.some((s) => s.sentence.items.some((i) => i.kind === 'word' && (i.word === 'simmer' || i.word === 'reduce')))
  ) {
    said.push(
      'Simmering and reducing times stay as written; a larger pot loses a smaller share of its water in the same time.',
    );
  }
  if (by >= 4)
    said.push(
      'Check that mixer, pans and oven hold the batch, and that hot food still cools from 57 to 21 °C within 2 h and to 5 °C within 6 h.',
    );
  if (recipe.outline.trials.length > 0) said.push('The trials stay as recorded: they were cooked at the old size.');
  return said;
}

/** The volume of all pans together, in ml, brimful. A loaf tin's sides slope: 0.92 of the box (common practice, no source). */
export function panVolumeMl(pan: PanNode): number | undefined {
  if (pan.volume !== undefined) {
    const unit = pan.volume.unit?.symbol;
    const ml = unit === undefined ? undefined : baseOf(unit, 'us');
    return ml === undefined || unit === undefined || dimensionOf(unit) !== 'volume'
      ? undefined
      : pan.volume.quantity.low * ml * pan.count;
  }
  const unit = pan.unit === undefined ? undefined : baseOf(pan.unit.symbol, 'us');
  if (unit === undefined) return undefined;
  const [a, b, c] = pan.sizes.map((s) => (s.value * unit) / 10);
  if (a === undefined || b === undefined) return undefined;
  const one = (() => {
    switch (pan.shape) {
      case 'round':
        return Math.PI * (a / 2) ** 2 * b;
      case 'square':
        return a * a * b;
      case 'rectangle':
        return c === undefined ? undefined : a * b * c;
      case 'loaf':
        return c === undefined ? undefined : 0.92 * a * b * c;
      case 'ring':
        return c === undefined ? undefined : Math.PI * ((a / 2) ** 2 - (b / 2) ** 2) * c;
      default:
        return undefined;
    }
  })();
  return one === undefined ? undefined : one * pan.count;
}

function measuredIn(words: string): MeasuredNode | undefined {
  const statement = parseDocument(words).lines[0]?.statement;
  return statement?.kind === 'ingredient' && statement.amount?.kind === 'measured' ? statement.amount : undefined;
}

function massIn(words: string): number | undefined {
  const measured = measuredIn(words);
  const unit = measured?.unit?.symbol;
  if (measured === undefined || unit === undefined || dimensionOf(unit) !== 'mass') return undefined;
  return measured.quantity.low * (baseOf(unit, 'us') ?? 1);
}

function panIn(words: string): PanNode | undefined {
  const line = parseDocument(`pan ${words}`).lines[0];
  return line?.statement.kind === 'pan' && line.faults.length === 0 ? line.statement.pan : undefined;
}

function massOf(parts: readonly Part[]): number | undefined {
  if (parts.some((p) => !p.head.massG.complete || p.head.nominal)) return undefined;
  const mass = parts.reduce((sum, p) => sum + (p.head.massG.low + p.head.massG.high) / 2, 0);
  return mass > 0 ? mass : undefined;
}

const sameName = (a: string, b: string): boolean => wordsOf(a).join(' ') === wordsOf(b).join(' ');
const endsWith = (words: readonly string[], end: readonly string[]): boolean =>
  end.length > 0 && words.slice(-end.length).join(' ') === end.join(' ');
