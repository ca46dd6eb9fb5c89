/** The pan of a step against the pan that the recipe names. Invented. */
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const LIST = ['300 g rolled oats', '150 g butter', '150 g honey'];
const found = (pan: string, step: string, list = LIST): string[] =>
  open(
    [
      'recipe Oat slab',
      ...(pan === '' ? [] : [`  pan ${pan}`]),
      ...list.map((line) => `  ${line}`),
      '  do Melt the butter with the honey and stir in the oats.',
      `  do ${step}`,
      '',
    ].join('\n'),
  )
    .findings.open.filter(({ code }) => code === 'pan-disagrees' || code === 'pan-overfull')
    .map(({ code, said }) => `${code} ${/[\d.]+ times/.exec(said.message)?.[0] ?? ''}`.trim());

test.each<[string, string, string]>([
  ['square 20 x 5 cm', 'Press into a lined 30 cm square tin and bake at 170 C for 25 min until golden.', '1.5 times'],
  ['9 x 13 x 2 inch pan', 'Press in a greased 8 x 13-inch pan and bake at 340 F for 25 min.', '0.89 times'],
  ['round 23 x 4 cm', 'Line a 9-inch pie plate, and a deep 12-inch pie plate. Bake at 170 C for 25 min.', '1.33 times'],
  ['1.5 l', 'Spread in a 3 litre dish and bake at 170 C for 25 min.', '2 times'],
  ['round 23 x 7 cm', 'Press into a 30 cm tin and bake at 170 C for 25 min.', '1.3 times'],
])('%s: %s', (pan, step, times) => {
  expect(found(pan, step)).toContain(`pan-disagrees ${times}`);
});

test.each<[string, string]>([
  ['square 20 x 5 cm', 'Press into an 8-inch square tin and bake at 170 C for 25 min.'],
  ['9 x 13 x 2 inch pan', 'Press in a 33 x 23 cm pan and bake at 170 C for 25 min.'],
  ['round 23 x 7 cm', 'Toast in a 30 cm skillet, press in the tin and bake at 170 C for 25 min.'],
  [
    'loaf 23 x 13 x 7 cm',
    'Press in a 9 x 5-inch loaf tin, stand it in a 30 x 20 cm roasting tin and bake at 170 C for 25 min.',
  ],
  ['square 20 x 5 cm', 'Press in the tin, mark in 5 cm squares and bake at 170 C for 25 min.'],
  ['', 'Press into a 20 cm square tin and bake at 170 C for 25 min.'],
])('is quiet: %s: %s', (pan, step) => {
  expect(found(pan, step)).toEqual([]);
});

test('holds what goes in against the one pan that the steps name', () => {
  expect(
    found('', 'Press into a 20 cm square tin and bake at 170 C for 25 min.', [
      '3 kg rolled oats',
      '1.5 kg butter',
      '1.5 kg honey',
    ]),
  ).toEqual(['pan-overfull']);
});
