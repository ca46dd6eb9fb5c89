/** What a share of a list is of; the sums are by hand. */
import { describe, expect, test } from 'vitest';
import { scaleRecipe } from '../../server/src/edits/scale.ts';
import { applyEdits } from '../../server/src/edits/text-edit.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { open } from '../support/harness.ts';

const LIST =
  '  2 kg      beef mince\n  500 g     pork shoulder\n  300 g     onions\n  100 g     plain flour\n  to taste  thyme\n';

const gramsOf = (share: string): number | string => {
  const { recipe } = open(`recipe Sausage\n${LIST}  ${share}  fine salt\n`);
  const weighed = recipe.parts[0]?.head.ingredients.at(-1)?.weighed;
  return weighed?.known === true ? weighed.grams.low : (weighed?.why ?? '');
};

describe('a share', () => {
  test.each<[string, number]>([
    ['1.5 % of the beef mince', 30],
    ['1.5 % of the beef', 30],
    ['1.5 % of the mince', 30],
    ['1.5 % of beef mince', 30],
    ['2 % of the pork', 10],
    ['2 % of the onions', 6],
    ['2 % of the flour', 2],
    ['2 % of the meat', 50],
    ['1 % of everything', 29],
    ['1 % of the whole', 29],
    ['1 % of the total weight', 29],
  ])('%s', (share, grams) => {
    expect(gramsOf(share)).toBeCloseTo(grams, 6);
  });

  test.each(['1.5 % of the lamb', '1.5 % of the thyme', '1.5 % of the bef'])('%s is of nothing known', (share) => {
    expect(gramsOf(share)).toMatch(/no one/);
  });

  test('of a food that two lines have is of neither', () => {
    const { recipe } = open('recipe X\n  1 kg      beef mince\n  1 kg      beef shin\n  1 % of the beef  salt\n');
    expect(recipe.parts[0]?.head.ingredients.at(-1)?.weighed.known).toBe(false);
  });

  test('is no percentage of the flour for the others', () => {
    const { recipe } = open(
      'recipe X\n  1 kg      bread flour\n  60 %      water\n  200 g     butter\n  1 % of the butter  salt\n',
    );
    const grams = recipe.parts[0]?.head.ingredients.map((i) => (i.weighed.known ? i.weighed.grams.low : 0));
    expect(grams).toEqual([1000, 600, 200, 2]);
  });

  test('stays as it is written at another size, and weighs so many times as much', () => {
    const snapshot = open('recipe X\n  1 kg      beef mince\n  1.5 % of the beef  salt\n');
    const scaled = scaleRecipe(snapshot.document, snapshot.recipe, { kind: 'by', by: 2 });
    const text = scaled.ok ? printDocument(applyEdits(snapshot.document, scaled.scaling.edits)) : '';
    expect(text).toContain('1.5 % of the beef  salt');
    const weighed = open(text).recipe.parts[0]?.head.ingredients.at(-1)?.weighed;
    expect(weighed?.known === true && weighed.grams.low).toBe(30);
  });
});
