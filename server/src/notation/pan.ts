/**
 * Knows the pan that a `pan` line describes, in the notation's own form (`round 24 x 3 cm`) or as cooks and shops say it
 * (`9 x 13-inch pan`, `12-hole muffin tin`, `2 lb loaf tin`).
 * Refuses to know what goes into it, and how large the pans of the trade are.
 */
import { numberOfWord } from '../measure/number-words.ts';
import { unitOf as unitNamed, unitSpelled } from '../measure/unit.ts';
import type { Unit } from '../measure/unit-row.ts';
import { Cursor } from './cursor.ts';
import { numeralOf, takeNumeral } from './numerals.ts';
import { PAN_MATERIALS, PAN_TRAITS, panForm } from './pan-words.ts';
import { isNumber, Kind, type Token } from './tokens.ts';
import type { Draft, MeasuredNode, NumeralNode, PanNode, PanShape, SyntaxFault, UnitNode } from './tree.ts';

/** How many sizes a shape has, and what they look like. */
const SHAPES: Readonly<Record<PanShape, { readonly sizes: number; readonly example: string }>> = {
  round: { sizes: 2, example: '24 x 3 cm' },
  square: { sizes: 2, example: '20 x 5 cm' },
  rectangle: { sizes: 3, example: '30 x 20 x 4 cm' },
  loaf: { sizes: 3, example: '21 x 11 x 6 cm' },
  ring: { sizes: 3, example: '24 x 8 x 10 cm' },
};

/** Numbers with crosses between them, and the unit behind. */
interface Chain {
  readonly numerals: readonly NumeralNode[];
  readonly unit: (UnitNode & { readonly dimension: Unit['dimension'] }) | undefined;
  readonly start: number;
  readonly end: number;
  /** `7 cm deep` */
  readonly deep: boolean;
  /** `12 x round`: so many of what follows. */
  readonly counts: boolean;
}

interface Pieces {
  readonly chains: readonly Chain[];
  readonly words: readonly string[];
  readonly plural: boolean;
  /** A number written as a word: `two 8-inch round pans`. */
  readonly counted: NumeralNode | undefined;
  readonly start: number;
  readonly end: number;
}

export const PAN_HELP =
  'write its name and size, such as `pan round 24 x 3 cm`, `pan 9 x 13 in`, `pan 23 cm springform`, `pan 2 lb loaf tin`, `pan muffin tin, 12` or `pan 1.2 l`';

/** The pan that the tokens of a line describe behind its keyword, with a fault where it cannot be told how large it is. */
export function panOf(line: string, tokens: readonly Token[], faults: SyntaxFault[]): PanNode | undefined {
  const pieces = takePieces(line, new Cursor(tokens, 1), faults);
  if (pieces === undefined) return undefined;
  const fault = (detail: string) => faults.push({ code: 'bad-pan', start: pieces.start, end: pieces.end, detail });
  const { chains, words, start, end } = pieces;
  const form = panForm(words);
  const traits = words.filter((w) => PAN_TRAITS.has(w));
  const node: Draft<PanNode> = { start, end, count: pieces.counted?.value ?? 1, sizes: [] };
  if (pieces.counted !== undefined) node.countNode = pieces.counted;
  if (form !== undefined && 'unknown' in form) {
    fault(`\`${form.unknown}\` is no pan that is known here; ${PAN_HELP}`);
    return node;
  }
  if (form !== undefined) {
    node.shape = form.shape;
    node.form = form.form;
    if (form.sold !== undefined) node.sold = form.sold;
    if (form.cups) node.cups = true;
  }
  if (traits.length > 0) node.traits = traits;
  const of = words.filter((w) => PAN_MATERIALS.has(w));
  if (of.length > 0) node.of = of;
  for (const chain of chains) {
    const wrong = addChain(node, chain, pieces, line);
    if (wrong !== undefined) {
      fault(wrong);
      return node;
    }
  }
  const wrong = whatIsMissing(node);
  if (wrong !== undefined) fault(wrong);
  return node;
}

/** Puts one run of numbers where it belongs; says what is wrong where it belongs nowhere. */
function addChain(node: Draft<PanNode>, chain: Chain, { chains, plural }: Pieces, line: string): string | undefined {
  const { unit, deep } = chain;
  let { numerals } = chain;
  const [first] = numerals;
  if (first === undefined) return undefined;
  if (node.form === 'gastronorm' && unit === undefined && first.style === 'fraction') {
    node.sold = line.slice(first.start, first.end).replace('⁄', '/');
    return undefined;
  }
  const isLengths = unit === undefined || unit.dimension === 'length';
  if (numerals.length > 1 && isCount(numerals, node, isLengths, plural)) {
    count(node, first);
    numerals = numerals.slice(1);
  }
  const [only] = numerals;
  if (only === undefined) return undefined;
  if (numerals.length === 1 && unit === undefined) {
    if (!Number.isInteger(only.value) || only.value < 1)
      return `write the unit: \`${only.value} cm\` or \`${only.value} in\``;
    if (
      !chain.counts &&
      !isBeforeSizes(only, chain, chains) &&
      !node.cups &&
      !plural &&
      only.value > 1 &&
      node.sizes.length + (node.volume === undefined ? 0 : 1) === 0
    )
      return `is \`${only.value}\` a size? Write its unit: \`${only.value} cm\` or \`${only.value} in\``;
    count(node, only);
    return undefined;
  }
  if (isLengths) {
    if (numerals.length === 1 && node.sold !== undefined && node.sizes.length === 0) {
      // Its name says its sides.
      node.depth = measured(only, unit);
    } else if (deep && (numerals.length > 1 || node.sizes.length > 0)) {
      if (numerals.length > 1) return 'write the depth alone: `20 cm round, 7 cm deep`';
      node.depth = measured(only, unit);
    } else if (node.sizes.length > 0) {
      // `23 cm springform, 7 cm`: what is said last is the depth.
      if (numerals.length > 1 || node.depth !== undefined) return PAN_HELP;
      node.depth = measured(only, unit);
    } else {
      if (deep) node.traits = [...(node.traits ?? []), 'deep'];
      node.sizes = numerals;
      const assumed = unit === undefined ? unitMeant(numerals) : undefined;
      if (unit === undefined && assumed === undefined)
        return `write the unit: \`${numerals.map((n) => n.value).join(' x ')} cm\` or \`in\``;
      if (unit !== undefined) node.unit = { start: unit.start, end: unit.end, symbol: unit.symbol };
      if (assumed !== undefined) node.unitMeant = assumed;
    }
    return undefined;
  }
  if (numerals.length > 1) return PAN_HELP;
  // `12-cup muffin tin` has twelve hollows.
  if (node.cups && unit.symbol === 'cup' && Number.isInteger(only.value)) count(node, only);
  else if (unit.dimension === 'volume') node.volume = measured(only, unit);
  else if (unit.dimension === 'mass') node.loaf = measured(only, unit);
  else return PAN_HELP;
  return undefined;
}

/** `2 round 20 x 4 cm`: what follows has all its sizes; but `20 round, 7 cm deep`. */
function isBeforeSizes({ value }: NumeralNode, chain: Chain, chains: readonly Chain[]): boolean {
  const next = chains[chains.indexOf(chain) + 1];
  const [size] = next?.numerals ?? [];
  return size !== undefined && next?.unit?.dimension === 'length' && (next.numerals.length > 1 || size.value > value);
}

/** Whether the first of several numbers counts pans: `12 x round 7 x 3 cm`, `2 x 900 g`, `2 x 20 cm`, and no size. */
function isCount(numerals: readonly NumeralNode[], node: PanNode, isLengths: boolean, plural: boolean): boolean {
  const [first, second, third] = numerals.map((n) => n.value);
  if (first === undefined || second === undefined || !Number.isInteger(first) || first < 1) return false;
  if (!isLengths || numerals.length > 3) return true;
  if (node.cups || node.form === 'gastronorm') return true;
  const isRound = node.shape === 'round' || node.shape === 'square';
  if (numerals.length === 2) return isRound ? first < second : plural && first * 3 < second;
  // Three sizes, the depth first, are written by nobody.
  return third !== undefined && first < second / 2 && first < third && (plural || third > second / 2);
}

function count(node: Draft<PanNode>, numeral: NumeralNode): void {
  // `2 x 12-hole muffin tins`
  node.count *= numeral.value;
  if (node.countNode === undefined) node.countNode = numeral;
}

/** What the line has to say too before it can be told how large the pan is. */
function whatIsMissing(node: PanNode): string | undefined {
  const { shape, sizes, volume, loaf, form, sold, cups } = node;
  if (volume !== undefined || loaf !== undefined) {
    return loaf !== undefined && form !== 'loaf'
      ? 'a weight is the size of a loaf tin: `pan 2 lb loaf tin`; of another pan write the sizes'
      : undefined;
  }
  if (sizes.length === 0) return sold !== undefined || cups ? undefined : `how large is it? ${capital(PAN_HELP)}`;
  if (sizes.some((s) => !(s.value > 0))) return PAN_HELP;
  if (shape === undefined)
    return sizes.length === 1
      ? `say what shape it is: \`pan round ${sizes[0]?.value ?? 23} cm\` or \`pan square ${sizes[0]?.value ?? 23} cm\``
      : sizes.length > 3
        ? PAN_HELP
        : undefined;
  const most = SHAPES[shape].sizes + (shape === 'square' ? 1 : 0);
  const least = shape === 'rectangle' || shape === 'loaf' ? 2 : 1;
  return sizes.length > most || sizes.length < least
    ? `give its sizes and the unit, the depth last: \`pan ${shape} ${SHAPES[shape].example}\``
    : undefined;
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** Bare numbers are inches up to 18, where they are in the trade, and centimetres above 19; between they are asked about. */
function unitMeant(numerals: readonly NumeralNode[]): 'in' | 'cm' | undefined {
  const values = numerals.map((n) => n.value);
  const [longest, shortest] = [Math.max(...values), Math.min(...values.slice(0, 2))];
  if (longest <= 15 || (longest <= 18 && shortest >= 11)) return 'in';
  return longest >= 19 && !(longest <= 26 && shortest >= 17 && longest !== shortest) ? 'cm' : undefined;
}

function measured(low: NumeralNode, unit: Chain['unit']): MeasuredNode {
  const symbol = unit?.symbol ?? 'cm';
  const quantity = { low: low.value, high: low.value, about: false, unit: symbol };
  const { start, end } = unit ?? low;
  return { kind: 'measured', start: low.start, end, quantity, low, unit: { start, end, symbol } };
}

function takePieces(line: string, cursor: Cursor, faults: SyntaxFault[]): Pieces | undefined {
  const chains: Chain[] = [];
  const words: string[] = [];
  /** What stands behind a comma: from which word, and behind how many sizes. */
  let remark: { readonly from: number; readonly sizes: number } | undefined;
  const endRemark = (): void => {
    if (remark === undefined || chains.length > remark.sizes) return;
    // `ungreased`, `lined with paper cases`
    if (isRemark(words.slice(remark.from))) words.length = remark.from;
  };
  let counted: NumeralNode | undefined;
  const { token: first } = cursor;
  let last = first;
  if (first === undefined) return undefined;
  for (let token: Token | undefined = first; token !== undefined; token = cursor.token) {
    const { at } = cursor;
    const word = token.written?.word;
    if (word === undefined && isNumber(token.kind)) {
      const chain = takeChain(line, cursor, faults);
      if (chain !== undefined) chains.push(chain);
    } else if (token.kind === Kind.Comma && words.length + chains.length > 0) {
      endRemark();
      remark = { from: words.length, sizes: chains.length };
    } else if (token.kind === Kind.LeftParen || line[token.start] === '/') skipSaidAgain(line, cursor);
    else if (word !== undefined) {
      const number = words.length === 0 && chains.length === 0 ? numberOfWord(word) : undefined;
      if (number !== undefined && Number.isInteger(number))
        counted = { start: token.start, end: token.end, value: number, style: 'decimal' };
      else words.push(word);
    }
    if (cursor.at === at) cursor.at++;
    last = cursor.tokens[cursor.at - 1] ?? last;
  }
  endRemark();
  return {
    chains,
    words: words.filter((w) => w !== 'x'),
    plural: words.some((word) => /[^s]s$/.test(word) || word === 'dishes'),
    counted,
    start: first.start,
    end: (last ?? first).end,
  };
}

/** Words of which one says nothing of any pan. */
function isRemark(words: readonly string[]): boolean {
  const form = panForm(words);
  return form !== undefined && 'unknown' in form;
}

/** `9 x 13-inch`, `13- by 9-inch`, `8 1/2" x 4 1/2"`, `23cm`. */
function takeChain(line: string, cursor: Cursor, faults: SyntaxFault[]): Chain | undefined {
  const numerals: NumeralNode[] = [];
  let unit: Chain['unit'];
  const start = cursor.token?.start ?? 0;
  let end = start;
  let counts = false;
  for (;;) {
    const run = takeNumeral(cursor);
    if (run === undefined) break;
    numerals.push(numeralOf(line, run, faults));
    end = run.last.end;
    const dash = cursor.token?.kind === Kind.Dash || cursor.token?.kind === Kind.Minus;
    const found = unitAt(line, cursor.tokens, cursor.at + (dash ? 1 : 0));
    if (found !== undefined) {
      cursor.at += (dash ? 1 : 0) + 1;
      unit = found;
      end = found.end;
      if (line[cursor.token?.start ?? -1] === '.' && cursor.token?.start === end) cursor.at++;
    } else if (dash) cursor.at++;
    const next = cursor.token;
    const crosses =
      next !== undefined && (next.kind === Kind.Times || next.written?.word === 'x' || next.written?.word === 'by');
    const after = cursor.tokens[cursor.at + 1];
    if (!crosses || after === undefined) break;
    // `12 x round 7 x 3 cm`
    if (after.written !== undefined || !isNumber(after.kind)) {
      cursor.at++;
      counts = numerals.length === 1 && unit === undefined;
      break;
    }
    cursor.at++;
  }
  if (numerals.length === 0) return undefined;
  const deep = cursor.token?.written?.word === 'deep' || cursor.token?.written?.word === 'high';
  return { numerals, unit, start, end, deep, counts };
}

/** A unit of length, volume or mass; `"` and its kin are inches. */
function unitAt(line: string, tokens: readonly Token[], at: number): Chain['unit'] {
  const token = tokens[at];
  if (token === undefined) return undefined;
  const { start, end, written } = token;
  if (/^["″”]$/.test(line.slice(start, end))) return { start, end, symbol: 'in', dimension: 'length' };
  const unit =
    token.kind === Kind.FluidOunce || (written === undefined && end - start > 4)
      ? FLUID_OUNCE
      : unitOfWord(written?.image);
  return unit === undefined || !SIZES.has(unit.dimension)
    ? undefined
    : { start, end, symbol: unit.symbol, dimension: unit.dimension };
}

const unitOfWord = (image: string | undefined): Unit | undefined =>
  image === undefined ? undefined : unitSpelled(image);
const FLUID_OUNCE = unitNamed('fl oz');
const SIZES: ReadonlySet<Unit['dimension']> = new Set(['length', 'volume', 'mass']);

/** `(23 x 33 cm)` and `/23 cm` say the same size in the other system. */
function skipSaidAgain(line: string, cursor: Cursor): void {
  const opens = cursor.take(Kind.LeftParen);
  if (opens !== undefined) {
    while (cursor.kind !== Kind.RightParen && cursor.kind !== Kind.End) cursor.at++;
    cursor.take(Kind.RightParen);
    return;
  }
  cursor.at++;
  const { token } = cursor;
  if (token !== undefined && token.written === undefined && isNumber(token.kind)) takeChain(line, cursor, []);
}
