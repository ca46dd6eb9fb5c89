import { describe, expect, test } from 'vitest';
import { convertRecipe } from '../../server/src/edits/convert.ts';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import type { ScaleTarget } from '../../server/src/edits/scale-target.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { parseDocument, printDocument } from '../../server/src/notation/document.ts';
import { open } from '../support/harness.ts';

function scaled(text: string, target: ScaleTarget) {
  const { document, recipe } = open(text);
  if (recipe === undefined) throw new Error('no recipe');
  const result = scaleRecipe(document, recipe, target);
  if (!result.ok) throw new Error(result.why);
  return { text: printDocument(applyEdits(parseDocument(text), result.scaling.edits)), ...result.scaling };
}

const CAKE = `recipe Plain cake as creamed cake
  yield   8 slices
  pan     23 cm round
  oven    180 C
  130 g     plain flour
  140 g     sugar
  75 g      butter
  80 g      whole egg
  118 g     whole milk
  5 g       baking powder
  do Beat everything together and pour into the tin.
  do Bake for 25-35 min until a skewer comes out clean.
`;

const LAMB = `recipe Leg of lamb
  yield   8 portions
  2.4 kg    boneless leg of lamb, rolled
  do Roast at 220 C for 20 min.
  do Turn down to 160 C and roast for 100 min, to 63 C in the middle. Rest for 15 min.
`;

describe('a time in the oven at another size', () => {
  test('a deeper cake takes longer, and the change says why', () => {
    const { text, changes, said } = scaled(CAKE, { kind: 'by', by: 1.5 });
    const [, low = 0, high = 0] = (/Bake for (\d+)-(\d+) min/.exec(text) ?? []).map(Number);
    expect(low).toBeGreaterThan(28);
    expect(high).toBeGreaterThan(40);
    expect(changes.join('\n')).toMatch(
      /in the oven 25-35 min → \d+-\d+ min: \d+ % longer, as what lies in it is deeper/,
    );
    expect(said.join(' ')).not.toMatch(/cannot be estimated/);
  });

  test('two tins of the same take as long as one', () => {
    const { text } = scaled(CAKE, { kind: 'pan', words: '2 x 23 cm round' });
    expect(text).toContain('Bake for 25-35 min');
  });

  test('half a joint takes less than half as long only where it is thin: the last heat takes the difference', () => {
    const { text } = scaled(LAMB, { kind: 'by', by: 0.5 });
    expect(text).toContain('Roast at 220 C for 20 min.');
    const minutes = Number(/roast for (\d+) min/.exec(text)?.[1]);
    expect(minutes).toBeGreaterThan(40);
    expect(minutes).toBeLessThan(75);
    expect(text).toContain('Rest for 15 min');
  });

  test('what is done when dry stays, and that is said', () => {
    const cookies = `recipe Cookies as cookie
  yield   20 cookies
  200 g     plain flour
  100 g     sugar
  120 g     butter
  do Mix to a dough, roll out and cut in 20.
  do Bake at 175 C for 12 min until gold.
`;
    const { text, said } = scaled(cookies, { kind: 'by', by: 3 });
    expect(text).toContain('for 12 min');
    expect(said.join(' ')).toMatch(/times that cannot be estimated stay as written/);
  });

  test('the size it has changes no time', () => {
    expect(scaled(CAKE, { kind: 'by', by: 1 }).text).toBe(CAKE);
    expect(scaled(LAMB, { kind: 'by', by: 1 }).text).toBe(LAMB);
  });
});

describe('many of a tin that the recipe has', () => {
  test.each([
    ['30 slices', '4 x 23 cm round', '94 %'],
    ['20 slices', '3 x 23 cm round', '83 %'],
    ['17 slices', '2 x 23 cm round', '106 %'],
  ])('%s take %s, each filled to %s', (words, pan, share) => {
    const { text, said } = scaled(CAKE, { kind: 'yield', words });
    expect(text).toContain(`  pan     ${pan}\n`);
    expect(said).toContain(`Each pan is filled to ${share} of what it was.`);
  });

  test('hardly fuller or emptier, they take as long', () => {
    expect(scaled(CAKE, { kind: 'yield', words: '30 slices' }).text).toContain('Bake for 25-35 min');
  });

  test('two to the whole say nothing of how full they are, and one half as large again stays', () => {
    expect(scaled(CAKE, { kind: 'by', by: 2 }).said.join(' ')).not.toMatch(/filled/);
    expect(scaled(CAKE, { kind: 'by', by: 1.5 }).text).toContain('  pan     23 cm round\n');
  });
});

describe('another oven', () => {
  const notes = (text: string, to: 'fan' | 'still' | 'gas') => {
    const { document, recipe } = open(text);
    return convertRecipe(document, recipe, { to }).said.join('\n');
  };
  const STILL = CAKE;
  const FAN = CAKE.replace('oven    180 C', 'oven    160 C fan');

  test('the likely time is a note, and the written one stays', () => {
    expect(notes(STILL, 'fan')).toMatch(
      /The times stay as written.*in the oven 25-35 min → \d+-\d+ min: \d+ % less, in an oven with a fan at that heat; an estimate, a thermometer decides/,
    );
    expect(notes(FAN, 'still')).toMatch(/in the oven 25-35 min → \d+-\d+ min: \d+ % longer, in a still oven/);
    const { document, recipe } = open(STILL);
    const { edits } = convertRecipe(document, recipe, { to: 'fan' });
    expect(printDocument(applyEdits(document, edits))).toBe(STILL.replace('180 C', '160 C fan'));
  });

  test.each([
    ['another scale alone', STILL, 'gas' as const],
    [
      'what is not estimated',
      STILL.replace('creamed cake', 'meringue').replace('  pan     23 cm round\n', ''),
      'fan' as const,
    ],
  ])('nothing of %s', (_, text, to) => {
    expect(notes(text, to)).not.toMatch(/Computed/);
  });
});
