/**
 * Knows what size a cook asks for, in words, and by how much each part of a recipe grows for it.
 * Refuses to write anything.
 */
import { likelyGrams } from '../food/weigh.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import { totalOf } from '../measure/total.ts';
import { baseOf, dimensionOf } from '../measure/unit.ts';
import { parseDocument } from '../notation/document.ts';
import type { IngredientNode, MeasuredNode } from '../notation/tree.ts';
import { contentsOf } from '../recipe/measures/contents.ts';
import { panIn, panSize } from '../recipe/measures/pan-size.ts';
import type { Ingredient, Part, Recipe } from '../recipe/model.ts';
import { listedPart } from '../recipe/part.ts';
import { singular, wordsOf } from '../recipe/words.ts';
import { yieldNoun } from '../recipe/yield.ts';
import { type Lining, liningOf } from './lining.ts';
import { plainly, type Sizes } from './sizes.ts';
import { nearWholeEggs, wholeEggs } from './whole-eggs.ts';

export type ScaleTarget = {
  /** One part alone. */
  readonly part?: string;
  /** No rounding to what a kitchen can measure. */
  readonly exact?: boolean;
  /** The size near that at which every egg is whole. */
  readonly wholeEggs?: boolean;
} & (
  | { readonly kind: 'by'; readonly by: number }
  | { readonly kind: 'yield'; readonly words: string }
  | { readonly kind: 'mass'; readonly words: string }
  /** `from` is the pan of the recipe, where it names none. */
  | { readonly kind: 'pan'; readonly words: string; readonly from?: string }
  | { readonly kind: 'have'; readonly words: string }
  /** The smallest size at which every egg is whole. */
  | { readonly kind: 'whole eggs' }
);

const NAMED: Readonly<Record<string, number>> = {
  half: 0.5,
  halve: 0.5,
  double: 2,
  twice: 2,
  triple: 3,
  treble: 3,
  quarter: 0.25,
};

/**
 * `by 1.5`, `half`, `double`, `to 12 slices`, `to 24 rolls of 60 g`, `to 900 g of dough`, `to round 28 x 3 cm`,
 * `for 230 g plums`, `to whole eggs`, `to round 28 x 3 cm with whole eggs`; `part base by 2` for one part, `… exactly` for no rounding.
 */
export function readTarget(words: string): ScaleTarget | undefined {
  let text = words.trim().replace(/\s+/g, ' ');
  const exact = /[, ]+(?:exactly|exact)$/i.exec(text);
  if (exact !== null) text = text.slice(0, exact.index);
  const eggs = /(?:,| and| with)+ whole eggs$/i.exec(text);
  if (eggs !== null) text = text.slice(0, eggs.index);
  const part = /^(?:part|only) (.+?),? (?=(?:by|to|for|x|×|half|halve|double|twice|triple|treble|quarter)\b)/i.exec(
    text,
  );
  if (part !== null) text = text.slice(part[0].length);
  const target = readSize(text);
  return (
    target && {
      ...target,
      ...(part?.[1] && { part: part[1] }),
      ...(exact !== null && { exact: true }),
      ...(eggs !== null && { wholeEggs: true }),
    }
  );
}

function readSize(text: string): ScaleTarget | undefined {
  const factor = Object.hasOwn(NAMED, text.toLowerCase()) ? NAMED[text.toLowerCase()] : undefined;
  if (factor !== undefined) return { kind: 'by', by: factor };
  const match = /^(by\b|to\b|for\b|x|×)?\s*(.+)$/i.exec(text);
  const lead = match?.[1]?.toLowerCase();
  const rest = match?.[2] ?? '';
  const number = /^[\d./½⅓⅔¼¾⅛⅜⅝⅞ ]+$/.test(rest) ? measuredIn(rest)?.quantity.low : undefined;
  if (number !== undefined && lead !== 'to' && lead !== 'for') return { kind: 'by', by: number };
  if (lead === 'by') return undefined;
  if (lead === 'for') return { kind: 'have', words: rest };
  if (/^(?:the (?:least|fewest) )?whole eggs?$/i.test(rest)) return { kind: 'whole eggs' };
  const pans = /^(.+?)(?: pans?| tins?)? (?:from|instead of) (.+)$/i.exec(rest);
  const pan = pans?.[1] ?? rest;
  if (/^(?:an? )?(?:\d+ ?[x×] ?)?(?:round|square|rectangle|loaf|ring)\b/i.test(pan) || isTradePan(rest, pan))
    return { kind: 'pan', words: pan, ...(pans?.[2] && { from: pans[2] }) };
  return rest === '' ? undefined : { kind: 'yield', words: rest };
}

/** `9-inch springform`, `2 lb loaf tin`, `half sheet`: a vessel with its size; `24 muffins` are none. */
function isTradePan(whole: string, pan: string): boolean {
  const node = panIn(pan);
  if (node === undefined) return false;
  const isVessel = /\b(?:pan|tin|dish|mou?ld|plate|tray|basin|ramekin|springform|casserole|sheet)(?:e?s)?\b/i.test(
    whole,
  );
  const hasSize = node.sizes.length > 0 || node.volume !== undefined || node.loaf !== undefined || node.cups;
  return node.sold !== undefined || (isVessel && (hasSize ?? false));
}

/** How much larger the parts become, or why that cannot be said. */
export function sizesFor(recipe: Recipe, parts: readonly Part[], target: ScaleTarget): Sizes | string {
  const sizes = sizesOf(recipe, parts, target);
  return target.wholeEggs === true && typeof sizes !== 'string' ? nearWholeEggs(parts, sizes) : sizes;
}

function sizesOf(recipe: Recipe, parts: readonly Part[], target: ScaleTarget): Sizes | string {
  switch (target.kind) {
    case 'by':
      return plainly(target.by);
    case 'yield':
      return yieldSizes(recipe, parts, target.words);
    case 'mass': {
      const want = massIn(target.words);
      return want === undefined
        ? `\`${target.words}\` is no weight; write one such as \`900 g\``
        : toMass(recipe, parts, want, ofWhat(target.words));
    }
    case 'pan':
      return panSizes(recipe, parts, target);
    case 'have':
      return haveSizes(parts, target.words);
    case 'whole eggs':
      return wholeEggs(parts);
  }
}

function yieldSizes(recipe: Recipe, parts: readonly Part[], words: string): Sizes | string {
  const want = measuredIn(words);
  if (want === undefined) return `write how many of what, such as \`12 slices\`; \`${words}\` has no number`;
  const each = /^(.*\p{L}.*?) (?:of|at) ((?:about )?[\d½¼¾].*)$/u.exec(words);
  const eachG = massIn(each?.[2] ?? '');
  if (each !== null && eachG !== undefined && want.unit === undefined)
    return toPieces(recipe, parts, want.quantity.low, eachG, each[1] ?? words);
  const mass = massIn(words);
  if (mass !== undefined) return toMass(recipe, parts, mass, ofWhat(words));
  const made = recipe.yield?.node.amount;
  if (made === undefined) return 'the recipe has no yield; add a line such as `yield 12 slices`';
  if (!(made.quantity.low > 0)) return 'the recipe yields nothing';
  const [a, b] = [want.unit?.symbol, made.unit?.symbol];
  if (a !== undefined && b !== undefined && dimensionOf(a) === 'volume' && dimensionOf(b) === 'volume') {
    const { measures } = recipe.world;
    const by = (want.quantity.low * (baseOf(a, measures) ?? 1)) / (made.quantity.low * (baseOf(b, measures) ?? 1));
    return plainly(by);
  }
  const wantOf = wordsOf(words).at(-1) ?? '';
  const madeWords = recipe.yield === undefined ? '' : yieldNoun(recipe.yield.node);
  const madeOf = wordsOf(madeWords).map(singular);
  if (/\p{L}/u.test(wantOf) && madeOf.length > 0 && !madeOf.includes(singular(wantOf)))
    return `the recipe yields ${trimmed(made.quantity.low, 2)} ${madeWords}; ask for a number of those, not of ${wantOf}`;
  return plainly(want.quantity.low / middle(made.quantity));
}

/** `900 g of dough`: the part that is weighed, when one is named so. */
const ofWhat = (words: string): string | undefined => /\bof (?:the )?(\p{L}.*)$/u.exec(words)?.[1];

function toMass(recipe: Recipe, parts: readonly Part[], wantG: number, of: string | undefined): Sizes | string {
  const named = of === undefined ? undefined : parts.find((p) => endsWith(wordsOf(p.head.name), wordsOf(of)));
  const made = of === undefined ? yieldG(recipe, parts) : undefined;
  const mass = named !== undefined ? wholeMassOf(named) : (made ?? massOf(parts));
  if (mass === undefined) return 'the weight of the recipe is not known, so it cannot be scaled to one';
  return plainly(wantG / mass);
}

/** The yield in grams, where it is a weight and the whole file is meant. */
function yieldG(recipe: Recipe, parts: readonly Part[]): number | undefined {
  const made = recipe.yield?.node.amount;
  const unit = made?.unit?.symbol;
  if (made === undefined || unit === undefined || dimensionOf(unit) !== 'mass') return undefined;
  return parts.length === recipe.parts.length ? middle(made.quantity) * (baseOf(unit, 'us') ?? 1) : undefined;
}

/** So many pieces of such a weight, out of the one part that is a dough where there is one, else of all. */
function toPieces(recipe: Recipe, parts: readonly Part[], count: number, eachG: number, words: string): Sizes | string {
  const doughs = parts.filter((p) => p.head.kind?.group === 'dough' || wordsOf(p.head.name).includes('dough'));
  const [dough] = doughs;
  const of = dough !== undefined && doughs.length === 1 ? [dough] : parts;
  const mass = of.length === 1 && of[0] !== undefined ? wholeMassOf(of[0]) : massOf(of);
  if (mass === undefined) return 'the weight of the recipe is not known, so it cannot be scaled to pieces of a weight';
  const by = (count * eachG) / mass;
  const made = recipe.yield?.node.amount;
  const pieces =
    made !== undefined && made.unit === undefined && made.quantity.low > 0 ? count / made.quantity.low : by;
  return {
    by,
    lining: new Map(),
    pieces,
    eachG,
    made: { count, words },
    said: [
      `${trimmed(count, 2)} of ${trimmed(eachG, 1)} g are ${trimmed(count * eachG, 0)} g ${of.length === 1 && dough ? `of ${dough.head.name || 'dough'}` : 'in all'}, raw: what bakes off is not counted.`,
    ],
  };
}

function panSizes(
  recipe: Recipe,
  parts: readonly Part[],
  { words, from }: Extract<ScaleTarget, { kind: 'pan' }>,
): Sizes | string {
  const wanted = panIn(words);
  const { measures } = recipe.world;
  const want = wanted === undefined ? undefined : panSize(wanted, measures);
  if (want === undefined) return `\`${words}\` is no pan; write one such as \`round 28 x 3 cm\``;
  const written = from === undefined ? recipe.pan?.node : panIn(from);
  const has = written === undefined ? undefined : panSize(written, measures);
  if (has === undefined)
    return from === undefined
      ? 'the recipe names no pan to compare with; add a line such as `pan round 24 x 3 cm`, or say `from round 24 x 3 cm`'
      : `\`${from}\` is no pan; write one such as \`round 24 x 3 cm\``;
  const by = want.volumeMl / has.volumeMl;
  const lining = new Map<number, number>();
  const said: string[] = [];
  for (const [of, { assumed }] of [
    ['The pan of the recipe', has],
    ['The pan asked for', want],
  ] as const)
    if (assumed.length > 0) said.push(`${of}: ${assumed.join('; ')}, as is usual.`);
  for (const part of parts) {
    const lines = liningOf(recipe, part);
    if (lines === undefined) continue;
    const surface = surfaceRatio(want, has, lines, by);
    lining.set(part.index, surface);
    said.push(
      `${part.head.name || 'The crust'} lines the pan, so it goes by the ${lines === 'bottom' ? 'bottom' : 'bottom and sides'}: ${trimmed(surface, 2)} times as much, where the filling takes ${trimmed(by, 2)} times as much.`,
    );
  }
  const deeper = want.depthCm !== undefined && has.depthCm !== undefined ? want.depthCm / has.depthCm : undefined;
  return { by, lining, pieces: by, pan: words, said, ...(deeper !== undefined && { deeper }) };
}

type Size = NonNullable<ReturnType<typeof panSize>>;

/** By geometry; where only volumes are known, as for pans of one shape: by the volume to the power of two thirds. */
function surfaceRatio(want: Size, has: Size, lining: Lining, by: number): number {
  const [a, b] = lining === 'bottom' ? [want.bottomCm2, has.bottomCm2] : [want.liningCm2, has.liningCm2];
  return a === undefined || b === undefined ? by ** (2 / 3) : a / b;
}

/** The least that several things at hand allow. */
function haveSizes(parts: readonly Part[], words: string): Sizes | string {
  const wishes = words.split(/,| and (?=[\d½⅓⅔¼¾])/).map((w) => w.trim());
  let least: { readonly by: number; readonly wish: string } | undefined;
  for (const wish of wishes) {
    const by = haveFactor(parts, wish);
    if (typeof by === 'string') return by;
    if (least === undefined || by < least.by) least = { by, wish };
  }
  if (least === undefined) return 'write an amount and a food, such as `230 g plums`';
  return plainly(least.by, wishes.length > 1 ? [`It is the ${least.wish} that sets the size.`] : []);
}

function haveFactor(parts: readonly Part[], words: string): number | string {
  const bought = /,? (?:as bought|whole|untrimmed)$/i.exec(words);
  const node = ingredientIn(bought === null ? words : words.slice(0, bought.index));
  if (node?.name === undefined || node.amount?.kind !== 'measured')
    return `write an amount and a food, such as \`230 g plums\``;
  const { text } = node.name;
  const found = namedSo(
    parts.flatMap((p) => p.head.ingredients),
    text,
  );
  const [ingredient] = found;
  if (ingredient === undefined) return `there is no ${text} in the list`;
  if (found.length > 1) return `several lines are ${text}; name one in full`;
  const has = bought === null ? ingredient.node.amount : ingredient.node.bought;
  const unit = node.amount.unit?.symbol;
  if (has?.kind === 'measured' && has.quantity.low > 0) {
    if (unit === undefined && has.unit === undefined && has.quantity.count === node.amount.quantity.count)
      return node.amount.quantity.low / middle(has.quantity);
    const [mine, ...theirs] = [
      node.amount,
      has,
      ...(bought === null ? (ingredient.node.beside ?? []) : []).flatMap((b) => (b.means === 'same' ? [b.amount] : [])),
    ].map((m) => totalOf(m.quantity, 'us'));
    const same = theirs.find((t) => t !== undefined && t.dimension === mine?.dimension);
    if (mine !== undefined && same !== undefined) return mine.low / middle(same);
  }
  if (bought !== null) return `the list does not say what ${text} weighs as bought: \`from 560 g\` on its line does`;
  const grams = massIn(words);
  if (grams === undefined || !ingredient.weighed.known) return `give the ${text} in the unit of the list, or in grams`;
  return (2 * grams) / (ingredient.weighed.grams.low + ingredient.weighed.grams.high);
}

/** Lines of that full name; else those that end in it. */
function namedSo(ingredients: readonly Ingredient[], name: string): readonly Ingredient[] {
  const wanted = wordsOf(name);
  const full = ingredients.filter((i) => wordsOf(i.name).join(' ') === wanted.join(' '));
  return full.length > 0 ? full : ingredients.filter((i) => endsWith(wordsOf(i.name), wanted));
}

/** The amount that words begin with. */
export function measuredIn(words: string): MeasuredNode | undefined {
  const statement = parseDocument(words).lines[0]?.statement;
  // `12 portions` are a yield by themselves.
  const amount = statement?.kind === 'ingredient' || statement?.kind === 'yield' ? statement.amount : undefined;
  return amount?.kind === 'measured' ? amount : undefined;
}

function ingredientIn(words: string): IngredientNode | undefined {
  const statement = parseDocument(words).lines[0]?.statement;
  return statement?.kind === 'ingredient' ? statement : undefined;
}

/** The weight that words begin with, in grams. */
export function massIn(words: string): number | undefined {
  const measured = measuredIn(words);
  const total = measured && totalOf(measured.quantity, 'us');
  return total?.dimension === 'mass' ? middle(total) : undefined;
}

/** What parts weigh in all, in grams, what one takes of another counted once; not known where a line of them is not. */
export function massOf(parts: readonly Part[]): number | undefined {
  if (parts.some((p) => !p.head.massG.complete || p.head.nominal)) return undefined;
  const twice = parts.flatMap((p) => parts.flatMap((q) => (q.index < p.index ? gramsListed(p, q) : [])));
  const mass = parts.reduce((sum, p) => sum + p.head.massG.likely, 0) - twice.reduce((a, b) => a + b, 0);
  return mass > 0 ? mass : undefined;
}

/** `200 g poolish` on the list of a dough, where the poolish is a part of its own. */
function gramsListed(part: Part, of: Part): number[] {
  const weighed = of.head.name === '' ? undefined : listedPart(part.head, of.head.name)?.weighed;
  return weighed?.known ? [likelyGrams(weighed)] : [];
}

/** What one part weighs with what it takes in: a dough with its poolish. */
function wholeMassOf(part: Part): number | undefined {
  const contents = contentsOf(part).filter((i) => !i.free && !i.optional);
  if (part.head.nominal || contents.some((i) => !i.weighed.known)) return undefined;
  const mass = contents.reduce((sum, { weighed }) => sum + (weighed.known ? likelyGrams(weighed) : 0), 0);
  return mass > 0 ? mass : undefined;
}

/** The file that a part is taken from. */
export function fileOf({ head }: Part): string | undefined {
  const first = head.source.lines[0]?.statement;
  return first?.kind === 'part' ? first.file?.text : undefined;
}

const endsWith = (words: readonly string[], end: readonly string[]): boolean =>
  end.length > 0 && words.slice(-end.length).join(' ') === end.join(' ');
