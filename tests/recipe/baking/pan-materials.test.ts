import { describe, expect, test } from 'vitest';
import { ovenTimes } from '../../../server/src/recipe/baking/oven-time.ts';
import { ovenTimeText } from '../../../server/src/recipe/baking/said.ts';
import { hoverAt } from '../../support/at-cursor.ts';
import { open } from '../../support/harness.ts';

const cake = (pan: string, oven = '180 C') => `recipe Plain cake as creamed cake
  yield   8 slices
  pan     ${pan}
  oven    ${oven}
  130 g     plain flour
  140 g     sugar
  75 g      butter
  80 g      whole egg
  118 g     whole milk
  5 g       baking powder
  do Beat everything together and pour into the tin.
  do Bake for 25-35 min until a skewer comes out clean.
`;

function timeOf(text: string) {
  const [time] = ovenTimes(open(text).recipe);
  if (time?.is !== 'estimated') throw new Error('declined');
  return time;
}

describe('what a pan is of', () => {
  const bright = timeOf(cake('round 23 x 5 cm')).estimate.likely;

  test.each(['glass', 'ceramic', 'dark', 'cast-iron', 'stoneware'])('%s takes a cake there sooner', (of) => {
    const { likely } = timeOf(cake(`${of} round 23 x 5 cm`)).estimate;
    expect(likely / bright).toBeGreaterThan(0.82);
    expect(likely / bright).toBeLessThan(0.95);
  });

  // Practice: 25 °F (15 °C) less oven for the same time.
  test('in an oven 15 °C cooler it takes about as long', () => {
    const ratio = timeOf(cake('glass round 23 x 5 cm', '165 C')).estimate.likely / bright;
    expect(ratio).toBeGreaterThan(0.92);
    expect(ratio).toBeLessThan(1.08);
  });

  test.each(['shiny', 'aluminium', 'steel', 'non-stick'])('%s changes nothing', (of) => {
    expect(timeOf(cake(`${of} round 23 x 5 cm`)).estimate.likely).toBe(bright);
  });

  test('is said where the estimate is, and on the pan', () => {
    expect(ovenTimeText(timeOf(cake('glass round 23 x 5 cm')))).toContain(', in glass, 180 °C');
    expect(ovenTimeText(timeOf(cake('dark round 23 x 5 cm')))).toContain(', in a dark tin, ');
    expect(hoverAt(cake('glass ro$0und 23 x 5 cm'))).toMatch(/^Takes heat: 1\.15 times as well as bright metal/m);
    expect(hoverAt(cake('ro$0und 23 x 5 cm'))).not.toMatch(/Takes heat/);
  });

  test('under a part it is of that part', () => {
    const tart = cake('round 23 x 5 cm').replace(
      '  130 g',
      '\npart cake as creamed cake\n  pan     glass round 23 x 5 cm\n  130 g',
    );
    expect(timeOf(tart.replace(' as creamed cake\n  yield', '\n  yield')).load.pan?.word).toBe('glass');
  });
});
