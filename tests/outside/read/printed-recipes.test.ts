/**
 * Printed recipes of the public domain, read into the notation: at least nine in ten of their ingredient lines come out as a careful reader
 * would write them. The misses are listed here, so that a new one is seen.
 */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readText } from '../../../server/src/edits/read-text/read-text.ts';
import { parseDocument } from '../../../server/src/notation/document.ts';
import type { AmountNode, IngredientNode } from '../../../server/src/notation/tree.ts';
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

/** What a line says, apart from its note and the writer's spelling of units. */
function factsOf(node: IngredientNode): string {
  const amount = (a: AmountNode | undefined) => {
    if (a === undefined || a.kind === 'free') return a?.kind ?? '';
    const { low, high, unit, count, size, about, each } = a.quantity;
    return [low.toFixed(3), high.toFixed(3), unit, count, size, about ? 'about' : '', each?.low, each?.unit].join(' ');
  };
  const text = (t: { readonly text: string } | undefined) => t?.text.replace(/\s+/g, ' ').trim().toLowerCase() ?? '';
  return [
    node.optional === undefined ? '' : 'optional',
    amount(node.amount),
    amount(node.beside?.[0]?.amount),
    text(node.name),
    text(node.preparation),
  ].join(' | ');
}

const ingredientsOf = (text: string): string[] =>
  parseDocument(text).lines.flatMap(({ statement }) => (statement.kind === 'ingredient' ? [factsOf(statement)] : []));

/** Wanted lines that are not in what was read, as they are wanted. */
function missesOf({ text, wanted }: Printed): string[] {
  const read = ingredientsOf(readText(text, WORLD).text);
  const misses: string[] = [];
  for (const lines of wanted) {
    const facts = lines.flatMap(ingredientsOf);
    const at = facts.map((f) => read.indexOf(f));
    if (facts.length === lines.length && at.every((i) => i >= 0))
      for (const f of facts) read.splice(read.indexOf(f), 1);
    else misses.push(lines.join(' + '));
  }
  return misses;
}

describe('printed recipes', () => {
  test('there are at least forty, and what is wanted of them reads back', () => {
    expect(PRINTED.length).toBeGreaterThanOrEqual(40);
    for (const { wanted } of PRINTED)
      for (const line of wanted.flat()) expect(ingredientsOf(line), line).toHaveLength(1);
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
  // The taste stands before the food.
  'beeton-vanilla-cream: to taste essence of vanilla',
  // In a list run on in one line, a food without an amount is taken for what is done to the one before.
  'beeton-macaroons: 3 egg whites',
  'beeton-macaroons: as needed wafer paper',
  // A piece is counted, and its size is part of the name.
  'beeton-apple-sauce: as needed butter, the size of a walnut',
];
