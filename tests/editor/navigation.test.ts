import { describe, expect, it } from 'vitest';
import { definitionAt, highlightsAt, referencesAt, renamedAt, selectionsAt } from '../support/at-cursor.ts';

const SLAB = `recipe Slab
part base
  200 g     plain flour
  100 g     butter, cold
  2         eggs
  do Rub half the butter into the flour.
  do Beat in one egg, then butter the tin.
part top
  50 g      rye flour
  do Pour the other egg over the base and dust with [rye flour].
trial 2026-09-14 by Ines
  used    90 g butter in base
`;
const at = (before: string): string => SLAB.replace(before, `${before}$0`);

describe('definition', () => {
  it.each([
    ['half the butt', '4:butter'],
    ['the other eg', '5:eggs'],
    ['over the ba', '2:base'],
    ['dust with [rye', '9:rye flour'],
    ['used    90 g butt', '4:butter'],
    ['butter in ba', '2:base'],
  ])('after %j', (before, expected) => {
    expect(definitionAt(at(before))).toBe(expected);
  });

  it('is nowhere for a word that names nothing', () => {
    expect(definitionAt(at('dust wi'))).toBeUndefined();
  });
});

describe('references', () => {
  it('are the list, the steps and the trials', () => {
    expect(referencesAt(at('100 g     but'))).toEqual(['4:butter', '6:butter', '7:butter', '12:butter']);
    expect(referencesAt(at('100 g     but'), false)).toEqual(['6:butter', '7:butter', '12:butter']);
    expect(highlightsAt(at('part ba'))).toEqual(['2:base definition', '10:base mention', '12:base trial']);
  });
});

describe('rename', () => {
  it('writes whole names anew and leaves a head noun that still fits', () => {
    expect(renamedAt(at('200 g     plain'), 'wholemeal flour')).toBe(SLAB.replace('plain flour', 'wholemeal flour'));
  });

  it('writes another head noun where it changes, and leaves a verb', () => {
    const after = renamedAt(at('100 g     but'), 'goose fat');
    expect(after).toContain('Rub half the goose fat into');
    expect(after).toContain('then butter the tin');
    expect(after).toContain('used    90 g goose fat in base');
  });

  it('keeps one and many', () => {
    expect(renamedAt(at('2         eg'), 'duck eggs')).toContain('Beat in one duck egg, then');
  });

  it('renames a part where it is spoken of', () => {
    const after = renamedAt(at('over the ba'), 'crust');
    expect(after).toContain('part crust\n');
    expect(after).toContain('over the crust and');
    expect(after).toContain('butter in crust');
  });

  it('keeps the brackets of a forced mention', () => {
    expect(renamedAt(at('50 g      rye'), 'spelt flour')).toContain('dust with [spelt flour].');
  });

  it.each([
    ['butter, melted', /cannot be read as a name/],
    ['butter (cold)', /cannot be read as a name/],
    ['fat # of goose', /cannot be read as a name/],
    ['', /Write a name/],
    ['plain flour', /already has plain flour/],
  ])('refuses %j', (name, why) => {
    expect(renamedAt(at('100 g     but'), name)).toMatch(why);
  });

  it('puts what would be two things in full', () => {
    const two =
      'recipe A\n  100 g  butter\n  50 g  lard\n  20 g  goose fat\n  do Melt the lard, butter and goose fat.\n';
    expect(renamedAt(two.replace('50 g  la', '50 g  la$0'), 'duck fat')).toContain('Melt the duck fat, butter');
  });
});

describe('a growing selection', () => {
  it('goes from number to amount to name to line to part to all', () => {
    expect(selectionsAt(SLAB.replace('  2    ', '  2$0    '))).toEqual([
      '2',
      '2         eggs',
      '  2         eggs',
      'lines 2-7',
      'lines 1-13',
    ]);
    expect(selectionsAt(at('half the bu'))).toEqual([
      'butter',
      'half the butter',
      'Rub half the butter into the flour.',
      'do Rub half the butter into the flour.',
      '  do Rub half the butter into the flour.',
      'lines 2-7',
      'lines 1-13',
    ]);
  });
});

describe('a line with several names', () => {
  const LINES = `recipe Lemon pudding
  2 eggs plus 1 yolk
  100 g butter or margarine
  juice of 1 lemon
  salt and pepper
  do Beat the butter with the eggs and the yolk.
  do Add the lemon juice, the salt and the pepper.
`;
  const named = (before: string): string => LINES.replace(before, `${before}$0`);

  it.each([
    ['plus 1 yo', 'duck yolk', ['plus 1 duck yolk', 'and the duck yolk.']],
    ['2 eg', 'duck eggs', ['2 duck eggs plus', 'the duck eggs and']],
    ['butter or marg', 'lard', ['100 g butter or lard\n', 'Beat the butter']],
    ['100 g bu', 'lard', ['100 g lard or margarine\n', 'Beat the lard']],
    ['of 1 lem', 'lime', ['juice of 1 lime\n', 'Add the lime juice,']],
    ['salt and pep', 'white pepper', ['salt and white pepper\n', 'the white pepper.']],
  ])('after %j it is renamed alone', (before, to, expected) => {
    const after = renamedAt(named(before), to);
    for (const text of expected) expect(after).toContain(text);
    expect(after.length).toBe(LINES.length + expected.reduce((sum, text, i) => sum + grown(text, to, before, i), 0));
  });

  /** What one place grows by; a place that stays as it is grows by nothing. */
  function grown(text: string, to: string, before: string, i: number): number {
    const old =
      {
        'plus 1 yo': 'yolk',
        '2 eg': 'eggs',
        'butter or marg': 'margarine',
        '100 g bu': 'butter',
        'of 1 lem': 'lemon',
        'salt and pep': 'pepper',
      }[before] ?? '';
    return i > 0 && !text.includes(to) ? 0 : to.length - old.length;
  }

  it('is found from the steps', () => {
    expect(definitionAt(named('and the yo'))).toBe('2:yolk');
    expect(definitionAt(named('and the pep'))).toBe('5:pepper');
  });
});
