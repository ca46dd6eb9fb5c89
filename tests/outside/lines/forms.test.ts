/**
 * Every form in which a line of an ingredient list is printed or typed, with grams from published weights: read right, and used by every
 * command. Those that are not yet are listed in `forms-open.txt`.
 */
import { describe, expect, test } from 'vitest';
import { countsOf, readPrintedLines, readTable, scoreLine, tableHere } from './score.ts';
import { usesGoneWrong } from './uses.ts';

const LINES = readPrintedLines(readTable(tableHere('forms.tsv')));
const OPEN = new Set(readTable(tableHere('forms-open.txt')).split('\n'));

describe('forms of a line', () => {
  test('there are at least 260, each with its source', () => {
    expect(LINES.length).toBeGreaterThanOrEqual(260);
    for (const { line, source } of LINES) expect(source, line).not.toBe('');
  });

  test('so many are read right', () => {
    const scores = LINES.map(scoreLine);
    expect(scores.filter((s) => s.verdict === 'right').length, countsOf(scores)).toBeGreaterThanOrEqual(RIGHT);
  });

  test.each([...new Set(LINES.map((l) => l.form))])('%s', (form) => {
    const wrong = LINES.filter((l) => l.form === form && !OPEN.has(l.line)).flatMap((printed) => {
      const { verdict, cause, made } = scoreLine(printed);
      const faults = verdict === 'right' ? [] : [`${verdict}, ${cause}: ${made}`];
      return [...faults, ...(printed.note === 'refuse' ? [] : usesGoneWrong(printed))].map(
        (w) => `${printed.line}: ${w}`,
      );
    });
    expect(wrong).toEqual([]);
  });
});

const RIGHT = 490;
