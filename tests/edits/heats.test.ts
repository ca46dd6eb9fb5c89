/** A heat on another scale: all that it is written in together, as dials are marked; and as a page shows it, once. */
import { describe, expect, test } from 'vitest';
import { convertTemperature, type Wish } from '../../server/src/edits/convert-temperature.ts';
import { stepText } from '../../server/src/publish/step-text.ts';
import { gasMark, onDial } from '../../server/src/recipe/dials.ts';
import { heatsOf } from '../../server/src/recipe/journey/figures.ts';
import { open } from '../support/harness.ts';

function stepOf(sentence: string) {
  const { recipe } = open(`recipe Oats\n  200 g  rolled oats\n  do ${sentence}\n`);
  const part = recipe.parts[0];
  const step = part?.steps[0];
  if (part === undefined || step === undefined) throw new Error('no step');
  return { step, line: part.head.source.lines[step.line]?.text ?? '' };
}

/** The sentence with all its heats written so. */
function converted(sentence: string, wish: Wish): string {
  const { step, line } = stepOf(sentence);
  const edits = heatsOf(step).flatMap((heat) => convertTemperature(0, line, heat, wish) ?? []);
  let text = line;
  for (const { edit } of edits.reverse())
    text = text.slice(0, edit.start.character) + edit.text + text.slice(edit.end.character);
  return text.trim().replace(/^do /, '');
}

const toF: Wish = { scale: 'F' };
const toC: Wish = { scale: 'C' };

describe('as dials are marked', () => {
  test.each<[number, number, string]>([
    [110, 225, '1/4'],
    [140, 275, '1'],
    [160, 325, '3'],
    [180, 350, '4'],
    [200, 400, '6'],
    [220, 425, '7'],
    [230, 450, '8'],
    [240, 475, '9'],
  ])('%d °C is %d °F and gas %s, both ways', (celsius, fahrenheit, gas) => {
    expect(onDial(celsius, 'F')).toBe(fahrenheit);
    expect(onDial((fahrenheit - 32) / 1.8, 'C')).toBe(celsius);
    expect(gasMark(celsius)).toBe(gas);
  });

  test.each<[number, 'C' | 'F', number]>([
    [210, 'F', 410],
    [170, 'F', 340],
    [(365 - 32) / 1.8, 'C', 185],
    [(550 - 32) / 1.8, 'C', 290],
  ])('what stands at no mark is to the nearest five or ten: %d in %s', (celsius, scale, want) => {
    expect(onDial(celsius, scale)).toBe(want);
  });
});

test.each<[string, Wish, string]>([
  ['Bake at 180C/160C fan/gas 4 for 20 min.', toF, 'Bake at 350 F/325 F fan for 20 min.'],
  ['Bake at 180C/160C fan/gas 4 for 20 min.', toC, 'Bake at 180C/160C fan for 20 min.'],
  ['Bake at 180C/160C fan/gas 4 for 20 min.', { scale: 'gas', oven: 'still' }, 'Bake at gas 4 for 20 min.'],
  ['Bake at 180C/160C fan/gas 4 for 20 min.', { oven: 'fan' }, 'Bake at 160C fan for 20 min.'],
  ['Bake at 350°F (180°C/gas mark 4) for 20 min.', toC, 'Bake at 180°C for 20 min.'],
  ['Bake at 350 F (177 C) for 20 min.', toC, 'Bake at 177 C for 20 min.'],
  ['Bake at 350 F for 20 min.', toC, 'Bake at 180 C for 20 min.'],
  ['Bake at 325 F for 20 min.', { oven: 'fan' }, 'Bake at 300 F fan for 20 min.'],
  ['Bake at 350 F fan for 20 min.', { oven: 'still' }, 'Bake at 375 F for 20 min.'],
  ['Bake at 160 C fan for 20 min.', toF, 'Bake at 325 F fan for 20 min.'],
  ['Bake at mark 4 for 20 min.', toC, 'Bake at 180 C for 20 min.'],
  ['Bake at 350º for 20 min.', toC, 'Bake at 180 C for 20 min.'],
  ['Preheat the oven to 450.', toC, 'Preheat the oven to 230 C.'],
  ['Bake until the centre reads 145 F.', toC, 'Bake until the centre reads 63 C.'],
  ['Bake until the centre reads 63 C (145 F).', toF, 'Bake until the centre reads 145 F.'],
  ['Boil to between 105 C and 110 C.', toF, 'Boil to between 221 F and 230 F.'],
  ['Keep it between 60 and 65 C.', toF, 'Keep it between 60 and 65 C.'],
  ['Increase the oven by 25 F.', toC, 'Increase the oven by 25 F.'],
])('%s written %o', (sentence, wish, want) => {
  expect(converted(sentence, wish)).toBe(want);
});

test.each<[string, string]>([
  ['Bake at 180C/160C fan/gas 4 for 20 min.', 'Bake at 180 °C (160 °C fan, gas 4, 350 °F) for 20 min.'],
  ['Bake at 350 F (180 C) for 20 min.', 'Bake at 350 °F (180 °C) for 20 min.'],
  ['Bake at 160 C for 20 min.', 'Bake at 160 °C (325 °F) for 20 min.'],
  ['Bake at gas 4 for 20 min.', 'Bake at gas 4 (180 °C, 350 °F) for 20 min.'],
  ['Preheat the oven to 450.', 'Preheat the oven to 450 °F (230 °C).'],
  ['Bake at 350 degrees F for 20 min.', 'Bake at 350 °F (180 °C) for 20 min.'],
  ['Fry in oil at 180 C for 2 min.', 'Fry in oil at 180 °C (355 °F) for 2 min.'],
  ['Bake until the centre reads 145 F.', 'Bake until the centre reads 145 °F (63 °C).'],
  ['Increase the oven by 25 F.', 'Increase the oven by 25 °F (14 °C).'],
  ['Keep it between 60 and 65 C.', 'Keep it between 60 and 65 C.'],
])('a page shows each heat once: %s', (sentence, want) => {
  const { step, line } = stepOf(sentence);
  expect(stepText(step, line)).toBe(want);
});
