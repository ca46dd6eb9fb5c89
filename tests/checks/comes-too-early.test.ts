import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const LIST =
  '  200 g     plain flour\n  100 g     butter\n  300 ml    whole milk\n  2         eggs\n  80 g      caster sugar\n';
const codes = (steps: readonly string[], list = LIST): readonly string[] =>
  open(`recipe Bake\n${list}${steps.map((step) => `  do ${step}\n`).join('')}`).findings.open.flatMap(({ code }) =>
    code.startsWith('comes-too-') ? [code] : [],
  );

type Row = readonly [steps: readonly string[], list?: string];
const cases = (rows: readonly Row[]) => rows.map(([steps, list = LIST]) => ({ steps, list }));

const MIX = 'Rub the butter into the flour and sugar; beat in the eggs and milk.';
const BAKE = 'Bake at 180 C for 30 min until golden.';

describe('what stands before its turn', () => {
  test.each(
    cases([
      [['Rest for 20 min.', MIX, BAKE]],
      [[BAKE, MIX]],
      [['Line a tin with paper.', 'Pour in the milk.', 'Rub the butter into the flour, sugar and eggs.', BAKE]],
      [['Store in an airtight jar for 2 weeks.', MIX, BAKE]],
      [['Fold in the butter.', 'Whisk the eggs with the milk, sugar and flour.', BAKE]],
      [['Add the milk slowly.', 'Beat the butter, sugar, flour and eggs.', BAKE]],
      [[MIX, 'Cool on a rack.', BAKE]],
      [[MIX, 'Turn out.', BAKE]],
      [[MIX, 'Serve at once.', BAKE]],
      [['Cream the butter, sugar, flour and milk and fold in the eggs.', 'Whip the eggs to a foam.', BAKE]],
      [
        ['Churn.', 'Chill at 4 C overnight.'],
        '  300 ml    whole milk\n  80 g      caster sugar\n  do Mix the milk and sugar.\n',
      ],
    ]),
  )('$steps', ({ steps, list }) => {
    expect(codes(steps, list)).toEqual(['comes-too-early']);
  });

  test.each(
    cases([
      [[MIX, 'Rest for 20 min.', BAKE, 'Cool on a rack and keep in a tin for up to 5 days.']],
      // A line that no step names may be what is meant.
      [['Rest for 20 min.', 'Rub the butter into the flour and sugar; beat in the eggs.', BAKE]],
      [['Wash, dry and crack the eggs.', MIX, BAKE]],
      [
        [
          'Heat a wide pan.',
          'Add the butter.',
          'Whisk the flour, eggs, milk and sugar and fry in spoonfuls until brown.',
        ],
      ],
      [['Make a well in the flour; drop in the eggs.', 'Stir in the milk, butter and sugar.', BAKE]],
      [['Boil the milk, cool, and stir in the butter, flour, eggs and sugar.', BAKE]],
      [[MIX, 'Turn out on a board, knead, and chill for 1 h.', BAKE]],
      [
        [
          'Butter a basin and pour in the milk.',
          'Cream the butter, sugar, flour and eggs and spoon into the basin.',
          BAKE,
        ],
      ],
      [
        [
          'Line a tin with paper and tip in the sugar.',
          'Beat the butter, flour, eggs and milk, and spread over.',
          BAKE,
        ],
      ],
      [['Chill overnight before slicing.'], '  300 ml    whole milk\n'],
      [['Oil a sheet and keep it warm.', MIX, 'Pour on to the sheet.', BAKE]],
      [['Grease the tin and chill it for 10 min.', MIX, BAKE]],
      // Of cake flour, no cake.
      [
        ['Fold the flour into the milk.', BAKE, 'Cool for 2 h before loosening the cake.'],
        '  200 g     cake flour\n  300 ml    whole milk\n',
      ],
    ]),
  )('quiet: $steps', ({ steps, list }) => {
    expect(codes(steps, list)).toEqual([]);
  });
});
