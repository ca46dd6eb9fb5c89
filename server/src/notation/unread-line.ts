/**
 * Knows what to say of a line that is no statement: what it seems to have been meant as, and what to write instead.
 */

import { countWord } from '../measure/count-words.ts';
import { numberOfWord } from '../measure/number-words.ts';
import { dimensionOf, unitSpelled } from '../measure/unit.ts';
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
  const bullet = BULLET.exec(words)?.[0];
  if (bullet !== undefined && bullet.length < words.length) {
    const detail = 'lines have no bullets: start with the amount, or with `do` for a step';
    return fault('not-a-statement', detail, words.slice(bullet.length));
  }
  const heading = headingIn(words);
  if (heading === '')
    return fault('not-a-statement', 'the list and the steps have no headings: leave this line out', '');
  if (heading !== undefined) return fault('not-a-statement', `open a part with \`part ${heading}\``, `part ${heading}`);
  const amount = amountOf(words);
  if (amount !== undefined) return fault('not-a-statement', `write the amount first, as \`${amount}\``, amount);
  if (looksLikeSentence(words)) return fault('not-a-statement', 'start a step with `do`', `do ${words}`);
  return fault('not-a-statement', 'put the amount first (`200 g plain flour`), or start a step with `do`');
}

/** A dash, a dot, a star, or a box to tick. */
const BULLET = /^(?:\[[ xX]?\]\s*|[-*•·▪▢□☐◦‣–—]+\s*)+/;

/** What a heading names: the part that stands below it, nothing where it only says what the lines are; undefined for no heading. */
function headingIn(words: string): string | undefined {
  const [, name] = /^(?:for )?(?:the )?([^:.\d]{2,40}?)\s*:$/i.exec(words) ?? [];
  if (name === undefined) return undefined;
  return OF_LINES.test(name) ? '' : name.toLowerCase();
}

const OF_LINES = /^(?:ingredients?|method|directions?|instructions?|preparation|procedure|steps?)$/i;

/** `pinch of salt`, `two eggs` and `pepper, to taste` with the amount where the notation has it. */
function amountOf(words: string): string | undefined {
  if (/\d|[.!?:]$/.test(words)) return undefined;
  const [, what, free] = /^(.+?),? +(to taste|as needed)$/.exec(words) ?? [];
  if (what !== undefined) return `${free} ${what}`;
  const [, first = '', rest = ''] = /^(\p{L}+) +(?:of +)?(\p{L}.*)$/u.exec(words) ?? [];
  if (rest === '' || rest.split(' ').length > MOST_WORDS) return undefined;
  const count = /^an?$/.test(first) ? 1 : numberOfWord(first);
  if (count !== undefined) return `${count} ${rest.replace(/^(\p{L}+) of /u, '$1 ')}`;
  return isMeasure(first) ? `1 ${first} ${rest}` : undefined;
}

/** A line that goes on for longer is prose. */
const MOST_WORDS = 5;

/** `pinch`, `cup`, `clove`; not `cloves`, which may be the spice. */
function isMeasure(word: string): boolean {
  const unit = unitSpelled(word);
  return (
    countWord(word) === word || (unit !== undefined && !word.endsWith('s') && dimensionOf(unit.symbol) === 'volume')
  );
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
