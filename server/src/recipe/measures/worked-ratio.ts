/**
 * Knows how what stands above the line and below is added up over a list, with what is not told, and what the quotient hangs on.
 * Refuses to know which measure it is.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { exactly, middle, type Quantity, type Range } from '../../measure/quantity.ts';
import { baseOf } from '../../measure/unit.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import type { Ingredient } from '../model.ts';
import { countsFor, plainFood, rangeOf, type ShareOf, toldShare } from './open.ts';
import { ratioOf, type Term } from './ratio.ts';

export type MeasureValue =
  | {
      readonly known: true;
      readonly value: Range;
      /** The value where every weight is its likeliest, and no less open otherwise; left out where that is the same. */
      readonly likely?: Range;
      /** What the range hangs on for a good part: lines of a food that could be several, or that nobody knows. */
      readonly open?: readonly Ingredient[];
    }
  | { readonly known: false; readonly why: string };

/** What a measure likely is: its middle, with every weight at its likeliest. */
export const likelyOf = ({ value, likely = value }: { readonly value: Range; readonly likely?: Range }): number =>
  middle(likely);

export interface Ratio {
  /** Completes "The … is 31 %". */
  readonly words: string;
  /** Of what stands below the line: per cent of it, or so many times it. */
  readonly unit: 'percent' | 'times';
  readonly top: ShareOf;
  /** The grams above the line, where they are not a share of the weight. */
  readonly topG?: (ingredient: Ingredient) => Range | undefined;
  readonly bottom: ShareOf;
  /** What there is none of when nothing stands below the line. */
  readonly per: string;
  /** What there is none of when nothing stands above it, where the measure then says nothing. */
  readonly without?: string;
}

export function ratio(definition: Ratio, ingredients: readonly Ingredient[]): MeasureValue {
  const { top, topG, bottom, per } = definition;
  const terms: Term[] = [];
  let untold: Untold[] | undefined;
  let likely: Map<Term, Range> | undefined;
  for (const ingredient of ingredients) {
    if (ingredient.free) continue;
    const { weighed } = ingredient;
    const food = plainFood(ingredient);
    const above = food === undefined ? toldShare(top, ingredient) : rangeOf(top(food, ingredient));
    const below = food === undefined ? toldShare(bottom, ingredient) : rangeOf(bottom(food));
    const term = {
      grams: NOTHING,
      top: above ?? countsFor(top, ingredient),
      bottom: below ?? countsFor(bottom, ingredient),
    };
    const own = topG?.(ingredient);
    const written = weighed.known ? weighed.grams : spoonOf(ingredient);
    if (written === undefined) {
      if (term.top.high === 0 && term.bottom.high === 0 && (own === undefined || own.high === 0)) continue;
      const why = weighed.known ? '' : `: ${weighed.why}`;
      return { known: false, why: `the weight of ${ingredient.name} is not known${why}` };
    }
    term.grams = ingredient.optional ? { low: 0, high: written.high } : written;
    terms.push(term);
    if (weighed.known && !ingredient.optional && written.low < written.high) {
      likely ??= new Map();
      likely.set(term, exactly(likelyGrams(weighed)));
    }
    if (above === undefined || below === undefined) {
      untold ??= [];
      untold.push({ ingredient, ...term });
    }
    if (own !== undefined && own.high > 0) terms.push({ grams: ONE, top: own, bottom: NOTHING });
  }
  if (definition.without !== undefined && terms.every((t) => t.top.high === 0))
    return { known: false, why: `there is no ${definition.without}` };
  const value = ratioOf(terms);
  if (value === undefined) {
    const mayBe = untold?.filter(({ bottom }) => bottom.high > 0) ?? [];
    const names = mayBe.map(({ ingredient }) => `\`${ingredient.name}\``).join(', ');
    return {
      known: false,
      why: mayBe.length === 0 ? `there is no ${per}` : `there is no other ${per} than what ${names} may be`,
    };
  }
  const open = untold === undefined ? [] : bearing(untold, terms);
  const at = likely && ratioOf(terms.map((term) => ({ ...term, grams: likely.get(term) ?? term.grams })));
  return { known: true, value, ...(at && { likely: at }), ...(open.length > 0 && { open }) };
}

interface Untold extends Term {
  readonly ingredient: Ingredient;
}

/** Less than this share of a sum is not worth naming. */
const NEGLIGIBLE = 0.03;

/** Those on which a good part of what stands above or below the line hangs. */
function bearing(untold: readonly Untold[], terms: readonly Term[]): readonly Ingredient[] {
  const [above, below] = [sumOf(terms, 'top'), sumOf(terms, 'bottom')];
  const hangs = ({ grams, top, bottom }: Term): boolean =>
    (top.high - top.low) * grams.high > NEGLIGIBLE * above ||
    (bottom.high - bottom.low) * grams.high > NEGLIGIBLE * below;
  return untold.filter(hangs).map(({ ingredient }) => ingredient);
}

const sumOf = (terms: readonly Term[], side: 'top' | 'bottom'): number =>
  terms.reduce((sum, term) => sum + term.grams.high * term[side].high, 0);

/**
 * What a spoon of a food that nobody has weighed holds at the most, in g/ml: honey is 1.42, salt 1.22 (USDA SR26, NDB 19296, 02047, by the
 * tablespoon of 14.8 ml).
 */
const HEAVIEST = 1.5;

/** From nothing to the heaviest there is, for a teaspoon and less; undefined for any other measure. */
function spoonOf({ node: { amount } }: Ingredient): Range | undefined {
  const { unit, plus, upTo, high } = amount?.kind === 'measured' ? amount.quantity : NO_QUANTITY;
  if (unit === undefined || !SPOONS.has(unit) || plus !== undefined || upTo !== undefined) return undefined;
  return { low: 0, high: high * (baseOf(unit, 'metric') ?? 0) * HEAVIEST };
}

const NO_QUANTITY: Partial<Quantity> & Range = { low: 0, high: 0 };
const SPOONS: ReadonlySet<UnitSymbol> = new Set<UnitSymbol>(['pinch', 'dash', 'drop', 'tsp']);

const ONE: Range = { low: 1, high: 1 };
const NOTHING: Range = { low: 0, high: 0 };
