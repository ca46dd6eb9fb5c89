import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../server/src/notation/document.ts';
import { label } from '../../server/src/notation/label.ts';
import { scan } from '../../server/src/notation/scan.ts';
import { readLine } from '../../server/src/notation/statements.ts';
import { Kind } from '../../server/src/notation/tokens.ts';

const NAMES = new Map<number, string>(Object.entries(Kind).map(([name, kind]) => [kind, name]));

/** Each token as it stands, with its kind. */
const kindsOf = (line: string, labelled: boolean): string => {
  const tokens = scan(line, 'without blanks');
  if (labelled) label(line, tokens);
  return tokens.map((t) => `${line.slice(t.start, t.end)}|${NAMES.get(t.kind)}`).join('  ');
};

describe('tokens', () => {
  test.each([
    ['2026-09-14', '2026-09-14|DateMark'],
    ['2026-09-145', '2026|Numeral  -|Dash  09|Numeral  -|Dash  145|Numeral'],
    ['2026-09-14-', '2026|Numeral  -|Dash  09|Numeral  -|Dash  14|Numeral  -|Dash'],
    ['1,5 kg', '1,5|DecimalComma  kg|Word'],
    ['1,000,000', '1,000,000|DecimalComma'],
    ['1,5, 2', '1|Numeral  ,|Comma  5|Numeral  ,|Comma  2|Numeral'],
    ['1/2 1⁄2', '1/2|Fraction  1⁄2|Fraction'],
    ['1/2/3', '1|Numeral  /|Other  2/3|Fraction'],
    ['1.5.', '1.5|Numeral  .|Other'],
    ['1½ ⅞', '1|Numeral  ½|Vulgar  ⅞|Vulgar'],
    ['to taste', 'to taste|Free'],
    ['As \u00a0needed', 'As \u00a0needed|Free'],
    ['to tastes', 'to|Word  tastes|Word'],
    ['fl. oz', 'fl. oz|FluidOunce'],
    ['Fluid ounces', 'Fluid ounces|FluidOunce'],
    ['fluid ouncesx', 'fluid|Word  ouncesx|Word'],
    ['flour', 'flour|Word'],
    ["cooks' self-raising crème", "cooks'|Word  self-raising|Word  crème|Word"],
    ['self- raising', 'self|Word  -|Dash  raising|Word'],
    ['\\butter \\# \\1', '\\butter|Escaped  \\#|Escaped  \\|Escaped  1|Numeral'],
    ['a#b #c', 'a|Word  #|Other  b|Word  #c|Comment'],
    ['180°C 4 ºC', '180|Numeral  °|Degree  C|Word  4|Numeral  º|Degree  C|Word'],
    ['🍰 \ud83c', '🍰|Other  \ud83c|Other'],
  ])('%s', (line, expected) => {
    expect(kindsOf(line, false)).toBe(expected);
  });
});

describe('labels', () => {
  test.each([
    ['2 large eggs', '2|Numeral  large|SizeWord  eggs|Word'],
    ['1 extra large egg', '1|Numeral  extra|SizeWord  large|SizeWord  egg|Word'],
    ['3 in', '3|Numeral  in|UnitWord'],
    ['do Cut 3 in the middle', 'do|Opening  Cut|Word  3|Numeral  in|Word  the|Word  middle|Word'],
    ['1 G x 3-inch', '1|Numeral  G|UnitWord  x|Times  3|Numeral  -|Dash  inch|UnitWord'],
    ['gas mark 4', 'gas|Word  mark|Word  4|Numeral'],
    [
      'took 1 to 2 h to bake to',
      'took|Opening  1|Numeral  to|To  2|Numeral  h|UnitWord  to|Joiner  bake|Word  to|Word',
    ],
    ['water 12 %', 'water|Opening  12|Numeral  %|UnitWord'],
    ['water', 'water|Word'],
    [
      'do at -18 C, 4 -5',
      'do|Opening  at|Word  -|Minus  18|Numeral  C|UnitWord  ,|Comma  4|Numeral  -|Dash  5|Numeral',
    ],
  ])('%s', (line, expected) => {
    expect(kindsOf(line, true)).toBe(expected);
  });
});

test('a number is worth what it is worth anywhere', () => {
  const digits = (minLength: number) => fc.string({ unit: fc.constantFrom(...'0123456789'), minLength, maxLength: 9 });
  fc.assert(
    fc.property(digits(1), digits(0), (whole, part) => {
      const written = part === '' ? whole : `${whole}.${part}`;
      const { statement } = readLine(`${written} g flour`);
      expect(statement).toMatchObject({ amount: { low: { value: Number(written) } } });
    }),
  );
});

test('more words than are kept are all themselves', () => {
  const letters = 'abcdefghijklmnopqrst';
  const word = (i: number) =>
    [i % 20, Math.floor(i / 20) % 20, Math.floor(i / 400) % 20, i % 7].map((k) => letters[k]).join('');
  for (let from = 0; from < 8000; from += 500) {
    const words = Array.from({ length: 500 }, (_, i) => word(from + i));
    const { statement } = readLine(`do ${words.join(' ')}`);
    const read =
      statement.kind === 'step' ? statement.sentence.items.map((i) => (i.kind === 'word' ? i.word : i.kind)) : [];
    expect(read).toEqual(words);
  }
});

test('a text is cut at every kind of line end', () => {
  const { lines, eols } = parseDocument('a\r\nb\rc\n\nd\n\r\re');
  expect(lines.map((l) => l.text)).toEqual(['a', 'b', 'c', '', 'd', '', '', 'e']);
  expect(eols).toEqual(['\r\n', '\r', '\n', '\n', '\n', '\r', '\r', '']);
});
