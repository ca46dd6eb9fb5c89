/**
 * Recipes that say no kind, a block each: in `slips.quern` a heat or a time that nobody means stands above its mark, and is found; those in
 * `sound.quern` are cooked as books have it, however slow, hot, tiny or twice over, and none of their heats and times is told of.
 */
import { readFileSync } from 'node:fs';
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
