/**
 * Knows what a share of a list is taken of: `1.5 % of the beef  salt`.
 * Refuses to choose where the words fit several foods, or none.
 */
import type { FoodClass } from '../../food/food.ts';
import { addRanges, type Range } from '../../measure/quantity.ts';
import type { Ingredient } from '../model.ts';
import { wordsOf } from '../words.ts';
import { isFlour } from './ingredient.ts';

/** Words for many foods at once, of which all are meant. */
const MANY: Readonly<Record<string, (ingredient: Ingredient) => boolean>> = {
  flour: isFlour,
  meat: ofClass('meat', 'ground meat', 'poultry', 'ground poultry', 'cured meat'),
  fish: ofClass('fish', 'shellfish'),
  vegetable: ofClass('vegetable', 'mushroom'),
  fruit: ofClass('fruit'),
  everything: () => true,
  all: () => true,
  whole: () => true,
  total: () => true,
  rest: () => true,
  mixture: () => true,
  weight: () => true,
};

function ofClass(...classes: readonly FoodClass[]): (ingredient: Ingredient) => boolean {
  return ({ food }) => food !== undefined && classes.includes(food.class);
}

/** The weight, in grams, that a share is of: of one food of the list by its name, or of all that a word stands for. Undefined where none, or several, are called so. */
export function shareBasis(words: string, listed: readonly Ingredient[]): Range | undefined {
  const said = wordsOf(words).filter((word) => word !== 'the' && word !== 'of' && word !== 'weight');
  const whole = said.length === 0 ? wordsOf(words) : said;
  const called = calledSo(whole, listed);
  const many = MANY[whole.join(' ')];
  const of = called.length === 1 ? called : many === undefined ? [] : listed.filter(many);
  let sum: Range | undefined;
  for (const { weighed, free } of of) {
    if (weighed.known) sum = addRanges(sum ?? { low: 0, high: 0 }, weighed.grams);
    else if (!free) return undefined;
  }
  return sum;
}

/** Those whose name is these words; else those whose name, or food, ends in them; else those that have them all. */
function calledSo(words: readonly string[], listed: readonly Ingredient[]): readonly Ingredient[] {
  const said = words.join(' ');
  const names = ({ name, food }: Ingredient) => [wordsOf(name), wordsOf(food?.name ?? '')];
  const ways: readonly ((name: readonly string[]) => boolean)[] = [
    (name) => name.join(' ') === said,
    (name) => name.slice(-words.length).join(' ') === said,
    (name) => words.every((word) => name.includes(word)),
  ];
  for (const fits of ways) {
    const found = listed.filter((ingredient) => names(ingredient).some(fits));
    if (found.length > 0) return found;
  }
  return [];
}
