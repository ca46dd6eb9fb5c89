/**
 * Knows how the line of a picture is read: a file by its ending, then what is to be seen there.
 * Refuses to know whether the file is there.
 */
import type { LineReading } from './line-reading.ts';
import { PICTURE_ENDINGS } from './picture-endings.ts';
import type { Statement, TextNode } from './tree.ts';

/** Up to the first ending that nothing but the end or a comma follows. */
const FILE = new RegExp(`^(.*?\\.(?:${PICTURE_ENDINGS.join('|')}))(?:\\s*,\\s*(.*))?$`, 'is');
/** `https:`, `file:`, `data:`; one letter is a drive. */
const ELSEWHERE = /^(?:[a-z][a-z0-9+.-]+:|\/\/|\\\\)/i;

/** `picture FILE[, WORDS]` */
export function pictureLine(line: LineReading): Statement {
  const all = line.value('name the file of the picture: `picture slice.jpg, Cut when cold`');
  if (all === undefined) return { kind: 'picture' };
  const [, name, said] = FILE.exec(all.text) ?? [];
  if (ELSEWHERE.test(all.text)) {
    line.fault(
      'stray-text',
      all,
      'a picture is a file of the house, and nothing is fetched: save it beside the recipe',
    );
    return { kind: 'picture' };
  }
  if (name === undefined) {
    line.fault(
      'missing-value',
      all,
      `a picture ends in ${PICTURE_ENDINGS.map((e) => `.${e}`).join(', ')}: \`picture slice.jpg\``,
    );
    return { kind: 'picture' };
  }
  const file: TextNode = { start: all.start, end: all.start + name.length, text: name };
  if (said === undefined || said === '') return { kind: 'picture', file };
  return { kind: 'picture', file, words: { start: all.end - said.length, end: all.end, text: said } };
}
