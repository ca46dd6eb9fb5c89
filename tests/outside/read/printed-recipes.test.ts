/**
 * Printed recipes of the public domain, read into the notation: at least nine in ten of their ingredient lines come out as a careful reader
 * would write them. The misses are listed here, so that a new one is seen.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readText } from '../../../server/src/edits/read-text/read-text.ts';
import type { Ingredient } from '../../../server/src/recipe/model.ts';
import { open } from '../../support/harness.ts';

interface Printed {
  readonly name: string;
  readonly text: string;
  /** Lines of the notation, by printed line. */
  readonly wanted: readonly (readonly string[])[];
}

const PRINTED: readonly Printed[] = readFileSync(resolve('tests/outside/read/recipes.txt'), 'utf8')
  .split(/^=== /m)
  .slice(1)
  .map((block) => {
    const [head = '', ...lines] = block.split('\n');
    const [text = '', wanted = ''] = lines.join('\n').split(/^---$/m);
    return {
      name: head.split(' | ')[0] ?? '',
      text: text.trim(),
      wanted: wanted
        .trim()
        .split('\n')
        .map((l) => l.split(' + ')),
    };
  });

const WORLD = open('').recipe.world;

/** What the lines of a list bring: each food, by its name where the book has none, its grams to the third figure, and whether it is free or optional. */
function ingredientsOf(text: string): string[] {
  const snapshot = open(`recipe Trial\n${text.replace(/^recipe .*\n/, '')}\n`, { measures: 'us' });
  return snapshot.recipe.parts.flatMap(({ head }) => head.ingredients.map(factsOf));
}

function factsOf({ match, name, weighed, free, optional }: Ingredient): string {
  const food = match.kind === 'food' ? match.food.id : name.toLowerCase();
  const grams = weighed.known ? [weighed.grams.low, weighed.grams.high].map((g) => g.toPrecision(3)).join('-') : '?';
  return [food, free ? 'free' : grams, optional ? 'optional' : ''].join(' ').trim();
}

/** Wanted lines that are not in what was read, as they are wanted. */
function missesOf({ text, wanted }: Printed): string[] {
  const read = ingredientsOf(readText(text, WORLD).text);
  const misses: string[] = [];
  for (const lines of wanted) {
    const facts = lines.flatMap(ingredientsOf);
    if (facts.length === lines.length && facts.every((f) => read.includes(f)))
      for (const f of facts) read.splice(read.indexOf(f), 1);
    else misses.push(lines.join(' + '));
  }
  return misses;
}

describe('printed recipes', () => {
  test('there are at least forty, and what is wanted of them reads back', () => {
    expect(PRINTED.length).toBeGreaterThanOrEqual(40);
    for (const { wanted } of PRINTED)
      for (const line of wanted.flat()) expect(ingredientsOf(line), line).not.toEqual([]);
  });

  test('nine lines in ten come out right; these do not', () => {
    const misses = PRINTED.flatMap((p) => missesOf(p).map((m) => `${p.name}: ${m}`));
    const lines = PRINTED.reduce((sum, p) => sum + p.wanted.length, 0);
    expect(misses).toEqual(KNOWN_MISSES);
    expect(misses.length / lines).toBeLessThan(0.1);
  });

  test.each(PRINTED)('$name is a recipe with a name, steps, and no line that the notation cannot read', ({ text }) => {
    const read = readText(text, WORLD);
    const { recipe, findings, document } = open(read.text);
    expect(recipe.name).not.toBe('');
    expect(recipe.parts.flatMap((p) => p.steps).length).toBeGreaterThan(0);
    expect(findings.open.filter((f) => f.code === 'syntax').map((f) => document.lines[f.at.line]?.text)).toEqual([]);
  });
});

const KNOWN_MISSES: readonly string[] = [
  // A number in words behind a name.
  'mayonnaise: 2 egg yolks',
  // The taste stands before the food.
  'beeton-vanilla-cream: to taste essence of vanilla',
  // In a list run on in one line, a food without an amount is taken for what is done to the one before.
  'beeton-macaroons: as needed wafer paper',
  // A piece is counted, and its size is part of the name.
  'beeton-apple-sauce: as needed butter, the size of a walnut',
  // Words alone that name no food of the book could be a heading.
  // What it is dissolved in stands in its name.
  // Several names before the amount that each of them has.
  'brown-stock: 1/2 cup carrot, cut in dice + 1/2 cup turnip, cut in dice + 1/2 cup onion, cut in dice + 1/2 cup celery, cut in dice',
];
