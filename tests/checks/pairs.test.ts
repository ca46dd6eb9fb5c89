/**
 * Dangers and their look-alikes, invented, by the code that must find the first and leave the second in peace: `pairs/CODE/danger` and
 * `pairs/CODE/safe`. Which is which is the source that the check names.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const PAIRS = 'tests/checks/pairs';
const recipes = (code: string, kind: 'danger' | 'safe'): readonly [name: string, text: string][] =>
  readdirSync(join(PAIRS, code, kind)).map((file) => [file, readFileSync(join(PAIRS, code, kind, file), 'utf8')]);

/** What is said of safety, and is no question. */
const dangersIn = (text: string): readonly string[] =>
  open(text).findings.open.flatMap(({ check, code, severity }) =>
    check.family === 'safety' && (severity === 'error' || severity === 'warning') ? [code] : [],
  );

describe.each(readdirSync(PAIRS))('%s', (code) => {
  test.each(recipes(code, 'danger'))('is found in %s', (_name, text) => {
    expect(dangersIn(text)).toContain(code);
  });

  test.each(recipes(code, 'safe'))('is not found in %s', (_name, text) => {
    expect(dangersIn(text)).toEqual([]);
  });
});
