/**
 * Knows which words beside the name of a food leave it what it is, which only say how it is cut, and which make it another food.
 * Refuses to know the names themselves.
 */
import modifiersText from '../../data/foods/modifiers.tsv';
import { countWord } from '../measure/count-words.ts';
import type { Food, FoodClass } from './food.ts';
import { wordSet } from './names.ts';

/** Whether a word beside the name leaves the food what it is; without a food, whether it would leave any. */
export function saysNothing(word: string, food: Food | undefined): boolean {
  if (isIgnored(word) || isNumber(word)) return true;
  const kinds = HARMLESS.get(word);
  if (food === undefined) return kinds === undefined && FORMS.has(word);
  if (kinds !== undefined) return kinds.has(food.class);
  if (FORMS.has(word)) return true;
  const counted = countWord(word);
  if (counted === undefined) return false;
  return food.pieces.some((piece) => piece.word === counted) || (COUNTED.has(word) && CUT_UP.has(food.class));
}

/** The words after the comma that make it another food than the name: `milk, dried`. A lettuce washed and dried is still one. */
export function changesIn(tails: readonly (readonly string[])[]): readonly string[] {
  const washed = tails.some((tail) => tail.some((word) => WASHED.has(word)));
  return tails.flatMap((tail) => tail.filter((word) => CHANGES.has(word) && !(washed && word === 'dried')));
}

/** Whether what stands after the comma makes it another food than one of this class. */
export function changesFood(tails: readonly (readonly string[])[], foodClass: FoodClass): boolean {
  return changesIn(tails).some((word) => !HARMLESS.get(word)?.has(foodClass));
}

/** Whether the word can only stand before a noun: `boneless, skinless chicken thighs`. */
export const looksAdjective = (word: string): boolean =>
  isIgnored(word) || FORMS.has(word) || CHANGES.has(word) || HARMLESS.has(word) || word.endsWith('less');

/** Whether a noun of the class may be fallen back to over this word: one that nobody knows, and not one that changes foods. */
export const mayPass = (word: string): boolean =>
  word.length > 1 && !CHANGES.has(word) && !FORMS.has(word) && !HARMLESS.has(word) && !isNumber(word);

/** A figure, with or without its unit: `2`, `400g`, `2x400g`, and of another recipe: `tomato sauce II`. */
export function isNumber(word: string): boolean {
  return /^(?:\d+(?:x\d+)?(?:g|kg|oz|lb|ml|cm|mm)?|i{1,3}|iv|vi{0,3})$/.test(word);
}

/** Whether the word says nothing about what the food is. */
export const isIgnored = (word: string): boolean => IGNORED.has(word) || IN_ANY.has(word);

const IGNORED = wordSet(`
  a an the of some few more extra about approx approximately roughly firmly tightly finely coarsely thinly thickly lightly freshly very well just
  fresh good best goodquality quality premium organic freerange local homemade storebought bought ready readytoeat natural pure real
  cold cool chilled warm warmed hot tepid lukewarm roomtemperature softened hard firm ripe small large medium big little tiny
  extra jumbo thick thin long short heaped heaping level levelled leveled scant generous rounded slightly peeled unpeeled skinned
  skinless boneless bonein skinon trimmed cored pitted stoned deseeded seeded destemmed stemmed hulled shelled podded washed rinsed
  scrubbed cleaned drained patted squeezed beaten whisked separated strained sieved divided optional cut bite sized size inch cm mm
  unwaxed zested unbleached bleached enriched tender young baby thawed defrosted packaged plump bashed bruised split scraped favourite
  favorite brand finest prepared uncooked mini miniature dozen jointed assorted
`);

/** How a food is cut or handled: what a measure of it may depend on. */
export const FORMS = wordSet(`
  chopped diced cubed sliced grated shredded minced crushed mashed pureed melted sifted packed loose crumbled ground halved quartered
  julienned slivered flaked torn whole whipped spooned frozen toasted cooked
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

/** Count words that leave any food what it is: `celery stalks`, `thyme sprigs`. */
const COUNTED = wordSet(
  'bunch clove head leaf piece slice sprig stalk stem handful knob wedge strip cube fillet stick',
);

function kindsOf(list: string): ReadonlySet<FoodClass> {
  return new Set(list.split(', ') as FoodClass[]);
}

const PLANTS = 'vegetable, fruit, mushroom, leafy herb';
const FLESH = 'meat, poultry, ground meat, ground poultry, fish, shellfish';

/** Foods as they grow or are cut, of which there are more sorts than a book has. What is made may be made of anything. */
export const AS_GROWN = kindsOf(
  `${PLANTS}, ${FLESH}, dried fruit, dried herb, spice, grain, legume, nut, seed, pasta, egg`,
);

const CUT_UP = kindsOf(`${PLANTS}, ${FLESH}, cured meat, cheese, bread, fat, dried herb, chocolate, other`);

/** Words that leave the food what it is in some classes only; and those that do in all (`modifiers.tsv`). */
const HARMLESS = new Map<string, ReadonlySet<FoodClass>>();
const IN_ANY = new Set<string>();
for (const row of modifiersText.split('\n').slice(2)) {
  const [word = '', classes = ''] = row.split('\t');
  if (classes === 'any') IN_ANY.add(word);
  else if (word !== '')
    HARMLESS.set(word, kindsOf(classes.replaceAll(';', ', ').replace('plants', PLANTS).replace('flesh', FLESH)));
}
