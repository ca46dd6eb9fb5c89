/**
 * Whole recipes in other words than the checks' own examples, a file each, with marks (`tests/support/marks.ts`) under the lines for all
 * that is said of it, and its source in the first line. Those in `works/` are left in peace, but for what a remark says; each of those in
 * `slips/CODE/` has that slip, and nothing louder.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import type { Severity } from '../../server/src/checks/severity.ts';
import { checkFixture } from '../support/harness.ts';
import { readMarks } from '../support/marks.ts';

const LEVELS: readonly Severity[] = ['hint', 'info', 'warning', 'error'];
const USUAL = new Map(CHECKS.map((check) => [check.code, check.severity]));

interface Marked {
  readonly code: string;
  readonly level: number;
}

const below = (folder: string): (readonly [name: string, text: string])[] =>
  readdirSync(join('tests/kitchen', folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.quern'))
    .sort()
    .map((file) => [file, readFileSync(join('tests/kitchen', folder, file), 'utf8')]);

/** What a recipe is marked to have, the loudest first. */
const marked = (text: string): Marked[] =>
  readMarks(text)
    .marks.map(({ code, severity }) => ({ code, level: LEVELS.indexOf(severity ?? USUAL.get(code) ?? 'error') }))
    .sort((a, b) => b.level - a.level);

const loudest = (all: readonly Marked[]): string[] =>
  all.filter(({ level }) => level === all[0]?.level).map(({ code }) => code);

describe('recipes that work', () => {
  test.each(below('works'))('%s', (_name, text) => {
    expect(checkFixture(text)).toEqual([]);
    expect(marked(text).filter(({ level }) => level > LEVELS.indexOf('info'))).toEqual([]);
  });
});

describe('recipes with a slip', () => {
  test.each(below('slips'))('%s', (name, text) => {
    expect(checkFixture(text)).toEqual([]);
    expect(loudest(marked(text))).toContain(name.split('/')[0]);
  });
});

test('each says where it is from before anything else', () => {
  const silent = [...below('works'), ...below('slips')].filter(([, text]) => !/^# .*\b(?:Invented|From)\b/.test(text));
  expect(silent.map(([name]) => name)).toEqual([]);
});
