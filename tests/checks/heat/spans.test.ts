/**
 * Recipes that say no kind, a block each: in `slips.quern` a heat or a time that nobody means stands above its mark, and is found; those in
 * `sound.quern` are cooked as books have it, however slow, hot, tiny or twice over, and none of their heats and times is told of.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { open } from '../../support/harness.ts';

const CODES: ReadonlySet<string> = new Set([
  'heat-out-of-range',
  'time-out-of-range',
  'implausible-temperature',
  'bake-time-doubtful',
]);

/** Each with its name. */
const blocks = (file: string): (readonly [name: string, text: string])[] =>
  readFileSync(`tests/checks/heat/${file}`, 'utf8')
    .replace(/^#.*\n\n/, '')
    .trim()
    .split(/\n\n+/)
    .map((text, i) => [`${i + 1}. ${text.slice('recipe '.length, text.indexOf('\n'))}`, `${text}\n`]);

interface Told {
  readonly code: string;
  readonly words: string;
}

/** What is told of heats and times, louder than a remark, with the words that it stands on. */
const told = (text: string): Told[] => {
  const snapshot = open(text);
  return snapshot.findings.open.flatMap(({ code, severity, at }) =>
    CODES.has(code) && (severity === 'error' || severity === 'warning')
      ? [{ code, words: text.split('\n')[at.line]?.slice(at.start, at.end) ?? '' }]
      : [],
  );
};

/** `# "at 120 C" heat-out-of-range` under the line. */
const marked = (text: string): Told[] =>
  [...text.matchAll(/^# "(.+)" ([\w-]+)$/gm)].map(([, words = '', code = '']) => ({ code, words }));

describe('slips', () => {
  test.each(blocks('slips.quern'))('%s', (_name, text) => {
    const marks = marked(text);
    expect(marks).not.toEqual([]);
    expect(told(text)).toEqual(marks);
  });
});

describe('sound', () => {
  test.each(blocks('sound.quern'))('%s', (_name, text) => {
    expect(told(text)).toEqual([]);
  });
});

/** Its kinds are struck out, so that all is taken for what it is called, or for what lies there. */
const withoutKinds = (text: string): string => text.replace(/^(\s*(?:recipe|part)\b.*?) as [a-zA-Zéè -]+$/gm, '$1');

test.each(['tests/outside/recipes', 'tests/kitchen/works'])('all of %s without its kinds', (folder) => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.quern'));
  expect(files.length).toBeGreaterThan(50);
  const loud = files.flatMap((file) =>
    told(withoutKinds(readFileSync(join(folder, file), 'utf8'))).map(({ code, words }) => `${file}: ${code} ${words}`),
  );
  expect(loud).toEqual([]);
});
