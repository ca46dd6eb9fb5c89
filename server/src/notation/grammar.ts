/**
 * Knows the grammar of what goes on for as long as it likes: lists of names and the sizes of a pan, as
 * Chevrotain rules with error recovery. A number is one token here.
 * Refuses to know the tree that is made of it: the concrete tree it gives never leaves this folder.
 */
import { type CstNode, CstParser, createToken, type IToken, type TokenType } from 'chevrotain';
import type { Cursor, Run } from './cursor.ts';
import { takeNumeral } from './numerals.ts';
import { isNumber, Kind, type Token } from './tokens.ts';

declare const QUERN_BUNDLED: boolean | undefined;

/** Any token at all. */
const Any = createToken({ name: 'Any' });
/** What a name may be made of: everything but what ends a name. */
const NamePart = createToken({ name: 'NamePart', categories: Any });
const Single = createToken({ name: 'Single', categories: NamePart });
/** `1 1/2`. */
const Mixed = createToken({ name: 'Mixed', categories: NamePart });
const UnitWord = createToken({ name: 'UnitWord', categories: NamePart });
const Times = createToken({ name: 'Times', categories: NamePart });
const Word = createToken({ name: 'Word', categories: NamePart });
const Comma = createToken({ name: 'Comma', categories: Any });

const VOCABULARY = [Any, NamePart, Single, Mixed, UnitWord, Times, Word, Comma];

/** What the grammar of a line sees as one. */
class Piece implements IToken {
  readonly image = '';
  readonly startOffset: number;
  readonly tokenType: TokenType;
  readonly tokenTypeIdx: number;
  readonly first: Token;
  readonly last: Token;

  constructor(tokenType: TokenType, first: Token, last: Token) {
    this.startOffset = first.start;
    this.tokenType = tokenType;
    this.tokenTypeIdx = tokenType.tokenTypeIdx ?? 0;
    this.first = first;
    this.last = last;
  }
}

class LineParser extends CstParser {
  constructor(skipValidations: boolean) {
    super(VOCABULARY, {
      recoveryEnabled: true,
      maxLookahead: 1,
      nodeLocationTracking: 'none',
      skipValidations,
    });
    this.performSelfAnalysis();
  }

  readonly numeral = this.RULE('numeral', () => {
    this.OR([{ ALT: () => this.CONSUME(Single) }, { ALT: () => this.CONSUME(Mixed) }]);
  });

  /** `[12 x] SHAPE 30 x 20 x 4 cm`, or a volume. */
  readonly pan = this.RULE('pan', () => {
    this.OPTION({
      GATE: () => this.LA(1).tokenType === Single && this.LA(2).tokenType === Times && this.LA(3).tokenType === Word,
      DEF: () => {
        this.SUBRULE(this.numeral, { LABEL: 'count' });
        this.CONSUME(Times);
      },
    });
    this.OPTION1(() => this.CONSUME(Word, { LABEL: 'shape' }));
    this.OPTION2(() => {
      this.SUBRULE1(this.numeral, { LABEL: 'size' });
      this.OPTION3(() => this.CONSUME(UnitWord));
      this.MANY(() => {
        this.CONSUME1(Times);
        this.SUBRULE2(this.numeral, { LABEL: 'size' });
        this.OPTION4(() => this.CONSUME1(UnitWord));
      });
    });
  });

  readonly list = this.RULE('list', () => {
    this.MANY(() => this.OR([{ ALT: () => this.SUBRULE(this.name) }, { ALT: () => this.CONSUME(Comma) }]));
  });

  readonly name = this.RULE('name', () => {
    this.AT_LEAST_ONE(() => this.CONSUME(NamePart));
  });
}

export type Rule = 'pan' | 'list';

/** Kinds that are not just a part of a name. */
const TYPES: Readonly<Partial<Record<Kind, TokenType>>> = {
  [Kind.UnitWord]: UnitWord,
  [Kind.Times]: Times,
  [Kind.Word]: Word,
  [Kind.Comma]: Comma,
  [Kind.From]: Any,
  [Kind.Equals]: Any,
  [Kind.LeftParen]: Any,
};

/** Recovery goes some calls deeper with each piece it goes on after; no line that means anything has as many. */
const MOST_RECOVERIES = 200;

/** The tokens as the grammar sees them, as far as a line that means anything goes. */
function piecesOf(cursor: Cursor): Piece[] {
  const made: Piece[] = [];
  let recoveries = 0;
  for (let first = cursor.token; first !== undefined; first = cursor.token) {
    const next = TYPES[first.kind];
    if ((next === Any || next === Times) && ++recoveries > MOST_RECOVERIES) break;
    const before = made.at(-1)?.tokenType;
    const countsHere = before === undefined || before === Times || before === Word;
    const numeral = countsHere && isNumber(first.kind) ? takeNumeral(cursor) : undefined;
    if (numeral === undefined) cursor.at++;
    const type = numeral === undefined ? (next ?? NamePart) : numeral.last === first ? Single : Mixed;
    made.push(new Piece(type, first, numeral?.last ?? first));
  }
  return made;
}

/** Made when the first line wants it. */
let parser: LineParser | undefined;

export interface Concrete {
  readonly children: Children;
  /** The first token that no rule took. */
  readonly rest: Token | undefined;
}

export type Children = Readonly<Record<string, readonly (CstNode | IToken)[] | undefined>>;

/** Reads all tokens that are left by one rule. Never throws; what is missing is missing in the tree. */
export function readBy(rule: Rule, cursor: Cursor): Concrete {
  parser ??= new LineParser(typeof QUERN_BUNDLED !== 'undefined');
  parser.input = piecesOf(cursor);
  const { children } = parser[rule]();
  const taken = parser.errors.find((e) => e.name === 'NotAllInputParsedException');
  const rest = taken?.token ?? parser.errors.flatMap((e) => e.resyncedTokens)[0];
  return { children, rest: rest instanceof Piece ? rest.first : cursor.token };
}

type Found = readonly (CstNode | IToken)[] | undefined;

/** The nodes of a rule; under recovery any may be missing. */
export const nodes = (found: Found): Children[] => (found ?? []).flatMap((n) => ('children' in n ? [n.children] : []));

/** Pieces of the text, without those that recovery made up. */
export const pieces = (found: Found): Piece[] => (found ?? []).filter((n) => n instanceof Piece);

/** The tokens from the first of the pieces to the last. */
export function runOf(found: readonly Piece[]): Run | undefined {
  const [first] = found;
  const last = found.at(-1);
  return first && last && { first: first.first, last: last.last };
}

/** For the test that holds the grammar against Chevrotain's own checks, which the bundles skip. */
export function validateGrammar(): void {
  new LineParser(false);
}
