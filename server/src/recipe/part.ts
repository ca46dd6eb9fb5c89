/**
 * Knows the ingredients of one part worked out in grams, its names and its kind. Bound once for equal lines.
 * Refuses to know the other parts: what its steps mention is `recipe.ts`'s to find.
 */

import type { Food, FoodClass, Weighed } from '../food/food.ts';
import { likelyGrams } from '../food/weigh.ts';
import { addRanges, type Range } from '../measure/quantity.ts';
import { keptOn } from '../notation/kept.ts';
import type { PartSource } from '../notation/outline.ts';
import type { Line, Span, TextNode } from '../notation/tree.ts';
import { bindBare } from './list/bare-line.ts';
import { bindIngredients, isFlour } from './list/ingredient.ts';
import { notUnderstoodIn } from './list/not-understood.ts';
import { NO_NAMES, type PartNames, partLinesIn } from './list/part-line.ts';
import { shareBasis } from './list/share-of.ts';
import { kindInHouse, kindNamed } from './measures/kinds.ts';
import { isStarter } from './measures/shares.ts';
import type { Ingredient, PartHead, World } from './model.ts';
import { calledName, titleOf } from './names/title.ts';
import { wordsOf } from './words.ts';

/**
 * `batchG` is the recipe's yield in grams, which fixes a part written wholly in percentages; `recipeKind` is the kind of a recipe without
 * parts. `before`, bound in the same world, lends what its lines hold; `names` are those of all parts.
 */
export function bindPart(
  source: PartSource,
  world: World,
  {
    batchG,
    recipeKind,
    before,
    names = NO_NAMES,
  }: {
    batchG?: number | undefined;
    recipeKind?: TextNode | undefined;
    before?: PartHead | undefined;
    names?: PartNames;
  } = {},
): PartHead {
  const written: Ingredient[] = [];
  const lent = before && new LentLines(before, source);
  const taken = partLinesIn(source, names);
  let pan: PartHead['pan'];
  source.lines.forEach((line, at) => {
    const { statement } = line;
    if (statement.kind === 'pan' && statement.pan !== undefined && line.faults.length === 0)
      pan ??= { line: at, node: statement.pan };
    const node = statement.kind === 'add' ? statement.ingredient : statement;
    if (node.kind !== 'ingredient' && node.kind !== 'unread') return;
    const ofPart = taken.get(at);
    if (ofPart !== undefined) {
      written.push(ofPart);
      return;
    }
    if (lent?.give(at, written)) return;
    if (node.kind === 'ingredient') written.push(...bindIngredients(node, at, world));
    else if (node.bare !== undefined) written.push(...bindBare(node.bare, at, world));
  });
  const first = source.lines[0]?.statement;
  const named = source.named && first?.kind === 'part' ? first : undefined;
  const title = titleOf(named);
  const name = title.name?.text ?? '';
  const kindNode = named === undefined ? recipeKind : title.as;
  const known = kindNode === undefined ? undefined : kindNamed(kindNode.text);
  const kind = known === undefined ? undefined : kindInHouse(known, world.bands);
  const notUnderstood = notUnderstoodIn(source, written, world);
  const { ingredients, nominal } = resolvePercents(uncounted(written, source, notUnderstood), batchG);
  return {
    source,
    name,
    ...(kindNode && { kindNode }),
    ...(kind && { kind }),
    ingredients,
    massG: massOf(ingredients, notUnderstood.length === 0),
    flourG: flourOf(ingredients),
    nominal,
    notUnderstood,
    ...(pan && { pan }),
  };
}

/** The part after an edit that reached its steps alone: its list and all that is worked out for it stand; undefined where more has changed. */
export function withSteps(before: PartHead, source: PartSource): PartHead | undefined {
  const [old, now] = [before.source.lines, source.lines];
  if (old.length !== now.length || before.source.named !== source.named) return undefined;
  for (let at = 0; at < now.length; at++)
    if (old[at] !== now[at] && !(isStep(old[at]) && isStep(now[at]))) return undefined;
  return { ...before, source };
}

const isStep = (line: Line | undefined): boolean => line?.statement.kind === 'step' && line.faults.length === 0;

/** What the lines hold that a part had before it was edited; asked for line by line, in order. */
class LentLines {
  private readonly before: PartHead;
  /** Lines above this place, and so many from the end, are those that were. */
  private readonly above: number;
  private readonly below: number;
  private readonly shift: number;
  private readonly length: number;
  private next = 0;

  constructor(before: PartHead, { lines }: PartSource) {
    const old = before.source.lines;
    const shorter = Math.min(old.length, lines.length);
    let above = 0;
    while (above < shorter && old[above] === lines[above]) above++;
    let below = 0;
    while (below < shorter - above && old[old.length - 1 - below] === lines[lines.length - 1 - below]) below++;
    this.before = before;
    this.above = above;
    this.below = below;
    this.shift = lines.length - old.length;
    this.length = lines.length;
  }

  /** Adds what the line holds, and says whether that is known: a share is worked out from the others, and is not. */
  give(at: number, to: Ingredient[]): boolean {
    if (at >= this.above && at < this.length - this.below) return false;
    const { ingredients, notUnderstood } = this.before;
    const shift = at < this.above ? 0 : this.shift;
    const old = at - shift;
    while ((ingredients[this.next]?.line ?? old) < old) this.next++;
    const first = this.next;
    let end = first;
    // Whether a part is called so is asked anew.
    for (; ingredients[end]?.line === old; end++)
      if (ingredients[end]?.percent !== undefined || ingredients[end]?.ofPart !== undefined) return false;
    if (end === first || notUnderstood.includes(old)) return false;
    for (; this.next < end; this.next++) {
      const ingredient = ingredients[this.next] as Ingredient;
      to.push(shift === 0 ? ingredient : { ...ingredient, line: at });
    }
    return true;
  }
}

/** What stands on a line that is not understood is not counted; a number with a comma alone is, as it most likely was meant, unless it may be either of two. */
function uncounted(
  ingredients: readonly Ingredient[],
  { lines }: PartSource,
  notUnderstood: readonly number[],
): readonly Ingredient[] {
  if (notUnderstood.length === 0) return ingredients;
  return ingredients.map((ingredient): Ingredient => {
    const { line, percent: _, ...rest } = ingredient;
    const faults = lines[line]?.faults ?? [];
    const isComma = faults.length > 0 && faults.every((f) => f.code === 'decimal-comma' && f.either === undefined);
    return isComma || !notUnderstood.includes(line)
      ? ingredient
      : { ...rest, line, weighed: { known: false, why: 'its line is not understood' } };
  });
}

function flourOf(ingredients: readonly Ingredient[]): Range {
  return ingredients
    .filter(isFlour)
    .reduce((sum, i) => (i.weighed.known ? addRanges(sum, i.weighed.grams) : sum), NOTHING);
}

const NOTHING: Range = { low: 0, high: 0 };

function massOf(ingredients: readonly Ingredient[], understood = true): PartHead['massG'] {
  let mass: Range = NOTHING;
  let likely = 0;
  let complete = understood;
  for (const { weighed, free, optional } of ingredients) {
    if (weighed.known) {
      mass = addRanges(mass, optional ? { low: 0, high: weighed.grams.high } : weighed.grams);
      likely += optional ? 0 : likelyGrams(weighed);
    } else if (!free) complete = false;
  }
  return { ...mass, likely, complete };
}

/** Where neither a weight nor a yield fixes the batch, percentages are worked out on this much flour. */
const NOMINAL_FLOUR_G = 1000;

function resolvePercents(
  written: readonly Ingredient[],
  batchG: number | undefined,
): { ingredients: readonly Ingredient[]; nominal: boolean } {
  if (!written.some((i) => i.percent !== undefined)) return { ingredients: written, nominal: false };
  const { ingredients, nominal } = resolveBakers(
    written.filter((i) => i.percent === undefined || i.node.shareOf === undefined),
    batchG,
  );
  if (ingredients.length === written.length) return { ingredients, nominal };
  const left = ingredients.values();
  return {
    ingredients: written.map((i): Ingredient => {
      const { percent, node } = i;
      if (percent === undefined || node.shareOf === undefined) return left.next().value ?? i;
      return { ...i, weighed: weighShare(percent, node.shareOf.text, ingredients) };
    }),
    nominal,
  };
}

/** A share of a food that stands on the list: `1.5 % of the beef`. */
function weighShare(percent: Range, of: string, listed: readonly Ingredient[]): Weighed {
  const basis = shareBasis(of, listed);
  if (basis === undefined)
    return { known: false, why: `the list has no one \`${of}\` of known weight to take a share of` };
  return {
    known: true,
    grams: { low: (basis.low * percent.low) / 100, high: (basis.high * percent.high) / 100 },
    reason: { kind: 'weight', words: `of the ${of}`, source: 'this recipe' },
  };
}

/** Percentages that do not say of what. */
function resolveBakers(
  written: readonly Ingredient[],
  batchG: number | undefined,
): { ingredients: readonly Ingredient[]; nominal: boolean } {
  if (!written.some((i) => i.percent !== undefined)) return { ingredients: written, nominal: false };
  const basis = flourBasis(written, batchG);
  const reason = { kind: 'weight' as const, words: basis.words, source: 'this recipe' };
  const ingredients = written.map((i): Ingredient => {
    if (i.percent === undefined) return i;
    const grams = { low: (basis.grams.low * i.percent.low) / 100, high: (basis.grams.high * i.percent.high) / 100 };
    return { ...i, weighed: { known: true, grams, reason } };
  });
  return { ingredients, nominal: basis.nominal };
}

function flourBasis(
  written: readonly Ingredient[],
  batchG: number | undefined,
): { grams: Range; words: string; nominal: boolean } {
  const weighedFlour = flourOf(written.filter((i) => i.percent === undefined));
  const flourPercent = written.filter((i) => isFlour(i)).reduce((sum, i) => sum + (i.percent?.low ?? 0), 0);
  if (weighedFlour.low > 0 && flourPercent < 100) {
    const whole = 1 - flourPercent / 100;
    return {
      grams: { low: weighedFlour.low / whole, high: weighedFlour.high / whole },
      words: 'of the flour in its part',
      nominal: false,
    };
  }
  const total = written.reduce(
    (sum, i) => sum + (i.percent === undefined ? 0 : (i.percent.low + i.percent.high) / 2),
    0,
  );
  const weighed = massOf(written.filter((i) => i.percent === undefined));
  const apart = weighed.low;
  // A ferment or a cure has no flour: its salt is a share of what it salts.
  if (apart > 0 && flourPercent === 0 && total < 100)
    return { grams: weighed, words: 'of what is weighed in its part, which has no flour', nominal: false };
  if (batchG !== undefined && total > 0 && batchG > apart) {
    const grams = ((batchG - apart) * 100) / total;
    return { grams: { low: grams, high: grams }, words: 'of the flour, from the yield', nominal: false };
  }
  return {
    grams: { low: NOMINAL_FLOUR_G, high: NOMINAL_FLOUR_G },
    words: `of ${NOMINAL_FLOUR_G} g flour, since no weight or yield fixes the batch`,
    nominal: true,
  };
}

const NONE_LISTED: ReadonlyMap<string, Ingredient> = new Map();
const LISTED = keptOn<PartHead, ReadonlyMap<string, Ingredient>>();

/** The line that takes so much of an earlier part by its name: `200 g poolish`. */
export function listedPart(head: PartHead, name: string): Ingredient | undefined {
  return listedNames(head).get(calledName(name).toLowerCase());
}

/** The lines that may take from an earlier part, by name: those of no food, and starters. */
export function listedNames(head: PartHead): ReadonlyMap<string, Ingredient> {
  let listed = LISTED.get(head);
  if (listed === undefined) {
    const lines = head.ingredients.filter((i) => i.food === undefined || isStarter(i.food));
    if (lines.length === 0) return NONE_LISTED;
    listed = new Map(lines.map((i) => [i.name.toLowerCase(), i]));
    LISTED.set(head, listed);
  }
  return listed;
}

const WORDS = keptOn<PartHead, ReadonlySet<string>>();

/** Every word of a part's list, of its name and its kind, as they are compared. */
export function listedWords(head: PartHead): ReadonlySet<string> {
  let words = WORDS.get(head);
  if (words === undefined) {
    const texts = head.ingredients.flatMap(({ node }) => [node.name?.text, node.preparation?.text, node.note?.text]);
    words = new Set([...wordsIn([head.name, head.kindNode?.text, ...texts]), ...unheardWords(head)]);
    WORDS.set(head, words);
  }
  return words;
}

const wordsIn = (texts: readonly (string | undefined)[]): readonly string[] =>
  texts.flatMap((text) => wordsOf(text ?? ''));

/** Words of a list that name none of its foods and may be one: what a misspelled line nearly names, and what stands on one that is not understood. */
export const unheardWords = (head: PartHead): readonly string[] =>
  wordsIn([
    ...unreadLines(head),
    ...head.ingredients.flatMap(({ match }) => (match.kind === 'unknown' ? match.near.map((f) => f.name) : [])),
    ...head.notUnderstood.map((line) => head.source.lines[line]?.text),
  ]);

/** The lines of a part that could not be read: what they name is not unheard of. */
export const unreadLines = ({ source: { lines } }: PartHead): readonly string[] =>
  lines.flatMap(({ statement }) => (statement.kind === 'unread' ? [statement.words.text] : []));

/** What something may be made of: a food of a class, and what is rich in fat. */
type Making = FoodClass | 'rich';
/** Grams of fat in 100 g (judgement). */
export const RICH = 30;

const MAKINGS = keptOn<PartHead, ReadonlySet<Making>>();

/** What the foods on a part's list may be made into, as far as a later step may speak of it: their classes, and what is rich. */
export function listedMakings(head: PartHead): ReadonlySet<Making> {
  let makings = MAKINGS.get(head);
  if (makings === undefined) {
    makings = new Set(head.ingredients.flatMap(({ food }) => makingsOf(food)));
    MAKINGS.set(head, makings);
  }
  return makings;
}

const makingsOf = (food: Food | undefined): readonly Making[] => {
  if (food === undefined) return [];
  return (food.per100.fat ?? 0) >= RICH ? [food.class, 'rich'] : [food.class];
};

/** Where in the part's first line its name stands. */
export function nameSpan(part: PartHead): Span {
  const first = part.source.lines[0];
  const name = first?.statement.kind === 'part' ? titleOf(first.statement).name : undefined;
  return name ?? first?.keyword ?? { start: 0, end: first?.text.length ?? 0 };
}
