/** What is looked at on the page, and what is written of it: the same, and nothing where it cannot be. */
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../server/src/editor/page/acts.ts';
import { pageFacts } from '../../server/src/editor/page/facts.ts';
import type { Look } from '../../server/src/publish/view/look.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

const SLAB = `recipe Oat slab
  yield   12 squares

part base
  200 g     rolled oats
  100 g     butter
  2 large   eggs
  do Beat 50 g of the butter with the eggs.
  do Stir in the oats and the rest of the butter.
  do Bake at 180 C for 25 min, until the centre reads 80 C.
`;

const did = (name: string, arg: unknown, value: unknown = null, look: Look = {}, snapshot: Snapshot = open(SLAB)) =>
  outcomeOf(name, { snapshot, arg, value, look });

describe('another size', () => {
  test.each<[string, unknown, unknown, Look]>([
    ['by a button', { to: 13 }, null, { makes: 13, makesOf: 12 }],
    ['by the field', {}, 24, { makes: 24, makesOf: 12 }],
    ['as the text says', { to: 12 }, null, {}],
    ['none at all', {}, 0, {}],
    ['less than none', { to: -3 }, null, {}],
    ['half a number', {}, '1.', {}],
    ['what nobody cooks', {}, 1e9, {}],
    ['not a number', { to: Number.NaN }, null, {}],
  ])('%s', (_, arg, value, look) => expect(did('look-makes', arg, value)).toEqual({ look }));

  test('more than a thousand times is refused in words', () => {
    expect(did('look-makes', { to: 90_000 })).toEqual({
      refused: 'A recipe is scaled by more than 0.001 and less than 1000.',
    });
  });

  test('of a recipe that does not say one number there is none', () => {
    const outcome = did('look-makes', { to: 3 }, null, {}, open(SLAB.replace('12 squares', '12-14 squares')));
    expect(outcome).toMatchObject({ refused: expect.stringContaining('one number') });
  });
});

test('what else is looked at stays', () => {
  const look: Look = { serve: '18:30', measures: 'measure-first' };
  expect(did('look-makes', { to: 6 }, null, look)).toEqual({ look: { ...look, makes: 6, makesOf: 12 } });
  expect(did('look-back', {}, null, { ...look, makes: 6, makesOf: 12, degrees: 'F' })).toEqual({
    look: { serve: '18:30' },
  });
});

test.each<[string, string, unknown, Look]>([
  ['look-measures', 'measure-first', { to: 'measure-first' }, { measures: 'measure-first' }],
  ['look-measures', 'as the text is written', { to: 'weight-first' }, {}],
  ['look-measures', 'nothing that is known', { to: 'barrels' }, {}],
  ['look-degrees', 'Fahrenheit', { to: 'F' }, { degrees: 'F' }],
  ['look-degrees', 'as the text is written', { to: 'C' }, {}],
])('%s: %s', (act, _, arg, look) => expect(did(act, arg)).toEqual({ look }));

/** All figures of the list and the method as the page shows them. */
const shown = (snapshot: Snapshot, look: Look): readonly string[] =>
  pageFacts(snapshot, { look }).page.sections.flatMap(({ ingredients, steps }) => [
    ...ingredients.map(({ first, second = '', name }) => `${first}|${second}|${name}`),
    ...steps,
  ]);

const LOOKS: readonly (readonly [string, Look])[] = [
  ['twice as many', { makes: 24 }],
  ['measures first', { measures: 'measure-first' }],
  ['Fahrenheit', { degrees: 'F' }],
  ['all of it', { makes: 18, measures: 'measure-first', degrees: 'F' }],
];

describe.each(LOOKS)('%s', (_, look) => {
  test('is written as it was looked at, in one change', () => {
    const snapshot = open(SLAB);
    const outcome = did('look-write', {}, null, look, snapshot);
    if (!('edits' in outcome)) throw new Error('nothing is written');
    expect(outcome.look).toEqual({});
    const order = look.measures === undefined ? {} : { measures: look.measures };
    expect(shown(snapshot.after(outcome.edits), order)).toEqual(shown(snapshot, look));
  });
});

test.each(EXAMPLES.filter(([, text]) => /^ {2}yield +\d+ [a-z]/m.test(text)))(
  '%s is written as it was looked at',
  (path, text) => {
    const snapshot = openInKitchen(text, path);
    const makes = (pageFacts(snapshot).makes?.amount ?? 1) * 2;
    const outcome = did('look-write', {}, null, { makes }, snapshot);
    if (snapshot.whole !== snapshot) {
      expect(outcome).toMatchObject({ refused: expect.stringContaining('another file') });
      return;
    }
    if (!('edits' in outcome)) throw new Error('nothing is written');
    expect(shown(snapshot.after(outcome.edits), {})).toEqual(shown(snapshot, { makes }));
  },
);

test('nothing is written where nothing is looked at', () => {
  expect(did('look-write', {})).toEqual({ refused: 'The text says so already.' });
});
