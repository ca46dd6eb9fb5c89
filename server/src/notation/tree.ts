/**
 * Knows what a line of the notation is once read: our own tree, in which a missing piece is visible in the type.
 * Refuses to know what foods, kinds or codes exist. Offsets count UTF-16 units from the start of their own line.
 */
import type { Quantity } from '../measure/quantity.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import type { Component } from './keywords.ts';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A node while it is being made. */
export type Draft<T> = { -readonly [K in keyof T]: T[K] };

/** A run of the line's own text. */
export interface TextNode extends Span {
  readonly text: string;
}

/** One number of an amount, as it was written. */
export interface NumeralNode extends Span {
  readonly value: number;
  /** The most it may be: `a few`. */
  readonly upTo?: number;
  /** `1/2`, `½` and `1½` are fractions, `0.5` is not; an implied one has no width and stands before what it counts. */
  readonly style: 'decimal' | 'fraction' | 'glyph' | 'word' | 'implied';
}

export interface UnitNode extends Span {
  readonly symbol: UnitSymbol;
}

/** An amount with a number in it: `150 g`, `40-45 g`, `3 large`, `1 can of 400 g`, `65 %`. */
export interface MeasuredNode extends Span {
  readonly kind: 'measured';
  readonly quantity: Quantity;
  readonly low: NumeralNode;
  readonly high?: NumeralNode;
  readonly unit?: UnitNode;
  /** The count word or size word, as written. */
  readonly counted?: TextNode;
  readonly sized?: TextNode;
  readonly each?: MeasuredNode;
  /** `heaped`, `firmly packed`. */
  readonly bias?: TextNode;
  /** The other end of a range in another unit: `1 tsp to 1 tbsp`. */
  readonly upTo?: MeasuredNode;
  /** The further terms of a sum: `1 cup plus 2 tbsp`; they may stand behind the name. */
  readonly plus?: readonly MeasuredNode[];
}

/** `to taste`, `as needed`, `a little`, or nothing where a purpose says enough (`oil for frying`). */
export interface FreeNode extends Span {
  readonly kind: 'free';
}

export type AmountNode = MeasuredNode | FreeNode;

export interface TemperatureNode extends Span {
  readonly kind: 'temperature';
  readonly low: NumeralNode;
  readonly high?: NumeralNode;
  /** Signed, in the unit written. */
  readonly lowDegrees: number;
  readonly highDegrees: number;
  /** `unsaid`: `250 degrees`, which could be either. */
  readonly unit: 'C' | 'F' | 'gas' | 'unsaid';
  readonly unitSpan: Span;
  readonly fan: boolean;
  readonly about: boolean;
}

export interface DurationNode extends Span {
  readonly kind: 'duration';
  readonly lowMin: number;
  readonly highMin: number;
  /** Minutes of one of the unit that it is written in; of two the larger. */
  readonly unitMin: number;
  /** `overnight` has no number. */
  readonly overnight: boolean;
}

/** A length in a sentence: `roll 3 mm thick`. */
export interface LengthNode extends Span {
  readonly kind: 'length';
  readonly measured: MeasuredNode;
}

export interface WordNode extends Span {
  readonly kind: 'word';
  /** Lower case, straight apostrophe. */
  readonly word: string;
}

/** `[whole milk]`: a mention the writer forces. */
export interface ForcedNode extends Span {
  readonly kind: 'forced';
  readonly name: TextNode;
}

export interface MarkNode extends Span {
  readonly kind: 'mark';
  readonly mark: string;
}

export type SentenceItem =
  | WordNode
  | MeasuredNode
  | TemperatureNode
  | DurationNode
  | LengthNode
  | ForcedNode
  | MarkNode;

export interface Sentence extends Span {
  readonly items: readonly SentenceItem[];
}

/** An amount said again in another measure. */
export interface BesideNode extends Span {
  readonly sign: '=' | '(' | '/' | 'or' | ',';
  readonly amount: MeasuredNode;
  /** Of all that the first says, of each piece, or of whichever the food makes likely: `2 (8 oz) steaks`, `4 carrots (300 g)`. */
  readonly means: 'same' | 'each' | 'either';
  /** Of what stays without its liquid: `1 tin chickpeas (240 g drained)`. */
  readonly drained?: true;
}

/** What is bought and taken besides: `plus more for dusting`, `plus 1/2 tsp for the glaze`. */
export interface RestNode extends Span {
  readonly amount?: MeasuredNode;
}

/** An alternative behind `or` that has an amount of its own: `1 can peas, or 2 cups fresh peas`. */
export interface OtherNode extends Span {
  readonly amount: MeasuredNode;
  readonly name: TextNode;
}

export interface IngredientNode {
  readonly kind: 'ingredient';
  readonly optional?: Span;
  readonly amount?: AmountNode;
  readonly beside?: readonly BesideNode[];
  /** What a share is of: `1.5 % of the beef  salt`. */
  readonly shareOf?: TextNode;
  /** The amount is of each of the foods that the name lists. */
  readonly eachOf?: true;
  /** What is taken out of so many: `juice of 1 lemon`, `zest and juice of 2 limes`. */
  readonly takes?: readonly TextNode[];
  /** What is taken out of the item before, and of this one where its food has it: `zest of 1 orange and 1 lemon`. */
  readonly takesToo?: readonly TextNode[];
  /** All words of it, up to `of`: `finely grated zest and juice`. */
  readonly taken?: TextNode;
  readonly name?: TextNode;
  /** Weight as bought: `from 560 g`. */
  readonly bought?: AmountNode;
  /** All that follows the comma or stands for it: what is done to the food, what it is for, what is taken besides. */
  readonly preparation?: TextNode;
  readonly note?: TextNode;
  /** Within the preparation. */
  readonly purpose?: TextNode;
  /** Within the preparation. */
  readonly rest?: RestNode;
  readonly others?: readonly OtherNode[];
  /** It stands behind a comma of another item, and is one only where its food is known: `3 onions, 1 sliced` are onions. */
  readonly listed?: true;
  /** Further items of the line: `2 eggs plus 1 yolk`. */
  readonly more?: readonly IngredientNode[];
}

/** What names a recipe or part: any text. A kind may follow its last ` as `; whether one does, only who knows the kinds can say. */
export interface TitleNode {
  /** All of it. */
  readonly title?: TextNode;
  /** The other reading: what stands before the last ` as `, and after it. */
  readonly ofKind?: { readonly name?: TextNode; readonly kind?: TextNode };
}

export type TextField = 'by' | 'serve' | 'note' | 'source';

/** What a stated time is spent with; `total` is all of it. */
export type TimeRole = 'work' | 'cooking' | 'waiting' | 'total';

/** `20 min at work` */
export interface StatedTime {
  readonly duration: DurationNode;
  readonly role: TimeRole;
}

export type PanShape = 'round' | 'square' | 'rectangle' | 'loaf' | 'ring';

export interface PanNode extends Span {
  /** Of all pans, or of the hollows of a muffin tin. */
  readonly count: number;
  readonly countNode?: NumeralNode;
  readonly shape?: PanShape;
  /** What it is called, as the table of pans has it: `springform`. */
  readonly form?: string;
  /** By what it is sold, where its name says so: the `half` of a sheet, `1/2` of a gastronorm. */
  readonly sold?: string;
  /** Its hollows are counted. */
  readonly cups?: boolean;
  /** `deep`, `mini` */
  readonly traits?: readonly string[];
  /** What it is made of, and how it looks: `glass`, `dark`. */
  readonly of?: readonly string[];
  /** In the unit written, in the order written; the depth last, where it is said. */
  readonly sizes: readonly NumeralNode[];
  readonly unit?: UnitNode;
  /** The unit of bare numbers: `9 x 13`. */
  readonly unitMeant?: 'in' | 'cm';
  /** `7 cm deep` */
  readonly depth?: MeasuredNode;
  /** `1.2 l`, `12-cup`: of each. */
  readonly volume?: MeasuredNode;
  /** `2 lb`: the loaf that a tin is sold for. */
  readonly loaf?: MeasuredNode;
}

/** Where a figure is still to be measured, its blank: `took … min to bake`. */
interface Unmeasured {
  readonly blank?: Span;
}

export type Statement =
  | { readonly kind: 'blank' }
  | ({ readonly kind: 'recipe' } & TitleNode)
  | { readonly kind: 'text'; readonly field: TextField; readonly value?: TextNode }
  | {
      readonly kind: 'yield';
      readonly amount?: MeasuredNode;
      readonly of?: TextNode;
      /** Those who eat are counted: `serves 8`. */
      readonly serves?: true;
    }
  | { readonly kind: 'pan'; readonly pan?: PanNode }
  | { readonly kind: 'time'; readonly stated: readonly StatedTime[] }
  | { readonly kind: 'oven'; readonly temperature?: TemperatureNode; readonly rest?: TextNode }
  | { readonly kind: 'tags'; readonly tags: readonly TextNode[] }
  | { readonly kind: 'from'; readonly file?: TextNode }
  /** A file that shows it, and what is to be seen there, for who does not see it. */
  | { readonly kind: 'picture'; readonly file?: TextNode; readonly words?: TextNode }
  | ({ readonly kind: 'part'; readonly file?: TextNode; readonly filePart?: TextNode } & TitleNode)
  | IngredientNode
  | { readonly kind: 'step'; readonly sentence: Sentence }
  | { readonly kind: 'trial'; readonly date?: TextNode; readonly by?: TextNode }
  | (Unmeasured & {
      readonly kind: 'took';
      readonly duration?: DurationNode;
      readonly to?: TextNode;
      /** The oven, or whatever it was in. */
      readonly in?: TextNode;
    })
  | (Unmeasured & { readonly kind: 'started'; readonly temperature?: TemperatureNode })
  | (Unmeasured & { readonly kind: 'reached'; readonly temperature?: TemperatureNode; readonly place?: TextNode })
  | (Unmeasured & { readonly kind: 'weighed'; readonly amount?: MeasuredNode; readonly outOf?: TextNode })
  /** The amount and name are those of the item. */
  | {
      readonly kind: 'used';
      readonly amount?: AmountNode;
      readonly name?: TextNode;
      readonly part?: TextNode;
      readonly ingredient?: IngredientNode;
    }
  | { readonly kind: 'saw'; readonly value?: TextNode }
  /** The fingerprint of what a trial tested, written by the tool. */
  | { readonly kind: 'tested'; readonly value?: TextNode }
  | { readonly kind: 'verdict'; readonly value?: TextNode }
  | { readonly kind: 'swap'; readonly old?: TextNode; readonly ingredient: IngredientNode }
  | { readonly kind: 'drop'; readonly name?: TextNode }
  | { readonly kind: 'add'; readonly ingredient: IngredientNode }
  | { readonly kind: 'food'; readonly name?: TextNode }
  | { readonly kind: 'like'; readonly name?: TextNode }
  | { readonly kind: 'also'; readonly names: readonly TextNode[] }
  | { readonly kind: 'component'; readonly component: Component; readonly amount?: MeasuredNode }
  | { readonly kind: 'trim'; readonly amount?: MeasuredNode }
  | { readonly kind: 'price'; readonly price?: NumeralNode; readonly per?: MeasuredNode }
  | { readonly kind: 'contains'; readonly names: readonly TextNode[] }
  | { readonly kind: 'allow'; readonly code?: TextNode; readonly reason?: TextNode }
  /** None of the above; the words are kept, and what they would be as a line of the list without its amount in front. */
  | { readonly kind: 'unread'; readonly words: TextNode; readonly bare?: IngredientNode };

export type StatementKind = Statement['kind'];

/** Something in a line that could not be read, with what to write instead. */
export interface SyntaxFault extends Span {
  readonly code: SyntaxCode;
  /** Plain words that complete the message of the code. */
  readonly detail: string;
  /** What to put in the place of the span, where that is sure. */
  readonly write?: string;
  /** What may be meant instead, where that is not sure: the line is not counted. */
  readonly either?: readonly string[];
}

export type SyntaxCode =
  | 'not-a-statement'
  | 'missing-name'
  | 'missing-amount'
  | 'missing-value'
  | 'stray-text'
  | 'bad-number'
  | 'decimal-comma'
  | 'bad-pan'
  | 'bad-date'
  | 'bad-verdict'
  | 'unclosed'
  | 'missing-reason'
  | 'misplaced'
  | 'line-too-long'
  | 'too-many-lines'
  | 'capital-keyword'
  | 'conflict-mark';

/** One line, read. Equal texts may share one object: a line does not know where it stands. */
export interface Line {
  readonly text: string;
  /** The word, or mark, that opens the line; absent for an amount or a blank line. */
  readonly keyword?: Span;
  readonly statement: Statement;
  readonly comment?: TextNode;
  readonly faults: readonly SyntaxFault[];
}
