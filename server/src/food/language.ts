/**
 * Knows what a food is called in a house that writes British or American English.
 * Refuses to know any name that the book does not have.
 */
import languageText from '../../data/foods/language.tsv';
import { once } from '../measure/once.ts';
import type { Food } from './food.ts';
import { keyOf } from './names.ts';
import { type FoodRow, readAmbiguous } from './tables.ts';

export const LANGUAGES = ['british', 'american'] as const;
export type Language = (typeof LANGUAGES)[number];

/** A food in the words of both. */
type Words = Readonly<Record<Language, string>>;

export const foodWords = once((): ReadonlyMap<string, Words> => {
  const rows = languageText.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return new Map(
    rows.slice(1).map((row): [string, Words] => {
      const [id = '', british = '', american = ''] = row.split('\t');
      return [id, { british, american }];
    }),
  );
});

/** Which of the foods of one name is meant on that side of the ocean: a spoon of tomato puree is paste in Britain. */
export function meantIn(language: Language, foods: readonly Food[], isSpoon: boolean): Food | undefined {
  const [id = '', ...measure] = (ambiguous().get(foods.map((food) => food.id).join(';'))?.[language] ?? '').split(' ');
  return measure.length > 0 && !isSpoon ? undefined : foods.find((food) => food.id === id);
}

const ambiguous = once(() => new Map(readAmbiguous().map((row) => [row.ids.join(';'), row])));

/** Whether a name of a food is that of the other side, and this one says it otherwise. */
export function isForeign({ id }: Pick<Food, 'id'>, name: string, language: Language): boolean {
  const words = foodWords().get(id);
  const other = words?.[language === 'british' ? 'american' : 'british'];
  return other !== undefined && keyOf(other) === keyOf(name) && keyOf(words?.[language] ?? '') !== keyOf(name);
}

/** The food by the house's word, with its other names behind; the same row where the book calls it neither way. */
export function inLanguage(row: FoodRow, language: Language): FoodRow {
  const words = foodWords().get(row.id);
  if (words === undefined) return row;
  const name = words[language];
  const others = [row.name, ...row.names].filter((other) => keyOf(other) !== keyOf(name));
  // What has a name of its own, such as granulated sugar, keeps it.
  const isCalled = Object.values(words).some((word) => keyOf(word) === keyOf(row.name));
  const names = isCalled ? { name, names: others } : { name: row.name, names: [name, ...others.slice(1)] };
  const read = once((): Food => ({ ...row.read(), ...names }));
  return { id: row.id, ...names, class: row.class, read };
}
