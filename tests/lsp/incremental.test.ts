import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';

// Outside oracle: vscode-languageserver-textdocument, the text model of other servers.
const text = fc
  .array(
    fc.constantFrom(
      'recipe A',
      '  200 g  plain flour',
      '½ tsp',
      '°C',
      'é',
      '🍞',
      '\ud83c',
      '\n',
      '\r\n',
      '\r',
      '\t',
      '# why',
      'do Stir the flour.',
      ' ',
      'part b',
      '\0',
    ),
    { maxLength: 30 },
  )
  .map((parts) => parts.join(''));
/** Places as shares of the text: the other model loses count where a place lies outside. */
const share = fc.double({ min: 0, max: 1, noNaN: true });
const change = fc.record({ a: share, b: share, text });

describe('a snapshot after edits', () => {
  it('has the text that another text model has', () => {
    const { house } = makeHouse(DEFAULTS);
    fc.assert(
      fc.property(text, fc.array(change, { minLength: 1, maxLength: 8 }), (start, changes) => {
        const theirs = TextDocument.create('file:///a.quern', 'quern', 1, start);
        let ours = Snapshot.open('file:///a.quern', 1, start, house);
        changes.forEach(({ a, b, text: put }, i) => {
          const { length } = theirs.getText();
          const [from, to] = [Math.floor(Math.min(a, b) * length), Math.floor(Math.max(a, b) * length)];
          const range = { start: theirs.positionAt(from), end: theirs.positionAt(to) };
          TextDocument.update(theirs, [{ range, text: put }], i + 2);
          ours = ours.edited(i + 2, [{ range, text: put }]);
          expect(ours.text).toBe(theirs.getText());
        });
      }),
      { numRuns: 300 },
    );
  });
});
