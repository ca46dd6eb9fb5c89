/**
 * Knows when the first word of a name is a unit in another spelling, or a measure of no size.
 */
import { distance } from 'fastest-levenshtein';
import { keyOf } from '../../food/names.ts';
import { UNITS, unitPrinted } from '../../measure/unit.ts';
import type { Span } from '../../notation/tree.ts';
import type { Ingredient, World } from '../model.ts';
import { singular } from '../words.ts';

/** Measures of no size. Common practice, no source. */
const VAGUE: ReadonlySet<string> = new Set([
  'blob',
  'spoon',
  'spoonful',
  'scoop',
  'bowl',
  'bowlful',
  'nip',
  'swirl',
  'smidgen',
  'shake',
  'shakes',
  'tot',
]);

/** Old measures that were of another size for another thing, and what they came to. From memory. */
const OF_SEVERAL_SIZES: ReadonlyMap<string, string> = new Map([
  ['quartern', '`3 1/2 lb` of flour, the flour of a quartern loaf; of other things a quarter of a pint, peck or stone'],
]);

export interface UnitMisspelled {
  readonly word: string;
  /** The unit that was meant; absent for a measure of no size. */
  readonly write?: string;
  /** What a measure of several sizes comes to. */
  readonly comesTo?: string;
  readonly span: Span;
}

/** The first word of a name that nothing is known by, when it is nearly a unit and the rest is a food. */
export function unitMisspelled(ingredient: Ingredient, world: World): UnitMisspelled | undefined {
  const { node, match } = ingredient;
  const { amount, name } = node;
  if (name === undefined || amount?.kind !== 'measured' || amount.unit !== undefined || amount.counted !== undefined)
    return undefined;
  const [word = '', ...rest] = name.text.split(/\s+/);
  if (rest.length === 0 || word.length > 12) return undefined;
  // What nobody knows before a food that is known may be its unit.
  const known = match.kind === 'food' && match.unread?.includes(keyOf(word)) !== true;
  const one = singular(word.toLowerCase());
  const comesTo = OF_SEVERAL_SIZES.get(one);
  const vague = comesTo !== undefined || VAGUE.has(one);
  const write =
    unitPrinted(word.replace(/\.$/, ''))?.symbol ??
    (match.kind === 'unknown' || (match.kind === 'food' && !known) ? nearUnit(word.toLowerCase()) : undefined);
  if (
    (write === undefined && !vague) ||
    (vague && known) ||
    world.book.findInText(rest.join(' ').replace(/^of /, '')).kind === 'unknown'
  )
    return undefined;
  const span = { start: name.start, end: name.start + word.length };
  return { word, ...(write !== undefined && { write }), ...(comesTo !== undefined && { comesTo }), span };
}

function nearUnit(word: string): string | undefined {
  for (const unit of UNITS) {
    if (unit.dimension !== 'mass' && unit.dimension !== 'volume') continue;
    for (const spelling of [unit.symbol, ...unit.spellings]) {
      if (isNearly(spelling, word)) return unit.symbol;
    }
  }
  return undefined;
}

/** A letter or two off, or letters swapped behind the first. */
const isNearly = (spelling: string, word: string): boolean =>
  (spelling.length >= 4 &&
    Math.abs(spelling.length - word.length) <= 2 &&
    distance(spelling, word) <= (spelling.length > 6 ? 2 : 1)) ||
  (spelling.length >= 3 &&
    spelling.length === word.length &&
    spelling[0] === word[0] &&
    sorted(spelling) === sorted(word));

const sorted = (word: string): string => [...word].sort().join('');
