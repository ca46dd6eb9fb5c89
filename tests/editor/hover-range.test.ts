/** A hover is about what is under the caret: its range holds it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hover } from '../../server/src/editor/hover.ts';
import type { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { anyText } from '../support/arbitrary.ts';
import { EXAMPLES, open, openInKitchen } from '../support/harness.ts';

/** The places whose hover has a range elsewhere. */
function beside(snapshot: Snapshot): string[] {
  return snapshot.document.lines.flatMap(({ text }, line) =>
    Array.from({ length: text.length + 1 }, (_, character) => character).flatMap((character) => {
      const at = hover(snapshot, { line, character })?.at;
      const holds = at === undefined || (at.line === line && at.start <= character && character <= at.end);
      return holds ? [] : [`${line}:${character} of \`${text}\`: ${JSON.stringify(at)}`];
    }),
  );
}

test.each(EXAMPLES)('in %s', (path, text) => {
  expect(beside(openInKitchen(text, path))).toEqual([]);
});

test('in any text', () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(beside(open(text))).toEqual([]);
    }),
    { numRuns: 300 },
  );
});
