/**
 * Knows what to say of a line that is no statement: what it seems to have been meant as, and what to write instead.
 */

import { countWord } from '../measure/count-words.ts';
import { dimensionOf } from '../measure/unit.ts';
import { KEYWORDS } from './keywords.ts';
import type { IngredientNode, Span, SyntaxFault } from './tree.ts';

/** The fault of a line without an opening; `first` is its first word, if it begins with one, and `bare` what it says as an ingredient. */
export function unreadFault(
  words: string,
  span: Span,
  first: (Span & { readonly word: string }) | undefined,
  bare?: IngredientNode,
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
    const said = words.slice(bullet.length);
    // `* Onions, 1 lb`: the words behind it cannot stand so either.
    const amount = amountFirst(words, span, bare) ?? (/^\d/.test(said) ? undefined : freeFirst(said));
    return amount === undefined
      ? fault('not-a-statement', 'lines have no bullets: start with the amount, or with `do` for a step', said)
      : fault('not-a-statement', `lines have no bullets: write the amount first, as \`${amount}\``, amount);
  }
  const heading = headingIn(words);
  if (heading === '')
    return fault('not-a-statement', 'the list and the steps have no headings: leave this line out', '');
  if (heading !== undefined) return fault('not-a-statement', `open a part with \`part ${heading}\``, `part ${heading}`);
  const plain = plainDigits(words);
  if (plain !== words) return fault('not-a-statement', `write plain digits: \`${plain}\``, plain);
  const asked = ASKED.find(([form]) => form.test(words));
  if (asked !== undefined) {
    const food = /\bin ((?!and\b)[\p{L}'-]+(?: (?!and\b|or\b)[\p{L}'-]+)?)/u.exec(words)?.[1] ?? 'caster sugar';
    return fault('missing-amount', asked[1].replace('FOOD', food));
  }
  const amount = amountFirst(words, span, bare) ?? freeFirst(words) ?? oneOf(words);
  if (amount !== undefined) return fault('not-a-statement', `write the amount first, as \`${amount}\``, amount);
  if (looksLikeSentence(words)) return fault('not-a-statement', 'start a step with `do`', `do ${words}`);
  return fault('not-a-statement', 'put the amount first (`200 g plain flour`), or start a step with `do`');
}

/** A dash, a dot, a star, or a box to tick. */
const BULLET = /^(?:\[[ xX]?\]\s*|[-*•·●○◦▪■▢□☐☑✓✔❏◆➢‣⁃–—]+\s*)+/;

/** What a heading names: the part that stands below it, nothing where it only says what the lines are; undefined for no heading. */
function headingIn(words: string): string | undefined {
  const [, name] = /^(?:for )?(?:the )?([^:.\d]{2,40}?)\s*:$/i.exec(words) ?? [];
  if (name === undefined) return undefined;
  return OF_LINES.test(name) ? '' : name.toLowerCase();
}

const OF_LINES = /^(?:ingredients?|method|directions?|instructions?|preparation|procedure|steps?)$/i;

/** What no number can be read from, and what to write instead. */
const ASKED: readonly (readonly [RegExp, string])[] = [
  [
    /^(?:an? )?equal (?:parts?|quantit(?:y|ies)|amounts?|weights?|measures?)\b/i,
    'say how much each is, on a line of its own: `100 g butter` and `100 g plain flour`',
  ],
  [
    /^(?:the |their |its )?(?:same )?weight of\b|^(?:their|its|the same|an? equal|its own) weight\b/i,
    'weigh it, and write the weight: `150 g FOOD`',
  ],
];

/** Digits of another width, and those that stand high or low: `２ cups`, `¹⁄₂ cup`. */
function plainDigits(words: string): string {
  const plain = words.normalize('NFKC').replaceAll('⁄', '/');
  return /[０-９¹²³⁰⁴-⁹₀-₉]/.test(words) && /^\d/.test(plain) ? plain : words;
}

/** `Herring, salted, 1 lb` with the amount where the notation has it. */
function amountFirst(words: string, span: Span, bare: IngredientNode | undefined): string | undefined {
  const { amount, name } = bare ?? {};
  if (amount?.kind !== 'measured' || name === undefined || amount.start < name.end) return undefined;
  const dimension = amount.unit && dimensionOf(amount.unit.symbol);
  if (dimension === 'time' || dimension === 'temperature' || (amount.unit === undefined && amount.each === undefined))
    return undefined;
  const text = (from: number, to: number): string => words.slice(from - span.start, to - span.start).trim();
  const said = text(name.start, amount.start).replace(/[\s,.:–-]+$/, '');
  const behind = words.slice(amount.end - span.start).trimEnd();
  return `${text(amount.start, amount.end)} ${said}${behind}`;
}

/** `house sprinkle, to taste` with the words where the notation has them. */
function freeFirst(words: string): string | undefined {
  const [, what, free] = /^([^\d.!?:]+?),? +(to taste|as needed)$/.exec(words) ?? [];
  return what === undefined ? undefined : `${free} ${what}`;
}

/** `clove garlic`: one of it. Not `cloves`, which may be the spice. */
function oneOf(words: string): string | undefined {
  const [, first = '', rest = ''] = /^(\p{L}+) +(?:of +)?(\p{L}[^\d.!?:]*)$/u.exec(words) ?? [];
  return countWord(first) === first && rest.split(' ').length <= MOST_WORDS ? `1 ${first} ${rest}` : undefined;
}

/** A line that goes on for longer is prose. */
const MOST_WORDS = 5;

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
