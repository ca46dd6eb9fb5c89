import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { unitPrinted } from '../../server/src/measure/unit.ts';
import { type Document, editDocument, parseDocument, printDocument } from '../../server/src/notation/document.ts';
import { validateGrammar } from '../../server/src/notation/grammar.ts';
import { layout } from '../../server/src/notation/layout.ts';
import { outline } from '../../server/src/notation/outline.ts';
import { scan } from '../../server/src/notation/scan.ts';
import { anyText, quernText } from '../support/arbitrary.ts';

const laidOut = (text: string): string => {
  const document = parseDocument(text);
  return layout(document)
    .map((line, i) => line + (document.eols[i] ?? ''))
    .join('');
};

/** What the lines say, without where and with what blanks: for comparing before and after the formatter. */
function meaning(document: Document): unknown {
  return document.lines.map(({ statement, comment, faults }) =>
    JSON.parse(
      JSON.stringify(
        { statement, comment: comment?.text.trimEnd(), faults: faults.map((f) => f.code) },
        (key, value: unknown) => {
          if (['start', 'end', 'unitSpan', 'asKeyword', 'optional'].includes(key)) return undefined;
          return typeof value === 'string'
            ? value
                .replace(/[\s\uFEFF]+/g, ' ')
                .replace(/ ,/g, ',')
                .trim()
            : value;
        },
      ),
    ),
  );
}

describe('any text', () => {
  test('the grammar passes the parser library’s own checks, which the bundles skip', () => {
    expect(() => validateGrammar()).not.toThrow();
  });

  test('parses without throwing and prints back character for character', () => {
    fc.assert(
      fc.property(anyText, (text) => printDocument(parseDocument(text)) === text),
      { numRuns: 400 },
    );
  });

  test('is covered by the tokens of its lines without a gap', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const line of parseDocument(text).lines)
          expect(
            scan(line.text, 'with blanks')
              .map((t) => line.text.slice(t.start, t.end))
              .join(''),
          ).toBe(line.text);
      }),
      { numRuns: 400 },
    );
  });

  test('has every fault and every node inside its line', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { text: line, faults } of parseDocument(text).lines) {
          for (const { start, end } of faults) {
            expect(start).toBeGreaterThanOrEqual(0);
            expect(end).toBeGreaterThanOrEqual(start);
            expect(end).toBeLessThanOrEqual(line.length);
          }
        }
      }),
      { numRuns: 400 },
    );
  });

  test('after any series of edits is as if read anew', () => {
    const edit = fc.record({
      a: fc.nat(30),
      b: fc.nat(30),
      c: fc.nat(40),
      d: fc.nat(40),
      insert: fc.oneof(quernText, fc.constantFrom('', '\n', '\r', '\r\n', 'x', '½')),
    });
    fc.assert(
      fc.property(quernText, fc.array(edit, { maxLength: 6 }), (text, edits) => {
        let document = parseDocument(text);
        let blocks = outline(document);
        for (const { a, b, c, d, insert } of edits) {
          const range = { start: { line: a, character: c }, end: { line: b, character: d } };
          document = editDocument(document, range, insert);
          blocks = outline(document, blocks);
        }
        const fresh = parseDocument(printDocument(document));
        expect(document.eols).toEqual(fresh.eols);
        expect(document.lines.map((l) => l.text)).toEqual(fresh.lines.map((l) => l.text));
        expect(document.lines).toEqual(fresh.lines);
        expect(JSON.stringify(blocks)).toBe(JSON.stringify(outline(fresh)));
      }),
      { numRuns: 400 },
    );
  });
});

describe('the formatter', () => {
  test('changes nothing the second time', () => {
    fc.assert(
      fc.property(anyText, (text) => laidOut(laidOut(text)) === laidOut(text)),
      { numRuns: 400 },
    );
  });

  test('never changes what a recipe means, and keeps every comment', () => {
    fc.assert(
      fc.property(quernText, (text) => {
        expect(meaning(parseDocument(laidOut(text)))).toEqual(meaning(parseDocument(text)));
      }),
      { numRuns: 400 },
    );
  });

  test('changes only blanks and the spelling of units', () => {
    const bare = (text: string) =>
      text
        .replace(/fl\. ?oz/gi, 'fl oz')
        .replaceAll('#', 'lb')
        .replace(/(\p{L}+)\.?/gu, (whole, word: string) => unitPrinted(word)?.symbol ?? whole)
        .toLowerCase()
        .replace(/[\s\uFEFF°]/g, '');
    fc.assert(
      fc.property(quernText, (text) => {
        expect(bare(laidOut(text))).toBe(bare(text));
      }),
      { numRuns: 400 },
    );
  });
});

describe('huge text', () => {
  test.each([
    ['a line of a million letters', 'x'.repeat(1_000_000)],
    ['a line of a million numbers', '1/2 '.repeat(250_000)],
    ['a hundred thousand empty lines', '\n'.repeat(100_000)],
    ['a step as long as a line may be', `do ${'add the butter '.repeat(660)}`],
    ['brackets that never close', '([{'.repeat(3000)],
    ['a list that is broken at every word', `tags ${'(a'.repeat(4900)}`],
    ['a file that is broken at every word', `part a from ${'=a'.repeat(4900)}`],
    ['a pan that is broken at every size', `pan 1 ${'a x 1 '.repeat(1600)}`],
    ['numbers between commas', '1,'.repeat(4900)],
  ])('%s is kept whole', (_, text) => {
    expect(printDocument(parseDocument(text))).toBe(text);
    expect(laidOut(laidOut(text))).toBe(laidOut(text));
  });
});
