/** A recipe followed again after edits is followed as the text is afresh; what an edit does not reach is the same object. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { journeyOf } from '../../../server/src/recipe/journey/fold.ts';
import type { Recipe } from '../../../server/src/recipe/recipe.ts';
import { makeHouse } from '../../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../../server/src/workspace/settings.ts';
import { Snapshot } from '../../../server/src/workspace/snapshot.ts';

const { house } = makeHouse(DEFAULTS);

const STEW = `recipe Stew
part stock
  1 kg   beef bones
  3 l    water
  do Simmer the bones in the water for 4 h and strain.
  do Leave on the counter for 1 h.
part stew
  1 kg   beef
  200 g  onions
  2      eggs
  do Brown the beef. Add the onions and the stock and simmer for 2 h.
  do Chill overnight.
part pie
  300 g  puff pastry
  do Fill the pastry with the stew and brush with half the eggs.
  do Bake at 200 C for 40 min, until the centre reads 75 C.
  do Keep in the fridge for 2 d.
`;

const LINES = [
  ...STEW.split('\n'),
  '  do Leave it in the garage till Sunday.',
  '  do Beat the rest of the eggs with the stew.',
  'part stock',
  '  500 g  lamb mince',
  '',
];
const WORDS = ['beef', ' the eggs', 's', ' half', '5', 'part ', ' overnight', '\n', ' not', ' in the oven'];

const fresh = (text: string) => Snapshot.open('a.quern', 1, text, house);

const edit = fc.oneof(
  fc.record({ line: fc.nat(24), cut: fc.constant(true), put: fc.constantFrom(...LINES) }),
  fc.record({ line: fc.nat(24), cut: fc.constant(false), put: fc.constantFrom(...LINES.map((line) => `${line}\n`)) }),
  fc.record({ line: fc.nat(24), at: fc.nat(30), put: fc.constantFrom(...WORDS) }),
);

function edited(snapshot: Snapshot, { line, put, ...how }: { line: number; put: string; cut?: boolean; at?: number }) {
  const start = { line, character: how.at ?? 0 };
  const end = { line, character: how.cut ? 1000 : start.character };
  return snapshot.edited(snapshot.version + 1, [{ range: { start, end }, text: put }]);
}

const event = ({ start, end, act, said }: { start: number; end: number; act: string; said: string }) =>
  `${start}-${end} ${act} ${said}`;

/** All that was followed, without the objects of the sentences. */
function followed(recipe: Recipe): string {
  const { steps, stays, bodies } = journeyOf(recipe);
  return JSON.stringify({ after: steps.map(({ after }) => after), stays, bodies }, (key, value: unknown) =>
    key === 'by' || key === 'heatedBy'
      ? value && event((value as { event: Parameters<typeof event>[0] }).event)
      : value,
  );
}

describe('a recipe followed again after edits', () => {
  test('is followed as its text is afresh', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 8 }), (edits) => {
        let snapshot = fresh(STEW);
        for (const next of edits) {
          void followed(snapshot.recipe);
          snapshot = edited(snapshot, next);
          expect(followed(snapshot.recipe)).toEqual(followed(fresh(snapshot.text).recipe));
        }
      }),
      { numRuns: 120 },
    );
  }, 60_000);

  test('shares the steps before an edit, and those after it from where all is as it was', () => {
    const before = fresh(STEW);
    const kept = journeyOf(before.recipe);
    const line = STEW.split('\n').findIndex((row) => row.includes('Leave on the counter'));
    const after = journeyOf(edited(before, { line, cut: true, put: '  do Leave on the counter for 1 hour.' }).recipe);
    expect(after.steps[0]?.after).toBe(kept.steps[0]?.after);
    const weight = STEW.split('\n').findIndex((row) => row.includes('200 g  onions'));
    const heavier = journeyOf(edited(before, { line: weight, cut: true, put: '  300 g  onions' }).recipe);
    expect(heavier.steps.map((step, i) => step.after === kept.steps[i]?.after)).toEqual(kept.steps.map(() => true));
    expect(heavier.stays.every((stay, i) => stay === kept.stays[i])).toBe(true);
  });
});
