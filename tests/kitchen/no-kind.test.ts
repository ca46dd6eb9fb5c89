/**
 * Recipes that say no kind: of `no-kind/works.txt` nothing is warned of, of each of `no-kind/slips.txt` what stands before its title is. What the
 * orders of `no-kind/wordings.txt` take leaves nothing unused.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const recipesIn = (file: string): (readonly [name: string, text: string])[] =>
  readFileSync(`tests/kitchen/no-kind/${file}`, 'utf8')
    .split('\n\n')
    .slice(1)
    .map((text) => [/^recipe (.*)/m.exec(text)?.[1] ?? '', text]);

const warned = (text: string): string[] =>
  open(text).findings.open.flatMap(({ severity, code, said }) =>
    severity === 'warning' || severity === 'error' ? [`${code}: ${said.message}`] : [],
  );

test.each(recipesIn('works.txt'))('%s works', (_name, text) => {
  expect(warned(text)).toEqual([]);
});

test.each(recipesIn('slips.txt'))('%s has a slip', (_name, text) => {
  const code = /^# (\S+)/.exec(text)?.[1] ?? '';
  const found = warned(text);
  expect(found.map((each) => each.split(':')[0])).toContain(code);
});

test.each(recipesIn('wordings.txt'))('%s takes all that is listed', (_name, text) => {
  expect(warned(text).filter((each) => each.startsWith('unused-ingredient'))).toEqual([]);
});
