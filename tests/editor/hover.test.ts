import { describe, expect, it } from 'vitest';
import { hover } from '../../server/src/editor/hover.ts';
import { fixture, hoverAt } from '../support/at-cursor.ts';

const SLAB = `recipe Slab
  yield   12 squares
  oven    180 C

part base as shortcrust
  200 g     plain flour
  100 g     butter, cold
  1 cup     water
  0.5 tsp   fine salt
  1 large   egg yolk
  optional 20 g walnuts
  do Rub 75 g of the butter into the flour for 10 min.
  do Bring together with the water.
  do Bake at 160 C fan for 35-40 min, until the centre reads 80 C.
  do Rest overnight, then cut 3 cm thick.

part top
  60 ml     double cream
  to taste  nutmeg
  blob      of something
  do Whip the cream, spread it over the base and brush with the rest of the butter.
  allow unused-part because it is eaten warm
`;
/** The slab with the cursor in the middle of some words. */
const at = (words: string): string => {
  expect(SLAB.split(words)).toHaveLength(2);
  return SLAB.replace(
    words,
    `${words.slice(0, Math.ceil(words.length / 2))}$0${words.slice(Math.ceil(words.length / 2))}`,
  );
};
const hovered = (words: string): string => hoverAt(at(words)) ?? '';

describe('a sign', () => {
  it('is looked for in what no food lies in by that', () => {
    const recipe =
      'recipe Fudge\n  400 g sugar\n  1 dl cream\n  do Boil until a ball forms on a cold pl$0ate, then cool.';
    expect(hoverAt(recipe)).toMatch(/^plate · where the sign is looked for\nSign: until a ball forms on a cold plate$/);
  });
});

describe('an ingredient line', () => {
  it('is weighed, with its shares, what it holds and what each step takes', () => {
    const text = hovered('100 g     butter');
    expect(text).toMatch(/^100 g {5}butter$/m);
    expect(text).toMatch(/^Weight: 100 g$/m);
    expect(text).toMatch(/^Baker's percentage: 50 % of the flour$/m);
    expect(text).toMatch(/^Share: \d.*% of the base$/m);
    // USDA SR26, NDB 01001: 81.11 g fat, 15.87 g water in 100 g.
    expect(text).toMatch(/^Holds: water 16 g, fat 81 g.*USDA SR26, NDB 01001/m);
    expect(text).toMatch(/^Allergens: milk$/m);
    expect(text).toMatch(/^Line 12: takes 75 g, 75 % of it$/m);
    expect(text).toMatch(/^Line 21 \(top\): takes 25 g, 25 % of it$/m);
    expect(text).toMatch(/^Left at the end: nothing$/m);
  });

  it('says by how much the steps take more than it provides', () => {
    const slab = (step: string, at: string) =>
      `recipe Slab\n  400 g     whole milk\n  200 g     plain flour\n  do Whisk 350 ml of the milk into the flour.\n  do ${step}\n`.replace(
        at,
        `${at}$0`,
      );
    const line = hoverAt(slab('Thin with 100 g of the milk.', '400 g')) ?? '';
    expect(line).toMatch(/^Line 5: takes 100 g, 6[0-9] g more than is left$/m);
    expect(line).toMatch(/^Left at the end: nothing: 6[0-9] g too little is listed$/m);
    expect(hoverAt(slab('Thin with 100 g of the milk.', 'Thin with 100 g of the mi'))).toMatch(
      /^This step: takes 100 g, 6[0-9] g more than is left$/m,
    );
    const none = slab(
      'Thin with half the milk. Add the rest of the milk. Brush with the rest of the milk.',
      'Brush with the rest of the mi',
    );
    expect(hoverAt(none)).toMatch(/^This step: finds none left$/m);
  });

  it('says why a measure has the weight it has, with a range', () => {
    expect(hovered('1 large   egg yolk')).toMatch(/^Weight: \d+ to \d+ g, likely \d+ g \(1 large egg yolk weighs/m);
  });

  it('says that no step uses it, but not of what is optional', () => {
    expect(hovered('1 large   egg yolk')).toMatch(/^Used: in no step$/m);
    expect(hovered('20 g walnuts')).not.toMatch(/in no step/);
  });

  it('has no weight where none can be known', () => {
    expect(hovered('to taste  nutmeg')).toMatch(/^Weight: not known: it is added to taste$/m);
    expect(hovered('to taste  nutmeg')).not.toMatch(/\b0 g/);
  });
});

describe('in a step', () => {
  it('a mention says what is listed, what is taken and what is left', () => {
    const text = hovered('75 g of the butter');
    expect(text).toMatch(/^butter$/m);
    expect(text).toMatch(/^Listed: butter, line 7 of the base$/m);
    expect(text).toMatch(/^This step: takes 75 g, 75 % of it; 25 % is left$/m);
  });

  it('a mention of an earlier part shows that part', () => {
    const text = hovered('over the base');
    expect(text).toMatch(/^base · the part base/);
    expect(text).toMatch(/^Water per flour: /m);
  });

  it.each([
    [
      '160 C fan',
      /^160 C fan · in the oven\nCelsius: 160 °C\nFahrenheit: 325 °F\nWithout the fan: 180 °C, 350 °F.*\nGas: mark 4\nUnderstood: heats in the oven, 160 °C in the oven, 80 °C in the food, 35 to 40 min; cooked as far as a figure or sign says\nEnds or begins: until the centre reads 80 C$/,
    ],
    ['80 C.', /^80 C · in the food\nCelsius: 80 °C\nFahrenheit: 176 °F\nUnderstood: heats in the oven, /],
    [
      '35-40 min',
      /^35-40 min\nTime: 35 to 40 min\nBelongs to: Bake\nCounts as: waiting, by the heat\nIn the oven: not estimated: a crust by itself is done when it is dry and brown, not when it is hot\nUnderstood: heats in the oven, /,
    ],
    ['overnight', /^overnight\nTime: .* by habit\nBelongs to: [Rr]est/],
    ['do Rest', /^Rest · stays\nUnderstood: stays .*8 h to 16 h/],
    ['do Rub', /^Rub · is mixed\nUnderstood: is mixed, 10 min/],
    ['3 cm', /^3 cm\nCentimetres: 3 cm\nInches: 1.2 in$/],
  ])('%s', (words, expected) => {
    expect(hovered(words)).toMatch(expected);
  });
});

// Gas marks: UK practice, from memory: mark 4 is 350 °F, which is 177 °C.
describe('an oven line', () => {
  it('gives fan and gas', () => {
    expect(hoverAt(SLAB.replace('oven    180 C', 'oven    18$00 C'))).toMatch(/With the fan: 160 °C.*\nGas: mark 4$/);
    expect(hoverAt(SLAB.replace('oven    180 C', 'oven    g$0as 6'))).toMatch(/Celsius: 200 °C\nFahrenheit: 400 °F/);
  });
});

describe('other words', () => {
  it('a part has weight, composition and bands', () => {
    const text = hovered('part base');
    expect(text).toMatch(/^base · shortcrust/);
    expect(text).toMatch(/^Weight: \d+ to \d+ g$/m);
    expect(text).toMatch(/^Water per flour: \d.* %; usual 18 to 53 %, far above it: tough/m);
    expect(text).toMatch(/^Taken up by: top$/m);
  });

  it('a kind has its bands, and what is none says which there are', () => {
    expect(hovered('shortcrust')).toMatch(/^shortcrust · pastry\nWater per flour/);
    expect(hoverAt('recipe A\npart b as short$0bread house\n  1 g  flour\n')).toMatch(
      /not a kind\nThe kinds are shortcrust, /,
    );
  });

  it('the recipe has its whole weight and that of one piece', () => {
    expect(
      hoverAt('recipe Ba$0rs\n  yield  10 bars\n  500 g  rolled oats\n  500 g  honey\n  do Mix the oats and honey.\n'),
    ).toBe('Bars\nGoes in: 1000 g\nEach: 100 g before cooking');
  });

  it('a unit says how much it holds, by house', () => {
    // NIST SP 811 (2008): US cup 236.6 ml; metric cup 250 ml.
    const cup = SLAB.replace('1 cup     water', '1 cu$0p     water');
    expect(hoverAt(cup)).toMatch(/^cup · a unit of volume\n1 US cup: 236.6 ml \[NIST/);
    expect(hoverAt(cup, { measures: 'metric' })).toMatch(/1 metric cup: 250 ml \[metric/);
  });

  it('a code has its title and page', () => {
    expect(hovered('unused-part')).toMatch(/^unused-part · .+\nRead more: quern explain unused-part$/);
  });

  it('says nothing where there is nothing to say', () => {
    expect(hoverAt('recipe A\n  no$0te  Cut clean.\n')).toBeUndefined();
    expect(hoverAt('$0')).toBeUndefined();
  });
});

describe('where a line of the list is not understood', () => {
  const CAKE =
    'recipe $0Cake\npart ba#tter as creamed cake\n  200 g     plain flour\n  180 g     caster sugar\n  1/0 g     butter\n  do Beat everything together.\n';
  it('the part has its sums at least, no measure, and names the line', () => {
    const said = hoverAt(CAKE.replace('$0', '').replace('#', '$0'));
    expect(said).toContain('Weight: at least 380 g');
    expect(said).toContain('Incomplete: line 5 is not understood, and in no sum');
    expect(said).toMatch(/Holds: .*sugars at least \d/);
    expect(said).toMatch(/Sugar per flour: not known: a line of the list is not understood; usual/);
  });

  it('so has the recipe, and an ingredient no share', () => {
    const said = hoverAt(CAKE.replace('#', ''));
    expect(said).toContain('Goes in: at least 380 g');
    expect(said).toContain('Incomplete: line 5 is not understood');
    expect(hoverAt(CAKE.replace('$0', '').replace('#', '').replace('plain fl', 'plain $0fl'))).not.toMatch(
      /Share|percentage/,
    );
  });
});

describe('a line as cooks print it', () => {
  const printed = (line: string): string => hoverAt(`recipe Trial\n  ${line}\n  do Mix.\n`) ?? '';

  it.each([
    ['1 14-oz can toma$0toes', /^Read as: 1 can of 14 oz$/m],
    // 12 + 2 spoons: NIST HB 44, cup of 236.588 ml, spoon of 14.787 ml.
    ['1 cup sug$0ar plus 2 tbsp', /^Read as: 1 cup \+ 2 tbsp = 266 ml$/m],
    ['1 1/4 cups (156 g) flo$0ur', /^Besides: 156 g, which counts\n1 1\/4 cup by itself: 1\d\d to 1\d\d g/m],
    ['3 ha$0ms, 15 lbs. each', /^Besides: 15 lb each, which counts$/m],
    ['6 to 8 (about 2 lb) pota$0toes', /^Besides: about 2 lb in all, which counts$/m],
    ['1 heaping cup flo$0ur', /^Filled: heaped: 1\.25 to 1\.6 of a level one/m],
    ['pinch of sa$0lt', /^Assumed: one of it/m],
    ['100 g but$0ter or margarine', /^Or: margarine, which may be in it; the sums are of butter$/m],
    ['100 g butter or marga$0rine', /^margarine · may be taken in the place of butter$/m],
    ['3 tbsp flo$0ur, plus more for dusting', /^Taken besides: bought with it, and in no sum$/m],
    ['zest and juice of 2 le$0mons', /^Taken of it: zest and juice$/m],
    ['2 eg$0gs plus 1 yolk', /^2 eggs · egg\n.*On this line: 2 items/ms],
    ['2 eggs plus 1 yo$0lk', /^1 yolk · egg yolk$/m],
    ['salt and pep$0per', /^pepper · could be/m],
    ['Butter, 4 o$0z', /^Weight: 113 g$/m],
  ])('%s', (line, said) => {
    expect(printed(line)).toMatch(said);
  });

  it('says nothing of the reading of a plain line', () => {
    expect(printed('200 g flo$0ur, sifted')).not.toMatch(/Read as|Besides|Assumed|Or:/);
  });

  it('answers at every place with a range that holds the caret, or not at all', () => {
    for (const line of [
      '  2 eggs plus 1 yolk',
      '  1 1/4 cups (156 g) flour, plus more',
      '  salt and pepper',
      '  juice of 2 limes',
    ])
      for (let at = 0; at <= line.length; at++) {
        const { snapshot, range } = fixture(`recipe Trial\n${line.slice(0, at)}$0${line.slice(at)}\n  do Mix.\n`);
        const found = hover(snapshot, range.start);
        if (found !== undefined)
          expect([found.at.start <= at, at <= found.at.end], `${line} ${at}`).toEqual([true, true]);
      }
  });
});
