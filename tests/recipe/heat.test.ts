import { describe, expect, test } from 'vitest';
import { gasToCelsius } from '../../server/src/notation/celsius.ts';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { verbNamed } from '../../server/src/prose/verb-named.ts';
import { durationOf, heatsOf, timesOf } from '../../server/src/recipe/journey/figures.ts';
import type { Step } from '../../server/src/recipe/model.ts';

const stepOf = (text: string): Step => ({ line: 0, sentence: sentenceIn(text), mentions: [] });

describe('what a temperature is the temperature of', () => {
  test.each<[string, string[]]>([
    ['Bake at 180 C for 35-40 min, until the centre reads 80 C.', ['oven 180', 'food 80']],
    ['Bake at 150 C until the centre reads 75 C.', ['oven 150', 'food 75']],
    ['Bake at 350 F.', ['oven 177']],
    ['Roast at 200 C fan for 20 min.', ['oven 200']],
    ['Bake at gas 4 for 20 min.', ['oven 177']],
    ['Heat the oven to 220 C.', ['oven 220']],
    ['Turn the oven down to 160 C.', ['oven 160']],
    ['Roast until the thickest part of the thigh reads 74 C.', ['food 74']],
    ['Cook until it reaches 82 C.', ['food 82']],
    ['Warm the milk to 60 C.', ['food 60']],
    ['Chill at 4 C for 45 min.', ['around 4']],
    ['Prove at 26 C for 1 h.', ['around 26']],
    ['Ferment in a cellar at 15 C.', ['around 15']],
    ['Cool to 21 C within 2 h, then to 5 C within 4 h more.', ['food 21', 'food 5']],
    ['Freeze at -18 C for 4 h.', ['around -18']],
    ['Fry in oil at 180 C for 4 min.', ['medium 180']],
    ['Boil the syrup to 118 C.', ['food 118']],
    ['Keep warm at 50 C.', ['around 50']],
    ['Keep the whites cool at 8 C.', ['around 8']],
    ['Heat the milk, cream and sugar to 60 C.', ['food 60']],
    ['Warm the milk and cream to 60 C.', ['food 60']],
    ['Fry the livers for 3 min, to 62 C.', ['food 62']],
    ['Roast at 200 C to 62 C.', ['oven 200', 'food 62']],
    ['Bake at 120 C for 1 h, then drop to 90 C.', ['oven 120', 'oven 90']],
    ['Preheat to 90 C.', ['oven 90']],
    ['Fry in oil at 90 C.', ['medium 90']],
  ])('%s', (text, want) => {
    expect(heatsOf(stepOf(text)).map((h) => `${h.of} ${Math.round(h.celsius.low)}`)).toEqual(want);
  });
});

describe('whose time a duration is', () => {
  test.each<[string, string[]]>([
    ['Bake at 180 C for 35-40 min.', ['bake 35-40']],
    ['Roll out, line the pan and chill for 30 min.', ['chill 30-30']],
    ['Knead for 10 min, then prove for 1 h.', ['knead 10-10', 'prove 60-60']],
    ['Cool for 1 h, then chill at 4 C overnight.', ['cool 60-60', 'chill 480-960']],
    ['Chill within 2 h.', []],
    ['It keeps 3 d.', []],
    ['Weigh the flour and cream the butter for 5 min.', ['cream 5-5']],
    ['Simmer gently for 1 1/2 hours.', ['simmer 90-90']],
  ])('%s', (text, want) => {
    const step = stepOf(text);
    const times = timesOf(step).flatMap(({ said, event: { verb, craft } }) => {
      const node = said.kind === 'spent' && craft !== 'keep' ? durationOf(step, said) : undefined;
      const of = verb && verbNamed(text.slice(verb.start, verb.end))?.base;
      return node === undefined ? [] : [`${of} ${node.lowMin}-${node.highMin}`];
    });
    expect(times).toEqual(want);
  });
});

// Common UK table (from memory): the marks agree with it within 5 °C.
test.each([
  [0.25, 110],
  [0.5, 125],
  [1, 140],
  [2, 150],
  [3, 165],
  [4, 180],
  [5, 190],
  [6, 200],
  [7, 220],
  [8, 230],
  [9, 245],
])('gas %s is about %s °C', (mark, celsius) => {
  expect(Math.abs(gasToCelsius(mark) - celsius)).toBeLessThanOrEqual(5);
});
