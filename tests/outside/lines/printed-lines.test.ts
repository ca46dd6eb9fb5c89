/**
 * Lines of ingredient lists as printed in books of the public domain and on cards of the government, typed as they stand: most are read as a
 * careful reader reads them. The others are listed by name in `misses.txt`, so that a new one is seen; `npm run lines -- --list` says more,
 * `npm run lines -- --write-misses` writes the list anew.
 */
import { describe, expect, test } from 'vitest';
import { builtInBook } from '../../../server/src/food/book.ts';
import { countsOf, readPrintedLines, readTable, rowsOf, scoreLine, tableHere } from './score.ts';

const LINES = readPrintedLines(readTable(tableHere('printed.tsv')));
const SCORES = LINES.map(scoreLine);

describe('printed lines', () => {
  test('there are nine hundred, each with a food, grams in order, and where it comes from', () => {
    expect(LINES.length).toBeGreaterThanOrEqual(900);
    for (const { line, foods, grams, source } of LINES) {
      expect(foods.length, line).toBeGreaterThan(0);
      expect(source, line).not.toBe('');
      if (grams !== undefined) expect(grams.high, line).toBeGreaterThanOrEqual(grams.low);
    }
  });

  test('what the readings call otherwise is in the book by the other name', () => {
    const book = builtInBook();
    for (const row of rowsOf(readTable(tableHere('called.tsv'))))
      for (const name of (row.get('book') ?? '').split('; ')) expect(book.find(name).kind, name).not.toBe('unknown');
  });

  test('so many are right, and so few are taken for something else without a word', () => {
    const of = (verdict: string): number => SCORES.filter((s) => s.verdict === verdict).length;
    expect(of('right'), countsOf(SCORES)).toBeGreaterThanOrEqual(RIGHT);
    expect(of('silent'), countsOf(SCORES)).toBeLessThanOrEqual(SILENT);
  });

  test('no line is missed but those of the list', () => {
    const known = new Set(readTable(tableHere('misses.txt')).split('\n'));
    const missed = SCORES.filter((s) => s.verdict !== 'right').filter((s) => !known.has(s.printed.line));
    expect(missed.map((s) => `${s.printed.line}: ${s.verdict}, ${s.cause}: ${s.made}`)).toEqual([]);
  });
});

const RIGHT = 890;
const SILENT = 0;
