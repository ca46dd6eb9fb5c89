// Knows how a recipe within a Markdown text is coloured by its lines alone: what opens a line, names, figures, remarks.
// It refuses to understand the recipe: in an editor the server does that.

import { COMPONENTS, KEYWORDS } from '../../../server/src/notation/keywords.ts';

/** A run of the text; those of a text, one behind the other, are the text. */
export type Piece = { readonly text: string; readonly as?: 'keyword' | 'type' | 'number' | 'comment' };

const words: ReadonlySet<string> = new Set([...KEYWORDS, ...COMPONENTS]);
/** Their line is a name to its end, or to the kind behind it. */
const titled: ReadonlySet<string> = new Set(['recipe', 'part', 'food', 'trial']);

const opening = /^(\s*)([a-z]+)(?=\s|$)/;
const remark = /(?:^|\s)#.*$/m;
const figure =
  /(?<![\p{L}\p{N}])(?:\d+(?:[.,/⁄]\d+)?(?:\s\d+\/\d+)?[½⅓⅔¼¾⅛⅜⅝⅞]?|[½⅓⅔¼¾⅛⅜⅝⅞])(?:\s?(?:-|–|to)\s?\d+(?:\.\d+)?)?(?:\s?(?:%|°?[CF](?: fan)?|(?:mg|kg|g|oz|lb|ml|cl|dl|l|tsp|tbsp|cups?|min|h|d|s|mm|cm|in)))?(?![\p{L}\p{N}])/gu;

export const piecesOf = (text: string): Piece[] =>
  text
    .split(/(?<=\n)/)
    .flatMap((line) => ofLine(line))
    .filter((piece) => piece.text !== '');

function ofLine(line: string): Piece[] {
  const at = remark.exec(line)?.index ?? line.length;
  const said = line.slice(0, at);
  const [, indent = '', word = ''] = opening.exec(said) ?? [];
  const rest: Piece = { text: line.slice(at), as: 'comment' };
  if (!words.has(word)) return [...figuresIn(said), rest];
  const behind = said.slice(indent.length + word.length);
  return [
    { text: indent },
    { text: word, as: 'keyword' },
    ...(titled.has(word) ? [{ text: behind, as: 'type' } as const] : figuresIn(behind)),
    rest,
  ];
}

function figuresIn(text: string): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const { index, 0: found } of text.matchAll(figure)) {
    pieces.push({ text: text.slice(from, index) }, { text: found, as: 'number' });
    from = index + found.length;
  }
  return [...pieces, { text: text.slice(from) }];
}
