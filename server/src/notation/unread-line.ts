/**
 * Knows what to say of a line that is no statement: what it seems to have been meant as, and what to write instead.
 */
import { KEYWORDS } from './tokens.ts';
import type { Span, SyntaxFault } from './tree.ts';

/** The fault of a line without an opening; `first` is its first word, if it begins with one. */
export function unreadFault(
  words: string,
  span: Span,
  first: (Span & { readonly word: string }) | undefined,
): SyntaxFault {
  const fault = (code: SyntaxFault['code'], detail: string, write?: string, at: Span = span): SyntaxFault => ({
    code,
    start: at.start,
    end: at.end,
    detail,
    ...(write !== undefined && { write }),
  });
  if (/^(?:<{7}|={7}|>{7}|\|{7})/.test(words)) {
    return fault('conflict-mark', 'this is the mark of an unfinished merge: keep one side and delete the marks');
  }
  if (first !== undefined && isCapitalKeyword(first.word, words)) {
    const lower = first.word.toLowerCase();
    return fault('capital-keyword', `write \`${lower}\` in small letters`, lower, first);
  }
  const bullet = /^[-*•–—]+\s*/.exec(words)?.[0];
  if (bullet !== undefined) {
    const detail = 'lines have no bullets: start with the amount, or with `do` for a step';
    return fault('not-a-statement', detail, words.slice(bullet.length));
  }
  if (looksLikeSentence(words)) return fault('not-a-statement', 'start a step with `do`', `do ${words}`);
  return fault('not-a-statement', 'put the amount first (`200 g plain flour`), or start a step with `do`');
}

/** These open sentences only as keywords; `Serve warm.` is a step without its `do`. */
const NEVER_VERBS: ReadonlySet<string> = new Set(['do', 'note', 'saw', 'recipe', 'part', 'source', 'by']);

function isCapitalKeyword(word: string, line: string): boolean {
  const lower = word.toLowerCase();
  if (word === lower || !(KEYWORDS as readonly string[]).includes(lower)) return false;
  return NEVER_VERBS.has(lower) || !looksLikeSentence(line);
}

function looksLikeSentence(text: string): boolean {
  return /[.!?]$/.test(text) || (/^\p{Lu}/u.test(text) && text.split(/\s+/).length > 2) || text.split(/\s+/).length > 7;
}
