/** A recipe followed again after edits is followed as the text is afresh; what an edit does not reach is the same object. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dangersIn } from '../../../server/src/checks/by-state/dangers.ts';
import { journeyOf, journeysOf } from '../../../server/src/recipe/journey/fold.ts';
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

/** Parts that reach each other by a mixture, an oven, what was acted on last, a part taken in and the clock. */
const SUPPER = `recipe Supper
part dough
  500 g  bread flour
  300 g  whole milk
  do Mix the flour with the milk at eight and leave it to stand.
part filling
  200 g  dough
  300 g  minced lamb
  do Fry the lamb until brown.
  do Cook the mixture in a low oven.
part finish
  do Leave on the counter.
  do Bake at 200 C for 40 min.
part sauce
  4      egg yolks
  200 g  butter
  do Whisk the yolks with half the butter over a low heat.
  do Turn the oven off. Stir the rest of the mixture into the filling.
  do At one, spoon the sauce over.
part relish
  300 g  onions
  30 g   caster sugar
  do Fry the onions with the sugar.
`;

const LINES = [
  ...SUPPER.split('\n'),
  ...STEW.split('\n'),
  '  do Leave it in the garage till Sunday.',
  '  do Beat the rest of the eggs with the stew.',
  'part stock',
  '  500 g  lamb mince',
  '',
];
const WORDS = [
  'beef',
  ' mixture',
  ' at nine',
  ' oven off',
  ' the eggs',
  's',
  ' half',
  '5',
  'part ',
  ' overnight',
  '\n',
  ' not',
  ' in the oven',
];

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

/** All that was followed and judged, without the objects of the sentences. */
function followed({ recipe, findings }: Snapshot): string {
  const found = findings.open
    .filter(({ check }) => check.family === 'safety')
    .map(({ code, severity, at, said }) => ({ code, severity, at, message: said.message }));
  const { steps, stays, bodies } = journeyOf(recipe);
  const journeys = journeysOf(recipe).map(({ pieces }) => pieces.map(({ folded }) => folded.part.index));
  const shown = {
    found,
    dangers: dangersIn(recipe, house),
    journeys,
    after: steps.map(({ after }) => after),
    stays,
    bodies,
  };
  return JSON.stringify(shown, (key, value: unknown) =>
    key === 'by' || key === 'heatedBy'
      ? value && event((value as { event: Parameters<typeof event>[0] }).event)
      : key === 'taken'
        ? (value as readonly { start: number; end: number }[]).map(({ start, end }) => `${start}-${end}`)
        : value,
  );
}

describe('a recipe followed again after edits', () => {
  test('is followed as its text is afresh', () => {
    fc.assert(
      fc.property(fc.constantFrom(STEW, SUPPER), fc.array(edit, { minLength: 1, maxLength: 8 }), (text, edits) => {
        let snapshot = fresh(text);
        for (const next of edits) {
          void followed(snapshot);
          snapshot = edited(snapshot, next);
          expect(followed(snapshot)).toEqual(followed(fresh(snapshot.text)));
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

  test('keeps the journeys of parts that share nothing with an edit', () => {
    const before = fresh(SUPPER);
    void before.findings;
    const line = SUPPER.split('\n').findIndex((row) => row.includes('Fry the onions'));
    const after = edited(before, { line, cut: true, put: '  do Fry the onions with half the sugar.' });
    void after.findings;
    const [supper, relish] = journeysOf(after.recipe);
    expect(journeysOf(after.recipe)).toHaveLength(2);
    expect(supper).toBe(journeysOf(before.recipe)[0]);
    expect(relish).not.toBe(journeysOf(before.recipe)[1]);
  });
});
