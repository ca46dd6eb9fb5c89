import { describe, expect, test } from 'vitest';
import { BIASES, biasOf } from '../../server/src/measure/bias.ts';
import { COUNT_WORDS, countedAlike, countWord, isPackage } from '../../server/src/measure/count-words.ts';
import { kitchenFigure } from '../../server/src/measure/kitchen.ts';
import { numberOfWord, numberWord, wordOfNumber } from '../../server/src/measure/number-words.ts';
import { MEASURES_CHOICES } from '../../server/src/measure/systems.ts';
import { unitPrinted } from '../../server/src/measure/unit.ts';
import type { UnitSymbol } from '../../server/src/measure/unit-symbol.ts';

describe('count words', () => {
  test.each([
    ['leaves', 'leaf'],
    ['Pkg', 'package'],
    ['boxes', 'box'],
    ['pouches', 'pouch'],
    ['glasses', 'glass'],
    ['handsful', 'handful'],
    ['cubes', 'cube'],
  ])('%s counts by the %s', (word, counted) => {
    expect(countWord(word)).toBe(counted);
  });

  test('no count word is a unit of the list too', () => {
    expect(COUNT_WORDS.filter((word) => unitPrinted(word) !== undefined)).toEqual([]);
  });

  test('what is alike is so of packages among packages, and of pieces among pieces', () => {
    for (const word of COUNT_WORDS)
      for (const other of countedAlike(word))
        expect(other !== undefined && isPackage(other), `${word} ${other}`).toBe(isPackage(word));
  });
});

describe('number words', () => {
  test.each([
    ['seven', 7, 7],
    ['Nineteen', 19, 19],
    ['ninety', 90, 90],
    ['dozen', 12, 12],
    ['few', 3, 5],
    ['quarters', 0.25, 0.25],
    ['a', 1, 1],
  ])('%s is %d to %d', (word, low, high) => {
    expect(numberWord(word)).toMatchObject({ low, high });
  });

  test('only a word that is a number by itself is one without a noun', () => {
    expect(['a', 'half', 'dozen', 'few', 'eleven', 'toString'].map(numberOfWord)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
      11,
      undefined,
    ]);
    expect([1, 12, 13].map(wordOfNumber)).toEqual(['one', 'twelve', undefined]);
  });
});

describe('how full a measure is', () => {
  test('the likely share lies between the least and the most, and no word is in two rows', () => {
    const words = BIASES.flatMap((bias) => bias.words);
    expect(new Set(words).size).toBe(words.length);
    for (const { low, likely, high } of BIASES) expect(low <= likely && likely <= high).toBe(true);
  });

  test('a heaped spoon holds more than a rounded one, a scant one less than a level one', () => {
    const share = (word: string) => biasOf(word)?.likely ?? Number.NaN;
    expect(share('Heaped')).toBeGreaterThan(share('rounded'));
    expect(share('rounded')).toBeGreaterThan(share('generous'));
    expect(share('level')).toBe(1);
    expect(share('scant')).toBeLessThan(1);
    expect(biasOf('firmly packed')?.form).toBe('packed');
  });
});

test('the old measures are read, and never written', () => {
  const old: readonly UnitSymbol[] = ['saltspoon', 'dessertspoon', 'wineglass', 'gill', 'teacup', 'peck', 'bushel'];
  for (const unit of old)
    for (const measures of MEASURES_CHOICES)
      for (const value of [0.01, 1, 2.5, 40]) expect(old).not.toContain(kitchenFigure(value, unit, measures).unit);
});
