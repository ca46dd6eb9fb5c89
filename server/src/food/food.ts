/**
 * Knows what the food book says of one food. Figures are per 100 g of the edible part; what is not known is absent, never zero.
 * Refuses to know recipes.
 */
import type { CountWord } from '../measure/count-words.ts';
import type { Quantity, Range, Size } from '../measure/quantity.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';

/** Grams in 100 g of the edible part, but `sodium` in mg. An absent field is not known. */
export interface Composition {
  readonly water?: number;
  readonly protein?: number;
  readonly fat?: number;
  readonly saturates?: number;
  readonly carbohydrate?: number;
  readonly sugars?: number;
  readonly sucrose?: number;
  readonly lactose?: number;
  /** Glucose and fructose. */
  readonly glucose?: number;
  readonly fructose?: number;
  readonly starch?: number;
  readonly fibre?: number;
  readonly ash?: number;
  readonly alcohol?: number;
  /** Free acid, as the food's own main acid. */
  readonly acid?: number;
  /** mg, not g. */
  readonly sodium?: number;
}

export type FoodClass =
  | 'flour'
  | 'starch'
  | 'grain'
  | 'pasta'
  | 'bread'
  | 'sugar'
  | 'syrup'
  | 'fat'
  | 'oil'
  | 'dairy'
  | 'milk'
  | 'cream'
  | 'cheese'
  | 'egg'
  | 'leavening'
  | 'yeast'
  | 'salt'
  | 'curing salt'
  | 'water'
  | 'leafy herb'
  | 'dried herb'
  | 'spice'
  | 'vegetable'
  | 'mushroom'
  | 'fruit'
  | 'dried fruit'
  | 'juice'
  | 'legume'
  | 'nut'
  | 'seed'
  | 'chocolate'
  | 'meat'
  | 'ground meat'
  | 'poultry'
  | 'ground poultry'
  | 'cured meat'
  | 'fish'
  | 'shellfish'
  | 'stock'
  | 'sauce'
  | 'condiment'
  | 'vinegar'
  | 'alcohol'
  | 'gelling'
  | 'flavouring'
  | 'drink'
  | 'other';

/** What is cut from animals, before it is cured. */
export const FLESH: readonly FoodClass[] = ['meat', 'ground meat', 'poultry', 'ground poultry', 'fish', 'shellfish'];

export type Role =
  /** Wheat, rye, barley flour that makes a dough: counts as the 100 % of baker's percentages. */
  | 'baking flour'
  | 'leavening'
  | 'acid'
  | 'thickener'
  | 'gelling'
  | 'emulsifier'
  /** Not safe to eat raw (raw egg, meat, flour …). */
  | 'raw risk'
  /** Raw, it undoes gelatine. */
  | 'undoes gelatine'
  /** Half of its water stays in the tissue when chopped. */
  | 'holds its water';

export interface HouseholdMeasure {
  /** `cup`, `tbsp`, `tsp`, `ml` …: grams in one of the unit, US customary. */
  readonly unit: UnitSymbol;
  /** `chopped`, `packed`, `sifted`, `melted` …; absent for as it comes. */
  readonly form?: string;
  readonly grams: Range;
  /** The published figure, where it is not the middle of the range. */
  readonly typical?: number;
  readonly source: string;
}

export interface PieceWeight {
  readonly word?: CountWord;
  readonly size?: Size;
  readonly grams: Range;
  /** The published figure, where it is not the middle of the range. */
  readonly typical?: number;
  readonly source: string;
}

export interface Food {
  /** kebab-case, permanent. */
  readonly id: string;
  /** The book's own name, singular where that is natural: `plain flour`, `egg yolk`. */
  readonly name: string;
  /** Every other way it is written, British and American, without plurals that rules can make. */
  readonly names: readonly string[];
  readonly class: FoodClass;
  readonly roles: readonly Role[];
  readonly per100: Composition;
  readonly measures: readonly HouseholdMeasure[];
  readonly pieces: readonly PieceWeight[];
  /** Share of the weight as bought that is trimmed away, 0 to 1, and what it is. */
  readonly trim?: { readonly share: number; readonly what: string; readonly source: string };
  readonly allergens: {
    readonly us: readonly string[];
    readonly eu: readonly string[];
    /** Words that say which nut or cereal it is: `almonds`. */
    readonly sorts?: readonly string[];
    /** There may be others: a food of the house that is like none, or says what nobody understands. */
    readonly unsaid?: true;
    /** What some makes of it have and others not: to be read on the label. */
    readonly label?: { readonly us: readonly string[]; readonly eu: readonly string[]; readonly source: string };
  };
  /** Where the composition comes from: `USDA SR26, NDB 20081`. */
  readonly source: string;
  /** What a reader of the figures should know: why they do not add up, what came from elsewhere. */
  readonly note?: string;
  /** The house has said something of it. */
  readonly house?: true;
  /** The id of the food of the book that a food of the house is like. */
  readonly like?: string;
}

/** The id under which tables know a food: that of the book's food which the house's own is like. */
export const bookIdOf = ({ id, like }: Food): string => like ?? id;

/** What a written name turns out to be. */
export type FoodMatch =
  | FoundFood
  /** The words could be two foods. */
  | { readonly kind: 'ambiguous'; readonly foods: readonly Food[] }
  | UnknownFood;

export interface FoundFood {
  readonly kind: 'food';
  readonly food: Food;
  readonly form?: string;
  /** Words that say which of it, and change nothing: `ratte` of potatoes. */
  readonly unread?: readonly string[];
  /** Each that is counted is no whole one, but this of it, which nobody has weighed: `chunk of mango`, `baby cauliflower`. */
  readonly part?: string;
}

/** What a name that the book does not have tells all the same. */
export interface UnknownFood {
  readonly kind: 'unknown';
  /** Up to three near ones, nearest first. */
  readonly near: readonly Food[];
  /** What its noun is, and all foods of the book that are one. */
  readonly class?: FoodClass;
  readonly range?: readonly Food[];
  /** Not safe raw. */
  readonly raw?: true;
  /** What its words hint that it may hold much of. */
  readonly brings?: readonly Brings[];
}

/** What a little of makes or mars a formula. */
export type Brings = 'salt' | 'yeast' | 'leavening' | 'gelling';

/** How a weight in grams was come by; `words` is one short clause a cook can read. */
export interface WeightReason {
  readonly kind: 'weight' | 'house' | 'measure' | 'density' | 'size' | 'piece' | 'package';
  readonly words: string;
  readonly source: string;
}

export type Weighed =
  | {
      readonly known: true;
      readonly grams: Range;
      /** The likeliest single figure, where it is not the middle of the range: a cup of flour is 125 g in 120 to 150. */
      readonly typical?: number;
      readonly reason: WeightReason;
    }
  | { readonly known: false; readonly why: string };

/** A food block of the house, already read from its file. */
export interface HouseFood {
  readonly name: string;
  readonly like?: string;
  readonly also: readonly string[];
  /** `1 cup = 120 g`. */
  readonly measures: readonly { readonly of: Quantity; readonly grams: Quantity }[];
  /** Grams per 100 g by the notation's words: water, fat, protein, carbohydrate, sugar, starch, fibre, salt, ash, alcohol. */
  readonly composition: Readonly<Partial<Record<HouseComponent, number>>>;
  readonly trimShare?: number;
  /** Allergen words as written. */
  readonly contains: readonly string[];
}

export type HouseComponent =
  | 'water'
  | 'fat'
  | 'protein'
  | 'carbohydrate'
  | 'sugar'
  | 'starch'
  | 'fibre'
  | 'salt'
  | 'ash'
  | 'alcohol';

/** Every food that the match may mean: none where it is unknown. */
export const foodsOf = (match: FoodMatch): readonly Food[] =>
  match.kind === 'food' ? [match.food] : match.kind === 'ambiguous' ? match.foods : [];
