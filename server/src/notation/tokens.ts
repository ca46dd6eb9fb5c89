/**
 * Knows the words and marks a line is made of. Every character of a line is in exactly one token, blanks included.
 * Refuses to know what they mean together: that is `statements.ts`.
 */
import { createToken, type IToken, Lexer, type TokenType } from 'chevrotain';
import { countWord } from '../measure/quantity.ts';
import { unitSpelled } from '../measure/unit.ts';

/** Any token at all, as text runs to the end of a line. */
export const Any = createToken({ name: 'Any', pattern: Lexer.NA });
/** What a name may be made of: everything but what ends a name. */
export const NamePart = createToken({ name: 'NamePart', pattern: Lexer.NA, categories: Any });

const named = (name: string): TokenType => createToken({ name, pattern: Lexer.NA, categories: NamePart });
const marked = (name: string, pattern: RegExp | string, inNames = true): TokenType =>
  createToken({ name, pattern, categories: inNames ? NamePart : Any });

// Plain ranges, not `\p{L}`: Chevrotain finds the first characters of a pattern only from these.
const BLANK = '[\\t\\v\\f \\u00A0\\u1680\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF]';
const LETTER =
  '[A-Za-z\\u00AA\\u00B5\\u00BA\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u1680\\u1681-\\u1FFF\\u2C00-\\u2FFF\\u3001-\\uD7FF\\uF900-\\uFEFE]';
const followedByNoLetter = `(?!${LETTER})`;

export const Blank = createToken({ name: 'Blank', pattern: new RegExp(`${BLANK}+`), line_breaks: false });
export const Comment = createToken({
  name: 'Comment',
  pattern: { exec: matchComment },
  start_chars_hint: ['#'],
  line_breaks: false,
});
export const DateMark = marked('Date', /\d{4}-\d{2}-\d{2}(?![\d-])/);
export const DecimalComma = marked('DecimalComma', /\d+(?:,\d+)+(?![\d,])/);
export const Fraction = marked('Fraction', /\d+[/⁄]\d+(?![\d/])/);
export const Numeral = marked('Numeral', /\d+(?:\.\d+)?/);
export const Vulgar = marked('Vulgar', /[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/);
/** `to taste`, `as needed`: an amount of no fixed weight. */
export const Free = marked('Free', new RegExp(`(?:[Tt]o${BLANK}+taste|[Aa]s${BLANK}+needed)${followedByNoLetter}`));
export const FluidOunce = marked(
  'FluidOunce',
  new RegExp(`(?:[Ff]l\\.?${BLANK}+oz|[Ff]luid${BLANK}+ounces?)${followedByNoLetter}`),
);
export const Word = marked('Word', new RegExp(`${LETTER}+(?:['’]${LETTER}+|['’]${followedByNoLetter}|-${LETTER}+)*`));
/** `\#` is the character; `\butter` is no mention. */
export const Escaped = marked('Escaped', new RegExp(`\\\\(?:#|${LETTER}(?:${LETTER}|['’-])*)?`));
export const Comma = marked('Comma', ',', false);
export const Equals = marked('Equals', '=', false);
export const Percent = marked('Percent', '%');
export const Degree = marked('Degree', /[°º]/);
export const Dash = marked('Dash', /[-–—−]/);
export const LeftParen = marked('LeftParen', '(', false);
export const RightParen = marked('RightParen', ')');
export const LeftBracket = marked('LeftBracket', '[');
export const RightBracket = marked('RightBracket', ']');
export const Colon = marked('Colon', ':');
/** Anything else, a pair of surrogates whole, half a pair alone. Lines hold no line ends. */
export const Other = marked('Other', /[\uD800-\uDBFF][\uDC00-\uDFFF]|[\u0000-\uFFFF]/);

// Words that are given a type of their own where they stand for it; elsewhere they stay words.
export const About = named('About');
export const To = named('To');
export const UnitWord = named('UnitWord');
export const Gas = named('Gas');
export const Fan = named('Fan');
export const Minus = named('Minus');
export const Times = named('Times');
export const CountedWord = named('CountedWord');
export const SizeWord = named('SizeWord');
export const Of = named('Of');
export const Overnight = named('Overnight');
export const As = createToken({ name: 'As', pattern: Lexer.NA, categories: Any });
export const From = createToken({ name: 'From', pattern: Lexer.NA, categories: Any });
export const Joiner = createToken({ name: 'Joiner', pattern: Lexer.NA, categories: Any });

/** The word that opens a line and says what it is. */
export const KEYWORDS = [
  'recipe',
  'by',
  'yield',
  'pan',
  'oven',
  'serve',
  'tags',
  'note',
  'source',
  'from',
  'part',
  'optional',
  'do',
  'trial',
  'took',
  'reached',
  'weighed',
  'used',
  'saw',
  'tested',
  'verdict',
  'swap',
  'drop',
  'add',
  'food',
  'like',
  'also',
  'trim',
  'price',
  'contains',
  'allow',
] as const;
export type Keyword = (typeof KEYWORDS)[number];

/** The composition lines of a food block. */
export const COMPONENTS = [
  'water',
  'fat',
  'protein',
  'carbohydrate',
  'sugar',
  'starch',
  'fibre',
  'salt',
  'ash',
  'alcohol',
] as const;
export type Component = (typeof COMPONENTS)[number];

const opening = (name: string): TokenType => createToken({ name: `Kw_${name}`, pattern: Lexer.NA, categories: Any });
export const Opening = Object.fromEntries(KEYWORDS.map((k) => [k, opening(k)])) as Readonly<Record<Keyword, TokenType>>;
export const ComponentWord = opening('component');

const SCANNED = [
  Blank,
  Comment,
  DateMark,
  DecimalComma,
  Fraction,
  Numeral,
  Vulgar,
  Free,
  FluidOunce,
  Word,
  Escaped,
  Comma,
  Equals,
  Percent,
  Degree,
  Dash,
  LeftParen,
  RightParen,
  LeftBracket,
  RightBracket,
  Colon,
  Other,
];
export const VOCABULARY: TokenType[] = [
  Any,
  NamePart,
  ...SCANNED,
  About,
  To,
  UnitWord,
  Gas,
  Fan,
  Minus,
  Times,
  CountedWord,
  SizeWord,
  Of,
  Overnight,
  As,
  From,
  Joiner,
  ...Object.values(Opening),
  ComponentWord,
];

const lexer = new Lexer(SCANNED, {
  ensureOptimizations: true,
  positionTracking: 'onlyOffset',
  skipValidations: typeof QUERN_BUNDLED !== 'undefined',
});

/** All tokens of one line, in order, covering it without a gap. */
export function scan(line: string): IToken[] {
  const { tokens } = lexer.tokenize(line);
  return tokens;
}

/** Gives the words that stand for something on this line their own types, from left to right. */
export function label(tokens: readonly IToken[]): Keyword | 'component' | undefined {
  const opened = labelOpening(tokens);
  for (let i = opened === undefined ? 0 : 1; i < tokens.length; i++) {
    const token = tokens[i] as IToken;
    const type = token.tokenType;
    if (type === Word) labelWord(tokens, i, token, opened);
    else if (type === Dash) labelDash(tokens, i, token);
    else if (type === FluidOunce || type === Percent) retype(token, UnitWord);
    else if (type === Other && token.image === '×') retype(token, Times);
    else if (type === Other && token.image === '~' && isNumber(tokens[i + 1])) retype(token, About);
  }
  return opened;
}

/** Number, fraction or glyph. */
export function isNumber(token: IToken | undefined): boolean {
  const type = token?.tokenType;
  return type === Numeral || type === Fraction || type === Vulgar || type === DecimalComma;
}

declare const QUERN_BUNDLED: boolean | undefined;

function retype(token: IToken, type: TokenType): void {
  token.tokenType = type;
  if (type.tokenTypeIdx !== undefined) token.tokenTypeIdx = type.tokenTypeIdx;
}

function labelOpening(tokens: readonly IToken[]): Keyword | 'component' | undefined {
  const first = tokens[0];
  if (first === undefined || first.tokenType !== Word) return undefined;
  if (Object.hasOwn(Opening, first.image)) {
    const keyword = first.image as Keyword;
    retype(first, Opening[keyword]);
    return keyword;
  }
  if ((COMPONENTS as readonly string[]).includes(first.image) && isNumber(tokens[1])) {
    retype(first, ComponentWord);
    return 'component';
  }
  return undefined;
}

const SIZES = new Set(['small', 'medium', 'large', 'jumbo']);
/** What follows a unit `in`, and not the preposition. */
const NOT_AN_INCH = new Set([
  'the',
  'a',
  'an',
  'all',
  'each',
  'one',
  'two',
  'it',
  'its',
  'this',
  'cold',
  'hot',
  'water',
]);
const JOINERS: Partial<Record<Keyword, readonly string[]>> = {
  allow: ['because'],
  trial: ['by'],
  took: ['to'],
  reached: ['in'],
  weighed: ['out'],
  used: ['in'],
  swap: ['for'],
  price: ['per'],
};

function labelWord(
  tokens: readonly IToken[],
  i: number,
  token: IToken,
  opened: Keyword | 'component' | undefined,
): void {
  const word = token.image.length < 20 ? token.image.toLowerCase() : token.image;
  const before = tokens[i - 1];
  const after = tokens[i + 1];
  const afterNumber = isNumber(before);
  if (
    opened !== undefined &&
    opened !== 'component' &&
    JOINERS[opened]?.includes(word) &&
    !(word === 'to' && afterNumber)
  ) {
    if (!tokens.slice(1, i).some((t) => t.tokenType === Joiner)) {
      retype(token, Joiner);
      return;
    }
  }
  if (word === 'about' && (isNumber(after) || after?.tokenType === Minus)) retype(token, About);
  else if (word === 'to' && afterNumber && isNumber(after)) retype(token, To);
  else if (word === 'as' && (opened === 'recipe' || opened === 'part')) retype(token, As);
  else if (word === 'from' && opensWeight(opened) && startsAmount(after)) retype(token, From);
  else if (word === 'from' && opened === 'part') retype(token, From);
  else if (word === 'x') retype(token, Times);
  else if (word === 'gas' && isNumber(tokens[i + (after?.image.toLowerCase() === 'mark' ? 2 : 1)])) retype(token, Gas);
  else if (word === 'fan' && isTemperatureUnit(before)) retype(token, Fan);
  else if (word === 'overnight') retype(token, Overnight);
  else if (word === 'of' && before?.tokenType === CountedWord && isNumber(after)) retype(token, Of);
  else if (afterNumber || before?.tokenType === Degree || before?.tokenType === SizeWord) {
    if (afterNumber && (SIZES.has(word) || (word === 'extra' && after?.image.toLowerCase() === 'large')))
      retype(token, SizeWord);
    else if (before?.tokenType === SizeWord && before.image.toLowerCase() === 'extra') retype(token, SizeWord);
    else if (countWord(word) !== undefined && before?.tokenType !== Degree) retype(token, CountedWord);
    else if (isUnitHere(token.image, word, after)) retype(token, UnitWord);
  } else if (before?.tokenType === Dash && isNumber(tokens[i - 2]) && unitSpelled(word)?.dimension === 'length') {
    retype(token, UnitWord); // `3-inch`
  }
}

const opensWeight = (opened: Keyword | 'component' | undefined): boolean =>
  opened === undefined || opened === 'optional' || opened === 'add';

const startsAmount = (token: IToken | undefined): boolean => isNumber(token) || token?.image.toLowerCase() === 'about';

function isTemperatureUnit(token: IToken | undefined): boolean {
  return token?.tokenType === UnitWord ? unitSpelled(token.image)?.dimension === 'temperature' : isNumber(token);
}

function isUnitHere(image: string, word: string, after: IToken | undefined): boolean {
  if (word === 'in') return !(after !== undefined && NOT_AN_INCH.has(after.image.toLowerCase()));
  return (
    unitSpelled(image) !== undefined ||
    (image.length === 1 && unitSpelled(word) !== undefined && word !== image && word !== 'c')
  );
}

function labelDash(tokens: readonly IToken[], i: number, token: IToken): void {
  const before = tokens[i - 1];
  const after = tokens[i + 1];
  if (!isNumber(after) || after === undefined || after.startOffset !== token.startOffset + 1) return;
  const apart = before === undefined || before.startOffset + before.image.length < token.startOffset;
  if (apart && !isNumber(before)) retype(token, Minus);
}

function matchComment(text: string, offset: number): [string] | null {
  if (text.charCodeAt(offset) !== 35) return null;
  if (offset > 0 && !/\s|\uFEFF/.test(text.charAt(offset - 1))) return null;
  return [text.slice(offset)];
}
