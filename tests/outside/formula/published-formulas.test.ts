/**
 * Kinds held against published formulas (cookbooks, trade books and government papers, 1845 to 2021, each with its place): none is told that
 * it fails, and each measure comes out as another hand worked it out of the same grams. `-t KIND` runs those of a kind;
 * `npm run formulas -- KIND` prints how its measures spread.
 */
import { describe, expect, test } from 'vitest';
import { KINDS } from '../../../server/src/recipe/measures/kinds.ts';
import { open } from '../../support/harness.ts';
import { FORMULAS, foundIn, isMeasure, KNOWN, recipeOf, workedOf } from './published-formulas.ts';

/** Of the figure, and what rounding the other hand's figures makes. */
const WITHIN = 0.05;
const ROUNDED = 0.0004;

/** Where our measure is another on purpose, or the food book has another food: formula and measure. */
const DIFFERS: Readonly<Record<string, string>> = {
  'bbb-134-custard sugars share': 'vanilla sugar of cream alone, which we do not count as added',
  'bbb-216-caramels cream per sugar': 'glucose syrup counts by its sugars',
  'farmer-scottish-fancies sugar': 'oats alone are no flour',
  'farmer-scottish-fancies fat': 'oats alone are no flour',
  'farmer-scottish-fancies cake hydration': 'oats alone are no flour',
  'wi2-cheese-straws hydration': 'half of what a cheese holds stays in it',
  'school-cheese-straws hydration': 'half of what a cheese holds stays in it',
  'farmer-ivory-cream sugars share': 'the sugar of Madeira counts',
  'farmer-toasted-marshmallows water per sugar': 'white of egg counts as liquid',
  'farmer-pralines cream per sugar': 'maple syrup counts by its sugars',
  'wi4-brown-betty fat per sugar': 'the fat that bread has of its own stays in it',
  'farmer-scalloped-apples-crumbs fat per sugar': 'the fat that bread has of its own stays in it',
  'dean-1949-crisp fat per sugar': 'the fat that oats have of their own stays in them',
  'kwk-crisp fat per sugar': 'the fat that oats have of their own stays in them',
  'candyhome-chocolate-caramels fat per sugar': 'corn syrup counts by its weight',
  'ufv-orange-chiffon sugar': 'the sugar of orange juice counts',
  'farmer-nut-bars salt': 'salt itself counts by its grams, and brown sugar has some',
  'afrs-coleslaw salt share': 'salt itself counts by its grams, and cabbage and carrots have some',
  'farmer-brown-sauce-i salt share': 'stock is counted with its salt',
  'farmer-bechamel salt share': 'stock is counted with its salt',
  'usdapork-scrapple salt share': 'stock is counted with its salt',
  'usdapork-scrapple crumbs per meat': 'the oats count as well',
  'white-potted-ham fat share': 'the fat is lard here, and was not rendered there',
  'white-potted-chicken fat share': 'the chicken of the food book is without its skin',
  'farmer-halibut-timbales fat share': 'the other hand took the fat of a fowl',
};

/** Formulas that are told that they fail, and why that stands. */
const FAILS: Readonly<Record<string, string>> = {
  'farmer-white-corn-meal-cake': 'a batter of meal, which the table has among the flatbreads',
  'wi4-war-cake': 'a boiled cake of a war, with a spoon of fat: nobody creams it',
  'farmer-quick-puff': 'more than half as much butter again as flour',
};

test('the table is whole, and its lines are foods that we know', () => {
  expect(FORMULAS.length).toBe(501);
  expect(new Set(FORMULAS.map((f) => f.id)).size).toBe(501);
  for (const { id, source } of FORMULAS) expect(source, id).not.toBe('');
  const unknown = FORMULAS.flatMap((formula) =>
    open(recipeOf({ ...formula, as: 'shortcrust' })).recipe.parts.flatMap(({ head }) =>
      head.ingredients.flatMap(({ food, weighed, name }) =>
        food === undefined || !weighed.known ? [`${formula.id}: ${name}`] : [],
      ),
    ),
  );
  expect(unknown).toEqual([]);
});

describe.each(KNOWN.filter((f) => !f.suspect).map((formula) => [`${formula.as}: ${formula.id}`, formula] as const))(
  '%s',
  (_, formula) => {
    const snapshot = open(recipeOf(formula));

    test('is told nothing worse than information', () => {
      const found = foundIn(formula, snapshot);
      if (formula.id in FAILS) expect(found, 'no longer told: take it off the list').not.toEqual([]);
      else expect(found).toEqual([]);
    });

    test('measures as published', () => {
      const off = formula.derived.flatMap(({ name, value }) => {
        if (!isMeasure(name) || `${formula.id} ${name}` in DIFFERS) return [];
        const worked = workedOf(snapshot, name);
        // There is none of it, in both.
        if (!worked.known) return value === 0 ? [] : [`${name}: not known, ${worked.why}`];
        const { low, high } = worked.value;
        const far = Math.max(low - value, value - high) - ROUNDED;
        return far <= WITHIN * value ? [] : [`${name}: ${low} to ${high}, published ${value}`];
      });
      expect(off).toEqual([]);
    });
  },
);

test('a band that says how many published formulas it rests on has so many in the table', () => {
  const wrong = KINDS.flatMap(({ name, measures }) =>
    measures.flatMap(({ measure, source }) => {
      const said = Number(/^(\d+) published formulas, /.exec(source)?.[1] ?? 0);
      const there = FORMULAS.filter(
        (f) => f.as === name && !f.suspect && f.derived.some((d) => d.name === measure),
      ).length;
      // What the table measures by another name cannot be counted.
      return said === 0 || there === 0 || said === there
        ? []
        : [`${name} ${measure}: ${source}, in the table ${there}`];
    }),
  );
  expect(wrong).toEqual([]);
});

test('what stands on a list of exceptions is in the table', () => {
  const ids = new Set(KNOWN.map((f) => f.id));
  for (const key of [...Object.keys(FAILS), ...Object.keys(DIFFERS).map((k) => k.split(' ')[0] ?? '')])
    expect(ids, key).toContain(key);
});
