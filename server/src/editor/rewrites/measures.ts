/**
 * Knows the conversions offered for the lines of a range, and for the whole file from its first line.
 * Refuses those that would change nothing.
 */
import { wrongPlaces } from '../../checks/finding.ts';
import type { ConvertWish } from '../../edits/conversion.ts';
import { convertRecipe } from '../../edits/convert.ts';
import type { PositionRange } from '../../notation/document.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { partAt } from '../place.ts';
import type { Rewrite } from './rewrite.ts';

const ON_LINES: readonly (readonly [string, Omit<ConvertWish, 'lines'>])[] = [
  ['Write in grams', { to: 'weight' }],
  ['Write in US measures', { to: 'us' }],
  ['Write in metric measures', { to: 'metric' }],
  ['Show the grams beside the measure', { to: 'weight', both: true }],
  ['Show the US measure beside the grams', { to: 'us', both: true }],
];

const ON_FILE: readonly (readonly [string, Omit<ConvertWish, 'lines'>])[] = [
  ['Write the whole recipe in grams', { to: 'weight' }],
  ['Write the whole recipe in US measures', { to: 'us' }],
  ['Write the whole recipe in metric measures', { to: 'metric' }],
  ['Show the grams beside every measure', { to: 'weight', both: true }],
  ['Set every oven for a fan', { to: 'fan' }],
  ['Set every oven without a fan', { to: 'still' }],
];

export function measureRewrites(snapshot: Snapshot, range: PositionRange): Rewrite[] {
  const { document, recipe } = snapshot;
  const marked = wrongPlaces(snapshot.findings);
  const first = range.start.line;
  const last = Math.max(
    first,
    range.end.character === 0 && range.end.line > first ? range.end.line - 1 : range.end.line,
  );
  const rewrite = (title: string, wish: ConvertWish): Rewrite[] => {
    const { edits } = convertRecipe(document, recipe, { ...wish, marked });
    return edits.length === 0 ? [] : [{ title, kind: 'refactor.rewrite', edits: () => edits }];
  };
  if (recipe.outline.recipe?.at === first)
    return ON_FILE.map(([title, wish]) => ({
      title,
      kind: 'refactor.rewrite' as const,
      edits: () => convertRecipe(document, recipe, { ...wish, marked }).edits,
    }));
  const found = ON_LINES.flatMap(([title, wish]) => rewrite(title, { ...wish, lines: { first, last } }));
  const part = partAt(snapshot, first);
  const base = part === undefined ? 0 : (recipe.partsAt[part.index] ?? 0);
  const onList = part?.head.ingredients.some((i) => base + i.line === first) ?? false;
  if (part === undefined || !(onList || (part.head.source.named && base === first))) return found;
  const lines = { first: base, last: base + part.head.source.lines.length - 1 };
  return [
    ...found,
    ...rewrite("Write this part in baker's percentages", { to: 'percent', lines }),
    ...(part.head.ingredients.some((i) => i.percent !== undefined)
      ? rewrite('Write the percentages of this part in grams', { to: 'weight', lines })
      : []),
  ];
}
