/**
 * Knows what one piece of a food weighs, by its word, its size or its length.
 * Refuses to know how many there are, and what a package holds.
 */
import { type CountWord, countedAlike, countWord, isPackage } from '../measure/count-words.ts';
import { writeFigure } from '../measure/figure.ts';
import { middle, type Quantity, type Range, type Size, scaleRange } from '../measure/quantity.ts';
import type { Measures } from '../measure/systems.ts';
import { baseOf, unitInFull } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import { classWeight } from './class-weights.ts';
import { eggSize } from './egg-sizes.ts';
import type { Food, FoodClass, PieceWeight, Weighed } from './food.ts';
import { perCentimetre } from './shares.ts';
import { HOUSE_SOURCE, known, spreadWords, unknown } from './weighed.ts';

/** `1 inch of ginger`. */
export function weighLength(food: Food, unit: UnitSymbol, measures: Measures): Weighed {
  const per = perCentimetre(food);
  const mm = baseOf(unit, measures);
  if (per === undefined || mm === undefined) return unknown(`${unit} is not a measure of amount`);
  const grams = scaleRange(per.range, mm / 10);
  const typical = (per.typical * mm) / 10;
  const words = `1 ${unitInFull(unit, measures)} of ${food.name} weighs ${writeFigure(typical)} g (${spreadWords(grams, typical)} by how thick it is)`;
  return { ...known(grams, 'piece', words, per.source), typical };
}

/** How far pieces of one size go where no range is published (common practice, no source). */
const GROWING = 0.15;
const GROWN: ReadonlySet<FoodClass> = new Set<FoodClass>([
  'vegetable',
  'fruit',
  'mushroom',
  'leafy herb',
  'poultry',
  'meat',
  'fish',
  'shellfish',
  'nut',
  'dried fruit',
]);

const PRACTICE = 'common practice, no source';
export function weighPiece(food: Food, quantity: Quantity, measures: Measures, form: string | undefined): Weighed {
  const word = quantity.count ?? (form === undefined ? undefined : countedBy(food, form));
  const egg = word === undefined ? eggSize(food, quantity.size, measures) : undefined;
  if (egg !== undefined) {
    const words = pieceWords(food, undefined, egg.size, egg.grams, middle(egg.grams));
    return known(egg.grams, 'size', words, egg.source);
  }
  for (const asked of word === undefined ? [undefined] : [word, ...countedAlike(word)]) {
    const pieces = food.pieces.filter((piece) => piece.word === asked);
    if (pieces.length > 0) return weighSized(food, word ?? asked, pieces, quantity.size);
  }
  const common = word === undefined ? undefined : classWeight(food, word);
  if (common !== undefined) {
    const { grams, typical, source } = common;
    return { ...known(grams, 'piece', pieceWords(food, word, undefined, grams, typical), source), typical };
  }
  if (word !== undefined && isPackage(word))
    return unknown(`a ${word} has no fixed size: write \`1 ${word} of 400 g\``);
  return unknown(
    word === undefined
      ? `nobody has weighed one ${food.name}: write a weight`
      : `nobody has weighed a ${word} of ${food.name}: write a weight`,
  );
}

function countedBy(food: Food, form: string): CountWord | undefined {
  const word = countWord(form);
  return word !== undefined && food.pieces.some((piece) => piece.word === word) ? word : undefined;
}

function weighSized(
  food: Food,
  word: CountWord | undefined,
  pieces: readonly PieceWeight[],
  size: Size | undefined,
): Weighed {
  const kind = size === undefined ? 'piece' : 'size';
  const exact = pieces.find((piece) => piece.size === size);
  if (exact !== undefined) return pieceWeight(food, word, size, exact, pieceRange(food, exact), kind);
  if (size === undefined) {
    const usual = food.class === 'egg' ? 'large' : 'medium';
    const piece = pieces.find((p) => p.size === usual) ?? pieces[0];
    if (piece === undefined) return unknown(`nobody has weighed one ${food.name}: write a weight`);
    if (food.class === 'egg') return pieceWeight(food, word, usual, piece, pieceRange(food, piece), 'size');
    const ends = pieces
      .filter((p) => p.size === 'small' || p.size === 'medium' || p.size === 'large')
      .map((p) => pieceRange(food, p));
    const range = ends.length > 1 ? spanOf(ends) : pieceRange(food, piece);
    return pieceWeight(food, word, piece.size, piece, range, 'size');
  }
  const plain =
    pieces.find((piece) => piece.size === undefined) ?? pieces.find((piece) => piece.size === 'medium') ?? pieces[0];
  if (plain === undefined) return unknown(`nobody has weighed a ${size} ${food.name}: write a weight`);
  const [low, typical, high] = SIZED[size];
  const grams = plain.typical ?? (plain.grams.low + plain.grams.high) / 2;
  const sized: PieceWeight = { ...plain, typical: grams * typical, source: `${plain.source}; by size (${PRACTICE})` };
  return pieceWeight(food, word, size, sized, { low: grams * low, high: grams * high }, 'size');
}

/** Low, typical and high of a size against the plain piece (common practice, no source). */
const SIZED: Readonly<Record<Size, readonly [number, number, number]>> = {
  small: [0.5, 0.7, 0.9],
  medium: [0.8, 1, 1.2],
  large: [1.1, 1.35, 1.7],
  'extra large': [1.3, 1.6, 2],
  jumbo: [1.4, 1.8, 2.4],
};

function pieceRange(food: Food, piece: PieceWeight): Range {
  const { low, high } = piece.grams;
  if (low !== high || piece.source === HOUSE_SOURCE || !GROWN.has(food.class)) return piece.grams;
  return { low: low * (1 - GROWING), high: high * (1 + GROWING) };
}

function pieceWeight(
  food: Food,
  word: CountWord | undefined,
  size: Size | undefined,
  piece: PieceWeight,
  grams: Range,
  kind: 'piece' | 'size',
): Weighed {
  const typical = piece.typical ?? (piece.grams.low + piece.grams.high) / 2;
  const house = piece.source === HOUSE_SOURCE;
  return {
    ...known(grams, house ? 'house' : kind, pieceWords(food, word, size, grams, typical), piece.source),
    typical,
  };
}

function pieceWords(
  food: Food,
  word: CountWord | undefined,
  size: Size | undefined,
  grams: Range,
  typical: number,
): string {
  const spread = spreadWords(grams, typical);
  const what = [size, word === undefined ? food.name : `${word} of ${food.name}`]
    .filter((part) => part !== undefined)
    .join(' ');
  return `1 ${what} weighs ${writeFigure(typical)} g${spread === '' ? '' : ` (${spread})`}`;
}

function spanOf(ranges: readonly Range[]): Range {
  return { low: Math.min(...ranges.map((r) => r.low)), high: Math.max(...ranges.map((r) => r.high)) };
}
