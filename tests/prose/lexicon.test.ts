/** The tables of the lexicon: every cell is one that is read, every row has its source, and no form two rows. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import * as event from '../../server/src/prose/event.ts';
import { nounForms, verbForms } from '../../server/src/prose/forms.ts';
import { formsTable } from '../../server/src/prose/forms-table.ts';
import { formOf, longerSense, senseOf, thingOf, verbOf } from '../../server/src/prose/lexicon.ts';
import { BOUNDS, JOINTS, TIME_ROLES, WAYS } from '../../server/src/prose/rows.ts';
import { TOPICS } from '../../server/src/prose/topics.ts';

const NUMBER = /^(?:-?\d+(?:\.\d+)?)?$/;
const WEIGHTS = new RegExp(`^(?:(?:${event.HEAT_OF.join('|')}) -?\\d+(?:;|$))*$`);
const YES = ['yes'];
/** What a cell may hold, by table and column; any words in the others. */
const CELLS: Readonly<Record<string, Readonly<Record<string, readonly string[] | RegExp>>>> = {
  verbs: {
    act: event.ACTS,
    cooks: event.COOKS,
    craft: event.CRAFTS,
    lasts: ['waits', 'works'],
    where: event.PLACES,
    medium: event.MEDIA,
    figure: WEIGHTS,
    noun: YES,
  },
  places: { is: event.PLACES, low: NUMBER, high: NUMBER, figure: WEIGHTS, bare: YES },
  vessels: { is: event.VESSELS, on: event.PLACES },
  media: { is: event.MEDIA, low: NUMBER, high: NUMBER, figure: WEIGHTS },
  times: {
    is: TIME_ROLES,
    low: NUMBER,
    high: NUMBER,
    least: NUMBER,
    most: NUMBER,
    kind: event.TIME_KINDS,
    per: event.PERS,
  },
  signs: { tells: event.TELLS, low: NUMBER, high: NUMBER },
  joints: { is: JOINTS, way: WAYS, adds: WEIGHTS, bound: BOUNDS },
  topics: { topic: TOPICS },
  evidence: { of: event.HEAT_OF, adds: NUMBER, side: ['before', 'either'], inside: YES },
};
/** Cells that no row may leave empty, besides its word and source. */
const FULL = new Set(['act', 'is', 'tells', 'of', 'topic', 'words']);

test.each(Object.entries(CELLS))('every cell of %s.tsv is one that is read', (name, columns) => {
  const lines = readFileSync(`server/data/prose/${name}.tsv`, 'utf8').trimEnd().split('\n');
  const [remark = '', head = '', ...rows] = lines;
  expect(remark).toMatch(/^# /);
  const names = head.split('\t');
  const wrong = rows.flatMap((row) => {
    const cells = row.split('\t');
    // What only few rows have stands behind their source.
    const source = names.indexOf('source');
    const isWhole = cells.length > source && cells.length <= names.length && cells.at(-1) !== '';
    const faults = isWhole ? [] : [`${cells.length} cells`];
    if (cells[0] === '' || cells[source] === '') faults.push('no word or no source');
    names.forEach((column, at) => {
      const cell = cells[at] ?? '';
      const may = columns[column];
      if (cell === '' ? FULL.has(column) : may && !(may instanceof RegExp ? may.test(cell) : may.includes(cell)))
        faults.push(`${column}: ${cell}`);
      if (/^[ ;]|[ ;]$| {2}|;;/.test(cell) || cell !== cell.trim()) faults.push(`blanks: ${cell}`);
    });
    return faults.map((fault) => `${cells[0]}: ${fault}`);
  });
  expect(wrong).toEqual([]);
});

test('a number has a bit for each topic', () => {
  expect(TOPICS.length).toBeLessThanOrEqual(32);
});

test('no form is claimed by two rows in the same part of speech', () => {
  expect(formsTable().claimed.map(({ form, as, rows }) => `${form} (${as}): ${rows.join(', ')}`)).toEqual([]);
});

test.each<[string, string[], string]>([
  ['stir', [], 'stir stirs stirring stirred'],
  ['bake', [], 'bake bakes baking baked'],
  ['dry', [], 'dry dries drying dried'],
  ['unwrap', [], 'unwrap unwraps unwrapping unwrapped'],
  ['label', [], 'label labels labeling labelling labeled labelled'],
  ['season', [], 'season seasons seasoning seasoned'],
  ['boil', [], 'boil boils boiling boiled'],
  ['mix', [], 'mix mixes mixing mixed'],
  ['freeze', ['froze', 'frozen'], 'freeze freezes freezing froze frozen'],
  ['put', ['put', 'putting'], 'put puts putting'],
  ['bring to a boil', ['brought'], 'bring to a boil, brings to a boil, bringing to a boil, brought to a boil'],
  ['pan-fry', [], 'pan-fry pan-fries pan-frying pan-fried'],
  ['set aside', ['set', 'setting'], 'set aside, sets aside, setting aside'],
])('the forms of %s', (verb, given, forms) => {
  const made = verbForms(verb, given).map(([form]) => form);
  expect(made.join(verb.includes(' ') ? ', ' : ' ')).toBe(forms);
});

test('nouns have a plural', () => {
  expect(nounForms('baking dish').join(', ')).toBe('baking dish, baking dishes');
  expect(['shelf', 'knife', 'loaf', 'chef', 'box'].map((noun) => nounForms(noun)[1]).join(' ')).toBe(
    'shelves knives loaves chefs boxes',
  );
});

test('a word, and words behind each other, are found by their number', () => {
  expect(verbOf(senseOf('stirring'))?.act).toBe('combine');
  expect(formOf(senseOf('frozen'))).toBe('past');
  const cold = senseOf('cold');
  expect(thingOf(longerSense(cold, 'place'))).toMatchObject({ sort: 'place', is: 'cool' });
  expect(thingOf(senseOf('baking-dishes'))).toMatchObject({ sort: 'vessel' });
  expect(senseOf('quixotic')).toBe(0);
  expect(senseOf('set-quixotic')).toBe(0);
});
