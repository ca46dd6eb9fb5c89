import { describe, expect, it } from 'vitest';
import { foldsOf, formatted, symbolsOf, tokensOf } from '../support/at-cursor.ts';
import { EXAMPLES } from '../support/harness.ts';

const SLAB = `# A slab that cuts clean.
# Tried twice.
recipe Slab
  yield   12 squares

part base as shortcrust
  200 g     plain flour
  1-2 tbsp  ice water
  do Mix the flour and the water.
  do Bake at 180 C for 20 min until the centre reads 80 C.

part top
  20 g      honey
  do Pour the honey over the base.
  allow unused-part because it is

trial 2026-09-14 by Ines
  used    10 g honey in top
  verdict keep

food house flour
  like    plain flour
  1 cup = 135 g
`;

describe('symbols', () => {
  it('are a tree with grams', () => {
    expect(symbolsOf(SLAB)).toEqual([
      'recipe Slab | 12 squares',
      '  part base | shortcrust, 215 to 230 g',
      '    ingredient plain flour | 200 g',
      '    ingredient ice water | 15 to 30 g',
      '    step Mix the flour and the water.',
      '    step Bake at 180 C for 20 min until the centre reads 80 C.',
      '  part top | 20 g',
      '    ingredient honey | 20 g',
      '    step Pour the honey over the base.',
      '  trial trial 2026-09-14 | Ines, keep',
      'food house flour | like plain flour',
    ]);
  });

  it('hang on the recipe where it has no parts, and stand alone where there is no recipe', () => {
    expect(symbolsOf('recipe A\n  1 g  salt\n')).toEqual(['recipe A', '  ingredient salt | 1 g']);
    expect(symbolsOf('  1 g  salt\n  do Stir.\n')).toEqual(['ingredient salt | 1 g', 'step Stir.']);
    expect(symbolsOf('')).toEqual([]);
  });
});

describe('symbols of a very long file', () => {
  const kinds = (parts: number, ingredients: number, steps: number): string[] => {
    const part = `  1 g  salt\n`.repeat(ingredients) + '  do Stir.\n'.repeat(steps);
    const text = `recipe A\n${Array.from({ length: parts }, (_, i) => `part p${i}\n${part}`).join('')}`;
    return [...new Set(symbolsOf(text).map((row) => row.trim().split(' ')[0] ?? ''))];
  };

  it('leave out the steps, and then the ingredients', () => {
    expect(kinds(20, 10, 20)).toEqual(['recipe', 'part', 'ingredient', 'step']);
    expect(kinds(20, 10, 30)).toEqual(['recipe', 'part', 'ingredient']);
    expect(kinds(500, 10, 0)).toEqual(['recipe', 'part']);
  });
});

describe('folds', () => {
  it('are comments, heads, parts, trials and foods', () => {
    expect(foldsOf(SLAB)).toEqual(['0-1 comment', '2-3', '5-9', '11-14', '16-18', '20-22']);
  });
});

describe('tokens', () => {
  it('say what the words are, temperatures by role', () => {
    expect(tokensOf(SLAB)).toEqual([
      '12 number',
      'base namespace.declaration',
      'shortcrust type',
      '200 number',
      'plain flour variable.declaration',
      '1 number',
      '2 number',
      'ice water variable.declaration',
      'flour variable',
      'water variable',
      '180 C number.temperature.oven',
      '20 min number.time',
      '80 C number.temperature.inside',
      'top namespace.declaration',
      '20 number',
      'honey variable.declaration',
      'honey variable',
      'base namespace',
      'unused-part enumMember',
      '10 number',
      'honey variable',
      'top namespace',
      'house flour property.declaration',
      'plain flour property',
      '1 number',
      '135 number',
    ]);
  });
});

describe('formatting', () => {
  it('lines up what is out of line and leaves comments where they are', () => {
    expect(formatted('recipe A\n# here\n 200g  plain flour    # why\n')).toBe(
      'recipe A\n# here\n  200 g     plain flour    # why\n',
    );
  });

  it('touches only the wanted lines', () => {
    const text = 'recipe A\n 200g  plain flour\n 100g  butter\n';
    expect(formatted(text, [2, 2])).toBe('recipe A\n 200g  plain flour\n  100 g     butter\n');
  });

  // The draft keeps the slips of a draft.
  it.each(EXAMPLES.filter(([path]) => path !== 'first-draft.quern'))('leaves %s as it is', (_path, text) => {
    expect(formatted(text)).toBe(text);
  });
});
