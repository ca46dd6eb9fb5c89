/** What an edit of amounts must leave as it was: lines, comments, blank lines, line ends and every word of the writer. */

import { unitSpelled } from '../../server/src/measure/unit.ts';
import { parseDocument } from '../../server/src/notation/document.ts';
import { wordsOf } from '../../server/src/recipe/words.ts';

const NUMBERS = /\d|[½¼¾⅓⅔⅛⅜⅝⅞]/;
const COUNTS = new Set([
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
]);

const SIGNS = new Set(['', '=', '+']);

/** Per line: its comment, its line end, and its words without numbers, units, `=` and the `+` of a sum. */
export function keptWords(text: string): string[] {
  const { lines, eols } = parseDocument(text);
  return lines.map((line, i) => {
    const { comment } = line;
    const code = comment === undefined ? line.text : line.text.slice(0, comment.start);
    const words = code
      .split(/[\s,.;:()\-–]+/)
      .filter((w) => !SIGNS.has(w) && !NUMBERS.test(w) && !COUNTS.has(w) && unitSpelled(w) === undefined && w !== 'x')
      .map((w) => wordsOf(w).join(' '));
    return JSON.stringify([words, comment?.text ?? '', eols[i]]);
  });
}
