import { onceByObject } from '../../measure/once.ts';
import { keptOn } from '../../notation/kept.ts';
import type { PartSource } from '../../notation/outline.ts';
import type { Line } from '../../notation/tree.ts';
import { WRONG_ENCODING } from '../always-told.ts';
import { defineCheck, type Found, type OtherEncoding, type Scene } from '../check.ts';
import { encodingWords } from '../encoding-words.ts';

/** What the file is written in; undefined where only a character of it was lost. */
type Values = OtherEncoding | 'lost';

const LOST = '\ufffd';

export default defineCheck<Values>({
  code: WRONG_ENCODING,
  title: 'The file is not UTF-8, or characters of it were lost',
  family: 'reading',
  severity: 'error',
  scope: 'recipe',
  source: { kind: 'common practice, no source' },
  explain: `Recipes are kept as UTF-8, as nearly all text is. The bytes of a file in another encoding, such as Windows-1252, stand for other characters or for none: read as UTF-8, \`crème\` becomes \`cr${LOST}me\`, and what is written back has lost the letter for good. Such a file is not read, so nothing else is found in it, and nothing is written into it. A file in UTF-16 that begins with the mark of it is read and checked, and not written into either.

Save the file as UTF-8; a byte order mark may stay. Where a line has ${LOST} itself, a character was lost when the text was read or saved before: reopen the file in its own encoding, or write the character anew. Silent on every other text.`,
  find: (scene) => (scene.encoding === undefined ? ofLost(scene) : ofFile(scene.encoding)),
  say: (values) => ({
    message:
      values === 'lost'
        ? `A character was lost here (${LOST}): the text was read or saved in an encoding that it is not written in. Open it in its own encoding and save it as UTF-8, or write the character anew.`
        : `The file ${encodingWords(values)}.`,
  }),
  examples: {
    good: [
      'recipe Crème slab\n  200 g     rolled oats\n  80 g      crème fraîche\n  do Stir the crème fraîche into the oats.\n',
      '# Words in other scripts are as good: 燕麦, овёс.\nrecipe Slab\n  200 g     rolled oats\n  do Toast the oats.\n',
    ],
    bad: [
      `recipe Slab\n  200 g     rolled oats\n  do Toast the oats on the cr${LOST}pe pan.\n# "${LOST}" wrong-encoding: A character was lost here\n`,
      `recipe Cr${LOST}me slab\n# "${LOST}" wrong-encoding\n  200 g     rolled oats\n  do Toast the oats.\n`,
    ],
  },
});

const NONE: readonly Found<Values>[] = [];

/** No place in a text that may not even be read is better than another. */
const ofFile = onceByObject((encoding: OtherEncoding): readonly Found<Values>[] => [
  { at: { line: 0, start: 0, end: 0 }, values: encoding, ...(encoding.isRead && { severity: 'warning' }) },
]);

const ON_LINE = keptOn<Line, readonly Found<Values>[]>();

/** The first character that was lost: one finding is enough to go and look. */
function ofLost({ document: { lines }, outline: { parts } }: Scene): readonly Found<Values>[] {
  let next = 0;
  for (const { at, source } of parts) {
    const before = lostBetween(lines, next, at);
    if (before !== undefined) return before;
    const inPart = firstLostIn(source);
    if (inPart >= 0) return onLine(lines, at + inPart);
    next = at + source.lines.length;
  }
  return lostBetween(lines, next, lines.length) ?? NONE;
}

const isLost = ({ text }: Line): boolean => text.includes(LOST);

const FIRST_LOST = keptOn<PartSource, number>();

/** By line of the part; -1 where none was lost, as in nearly all, which an edit does not look through again. */
function firstLostIn(source: PartSource): number {
  let first = FIRST_LOST.get(source);
  if (first === undefined) {
    first = source.lines.findIndex(isLost);
    FIRST_LOST.set(source, first);
  }
  return first;
}

function lostBetween(lines: readonly Line[], from: number, to: number): readonly Found<Values>[] | undefined {
  for (let at = from; at < to; at++) if (isLost(lines[at] as Line)) return onLine(lines, at);
  return undefined;
}

function onLine(lines: readonly Line[], at: number): readonly Found<Values>[] {
  const line = lines[at] as Line;
  let found = ON_LINE.get(line);
  if (found?.[0]?.at.line !== at) {
    const start = line.text.indexOf(LOST);
    found = [{ at: { line: at, start, end: start + 1 }, values: 'lost' }];
    ON_LINE.set(line, found);
  }
  return found;
}
