/**
 * Knows how amounts are printed in books and on cards, and writes them as the notation does: `one and a half cupfuls`, `2 (14-ounce) cans`, `1 lb. 4 oz.`.
 * Refuses to know foods.
 */

import { countWord } from '../../measure/count-words.ts';
import { fractionText, trimmed, VULGAR_FRACTIONS } from '../../measure/number-text.ts';
import { numberOfWord } from '../../measure/number-words.ts';
import { baseOf, dimensionOf, type UnitSymbol, unitOf } from '../../measure/unit.ts';

export interface PrintedAmount {
  /** As the notation writes it; undefined where no amount stood there. */
  readonly amount?: string;
  readonly equals?: string;
  /** What is left of the line. */
  readonly rest: string;
  /** What the amount said besides: `heaped`, `1 cup plus 2 tbsp`. */
  readonly notes: readonly string[];
}

const wordValue = (word = ''): string =>
  ({ a: '1', an: '1', dozen: '12' })[word.toLowerCase()] ?? String(numberOfWord(word) ?? '');
const PARTS: Readonly<Record<string, string>> = {
  half: '1/2',
  third: '1/3',
  thirds: '1/3',
  quarter: '1/4',
  quarters: '1/4',
  fourth: '1/4',
  fourths: '1/4',
  eighth: '1/8',
  eighths: '1/8',
};

/** Units as books print them, beyond what the notation reads; the longer first. */
const UNITS: readonly (readonly [RegExp, string, number])[] = [
  [
    /^(?:[Tt]ablespoonfuls?|[Tt]ablespoonsful|[Tt]ablespoons?|[Tt]bsps?\.?|[Tt]bs\.?|[Tt]bl\.?|T\.?)(?![a-z])/,
    'tbsp',
    1,
  ],
  [/^(?:tea-?spoonfuls?|teaspoonsful|teaspoons?|teasp\.?|tsps?\.?|t\.|5 ?ml spoons?)(?![a-z])/i, 'tsp', 1],
  [/^t(?= [a-z])/, 'tsp', 1],
  [/^15 ?ml spoons?(?![a-z])/i, 'tbsp', 1],
  [/^(?:dessert-?spoonfuls?|dessertspoons?)(?![a-z])/i, 'tsp', 2],
  [/^(?:salt-?spoonfuls?|saltspoons?)(?![a-z])/i, 'tsp', 1 / 4],
  [/^(?:cupfuls?|cupsful|cups?|c\.|c(?= [a-z]))(?![a-z])/i, 'cup', 1],
  [/^(?:tea-?cup(?:ful)?s?)(?![a-z])/i, 'pint', 1 / 4],
  [/^(?:wine-?glass(?:es|fuls?)?)(?![a-z])/i, 'fl oz', 2],
  [/^(?:gills?)(?![a-z])/i, 'fl oz', 4],
  [/^(?:fluid ounces?|fl\.? ?ozs?\.?)(?![a-z])/i, 'fl oz', 1],
  [/^(?:pounds?|lbs?\.?|#)(?![a-z])/i, 'lb', 1],
  [/^(?:ounces?|ozs?\.?)(?![a-z])/i, 'oz', 1],
  [/^(?:pints?|pts?\.?)(?![a-z])/i, 'pint', 1],
  [/^(?:quarts?|qts?\.?)(?![a-z])/i, 'quart', 1],
  [/^(?:gallons?|gals?\.?)(?![a-z])/i, 'gallon', 1],
  [/^(?:kilogram(?:me)?s?|kilos?|kgs?\.?)(?![a-z])/i, 'kg', 1],
  [/^(?:milligrams?|mg\.?)(?![a-z])/i, 'mg', 1],
  [/^(?:gram(?:me)?s?|gms?\.?|gr\.|gr(?= )|g\.?)(?![a-z])/, 'g', 1],
  [/^(?:millilit(?:re|er)s?|mls?\.?)(?![a-z])/i, 'ml', 1],
  [/^(?:centilit(?:re|er)s?|cls?\.?)(?![a-z])/i, 'cl', 1],
  [/^(?:decilit(?:re|er)s?|dls?\.?)(?![a-z])/i, 'dl', 1],
  [/^(?:lit(?:re|er)s?|l\.?)(?![a-z])/i, 'l', 1],
  [/^(?:pinch(?:es)?)(?![a-z])/i, 'pinch', 1],
  [/^(?:dash(?:es)?|few grains|grating|speck|shake)(?![a-z])/i, 'dash', 1],
  [/^(?:drops?)(?![a-z])/i, 'drop', 1],
  [/^(?:packages?|pkgs?\.?|pkts?\.?|packets?|pks?\.?)(?![a-z])/i, 'pack', 1],
  // A square of a baker's block is an ounce; one of a bar to eat is not.
  [/^(?:squares?|sq\.)(?= (?!.*\b(?:dark|milk|white)\b).*chocolate)/i, 'oz', 1],
];
/** Holders whose content may be printed before them: `2 (14-ounce) cans`. */
const HOLDERS =
  'cans?|tins?|jars?|packages?|pkgs?\\.?|packets?|packs?|boxes|box|bags?|bottles?|cartons?|tubs?|pots?(?! roast)|containers?|envelopes?|sachets?';
const HOLDER_WORDS: Readonly<Record<string, string>> = { package: 'pack', pkg: 'pack', container: 'tub', pot: 'tub' };

const NUMBER = String.raw`(?:\d+ \d+\/\d+|\d+\/\d+|\d+ ?[½⅓⅔¼¾⅛⅜⅝⅞]|\d+(?:\.\d+)?|[½⅓⅔¼¾⅛⅜⅝⅞])`;
const RANGE = String.raw`${NUMBER}(?:\s*(?:-|–|—|to|or)\s*${NUMBER})?`;
const MANNERS =
  /^(?:very )?(heaping|heaped|rounded|rounding|level|scant|scanty|generous|good|large|small|full|packed|firmly packed|lightly packed)\s+/i;

/** A size told by a length or by another thing: `a thumb-sized piece of ginger`, `2cm piece`. */
const LIKE_SIZES =
  /^(?:(?:an?|one|1) )?((?:thumb|finger|walnut|egg)[- ](?:sized?|length)|[\d½¼¾]+(?:\/\d+)?[- ]?(?:cm|mm|in|inch|inches)\.?(?:\/[\d½¼¾]+[- ]?(?:cm|in|inch)\.?)?)[- ](?=piece\b|knob\b)/i;
/** A bound on the amount is said beside it. */
const BOUNDS = /^(up to|at least|no more than) (?=\d|[½⅓⅔¼¾⅛])/i;

/** The amount that a printed line opens with. */
export function printedAmount(printed: string): PrintedAmount {
  const like = LIKE_SIZES.exec(printed) ?? BOUNDS.exec(printed);
  const notes = like === null ? [] : [(like[1] ?? '').toLowerCase()];
  let rest = digits(like === null ? printed : printed.slice(like[0].length));
  let about = '';
  const nearly = /^(?:about|approximately|approx\.?|around|nearly|roughly|ca?\.)\s+/i.exec(rest);
  if (nearly !== null) {
    about = 'about ';
    rest = digits(rest.slice(nearly[0].length));
  }
  const number = new RegExp(`^(${RANGE})(?![\\d/])`).exec(rest);
  if (number === null) return { rest: printed, notes };
  const quantity = (number[1] ?? '')
    .replace(/\s*(?:–|—)\s*/, '-')
    .replace(/\s+or\s+/, '-')
    .replace(/\s+to\s+/, ' to ')
    .replace(/^(\d+) ([½⅓⅔¼¾⅛⅜⅝⅞])/, '$1$2');
  rest = rest
    .slice(number[0].length)
    .replace(/^\s*-\s*(?=[a-z])/i, ' ')
    .trimStart();
  const dozen = /^dozen\b\s*(?:of\s+)?/i.exec(rest);
  if (dozen !== null) {
    const value = numberIn(quantity);
    if (value !== undefined)
      return { amount: `${about}${trimmed(value * 12, 0)}`, rest: rest.slice(dozen[0].length), notes };
  }
  const held = holderOf(quantity, rest);
  if (held !== undefined) return { ...held, notes };
  const size = sizeOf(rest);
  const manner = size === undefined ? MANNERS.exec(rest) : null;
  const afterManner = manner === null ? rest : rest.slice(manner[0].length);
  const unit = unitAt(afterManner);
  if (unit === undefined) return counted(`${about}${quantity}`, rest, notes);
  if (manner !== null) notes.push((manner[1] ?? '').toLowerCase());
  const first = scaled(quantity, unit);
  const pack = manner === null && first.value !== undefined ? packOf(unit.rest) : undefined;
  if (pack !== undefined) return { amount: `${about}1 ${pack.holder} of ${first.text}`, rest: pack.rest, notes };
  rest = ofAway(unit.rest);
  const more = plusMore(first, rest);
  if (more !== undefined) {
    notes.push(more.note);
    return withEquals(`${about}${more.amount}`, more.rest, notes);
  }
  return withEquals(`${about}${first.text}`, rest, notes);
}

/** Numbers in words at the head of a line become figures: `one and a half`, `two-thirds of a`, `1 and 1/2`, `1-1/2`. */
function digits(text: string): string {
  let t = text.trimStart();
  const glyph = '½⅓⅔¼¾⅛⅜⅝⅞';
  t = t.replace(new RegExp(`^(\\d+)(?:\\s*-\\s*|\\s+and\\s+|\\s*&\\s*|\\s+)(\\d+\\/\\d+|[${glyph}])`), '$1 $2');
  t = t.replace(/^(\d+) ?⁄ ?(\d+)/, '$1/$2').replace(/^(\d+\/\d+|[½⅓⅔¼¾⅛⅜⅝⅞])(?: of)? an? /, '$1 ');
  const whole = /^(an?|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\b/i.exec(t);
  if (whole !== null) {
    const value = wordValue(whole[1]);
    const after = t.slice(whole[0].length);
    const part = /^(?:-|\s+)(half|thirds?|quarters?|fourths?|eighths?)\b(?:\s+of)?(?:\s+an?\b)?/i.exec(after);
    // `a half cup`, `one-third of a cup`, `three-quarters`.
    if (part !== null)
      return `${times(value, PARTS[(part[1] ?? '').toLowerCase()] ?? '')}${after.slice(part[0].length)}`;
    const and = /^\s+and\s+(?:an?|one|two|three)?[\s-]*(half|thirds?|quarters?|fourths?|eighths?)\b/i.exec(after);
    if (and !== null) {
      const many = /two/i.test(and[0]) ? '2' : /three/i.test(and[0]) ? '3' : '1';
      return `${value} ${times(many, PARTS[(and[1] ?? '').toLowerCase()] ?? '')}${after.slice(and[0].length)}`;
    }
    const few = /^\s+(?:few|little)\b/i.exec(after);
    if (few !== null) return t;
    const range = /^\s+(?:to|or)\s+(two|three|four|five|six|seven|eight|nine|ten|twelve)\b/i.exec(after);
    if (range !== null) return `${value}-${wordValue(range[1])}${after.slice(range[0].length)}`;
    return `${value}${after}`;
  }
  const half = /^(half|quarter)\s+(?:of\s+)?(?:an?\s+)?/i.exec(t);
  if (half !== null) return `${PARTS[(half[1] ?? '').toLowerCase()] ?? ''} ${t.slice(half[0].length)}`;
  const one =
    /^(?:(?:small|large) )?(?:dozen|pinch|dash|knob|handful|bunch|sprig|drop|slice|stick|clove|piece|can|tin|package|packet)\b/i;
  return one.test(t) ? `1 ${t}` : t.replace(/^(\d+) ?[x×] ?(?=\d)/i, '$1 ');
}

/** `2` times `1/3` is `2/3`. */
const times = (many: string, part: string): string => part.replace(/^1/, many);

interface FoundUnit {
  readonly symbol: string;
  readonly factor: number;
  readonly rest: string;
}

function unitAt(text: string): FoundUnit | undefined {
  for (const [pattern, symbol, factor] of UNITS) {
    const match = pattern.exec(text);
    if (match !== null) return { symbol, factor, rest: text.slice(match[0].length).replace(/^\./, '').trimStart() };
  }
  return undefined;
}

interface Scaled {
  readonly text: string;
  readonly value?: number;
  readonly symbol: string;
}

/** A gill is four fluid ounces, a saltspoon a quarter teaspoon. */
function scaled(quantity: string, { symbol, factor }: FoundUnit): Scaled {
  const value = numberIn(quantity);
  if (factor === 1) return { text: `${quantity} ${symbol}`, symbol, ...(value !== undefined && { value }) };
  if (value === undefined) return { text: `${quantity} ${symbol}`, symbol };
  const by = value * factor;
  return { text: `${fractionText(by, false) ?? trimmed(by, 3)} ${symbol}`, value: by, symbol };
}

/** The value of one number as printed; undefined for a range. */
function numberIn(text: string): number | undefined {
  const fraction = /^(?:(\d+)\s)?(\d+)\/(\d+)$/.exec(text.trim());
  if (fraction !== null) return Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
  const glyph = /^(\d*)\s?([½⅓⅔¼¾⅛⅜⅝⅞])$/.exec(text.trim());
  if (glyph !== null) return Number(glyph[1] === '' ? 0 : glyph[1]) + (VULGAR_FRACTIONS[glyph[2] ?? ''] ?? 0);
  return /^\d+(?:\.\d+)?$/.test(text.trim()) ? Number(text) : undefined;
}

/** `1 cup plus 2 tablespoons`, `1 lb. 4 oz.`: both in the first unit where that is a kitchen's figure, else in the second. */
function plusMore(
  first: Scaled,
  rest: string,
): { readonly amount: string; readonly rest: string; readonly note: string } | undefined {
  const and = /^(?:(?:plus|and|\+|&)\s+|,?\s*)/i.exec(rest)?.[0] ?? '';
  const second = digits(rest.slice(and.length));
  const number = new RegExp(`^(${NUMBER})\\s*`).exec(second);
  if (number === null || first.value === undefined) return undefined;
  const unit = unitAt(second.slice(number[0].length));
  const value = numberIn(number[1] ?? '');
  if (unit === undefined || value === undefined || !isUnit(first.symbol) || !isUnit(unit.symbol)) return undefined;
  if (dimensionOf(first.symbol) !== dimensionOf(unit.symbol)) return undefined;
  const [a, b] = [baseOf(first.symbol, 'us'), baseOf(unit.symbol, 'us')];
  if (a === undefined || b === undefined || !(b < a)) return undefined;
  const whole = first.value * a + value * unit.factor * b;
  const inFirst = fractionText(whole / a, false, 0.002);
  const amount =
    inFirst === undefined
      ? `${fractionText(whole / b, false) ?? trimmed(whole / b, 2)} ${unit.symbol}`
      : `${inFirst} ${first.symbol}`;
  const note = `${first.text} plus ${number[1] ?? ''} ${unit.symbol}`;
  return { amount, rest: ofAway(unit.rest), note };
}

const isUnit = (symbol: string): symbol is UnitSymbol => {
  try {
    return unitOf(symbol as UnitSymbol) !== undefined;
  } catch {
    return false;
  }
};

/** `400g tin chopped tomatoes`, behind the weight: one such holder. */
function packOf(rest: string): { readonly holder: string; readonly rest: string } | undefined {
  const match = new RegExp(`^(${HOLDERS})\\b\\.?\\s+(?=[a-z])`, 'i').exec(rest);
  return match === null ? undefined : { holder: holderWord(match[1]), rest: ofAway(rest.slice(match[0].length)) };
}

/** The count word of the notation for a holder as printed. */
function holderWord(printed = ''): string {
  const word = printed
    .toLowerCase()
    .replace(/\.$/, '')
    .replace(/s$/, '')
    .replace(/^boxe$/, 'box');
  return HOLDER_WORDS[word] ?? word;
}

/** `2 (14-ounce) cans`, `1 can (15 oz)`, `2 cans beans (14 oz each)`, `2 14-oz. cans`, `1 8-ounce package`. */
function holderOf(quantity: string, rest: string): { readonly amount: string; readonly rest: string } | undefined {
  const inside = String.raw`(${NUMBER})[\s-]*(ounces?|ozs?\.?|pounds?|lbs?\.?|grams?|g|kg|ml|l|pints?|quarts?|fl\.? oz\.?)`;
  // `400g/14oz tin`: the same weight in another measure behind the first.
  const again = String.raw`(?:\s*\/\s*${NUMBER}[\s-]*(?:ounces?|ozs?\.?|lbs?\.?|g|kg|ml|fl\.? oz\.?))?`;
  const before = new RegExp(`^\\(?${inside}\\.?${again}\\)?[\\s-]*(${HOLDERS})\\b\\.?`, 'i').exec(rest);
  const after = new RegExp(`^(${HOLDERS})\\s*\\((?:about )?${inside}\\.?(?:\\s*each)?\\)`, 'i').exec(rest);
  const behind = new RegExp(
    `^(${HOLDERS})\\s+(?:of\\s+)?([^,()\\d]+?)\\s*\\((?:about )?${inside}\\.?(?:\\s*each)?\\)`,
    'i',
  ).exec(rest);
  const [match, number, unitText, holder, name = ''] =
    before !== null
      ? [before, before[1], before[2], before[3]]
      : after !== null
        ? [after, after[2], after[3], after[1]]
        : [behind, behind?.[3], behind?.[4], behind?.[1], behind?.[2]];
  const unit = unitAt(unitText ?? '');
  if (match === null || unit === undefined) return undefined;
  return {
    amount: `${quantity} ${plural(holderWord(holder), quantity)} of ${number ?? ''} ${unit.symbol}`,
    rest: ofAway(`${name}${rest.slice(match[0].length)}`.trimStart()),
  };
}

const plural = (word: string, quantity: string): string =>
  quantity === '1' || /^(?:1\/|[½⅓¼⅛])/.test(quantity) ? word : `${word}${word.endsWith('x') ? 'es' : 's'}`;

const SIZES = /^(small|medium|large|extra[- ]large|jumbo)(?:[- ]sized?)?\s+/i;
const sizeOf = (rest: string): string | undefined =>
  unitAt(rest.replace(SIZES, '')) === undefined ? SIZES.exec(rest)?.[1] : undefined;

function counted(amount: string, printed: string, notes: readonly string[]): PrintedAmount {
  // `a knob of butter`: the notation counts pieces without `of`.
  const rest = printed.replace(/^([a-z]+) of (?=[a-z])/i, (all, word: string) =>
    countWord(word) === undefined ? all : `${word} `,
  );
  const size = SIZES.exec(rest);
  if (size === null) return withEquals(amount, rest, notes);
  return withEquals(`${amount} ${(size[1] ?? '').toLowerCase().replace('-', ' ')}`, rest.slice(size[0].length), notes);
}

/** A weight, or another measure, in brackets or behind a stroke: `1 cup (120 g)`, `100 g / 3½ oz`. */
function withEquals(amount: string, rest: string, notes: readonly string[]): PrintedAmount {
  const plain: PrintedAmount = { amount, rest: ofAway(rest), notes };
  const match = /^(?:\((?:or |about |approximately |approx\.? )*([^()]{1,40})\)|(?:\/|or )\s*([^,()]{1,40}))/i.exec(
    rest,
  );
  if (match === null) return plain;
  const inner = printedAmount((match[1] ?? match[2] ?? '').trim());
  const unit = /[a-z%]+(?: oz)?$/i.exec(inner.amount ?? '')?.[0] ?? '';
  const inBrackets = match[1] !== undefined;
  if (inner.amount === undefined || inner.equals !== undefined || !isUnit(unit) || (inBrackets && inner.rest !== ''))
    return plain;
  const after = rest.slice(match[0].length).trimStart();
  const left = ofAway(inBrackets ? after : `${inner.rest}${/^[,(]/.test(after) ? '' : ' '}${after}`.trim());
  if (!inBrackets && left === '') return plain;
  return dimensionOf(unit) === 'mass'
    ? { amount, equals: inner.amount, rest: left, notes }
    : { amount, rest: left, notes: [...notes, inner.amount] };
}

const ofAway = (text: string): string => text.replace(/^(?:of (?:the )?)/i, '');
