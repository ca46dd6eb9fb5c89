/** Values of fields: verdicts, yields, oven units, allergens. */
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';
import { units } from './unit.ts';

interface Value {
  readonly label: string;
  readonly detail?: string;
}

const VERDICTS: readonly Value[] = [
  { label: 'keep', detail: 'it is right' },
  { label: 'change', detail: 'it needs another trial' },
  { label: 'reject', detail: 'it is given up' },
];

export const completeVerdict = ({ before, character }: Typing): Completions =>
  values(before, character, /^\s*verdict\s+(\p{L}*)$/u, VERDICTS);

const MADE: readonly Value[] = ['slices', 'servings', 'pieces', 'rolls', 'loaves', 'jars', 'g', 'kg', 'l'].map(
  (label) => ({ label }),
);

export const completeYield = ({ before, character }: Typing): Completions =>
  values(before, character, /^\s*yield\s+\d[\d.\s/-]*\s(\p{L}*)$/u, MADE);

export function completeOven({ before, character }: Typing): Completions {
  const match = /\d\s*(°?\p{L}*)$/u.exec(before);
  return match === null ? NOTHING : units(['C fan', 'C', 'F'], character - (match[1] ?? '').length, character);
}

/** Words of `contains` lines. */
const ALLERGENS: readonly Value[] = [
  'wheat',
  'gluten',
  'milk',
  'egg',
  'fish',
  'crustaceans',
  'molluscs',
  'peanut',
  'tree nuts',
  'soy',
  'sesame',
  'celery',
  'mustard',
  'lupin',
  'sulphites',
].map((label) => ({ label }));

export const completeAllergen = ({ before, character }: Typing): Completions =>
  values(before, character, /(?:^\s*contains\s|,)\s*(\p{L}*)$/u, ALLERGENS);

function values(before: string, character: number, at: RegExp, from: readonly Value[]): Completions {
  const match = at.exec(before);
  if (match === null) return NOTHING;
  const start = character - (match[1] ?? '').length;
  return all(
    from.map(
      ({ label, detail }): Completion => ({
        label,
        kind: 'value',
        ...(detail !== undefined && { detail }),
        start,
        end: character,
        text: label,
        filter: label,
      }),
    ),
  );
}
