/**
 * Knows, for every ingredient, what the steps take of it in order and what is left at the end, as shares of the whole.
 * Refuses to call anything wrong: the checks read it.
 */

import { likelyGrams } from '../food/weigh.ts';
import type { Quantity, Range } from '../measure/quantity.ts';
import { timesOf, totalOf } from '../measure/total.ts';
import type { MeasuredNode } from '../notation/tree.ts';
import { isEach, weighQuantity } from './list/line-weight.ts';
import type { Ingredient, LedgerEntry, Mention, PartHead, Portion, TakenUse, Use, World } from './model.ts';

/** Rounding in a recipe: a portion may pass what is left by this share. */
const SLACK = 0.02;
/** How far `about 18 g` may be off (judgement). */
const ABOUT = 0.1;

type Lists = readonly Pick<PartHead, 'ingredients'>[];

/** Adds up what the uses take of one ingredient; `lists` has the lists of the parts. */
export function settle(ingredient: Ingredient, uses: readonly Use[], world: World, lists: Lists = []): LedgerEntry {
  let left: Range = { low: 1, high: 1 };
  let unsure = false;
  /** Of what a share is one: `slice the remaining onions and fry two thirds of the sliced onions`. */
  let readied: Range = { low: 1, high: 1 };
  const firstTaking = uses.findIndex(({ ready }) => !ready);
  const lastExplicit = uses.findLastIndex(({ mention }) => isExplicit(mention));
  const taken: TakenUse[] = uses.map((use, i) => {
    const { mention } = use;
    const before = left;
    const meant = isVague(use.mention) ? meantOf(use, lists, world) : ingredient;
    // A word that fits several ingredients takes an unknown part of each.
    const portion = meant === undefined ? VAGUE : use.mention.portion;
    let share: Range = NONE;
    let over = false;
    if (meant !== undefined && meant !== ingredient) return { ...use, taken: share, over, before };
    const isFirst = firstTaking < 0 || i <= firstTaking;
    const isFollowed = i < lastExplicit;
    const isReadied = use.ready && isFollowed;
    switch (portion.kind) {
      case 'plain':
        if (portion.loose && isFollowed) {
          unsure = true;
          share = { low: 0, high: before.high };
          break;
        }
        // What is told by all its amount later is still whole there.
        if (uses.slice(i + 1).some((u) => isWholeNamed(ingredient, u.mention, world))) break;
        // A plain mention between explicit portions only refers to what lies there, and one before them may only make it ready.
        if (!isFollowed || (!use.ready && isFirst)) share = before;
        break;
      case 'all':
        share = before;
        break;
      case 'rest':
        over = before.high <= SLACK && !unsure;
        if (isReadied && !over) readied = before;
        else share = before;
        break;
      case 'share': {
        const of = portion.remaining
          ? { low: before.low * portion.of, high: before.high * portion.of }
          : sharesOf(readied, overAndOver(portion.of, use.times));
        over = of.low > before.high + SLACK;
        share = of;
        break;
      }
      case 'amount': {
        // `All five cheeses`, of four that are listed.
        if (mention.every && isCounted(mention)) {
          over = portion.measured.quantity.low > mention.ingredients.length;
          share = before;
          break;
        }
        const once = mention.every
          ? shareOfAll(mention, portion.measured.quantity, lists, world)
          : shareOf(ingredient, portion.measured.quantity, world);
        // `The currants and raisins, 600 g of fruit in all`: what lies there, counted up.
        if (mention.every && once !== undefined && isWhole(once)) {
          if (!isFollowed) share = before;
          break;
        }
        const of = once && { low: once.low * use.times.low, high: once.high * use.times.high };
        // `1 tsp in each jar`: of as many as the list is for.
        if (of !== undefined && of.high === Number.POSITIVE_INFINITY && of.low <= before.high + SLACK) {
          unsure = true;
          share = before;
        } else if (of === undefined) {
          unsure = true;
          share = { low: 0, high: before.high };
        } else {
          unsure ||= of.high === Number.POSITIVE_INFINITY;
          // The dumplings that the wrappers were made into are counted by what they are called.
          const isMade = before.high <= SLACK && use.mention.weak && isCounted(use.mention);
          over = of.low > before.high + SLACK && !isMade;
          if (isMade) break;
          // `Pare all five lemons`
          share = isReadied && of.low >= 1 - SLACK && !over ? NONE : of;
        }
        break;
      }
      case 'some':
        unsure = true;
        share = { low: 0, high: before.high };
        break;
    }
    left = { low: Math.max(0, before.low - share.high), high: Math.max(0, before.high - share.low) };
    const isAll = portion.kind === 'all' || (portion.kind === 'plain' && !(portion.loose && isFollowed));
    if ((portion.kind === 'rest' && !isReadied) || (isAll && share.high > 0)) {
      left = NONE;
      unsure = false;
    }
    return { ...use, taken: share, over, before };
  });
  return { ingredient, uses: taken, left, unsure };
}

/** `A third of the sheets … do this twice more`: no more than there is, as half for each of four is half of each one's. */
function overAndOver(of: number, { low, high }: Range): Range {
  const upTo = (times: number): number => Math.max(of, Math.min(1, of * times));
  return { low: upTo(low), high: upTo(high) };
}

const sharesOf = (whole: Range, of: Range): Range => ({ low: whole.low * of.low, high: whole.high * of.high });

const NONE: Range = { low: 0, high: 0 };
const VAGUE: Portion = { kind: 'some' };

const isVague = (mention: Mention): boolean =>
  mention.ingredients.length > 1 && !mention.every && mention.portion.kind !== 'plain';

/** `2 l water`, of lines of 2 l and of 8 l: the one of which that is all. */
function meantOf({ mention, times }: Use, lists: Lists, world: World): Ingredient | undefined {
  const { portion, ingredients } = mention;
  if (portion.kind !== 'amount' || times.low !== 1 || times.high !== 1) return undefined;
  const all = ingredients.flatMap(({ part, ingredient }) => lists[part]?.ingredients[ingredient] ?? []);
  const whole = all.filter((one) => {
    const of = shareOf(one, portion.measured.quantity, world);
    return of !== undefined && isWhole(of);
  });
  return whole.length === 1 ? whole[0] : undefined;
}

const isExplicit = (mention: Mention): boolean =>
  mention.portion.kind === 'rest' || mention.portion.kind === 'amount' || mention.portion.kind === 'share';

/** A number of pieces, and no weight or measure. */
const isCounted = ({ portion }: Mention): boolean =>
  portion.kind === 'amount' && portion.measured.unit === undefined && portion.measured.quantity.count === undefined;

/** `The 200 ml water`, of which 200 ml are listed. */
function isWholeNamed(ingredient: Ingredient, { portion }: Mention, world: World): boolean {
  if (portion.kind !== 'amount' || portion.named !== true) return false;
  const of = shareOf(ingredient, portion.measured.quantity, world);
  return of !== undefined && isWhole(of);
}

const isWhole = ({ low, high }: Range): boolean => low >= 1 - SLACK && high <= 1 + SLACK;

/** What share of several ingredients together a quantity is: `900 g of the fruit`. Undefined where one of them is not known. */
function shareOfAll({ ingredients }: Mention, quantity: Quantity, lists: Lists, world: World): Range | undefined {
  let whole = 0;
  let part = 0;
  for (const ref of ingredients) {
    const each = lists[ref.part]?.ingredients[ref.ingredient];
    const once = each && shareOf(each, quantity, world);
    if (each === undefined || once === undefined || !each.weighed.known) return undefined;
    const grams = likelyGrams(each.weighed);
    whole += grams;
    part = Math.max(part, grams * ((once.low + once.high) / 2));
  }
  return whole > 0 ? { low: part / whole, high: part / whole } : undefined;
}

/** What share of the ingredient a quantity is: by the same measure where it can, else by weight. Undefined when neither is known. */
export function shareOf(ingredient: Ingredient, quantity: Quantity, world: World): Range | undefined {
  const written = ingredient.node.amount;
  const doubt = quantity.about ? ABOUT : 0;
  const around = ({ low, high }: Range): Range => ({ low: low * (1 - doubt), high: high * (1 + doubt) });
  if (written?.kind === 'measured') {
    for (const whole of [written.quantity, ...againOf(ingredient, written, world)]) {
      const ratio = ratioOf(quantity, whole, world);
      if (ratio !== undefined) return around(ratio);
    }
  }
  const { weighed } = ingredient;
  if (!weighed.known || weighed.grams.low <= 0) return undefined;
  const part = weighQuantity(quantity, ingredient.match, world);
  if (!part.known) return undefined;
  // Both carry the same doubt about the food's density, so the middle of each is compared.
  const ratio = (part.grams.low + part.grams.high) / (weighed.grams.low + weighed.grams.high);
  return around({ low: ratio, high: ratio });
}

/** The same in other measures, of all that is written: a weight of each piece so many times. */
const againOf = ({ node, match }: Ingredient, written: MeasuredNode, world: World): readonly Quantity[] =>
  (node.beside ?? []).map((b) => {
    const { quantity } = b.amount;
    return isEach(written, b, match, world) ? timesOf(quantity, written.quantity) : quantity;
  });

function ratioOf(part: Quantity, whole: Quantity, world: World): Range | undefined {
  if (whole.low <= 0) return undefined;
  if (part.unit === undefined && whole.unit === undefined) {
    if (part.count !== whole.count && part.count !== undefined && whole.count !== undefined) return undefined;
    return { low: part.low / whole.high, high: part.high / whole.low };
  }
  if (part.unit === whole.unit && isOne(part) && isOne(whole))
    return { low: part.low / whole.high, high: part.high / whole.low };
  const [a, b] = [totalOf(part, world.measures), totalOf(whole, world.measures)];
  if (a === undefined || b === undefined || a.dimension !== b.dimension) return undefined;
  return { low: a.low / b.high, high: a.high / b.low };
}

const isOne = ({ plus, upTo }: Quantity): boolean => plus === undefined && upTo === undefined;
