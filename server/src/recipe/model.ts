/**
 * Knows the recipe worked out, as types alone: parts with their lists and steps, what each step mentions, and what it takes.
 * Refuses to know how any of it is found.
 */
import type { FoodBook } from '../food/book.ts';
import type { Food, FoodMatch, Weighed } from '../food/food.ts';
import type { Language } from '../food/language.ts';
import type { Range } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import type { Outline, PartSource } from '../notation/outline.ts';
import type {
  IngredientNode,
  MeasuredNode,
  PanNode,
  Sentence,
  Span,
  TemperatureNode,
  TextNode,
} from '../notation/tree.ts';
import type { HouseBands, Kind } from './measures/kind.ts';
import type { YieldNode } from './yield.ts';

export interface Step {
  /** The line in its part, from 0. */
  readonly line: number;
  readonly sentence: Sentence;
  readonly mentions: readonly Mention[];
}

/** One part with its steps and ledger. Knows its number among the parts, and no place in the file. */
export interface Part {
  readonly index: number;
  readonly head: PartHead;
  readonly steps: readonly Step[];
  /** By ingredient, in the order of the list. */
  readonly ledger: readonly LedgerEntry[];
  /** Earlier parts whose names its steps mention, with what they hold. */
  readonly includes: readonly PartHead[];
  /** Those of them that go into it, and are not only eaten with it: `Serve the curry with the rice`. */
  readonly mixes: readonly PartHead[];
  /** The heads of all parts as they were when this one was bound; none before it has gained or lost a word that its steps have, or a class of food. */
  readonly heads: readonly PartHead[];
  /** What later parts take of this part or its ingredients. */
  readonly usesByLater: readonly OutsideUse[];
  /** The oven in force when the part begins: from the recipe's head or an earlier step. */
  readonly ovenBefore: OvenSetting | undefined;
  readonly isLast: boolean;
}

/** A step that takes from an earlier part: one ingredient of it, or the part itself. */
export interface OutsideUse {
  readonly of: number;
  readonly ingredient?: number;
  readonly use: Use;
}

export interface OvenSetting {
  readonly celsiusLow: number;
  readonly fan: boolean;
}

export interface Recipe {
  readonly outline: Outline;
  readonly name: string;
  readonly parts: readonly Part[];
  /** Of all parts, in their order. */
  readonly heads: readonly PartHead[];
  /** The last part of each name, in lower case; the same while an edit calls no part anew. */
  readonly byName: () => ReadonlyMap<string, number>;
  /** The line in the document at which each part begins. */
  readonly partsAt: readonly number[];
  readonly yield?: { readonly at: number; readonly node: YieldNode };
  readonly pan?: { readonly at: number; readonly node: PanNode };
  readonly oven?: { readonly at: number; readonly node: TemperatureNode };
  readonly world: World;
  /** It, or a part of it, builds on another file, so that what stands here is not the whole. */
  readonly inherits: boolean;
}

export interface PartHead {
  readonly source: PartSource;
  /** Empty for the nameless part. */
  readonly name: string;
  /** `as KIND` as written, on the part's first line. */
  readonly kindNode?: TextNode;
  readonly kind?: Kind;
  readonly ingredients: readonly Ingredient[];
  /** Sum of what is known, in grams, and of what it likely is; `complete` when every weighable line is. */
  readonly massG: Range & { readonly likely: number; readonly complete: boolean };
  /** Flour that counts as the 100 % of baker's percentages, in grams. */
  readonly flourG: Range;
  /** The pan that this part alone goes into. */
  readonly pan?: { readonly line: number; readonly node: PanNode };
  /** All grams are relative: the part is written in percentages and nothing fixes its batch. */
  readonly nominal: boolean;
  /** Lines of the list that are not understood, from 0: every sum of the part lacks what they bring. */
  readonly notUnderstood: readonly number[];
}

export interface Ingredient {
  /** The line in its part, from 0. */
  readonly line: number;
  readonly node: IngredientNode;
  /** What it is called, without preparation. */
  readonly name: string;
  /** Where on its line the name stands: of two on one line, each has its own. */
  readonly nameNode: TextNode;
  readonly match: FoodMatch;
  readonly food?: Food;
  /** What goes into the part, trimmed. */
  readonly weighed: Weighed;
  /** A baker's percentage, when the line is written in one. */
  readonly percent?: Range;
  readonly optional: boolean;
  /** `to taste`, `as needed`, and no amount where the purpose or the food allows it. */
  readonly free: boolean;
  /** The alternatives behind `or`, which may be taken in its place. */
  readonly others?: readonly Named[];
  /** Foods that the line names besides, and that may be in it: `cream, or coconut milk`. */
  readonly mayHold?: readonly Named[];
  /** What is taken out of it, where that is more than one thing: `zest and juice of 1 lemon`. */
  readonly takes?: readonly FoodMatch[];
  /** Another ingredient of the same line has this amount as well: it is written once. */
  readonly shares?: true;
  /** Its line gives no amount in front. */
  readonly bare?: true;
  /** It is no food but a part of the recipe, taken in so many times over or by that share: its foods and its weight are counted there. */
  readonly ofPart?: number;
}

/** A food by the name that the line gives it. */
export interface Named {
  readonly name: TextNode;
  readonly match: FoodMatch;
}

export interface Mention extends Span {
  /** The name's own words, without the portion. */
  readonly portion: Portion;
  /** From the portion's first word to the name's last. */
  readonly whole: Span;
  /** What the words name; several when they fit several ingredients of one part. */
  readonly ingredients: readonly IngredientRef[];
  /** The part named, when it is a part. */
  readonly part?: number;
  /** `[butter]` */
  readonly forced: boolean;
  /** The name stands as a verb: `butter the pan`. */
  readonly verb: boolean;
  /** A name only by the food's other names. */
  readonly weak: boolean;
  /** `both sugars`, `the flours`: all that fit are meant. */
  readonly every: boolean;
  /** `Add the rest`: of what was last portioned out, or of all that is listed. */
  readonly bare?: true;
  /** Indexes of the first and last item. */
  readonly from: number;
  readonly to: number;
}

export type Portion =
  /** No portion word: all that is left, or only a reference where an explicit portion follows. */
  | {
      readonly kind: 'plain' /** `A shower of the cheese`: less than all of it, where the rest is spoken of. */;
      readonly loose?: true;
    }
  | { readonly kind: 'all' }
  | { readonly kind: 'rest' }
  /** A share of the whole, or of what is left. */
  | { readonly kind: 'share'; readonly of: number; readonly remaining: boolean }
  | { readonly kind: 'amount'; readonly measured: MeasuredNode /** `The 200 ml water`. */; readonly named?: boolean }
  /** `a little of the`, `most of the`: not known how much. */
  | { readonly kind: 'some' };

export interface IngredientRef {
  readonly part: number;
  /** Index in the part's ingredients. */
  readonly ingredient: number;
}

/** An ingredient as a run names it. */
export interface NamedRef {
  readonly ref: IngredientRef;
  /** Listed in the plural: `eggs`. */
  readonly plural: boolean;
  /** By a word for all that it fits: a sort of food, or an animal. */
  readonly shared: boolean;
  /** By a word that is something else's where that is listed too: the butter, of peanut butter. */
  readonly borrowed: boolean;
  /** All that its line says it is, and how it is made ready: `unsalted butter, melted`. */
  readonly told: string;
}

/** A run of words and all that it names. */
export interface Run {
  readonly words: readonly string[];
  /** By part, from the first: its ingredients that are called so. */
  readonly lists: readonly Listed[];
  /** The parts that are called so, from the first. */
  readonly parts: readonly number[];
}

/** The ingredients of one part that a run names, in the order of the list; where it is the full name of some, those alone. */
export interface Listed {
  readonly part: number;
  readonly refs: readonly NamedRef[];
  readonly full: boolean;
  /** Those that end with it, where it is the full name of some. */
  readonly longer?: readonly NamedRef[];
}

export interface Use {
  /** The part and step that take it; `line` is the step's line in that part. */
  readonly part: number;
  readonly step: number;
  readonly line: number;
  readonly mention: Mention;
  /** It only makes ready what later portions may take. */
  readonly ready: boolean;
  /** How many times over its amount is taken: in each of four jars. */
  readonly times: Range;
}

export interface TakenUse extends Use {
  /** Share of the whole taken here; both 0 for a mere reference. */
  readonly taken: Range;
  /** An explicit portion that is more than was left. */
  readonly over: boolean;
  /** How much was left before, as a share. */
  readonly before: Range;
}

export interface LedgerEntry {
  readonly ingredient: Ingredient;
  readonly uses: readonly TakenUse[];
  /** Share of the whole left at the end. */
  readonly left: Range;
  /** A portion such as `a little of the` was taken, so that what is left is not known. */
  readonly unsure: boolean;
}

export interface World {
  readonly book: FoodBook;
  readonly measures: Measures;
  /** Whose words for foods come first; none where nothing is said. */
  readonly language?: Language;
  /** What the house calls usual. */
  readonly bands?: HouseBands;
  readonly ovens?: HouseOvens;
}

/** By name, as a trial calls them. */
export type HouseOvens = Readonly<Record<string, HouseOven>>;

export interface HouseOven {
  /** Its fan runs, or it has none; not known where nothing is said. */
  readonly fan?: boolean;
  /** K by which it is warmer than its dial says. */
  readonly offset?: number;
}
