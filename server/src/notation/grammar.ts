/**
 * Knows the grammar of the lines that a keyword opens, as Chevrotain rules with error recovery. An amount, a number of a
 * pan, and a word are each one token here; what follows `do`, and an ingredient, have readers of their own.
 * Refuses to know the tree that is made of it: the concrete tree it gives never leaves this folder.
 */
import { type CstNode, CstParser, createToken, type IToken, type TokenType } from 'chevrotain';
import { type Amount, takeAmount, takeNumeral } from './amounts.ts';
import { Cursor, type Run } from './cursor.ts';
import { Kind, Token } from './tokens.ts';

declare const QUERN_BUNDLED: boolean | undefined;

/** Any token at all, as text runs to the end of a line. */
const Any = type('Any');
/** What a name may be made of: everything but what ends a name. */
const NamePart = type('NamePart', Any);
const Measured = type('Measured', NamePart);
/** A measure that ends with its degree sign, and still wants a unit. */
const Degrees = type('Degrees', NamePart);
const Free = type('Free', NamePart);
const Overnight = type('Overnight', NamePart);
const Plain = type('Plain', NamePart);
/** `1 1/2`. */
const Mixed = type('Mixed', NamePart);
const UnitWord = type('UnitWord', NamePart);
const Times = type('Times', NamePart);
const Word = type('Word', NamePart);
const DateMark = type('Date', NamePart);
const Comma = type('Comma', Any);
const As = type('As', Any);
const From = type('From', Any);
const Joiner = type('Joiner', Any);

function type(name: string, category?: TokenType): TokenType {
  return createToken(category === undefined ? { name } : { name, categories: category });
}

const VOCABULARY = [
  Any,
  NamePart,
  Measured,
  Degrees,
  Free,
  Overnight,
  Plain,
  Mixed,
  UnitWord,
  Times,
  Word,
  DateMark,
  Comma,
  As,
  From,
  Joiner,
];

/** What the grammar of a line sees as one. */
export class Piece implements IToken {
  readonly image = '';
  readonly startOffset: number;
  readonly tokenType: TokenType;
  readonly tokenTypeIdx: number;
  readonly first: Token;
  readonly last: Token;
  readonly amount: Amount | undefined;

  constructor(tokenType: TokenType, { first, last }: Run, amount?: Amount) {
    this.startOffset = first.start;
    this.tokenType = tokenType;
    this.tokenTypeIdx = tokenType.tokenTypeIdx ?? 0;
    this.first = first;
    this.last = last;
    this.amount = amount;
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

  /** `NAME [as KIND] [from FILE [: PART]]` */
  readonly titled = this.RULE('titled', () => {
    this.OPTION(() => this.SUBRULE(this.name));
    this.OPTION1(() => {
      this.CONSUME(As);
      this.OPTION2(() => this.SUBRULE1(this.name, { LABEL: 'kindName' }));
    });
    this.OPTION3(() => {
      this.CONSUME(From);
      this.MANY(() =>
        this.OR([
          { ALT: () => this.CONSUME(NamePart, { LABEL: 'file' }) },
          { ALT: () => this.CONSUME(Comma, { LABEL: 'file' }) },
        ]),
      );
    });
  });

  readonly amount = this.RULE('amount', () => {
    this.OR([
      { ALT: () => this.CONSUME(Free) },
      { ALT: () => this.CONSUME(Overnight) },
      { ALT: () => this.CONSUME(Measured) },
      {
        ALT: () => {
          this.CONSUME(Degrees);
          this.CONSUME(UnitWord);
        },
      },
    ]);
  });

  readonly numeral = this.RULE('numeral', () => {
    this.OR([{ ALT: () => this.CONSUME(Plain) }, { ALT: () => this.CONSUME(Mixed) }]);
  });

  readonly amountThenText = this.RULE('amountThenText', () => {
    this.OPTION(() => this.SUBRULE(this.amount));
    this.MANY(() => this.CONSUME(Any));
  });

  /** `AMOUNT [NAME] [to|in|out|per TEXT]` */
  readonly amountThenJoined = this.RULE('amountThenJoined', () => {
    this.OPTION(() => this.SUBRULE(this.amount));
    this.OPTION1(() => this.SUBRULE(this.name));
    this.OPTION2(() => {
      this.CONSUME(Joiner);
      this.OPTION3({
        GATE: () => this.LA(1).tokenType !== Word,
        DEF: () => this.SUBRULE1(this.amount, { LABEL: 'per' }),
      });
      this.MANY(() => this.CONSUME(Any));
    });
  });

  readonly dated = this.RULE('dated', () => {
    this.OPTION(() => this.CONSUME(DateMark));
    this.OPTION1(() => {
      this.CONSUME(Joiner);
      this.MANY(() => this.CONSUME(Any));
    });
  });

  /** `CODE because REASON`, `NAME for INGREDIENT` */
  readonly nameThenJoined = this.RULE('nameThenJoined', () => {
    this.OPTION(() => this.SUBRULE(this.name));
    this.OPTION1(() => {
      this.CONSUME(Joiner);
      this.MANY(() => this.CONSUME(Any));
    });
  });

  /** `[12 x] SHAPE 30 x 20 x 4 cm`, or a volume. */
  readonly pan = this.RULE('pan', () => {
    this.OPTION({
      GATE: () => this.LA(1).tokenType === Plain && this.LA(2).tokenType === Times && this.LA(3).tokenType === Word,
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

export type Rule = 'titled' | 'amountThenText' | 'amountThenJoined' | 'dated' | 'nameThenJoined' | 'pan' | 'list';

/** What the rule is given as one token. */
type Grouping = (cursor: Cursor, first: Token) => Piece | undefined;

const GROUPED: Readonly<Partial<Record<Rule, Grouping>>> = {
  amountThenText: amountPiece,
  amountThenJoined: amountPiece,
  pan: numeralPiece,
};

function amountPiece(cursor: Cursor, first: Token): Piece | undefined {
  const amount = takeAmount(cursor);
  if (amount === undefined) return undefined;
  if (amount instanceof Token)
    return new Piece(amount.kind === Kind.Free ? Free : Overnight, { first, last: first }, amount);
  const last = cursor.tokens[cursor.at - 1] ?? first;
  return new Piece(last.kind === Kind.Degree ? Degrees : Measured, { first, last }, amount);
}

function numeralPiece(cursor: Cursor): Piece | undefined {
  const run = takeNumeral(cursor);
  return run && new Piece(run.first === run.last ? Plain : Mixed, run);
}

const TYPES: Readonly<Partial<Record<Kind, TokenType>>> = {
  [Kind.UnitWord]: UnitWord,
  [Kind.Times]: Times,
  [Kind.Word]: Word,
  [Kind.DateMark]: DateMark,
  [Kind.Comma]: Comma,
  [Kind.As]: As,
  [Kind.From]: From,
  [Kind.Joiner]: Joiner,
  [Kind.Equals]: Any,
  [Kind.LeftParen]: Any,
};

function piecesOf(tokens: readonly Token[], grouped: Grouping | undefined): Piece[] {
  const pieces: Piece[] = [];
  const cursor = new Cursor(tokens, 1);
  for (let token = cursor.token; token !== undefined; token = cursor.token) {
    let piece = grouped?.(cursor, token);
    if (piece === undefined) {
      piece = new Piece(TYPES[token.kind] ?? NamePart, { first: token, last: token });
      cursor.at++;
    }
    pieces.push(piece);
  }
  return pieces;
}

/** Made when the first line wants it. */
let parser: LineParser | undefined;

export interface Concrete {
  readonly children: Children;
  /** The first token that no rule took. */
  readonly rest: Token | undefined;
}

export type Children = Readonly<Record<string, readonly (CstNode | IToken)[] | undefined>>;

/** Reads the tokens after a line's opening word by one rule. Never throws; what is missing is missing in the tree. */
export function readBy(rule: Rule, tokens: readonly Token[]): Concrete {
  parser ??= new LineParser(typeof QUERN_BUNDLED !== 'undefined');
  parser.input = piecesOf(tokens, GROUPED[rule]);
  const { children } = parser[rule]();
  const taken = parser.errors.find((e) => e.name === 'NotAllInputParsedException');
  const rest = taken?.token ?? parser.errors.flatMap((e) => e.resyncedTokens)[0];
  return { children, rest: rest instanceof Piece ? rest.first : undefined };
}

type Found = readonly (CstNode | IToken)[] | undefined;

/** The node of a rule; under recovery any may be missing. */
export const child = (found: Found): Children | undefined => nodes(found)[0];

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
