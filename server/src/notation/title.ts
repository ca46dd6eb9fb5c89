/**
 * Knows where the title of a recipe or part may end: before the last ` as `, and before ` from ` and the name of a file.
 * Refuses to know kinds, so that ` as ` gives a second reading and no decision.
 */
import type { Span, TextNode } from './tree.ts';

/** The name of a file, which is what tells `from` in a title from the word that takes a part of another file. */
const FILE = /^(.*?\.quern)(?:\s*:\s*(.*))?$/i;

/** A part's title, and the file that it comes from: `base from pastry.quern : sweet paste`. */
export function fileOf(all: TextNode): {
  readonly title?: TextNode;
  readonly from?: Span;
  readonly file?: TextNode;
  readonly filePart?: TextNode;
} {
  const at = lastWord(all.text, 'from');
  if (at === undefined) return { title: all };
  const title = piece(all, 0, at);
  const from = { start: all.start + at, end: all.start + at + 'from'.length };
  const file = piece(all, at + 'from'.length, all.text.length);
  if (file === undefined) return { ...(title && { title }), from };
  const [, path, part] = FILE.exec(file.text) ?? [];
  if (path === undefined) return { title: all };
  const filePart = part === undefined ? undefined : piece(file, file.text.length - part.length, file.text.length);
  return {
    ...(title && { title }),
    from,
    file: { ...file, end: file.start + path.length, text: path },
    ...(filePart && { filePart }),
  };
}

/** What stands before and after the last `as` of a title. */
export function kindParted(
  title: TextNode,
): { readonly name?: TextNode; readonly as: Span; readonly kind?: TextNode } | undefined {
  const at = lastWord(title.text, 'as');
  if (at === undefined) return undefined;
  const name = piece(title, 0, at);
  const kind = piece(title, at + 'as'.length, title.text.length);
  const as = { start: title.start + at, end: title.start + at + 'as'.length };
  return { ...(name && { name }), as, ...(kind && { kind }) };
}

/** Where a word in small letters stands last, with blanks or the text's ends around it. */
function lastWord(text: string, word: string): number | undefined {
  for (let at = text.lastIndexOf(word); at >= 0; at = at === 0 ? -1 : text.lastIndexOf(word, at - 1))
    if (isGap(text[at - 1]) && isGap(text[at + word.length])) return at;
  return undefined;
}

const isGap = (char: string | undefined): boolean => char === undefined || /\s/.test(char);

/** A stretch of a text without the blanks at its ends; undefined when nothing is left. */
function piece({ start, text }: TextNode, from: number, to: number): TextNode | undefined {
  const cut = text.slice(from, to);
  const words = cut.trim();
  const first = start + from + (cut.length - cut.trimStart().length);
  return words === '' ? undefined : { start: first, end: first + words.length, text: words };
}
