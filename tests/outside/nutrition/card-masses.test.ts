/**
 * What quantity recipes of the US government weigh, worked out from their measures alone, against the weights that the same cards print: the
 * recipes of ../recipes/published whose lines give both (US Armed Forces Recipe Service, US Navy, USDA school and child-care recipes).
 */
import { readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { likelyGrams } from '../../../server/src/food/weigh.ts';
import { nodeFiles } from '../../../server/src/host/files.ts';
import { open } from '../../support/harness.ts';

/** Cards round to whole ounces, weigh a cup of sifted flour at 113 g, and their measures at a quarter cup. */
const TOLERANCE = 0.1;
/** Cards that do not come out, and why. */
const MISSES: Readonly<Record<string, string>> = {
  'afrs-chicken-noodle-soup':
    'a cup of frozen diced carrots or onions is printed as 130 g; the book weighs them sliced and loose',
  'cacfp-chicken-nuggets': 'a cup of dry crumbs is printed as 151 g; USDA SR26 has 108 g',
};

const PAIRED = /^(\s*)(.*?\S)\s*=\s*[\d.]+ g\b(.*)$/;

interface Card {
  readonly name: string;
  readonly printedG: number;
  readonly measuredG: number;
}

const CARDS: readonly Card[] = nodeFiles()
  .recipesBelow(resolve('tests/outside/recipes/published'))
  .flatMap((path) => {
    const text = readFileSync(path, 'utf8');
    const paired = text.split('\n').filter((line) => PAIRED.test(line));
    if (paired.length < 2) return [];
    const gramsOf = (lines: readonly string[]): number =>
      open(`recipe Card\n${lines.join('\n')}\n`)
        .recipe.parts.flatMap((p) => p.head.ingredients)
        .reduce((sum, { weighed, name }) => {
          expect(weighed.known, `${basename(path)}: ${name}`).toBe(true);
          return sum + (weighed.known ? likelyGrams(weighed) : Number.NaN);
        }, 0);
    return [
      {
        name: basename(path, '.quern'),
        printedG: gramsOf(paired),
        measuredG: gramsOf(paired.map((line) => line.replace(PAIRED, '$1$2$3'))),
      },
    ];
  });

describe('the mass of a card', () => {
  test('there are at least ten', () => expect(CARDS.length).toBeGreaterThanOrEqual(10));

  test.each(CARDS)('$name', ({ name, printedG, measuredG }) => {
    const off = measuredG / printedG - 1;
    const within = Math.abs(off) <= TOLERANCE;
    expect(within, `off by ${(off * 100).toFixed(1)} %`).toBe(MISSES[name] === undefined);
  });
});
