/**
 * Sentences of methods as printed in books of the public domain and on cards of the government: most are read as a careful reader reads
 * them. Those that are not are listed in `misses.txt`, so that a new one is seen; `npm run sentences -- --list` says what is missed,
 * `npm run sentences -- --write-misses` writes the list anew. Readings were drafts; a column says which of them were mended, and why they
 * could be: the sentence plainly says otherwise. A second hand, not knowing how sentences are read here, judged every mended one; the last
 * column says what it did: upheld, restored the draft, or wrote anew.
 */
import { describe, expect, test } from 'vitest';
import { readTable, rowsOf } from '../lines/score.ts';
import { readSentences, scoreSentence, sharesOf } from './score.ts';

const TABLE = readTable('tests/outside/sentences/printed.tsv');
const SENTENCES = readSentences(TABLE);
const SCORES = SENTENCES.filter(({ hasReading }) => hasReading).map(scoreSentence);
const percent = ({ right, of }: { right: number; of: number }): number => (100 * right) / of;

describe('printed sentences', () => {
  test('there are nineteen hundred, each with where it comes from, and eight hundred with a reading', () => {
    expect(SENTENCES.length).toBeGreaterThanOrEqual(1900);
    expect(SCORES.length).toBeGreaterThanOrEqual(800);
    for (const row of rowsOf(TABLE)) expect(row.get('source'), row.get('sentence')).not.toBe('');
  });

  test('so many of what is said are read', () => {
    const shares = sharesOf(SCORES);
    expect(percent(shares.verbs)).toBeGreaterThanOrEqual(LEAST.verbs);
    expect(percent(shares.temperatures)).toBeGreaterThanOrEqual(LEAST.temperatures);
    expect(percent(shares.minutes)).toBeGreaterThanOrEqual(LEAST.minutes);
    expect(percent(shares.places)).toBeGreaterThanOrEqual(LEAST.places);
    expect(percent(shares.signs)).toBeGreaterThanOrEqual(LEAST.signs);
  });

  test('what is not read right is on the list, and nothing else', () => {
    const listed = readTable('tests/outside/sentences/misses.txt').trimEnd().split('\n');
    expect(SCORES.filter(({ isRight }) => !isRight).map(({ printed }) => printed.sentence)).toEqual(listed);
  });
});

const LEAST = { verbs: 94.5, temperatures: 86, minutes: 91, places: 90, signs: 99 };
