/**
 * Knows what a kind is: what it is made of, and the bands that its measures are judged by.
 * Refuses to know which kinds there are, and how a measure is worked out.
 */

/** What of a formula is measured. */
export type MeasureName =
  | 'hydration'
  | 'cake hydration'
  | 'liquid per flour'
  | 'fat'
  | 'sugar'
  | 'salt'
  | 'egg'
  | 'yeast'
  | 'leavening'
  | 'baking powder'
  | 'baking soda'
  | 'egg per fat'
  | 'liquid per sugar'
  | 'egg protein'
  | 'yolk per dairy'
  | 'starch per dairy'
  | 'thickener per liquid'
  | 'gelatine'
  | 'agar'
  | 'salt share'
  | 'brine salt'
  | 'cure salt'
  | 'liquor acid'
  | 'oil share'
  | 'oil per yolk'
  | 'oil per acid'
  | 'butter per yolk'
  | 'sugar per white'
  | 'sugar per fruit'
  | 'sugar per juice'
  | 'sugar per liquid'
  | 'sugar per spirit'
  | 'sweetener per grain'
  | 'water per sugar'
  | 'fat per sugar'
  | 'butter per sugar'
  | 'oil per grain'
  | 'nuts per sugar'
  | 'soda per sugar'
  | 'thickener per fruit'
  | 'flour per potato'
  | 'chocolate per cream'
  | 'cream per sugar'
  | 'liquid per rice'
  | 'water per bones'
  | 'fat share'
  | 'yolk share'
  | 'milk solids'
  | 'sugars share'
  | 'total solids'
  | 'lactose in water'
  | 'freezing point'
  | 'acid share'
  | 'vinegar per produce'
  | 'sugar per produce'
  | 'fat per vegetable'
  | 'milk per potato'
  | 'crumbs per meat'
  | 'salt per water'
  | 'culture per liquid'
  | 'acid per milk'
  | 'mash salt';

/** What a kind is made of: one of its kind is wanted. */
export type Need =
  | 'flour'
  | 'starch'
  | 'fat'
  | 'oil'
  | 'sugar'
  | 'egg'
  | 'white'
  | 'yeast'
  | 'dairy'
  | 'cheese'
  | 'gelling'
  | 'chocolate'
  | 'fruit'
  | 'vegetable'
  | 'juice'
  | 'spirit'
  | 'salt'
  | 'vinegar'
  | 'sour'
  | 'flesh'
  | 'grain'
  | 'bread';

/** [low, high]; null is no limit on that side. */
export type Band = readonly [number | null, number | null];

/** A ratio, unless the measure is a temperature, in °C; what it adds up, and over what, is in `definitions.ts`. */
export interface KindMeasure {
  readonly measure: MeasureName;
  /** Where published formulas lie. */
  readonly usual: Band;
  /** Outside of it the thing fails: where four published formulas or more are known, as a rule a tenth past the usual and past all of them; salt, and what else is wider, by judgement. */
  readonly implausible: Band;
  /** What happens below and above, in a cook's words. */
  readonly below?: string;
  readonly above?: string;
  /** What to change first to bring it up, and down. */
  readonly raise?: string;
  readonly lower?: string;
  readonly source: string;
}

export interface Kind {
  readonly name: string;
  readonly group: string;
  readonly also?: readonly string[];
  /** What later steps call it, where that is not what they call its family. */
  readonly called?: readonly string[];
  /** What it is made of: one of each row. */
  readonly needs?: readonly (readonly Need[])[];
  /** Meat in it is minced, whatever its line and the steps say. */
  readonly minced?: true;
  readonly measures: readonly KindMeasure[];
}

/** Bands that a house sets, by kind and measure: what is usual there. */
export type HouseBands = Readonly<Record<string, Readonly<Record<string, Band>>>>;
