/**
 * Lines of ingredient lists made by the grammar of printed ones, each with plain lines of the notation that together weigh the same.
 */
import fc from 'fast-check';
import { isEitherFraction } from '../../../server/src/measure/kitchen-fraction.ts';

export interface GeneratedLine {
  readonly printed: string;
  /** One measure and one food each. */
  readonly plain: readonly string[];
}

const pick = <const T>(...values: readonly T[]) => fc.constantFrom(...values);

/** A number as it is printed, and as a decimal. */
interface Numeral {
  readonly text: string;
  readonly value: number;
}

const FRACTIONS: readonly (readonly [string, string, string, number])[] = [
  ['1/2', '½', 'one-half', 1 / 2],
  ['1/4', '¼', 'one-fourth', 1 / 4],
  ['3/4', '¾', 'three-fourths', 3 / 4],
  ['1/3', '⅓', 'one-third', 1 / 3],
  ['2/3', '⅔', 'two-thirds', 2 / 3],
];
const WORDS = ['one', 'two', 'three', 'four', 'five', 'six'];

const whole = fc.integer({ min: 1, max: 12 }).map((n): Numeral => ({ text: String(n), value: n }));
const inFigures = fc.oneof(
  whole,
  pick(...FRACTIONS).chain(([figures, glyph, , value]) =>
    pick(figures, glyph).map((text): Numeral => ({ text, value })),
  ),
  fc
    .tuple(fc.integer({ min: 1, max: 6 }), pick(...FRACTIONS))
    .chain(([n, [figures, glyph, , part]]) =>
      pick(`${n} ${figures}`, `${n}-${figures}`, `${n}${glyph}`, `${n} ${glyph}`, `${n} and ${figures}`).map(
        (text): Numeral => ({ text, value: n + part }),
      ),
    ),
  pick('.5', '0.5', '1.5', '2.25').map((text): Numeral => ({ text, value: Number(text) })),
);
const inWords = fc.oneof(
  fc.integer({ min: 1, max: 6 }).map((n): Numeral => ({ text: WORDS[n - 1] ?? '', value: n })),
  pick(...FRACTIONS).map(([, , text, value]): Numeral => ({ text, value })),
  fc
    .tuple(fc.integer({ min: 1, max: 6 }), pick(...FRACTIONS))
    .map(([n, [, , text, part]]): Numeral => ({ text: `${WORDS[n - 1] ?? ''} and ${text}`, value: n + part })),
  pick<Numeral>({ text: 'a', value: 1 }, { text: 'half a', value: 0.5 }),
);

/** Spellings of each unit in cook books; the notation's own is the key. */
const SPELLED: Readonly<Record<string, readonly string[]>> = {
  tsp: ['tsp', 'tsp.', 't', 't.', 'Tsp.', 'teaspoon', 'teaspoons', 'teaspoonful', 'teaspoonfuls'],
  tbsp: [
    'tbsp',
    'tbsp.',
    'T',
    'T.',
    'Tbsp',
    'Tbsp.',
    'tbs',
    'Tb.',
    'tablespoon',
    'tablespoons',
    'tablespoonful',
    'tablespoonfuls',
  ],
  cup: ['cup', 'cups', 'c', 'c.', 'C', 'C.', 'Cups', 'cupful', 'cupfuls'],
  pint: ['pint', 'pints', 'pt', 'pt.', 'pts.'],
  quart: ['quart', 'quarts', 'qt', 'qt.', 'qts', 'qts.'],
  gallon: ['gallon', 'gal', 'gal.'],
  oz: ['oz', 'oz.', 'ozs', 'ounce', 'ounces'],
  lb: ['lb', 'lb.', 'lbs', 'lbs.', 'pound', 'pounds'],
  g: ['g', 'gr', 'gr.', 'gm', 'gms', 'grams'],
  kg: ['kg', 'kilo', 'kilos', 'kilograms'],
  ml: ['ml', 'mls', 'millilitres'],
  l: ['l', 'litre', 'liters'],
};

const FOODS = ['plain flour', 'granulated sugar', 'whole milk', 'butter', 'honey', 'water'];
const TAILS = [
  '',
  ', divided',
  ', plus more for dusting',
  ', plus extra to serve',
  ' (optional)',
  ', at room temperature',
  ', for the pan',
  ', if desired',
];

const spelled = (...units: readonly string[]) =>
  pick(...units).chain((unit) => pick(...(SPELLED[unit] ?? [])).map((text) => ({ unit, text })));
const anyUnit = spelled(...Object.keys(SPELLED));
const food = pick(...FOODS);

const plainLine = (value: number, unit: string, name: string): string => `${Number(value.toFixed(4))} ${unit} ${name}`;

const measured = (number: fc.Arbitrary<Numeral>) =>
  fc.tuple(number, anyUnit, food).map(
    ([n, unit, name]): GeneratedLine => ({
      printed: `${n.text} ${unit.text} ${name}`,
      plain: [plainLine(n.value, unit.unit, name)],
    }),
  );

/** The forms, each by itself. */
export const FORMS: Readonly<Record<string, fc.Arbitrary<GeneratedLine>>> = {
  'numbers in figures': measured(inFigures),
  'numbers in words': measured(inWords),
  'no blank before the unit': fc
    .tuple(fc.integer({ min: 5, max: 900 }), pick('g', 'ml', 'gr', 'oz'), food)
    .map(([n, unit, name]) => ({
      printed: `${n}${unit} ${name}`,
      plain: [plainLine(n, unit === 'gr' ? 'g' : unit, name)],
    })),
  'of before the food': fc.tuple(inFigures, anyUnit, food).map(([n, unit, name]) => ({
    printed: `${n.text} ${unit.text} of ${name}`,
    plain: [plainLine(n.value, unit.unit, name)],
  })),
  tails: fc.tuple(inFigures, anyUnit, food, pick(...TAILS)).map(([n, unit, name, tail]) => ({
    printed: `${n.text} ${unit.text} ${name}${tail}`,
    plain: [plainLine(n.value, unit.unit, name)],
  })),
  'a sum of volumes': fc
    .tuple(
      pick<readonly [string, string]>(
        ['gallon', 'quart'],
        ['quart', 'cup'],
        ['cup', 'tbsp'],
        ['tbsp', 'tsp'],
        ['pint', 'cup'],
      ).chain(([large, small]) => fc.tuple(spelled(large), spelled(small))),
      whole,
      inFigures,
      pick(' plus ', ' + ', ' and ', ' & ', ' '),
      food,
    )
    .map(([[large, small], n, m, joint, name]) => ({
      printed: `${n.text} ${large.text}${joint}${m.text} ${small.text} ${name}`,
      plain: [plainLine(n.value, large.unit, name), plainLine(m.value, small.unit, name)],
    })),
  'a sum of weights': fc
    .tuple(
      spelled('lb'),
      spelled('oz'),
      whole,
      fc.integer({ min: 1, max: 15 }),
      pick(' plus ', ' ', ' and ', ' + '),
      food,
    )
    .map(([lb, oz, n, m, joint, name]) => ({
      printed: `${n.text} ${lb.text}${joint}${m} ${oz.text} ${name}`,
      plain: [plainLine(n.value, 'lb', name), plainLine(m, 'oz', name)],
    })),
  'a weight beside': fc
    .tuple(
      whole,
      spelled('cup', 'tbsp'),
      fc.integer({ min: 10, max: 900 }),
      pick('before', 'behind', '/', 'first'),
      food,
    )
    .map(([n, unit, grams, where, name]) => {
      const measure = `${n.text} ${unit.text}`;
      const printed = {
        before: `${measure} (${grams} g) ${name}`,
        behind: `${measure} ${name} (${grams} g)`,
        '/': `${grams} g/${measure} ${name}`,
        first: `${grams} g (${measure}) ${name}`,
      }[where];
      return { printed, plain: [plainLine(grams, 'g', name)] };
    }),
  packages: fc
    .tuple(
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 2, max: 40 }),
      pick('can', 'package', 'tin', 'box', 'jar'),
      pick('(-)', '()', '-', 'x', 'behind'),
      pick('honey', 'butter', 'plain flour'),
    )
    .map(([n, size, holder, manner, name]) => {
      const things = n === 1 ? holder : `${holder}${holder === 'box' ? 'es' : 's'}`;
      const printed = {
        '(-)': `${n} (${size}-ounce) ${things} ${name}`,
        '()': `${n} (${size} oz.) ${things} ${name}`,
        '-': `${n} ${size}-oz. ${things} ${name}`,
        x: `${n} x ${size} oz ${things} ${name}`,
        behind: `${n} ${things} (${size} ounces each) ${name}`,
      }[manner];
      return { printed, plain: [plainLine(n * size, 'oz', name)] };
    }),
  ranges: fc
    .tuple(
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 1, max: 4 }),
      anyUnit,
      pick('-', '–', ' to ', ' or ', ' - '),
      food,
    )
    .map(([low, more, unit, joint, name]) => ({
      // `1-2 cup` is asked about: it may be half a cup.
      printed: `${low}${joint.length === 1 && isEitherFraction(String(low), String(low + more), unit.text) ? ' to ' : joint}${low + more} ${unit.text} ${name}`,
      plain: [`${low} to ${low + more} ${unit.unit} ${name}`],
    })),
  'all at once': fc
    .tuple(
      inFigures,
      spelled('tsp', 'tbsp', 'cup', 'pint', 'ml'),
      pick('', '', 'of '),
      food,
      pick('', '', ' (GRAMS g)'),
      pick(...TAILS),
    )
    .chain(([n, unit, of, name, bracket, tail]) =>
      fc.integer({ min: 5, max: 900 }).map((grams) => {
        // A tail in brackets stands alone.
        const weight = tail.startsWith(' (') ? '' : bracket.replace('GRAMS', String(grams));
        return {
          printed: `${n.text} ${unit.text}${weight} ${of}${name}${tail}`,
          plain: [weight === '' ? plainLine(n.value, unit.unit, name) : plainLine(grams, 'g', name)],
        };
      }),
    ),
};
