/** What is done on the day's view: another hour, another order, and the minutes that were put written into the steps. */
import { describe, expect, test } from 'vitest';
import { outcomeOf } from '../../server/src/editor/page/acts.ts';
import { readLook } from '../../server/src/editor/page/look.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { recipeDay } from '../../server/src/publish/plan-day.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

const TEXT = `recipe Rolls
  500 g     bread flour
  320 g     water
  10 g      fine salt
  5 g       instant yeast

  do Mix the flour, water, salt and yeast just until even.
  do Knead for 8 min.
  do Shape, put on a tray and prove at 24 C for 45 min.
  do Bake at 220 C for 20 min, until the centre reads 96 C.
`;

const act = (name: string, arg: unknown, value: unknown, look = {}) =>
  outcomeOf(name, { snapshot: open(TEXT), arg, value, look });

describe('the hour', () => {
  test('is looked at, and reads as a time of the day', () => {
    expect(act('serve-at', null, '7.05')).toEqual({ look: { serve: '07:05' } });
    expect(readLook({ serve: '07:05', order: 'part' })).toEqual({ serve: '07:05', order: 'part' });
    for (const value of ['', 'soon', '25:00', '12:61', null, 7, {}])
      expect(act('serve-at', null, value)).toHaveProperty('refused');
  });

  test('the order goes back to the clock', () => {
    expect(act('order-of-steps', { to: 'part' }, 'part', { serve: '12:00' })).toEqual({
      look: { serve: '12:00', order: 'part' },
    });
    expect(act('order-of-steps', { to: 'clock' }, 'clock', { order: 'part' })).toEqual({ look: {} });
  });
});

test('minutes are written where they are read again, nothing else changes, and then none are put', () => {
  const snapshot = open(TEXT);
  const outcome = outcomeOf('write-minutes', { snapshot, arg: null, value: null, look: {} });
  if (!('edits' in outcome)) throw new Error(JSON.stringify(outcome));
  const after = printDocument(applyEdits(snapshot.document, outcome.edits));
  expect(after).toBe(
    TEXT.replace('just until even.', 'just until even, about 5 min.').replace('Shape, put', 'Shape, about 5 min, put'),
  );
  const before = recipeDay(snapshot.recipe, { serve: undefined });
  const then = recipeDay(open(after).recipe, { serve: undefined });
  expect(then.asked).toEqual([]);
  expect(then.start).toEqual(before.start);
  expect(open(after).findings.open.length).toBe(snapshot.findings.open.length);
});

test('into a recipe that was cooked as written too: that no trial tested it so is told, and stops nothing', () => {
  const [path = '', text = ''] = EXAMPLES.find(([each]) => each === 'bread/country-loaf.quern') ?? [];
  const snapshot = openInKitchen(text, path);
  const outcome = outcomeOf('write-minutes', { snapshot, arg: null, value: null, look: {} });
  expect(outcome).toMatchObject({ said: '3 steps have minutes now.' });
  if (!('edits' in outcome)) return;
  expect(printDocument(applyEdits(snapshot.document, outcome.edits))).toContain(
    'Divide in two, shape, about 5 min, and prove in baskets at 24 C for 1 h.',
  );
});
