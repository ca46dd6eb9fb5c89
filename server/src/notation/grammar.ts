/**
 * Knows the grammar of one line, as Chevrotain rules with error recovery.
 * Refuses to know the tree that is made of it: the concrete tree it gives never leaves this folder.
 */
import { type CstNode, CstParser, type IToken, type TokenType } from 'chevrotain';
import {
  About,
  Any,
  As,
  Comma,
  CountedWord,
  Dash,
  DateMark,
  DecimalComma,
  Degree,
  Equals,
  Fan,
  Fraction,
  Free,
  From,
  Gas,
  Joiner,
  LeftBracket,
  LeftParen,
  Minus,
  NamePart,
  Numeral,
  Of,
  Overnight,
  RightBracket,
  RightParen,
  SizeWord,
  Times,
  To,
  UnitWord,
  VOCABULARY,
  Vulgar,
  Word,
} from './tokens.ts';

declare const QUERN_BUNDLED: boolean | undefined;

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

  readonly ingredient = this.RULE('ingredient', () => {
    this.OPTION(() => {
      this.SUBRULE(this.amount);
      this.OPTION1(() => {
        this.CONSUME(Equals);
        this.OPTION2(() => this.SUBRULE1(this.amount, { LABEL: 'equals' }));
      });
    });
    this.OPTION3(() => this.SUBRULE(this.name));
    this.OPTION4(() => this.SUBRULE(this.note));
    this.OPTION5(() => this.SUBRULE(this.bought));
    this.OPTION6(() => {
      this.CONSUME(Comma);
      this.MANY(() =>
        this.OR([
          { ALT: () => this.CONSUME(NamePart, { LABEL: 'preparation' }) },
          { ALT: () => this.CONSUME1(Comma, { LABEL: 'preparation' }) },
        ]),
      );
    });
    this.OPTION7(() => this.SUBRULE1(this.bought));
    this.OPTION8(() => {
      this.SUBRULE1(this.note);
      // `butter, cold (from the fridge), cubed`
      this.OPTION9(() => {
        this.CONSUME2(Comma);
        this.MANY1(() => this.CONSUME(Any, { LABEL: 'preparation' }));
      });
    });
  });

  readonly note = this.RULE('note', () => {
    this.CONSUME(LeftParen);
    this.MANY({ GATE: () => this.LA(1).tokenType !== RightParen, DEF: () => this.CONSUME(Any) });
    this.OPTION(() => this.CONSUME(RightParen));
  });

  readonly bought = this.RULE('bought', () => {
    this.CONSUME(From);
    this.OPTION(() => this.SUBRULE(this.amount));
  });

  readonly amount = this.RULE('amount', () => {
    this.OR([
      { ALT: () => this.CONSUME(Free) },
      { ALT: () => this.CONSUME(Overnight) },
      { ALT: () => this.SUBRULE(this.measure) },
    ]);
  });

  /** `about? number (- number)? (unit | size | count word (of measure)?)?`, or gas and its mark. */
  readonly measure = this.RULE('measure', () => {
    this.OPTION(() => this.CONSUME(About));
    this.OR([
      {
        ALT: () => {
          this.CONSUME(Gas);
          this.OPTION1(() => this.CONSUME(Word, { LABEL: 'gasMark' }));
          this.SUBRULE(this.numeral);
        },
      },
      {
        ALT: () => {
          this.OPTION2(() => this.CONSUME(Minus));
          this.SUBRULE1(this.numeral);
          this.OPTION3({
            GATE: () => isRange(this.LA(1).tokenType, this.LA(2).tokenType),
            DEF: () => {
              this.OR1([
                { ALT: () => this.CONSUME(Dash) },
                { ALT: () => this.CONSUME(To) },
                { ALT: () => this.CONSUME1(Minus) },
              ]);
              this.SUBRULE2(this.numeral);
            },
          });
          this.OPTION4({
            // `3-inch` is three inches.
            GATE: () => this.LA(1).tokenType !== Dash || this.LA(2).tokenType === UnitWord,
            DEF: () =>
              this.OR2([
                {
                  ALT: () => {
                    this.OPTION5(() =>
                      this.OR3([
                        { ALT: () => this.CONSUME1(Dash, { LABEL: 'hyphen' }) },
                        { ALT: () => this.CONSUME(Degree) },
                      ]),
                    );
                    this.CONSUME(UnitWord);
                    this.OPTION6(() => this.CONSUME(Fan));
                  },
                },
                {
                  ALT: () => {
                    this.AT_LEAST_ONE(() => this.CONSUME(SizeWord));
                    this.OPTION8(() => this.CONSUME1(CountedWord));
                  },
                },
                {
                  ALT: () => {
                    this.CONSUME(CountedWord);
                    this.OPTION7(() => {
                      this.CONSUME(Of);
                      this.SUBRULE(this.measure, { LABEL: 'each' });
                    });
                  },
                },
              ]),
          });
        },
      },
    ]);
  });

  readonly numeral = this.RULE('numeral', () => {
    this.OR([
      {
        ALT: () => {
          this.CONSUME(Numeral);
          this.OPTION(() => this.OR1([{ ALT: () => this.CONSUME(Fraction) }, { ALT: () => this.CONSUME(Vulgar) }]));
        },
      },
      { ALT: () => this.CONSUME1(Fraction) },
      { ALT: () => this.CONSUME1(Vulgar) },
      { ALT: () => this.CONSUME(DecimalComma) },
    ]);
  });

  readonly sentence = this.RULE('sentence', () => {
    this.MANY(() =>
      this.OR({
        IGNORE_AMBIGUITIES: true,
        DEF: [
          {
            GATE: () => startsMeasure(this.LA(1).tokenType, this.LA(2).tokenType),
            ALT: () => this.SUBRULE(this.measure),
          },
          { GATE: () => this.LA(1).tokenType === LeftBracket, ALT: () => this.SUBRULE(this.forced) },
          { ALT: () => this.CONSUME(Any) },
        ],
      }),
    );
  });

  readonly forced = this.RULE('forced', () => {
    this.CONSUME(LeftBracket);
    this.MANY({ GATE: () => this.LA(1).tokenType !== RightBracket, DEF: () => this.CONSUME(NamePart) });
    this.OPTION(() => this.CONSUME(RightBracket));
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

  readonly swap = this.RULE('swap', () => {
    this.OPTION(() => this.SUBRULE(this.name));
    this.OPTION1(() => {
      this.CONSUME(Joiner);
      this.OPTION2(() => this.SUBRULE(this.ingredient));
    });
  });

  readonly allow = this.RULE('allow', () => {
    this.OPTION(() => this.SUBRULE(this.name));
    this.OPTION1(() => {
      this.CONSUME(Joiner);
      this.MANY(() => this.CONSUME(Any));
    });
  });

  /** `[12 x] SHAPE 30 x 20 x 4 cm`, or a volume. */
  readonly pan = this.RULE('pan', () => {
    this.OPTION({
      GATE: () => this.LA(2).tokenType === Times && this.LA(3).tokenType === Word,
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

  readonly text = this.RULE('text', () => {
    this.MANY(() => this.CONSUME(Any));
  });

  readonly name = this.RULE('name', () => {
    this.AT_LEAST_ONE(() => this.CONSUME(NamePart));
  });
}

/** A dash or `to` joins two numbers to a range only when a number follows. */
function isRange(first: TokenType, second: TokenType): boolean {
  return (first === Dash || first === To || first === Minus) && NUMBERS.has(second);
}

/** Whether a sentence goes on with an amount, so that a lone dash or `about` stays prose. */
function startsMeasure(first: TokenType, second: TokenType): boolean {
  return (
    NUMBERS.has(first) ||
    ((first === About || first === Minus || first === Gas) && (NUMBERS.has(second) || second === Word))
  );
}

const NUMBERS: ReadonlySet<TokenType> = new Set([Numeral, Fraction, Vulgar, DecimalComma]);

const parser = new LineParser(typeof QUERN_BUNDLED !== 'undefined');

export type Rule =
  | 'titled'
  | 'ingredient'
  | 'sentence'
  | 'amountThenText'
  | 'amountThenJoined'
  | 'dated'
  | 'swap'
  | 'allow'
  | 'pan'
  | 'list'
  | 'text';

export interface Concrete {
  readonly cst: CstNode;
  /** The first token that no rule took. */
  readonly rest: IToken | undefined;
}

/** Reads the tokens after a line's opening word by one rule. Never throws; what is missing is missing in the tree. */
export function readBy(rule: Rule, tokens: IToken[]): Concrete {
  parser.input = tokens;
  const cst = parser[rule]();
  const taken = parser.errors.find((e) => e.name === 'NotAllInputParsedException');
  const skipped = parser.errors.flatMap((e) => e.resyncedTokens)[0];
  return { cst, rest: taken?.token ?? skipped };
}

/** For the test that holds the grammar against Chevrotain's own checks, which the bundles skip. */
export function validateGrammar(): void {
  new LineParser(false);
}
