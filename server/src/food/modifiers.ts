/**
 * Knows which words beside the name of a food leave it what it is, which only say how it is cut, and which make it another food.
 * Refuses to know the names themselves.
 */
import modifiersText from '../../data/foods/modifiers.tsv';
import { countWord } from '../measure/count-words.ts';
import { once, onceByText } from '../measure/once.ts';
import { rowsIn } from '../measure/table-rows.ts';
import type { Food, FoodClass } from './food.ts';
import { wordSet } from './names.ts';
import { nounOf } from './nouns.ts';

/** Whether a word beside the name leaves the food what it is; without a food, whether it would leave any. */
export function saysNothing(word: string, food: Food | undefined): boolean {
  if (isNumber(word)) return true;
  const beside = besideOf(word);
  if (beside === 'any') return true;
  if (food === undefined) return beside === undefined && FORMS.has(word);
  if (beside?.in(food.class) === true) return true;
  if (FORMS.has(word)) return beside === undefined;
  const counted = countWord(word);
  return counted !== undefined && food.pieces.some((piece) => piece.word === counted);
}

/** Whether the word names a part or the shape of a food of this class: the caps of mushrooms, the tails of lobsters. */
export function isPart(word: string, kind: FoodClass): boolean {
  const beside = besideOf(word);
  return beside !== 'any' && beside?.part === true && beside.in(kind);
}

/** The words after the comma that make it another food than the name: `milk, dried`. A lettuce washed and dried is still one. */
export function changesIn(tails: readonly (readonly string[])[]): readonly string[] {
  let washed = false;
  return tails.flatMap((tail) =>
    tail.filter((word, at) => {
      washed ||= WASHED.has(word);
      return CHANGES.has(word) && !(washed && word === 'dried') && !(word === 'light' && isColour(tail[at + 1]));
    }),
  );
}

/** `white and light green parts only`. */
const isColour = (word: string | undefined): boolean =>
  word !== undefined && SENSES().some(({ says, words }) => says === 'colour' && words.has(word));

/** Whether what stands after the comma makes it another food than one of this class. */
export function changesFood(tails: readonly (readonly string[])[], foodClass: FoodClass): boolean {
  return changesIn(tails).some((word) => {
    const beside = besideOf(word);
    return beside !== 'any' && beside?.in(foodClass) !== true && !isDone(word, foodClass);
  });
}

/** `Aubergine, salted`, `stock, reduced`: done to it once it is weighed. */
const isDone = (word: string, kind: FoodClass): boolean =>
  SENSES().some(({ says, words, in: isIn }) => says === DONE && words.has(word) && isIn?.(kind) !== false);

/** Whether the word can only stand before a noun: `boneless, skinless chicken thighs`. */
export function looksAdjective(word: string): boolean {
  const beside = besideOf(word);
  if (beside === 'any' || FORMS.has(word) || CHANGES.has(word) || word.endsWith('less')) return true;
  return beside?.adjective === true;
}

/** Whether the word says where or how a food is made, and not of what: `deli` and `Greek` of what is deli or Greek style. */
export const saysManner = (word: string): boolean => {
  const beside = besideOf(word);
  return beside === 'any' || beside?.adjective === true;
};

/** Whether a noun of the class may be fallen back to over this word: one that nobody knows, and not one that changes foods. */
export const mayPass = (word: string): boolean =>
  word.length > 1 && !CHANGES.has(word) && !FORMS.has(word) && !isNumber(word);

/** A figure, with or without its unit: `2`, `400g`, `2x400g`, and of another recipe: `tomato sauce II`. */
export function isNumber(word: string): boolean {
  return /^(?:\d+(?:x\d+)?(?:g|kg|oz|lb|ml|cm|mm)?|i{1,3}|iv|vi{0,3}|x{2,4}|\d{1,2}x)$/.test(word);
}

/** Whether the word says nothing about what the food is. */
export const isIgnored = (word: string): boolean => besideOf(word) === 'any';

/** How a food is cut or handled: what a measure of it may depend on. */
export const FORMS = wordSet(`
  chopped diced cubed sliced grated shredded minced crushed mashed pureed melted sifted packed loose crumbled ground halved quartered
  julienned slivered flaked torn whole whipped spooned frozen toasted cooked
`);

/** How a food is cooked through that stays what it is. */
export const COOKED_BY = wordSet(`
  cooked roast roasted grilled baked boiled poached steamed braised stewed leftover rotisserie precooked simmered broiled barbecued
  wilted sauteed microwaved
`);

/** Forms made after measuring when they stand after the comma: `1 cup flour, sifted` is not `1 cup sifted flour`. */
export const MADE_AFTER = wordSet('sifted melted whipped toasted cooked');

/** Done to the food once it is weighed, though the book has a food of that name: `6 tbsp butter, browned` is butter. */
export const DONE_AFTER = wordSet('browned fried clarified mashed toasted melted');

/** What is done to it behind its name, after it is measured: `bacon chopped fine and fried`. */
export const TRAILING = wordSet(
  'fine coarse fried browned boiled baked roasted grilled poached scalded blanched pounded half quarter section segment chunk',
);

/** Words that name another food unless the book has it under the longer name. */
export const CHANGES = wordSet(`
  canned dried smoked skimmed nonfat light reduced low glutenfree dairyfree sugarfree eggfree vegan vegetarian powdered powder pickled
  candied crystallised evaporated condensed instant imitation sundried freezedried cured salted sweetened flavoured
`);

const WASHED = wordSet('washed rinsed soaked spun patted drained scrubbed cleaned wiped');

/** Forms that the book keeps as foods of their own: `frozen peas`, `cooked ham`, `ground almonds`. */
export const STATES = wordSet('whole frozen cooked ground crushed minced mashed grated flaked shredded');

/** Words that show a fresh thing being cut. */
export const LOOKS_CUT = wordSet('deseeded seeded peeled trimmed cored destemmed zested');

/** Words that only join others. */
export const JOINERS = wordSet('and or of the a an');

function kindsOf(list: string): ReadonlySet<FoodClass> {
  return new Set(list.split(', ') as FoodClass[]);
}

const PLANTS = 'vegetable, fruit, mushroom, leafy herb';
const FLESH = 'meat, poultry, ground meat, ground poultry, fish, shellfish';

/** Foods as they grow or are cut, of which there are more sorts than a book has. What is made may be made of anything. */
export const AS_GROWN = kindsOf(
  `${PLANTS}, ${FLESH}, dried fruit, dried herb, spice, grain, legume, nut, seed, pasta, egg`,
);

/** What a word beside a name says: nothing in `any` food, or nothing in some. */
type Beside = 'any' | BesideSome;

interface BesideSome {
  readonly in: (kind: FoodClass) => boolean;
  readonly part: boolean;
  /** It stands before a noun and is none. */
  readonly adjective: boolean;
}

/** Words of one sense, of the same classes. */
interface Sense {
  readonly says: string;
  readonly words: ReadonlySet<string>;
  /** Absent: all. */
  readonly in?: (kind: FoodClass) => boolean;
}

/** `modifiers.tsv`, cut into its rows alone: their words stay sets that the engine makes in one step. */
const SENSES = once((): readonly Sense[] =>
  rowsIn(modifiersText).map(([says = '', classes = '', words = '']) => {
    const sense = { says, words: new Set(words.split(' ')) };
    if (classes === 'any') return sense;
    const kinds = kindsOf(
      classes.replace(BUT, '').replaceAll(';', ', ').replace('plants', PLANTS).replace('flesh', FLESH),
    );
    return { ...sense, in: classes.startsWith(BUT) ? (kind) => !kinds.has(kind) : (kind) => kinds.has(kind) };
  }),
);

const BUT = 'any but ';
/** Of words that may only stand behind a comma. */
const DONE = 'done';
/** Senses whose words may be nouns. */
const NOUNS: ReadonlySet<string> = new Set(['part', 'purpose', 'meat', 'growth']);

const besideOf = onceByText((word: string): Beside | undefined => inSenses(word) ?? byShape(word), {
  texts: 20_000,
  letters: 30,
});

function inSenses(word: string): Beside | undefined {
  const senses = SENSES().filter(({ says, words }) => says !== DONE && words.has(word));
  if (senses.length === 0) return undefined;
  if (senses.some((sense) => sense.in === undefined)) return 'any';
  return {
    in: (kind) => senses.some((sense) => sense.in?.(kind)),
    part: senses.some(({ says }) => says === 'part'),
    adjective: senses.every(({ says }) => !NOUNS.has(says)),
  };
}

/** Adverbs, `larger` and `finest`, `unsmoked`, `prewashed`. */
function byShape(word: string): Beside | undefined {
  if (word.length < 6) return undefined;
  if (word.endsWith('ly')) return 'any';
  const degree = /^(.+?)(?:er|est)$/.exec(word)?.[1];
  if (degree !== undefined) {
    const bases = [degree, `${degree}e`, degree.replace(/i$/, 'y'), degree.replace(/(.)\1$/, '$1')];
    if (SENSES().some(({ says, words }) => DEGREES.has(says) && bases.some((base) => words.has(base)))) return 'any';
  }
  const undone = /^un(.+ed)$/.exec(word)?.[1];
  if (undone !== undefined && (CHANGES.has(undone) || FORMS.has(undone) || nounOf(undone) !== undefined)) return 'any';
  const before = /^pre(.+)$/.exec(word)?.[1];
  return before !== undefined && inSenses(before) === 'any' ? 'any' : undefined;
}

/** Senses of which there is more and most. */
const DEGREES: ReadonlySet<string> = new Set(['size', 'quality', 'freshness', 'temperature']);
