/** Values of fields: pans, verdicts, yields, oven units, allergens. */
import type { Language } from '../../food/language.ts';
import { all, type Completion, type Completions, NOTHING, stops, type Typing } from './item.ts';
import { units } from './unit.ts';

interface Value {
  readonly label: string;
  /** With places for the caret: see `stops`. */
  readonly snippet?: string;
  readonly detail?: string;
}

/** `language` is the house's: a tin on one side of the ocean is a pan on the other. */
const pansIn = (language: Language | undefined): readonly Value[] => {
  const label = language === 'american' ? 'muffin pan' : 'muffin tin';
  return [...PANS, { label, snippet: `${label}, <12>`, detail: 'of the usual size' }, HALF_SHEET];
};

const PANS: readonly Value[] = [
  { label: 'round', snippet: 'round <24> x <3> cm', detail: 'across x deep' },
  { label: 'square', snippet: 'square <20> x <5> cm', detail: 'side x deep' },
  { label: 'rectangle', snippet: 'rectangle <30> x <20> x <4> cm', detail: 'long x wide x deep' },
  { label: 'loaf', snippet: 'loaf <21> x <11> x <6> cm', detail: 'long x wide x deep' },
  { label: 'ring', snippet: 'ring <24> x <8> x <10> cm', detail: 'across x hole x deep' },
];
const HALF_SHEET: Value = { label: 'half sheet', detail: 'of the usual size' };

export const completePan = ({ before, character, snapshot }: Typing): Completions =>
  values(before, character, /^\s*pan\s+(?:\d+\s*x\s*)?(\p{L}*)$/u, pansIn(snapshot.house.world.language));

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
      ({ label, snippet, detail }): Completion => ({
        label,
        kind: 'value',
        ...(detail !== undefined && { detail }),
        start,
        end: character,
        text: label,
        ...(snippet !== undefined && { snippet: stops(snippet) }),
        filter: label,
      }),
    ),
  );
}
