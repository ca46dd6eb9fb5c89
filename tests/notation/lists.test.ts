/** A list of names and commas alone is read as the parser of all lists reads it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Cursor } from '../../server/src/notation/cursor.ts';
import { nodes, pieces, piecesOf, readList, recoveredList } from '../../server/src/notation/grammar.ts';
import { scan } from '../../server/src/notation/scan.ts';

type Read = ReturnType<typeof readList>;

/** Where the names and commas stand, and the first token that is none. */
const told = ({ children, rest }: Read) => ({
  keys: Object.keys(children).sort(),
  names: nodes(children.name).map(({ NamePart }) => pieces(NamePart).map(({ token }) => token)),
  commas: pieces(children.Comma).map(({ token }) => token),
  rest,
});

test('the parser says the same of it', () => {
  const word = fc.constantFrom(
    'round',
    '24 cm',
    'tin',
    ',',
    ', ,',
    'x',
    '2 1/2',
    '°C',
    'crème',
    '(',
    ')',
    '=',
    'from',
    ';',
    '#',
  );
  fc.assert(
    fc.property(fc.array(word, { maxLength: 9 }), (words) => {
      const tokens = scan(words.join(' '), 'without blanks');
      const [quick, whole] = [new Cursor(tokens, 0), new Cursor(tokens, 0)];
      expect(told(readList(quick))).toEqual(told(recoveredList(piecesOf(whole), whole)));
      expect(quick.at).toBe(whole.at);
    }),
  );
});
