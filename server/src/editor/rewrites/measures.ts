/**
 * Knows the conversions offered for the lines of a range, and for the whole file from its first line.
 * Refuses those that would change nothing.
 */
import { wrongPlaces } from '../../checks/finding.ts';
import type { ConvertWish } from '../../edits/conversion.ts';
import { convertRecipe } from '../../edits/convert.ts';
import type { PositionRange } from '../../notation/document.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Part } from '../../recipe/model.ts';
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
  const edits = (wish: ConvertWish) => convertRecipe(document, recipe, { ...wish, marked }).edits;
  if (recipe.outline.recipe?.at === first)
    return ON_FILE.map(([title, wish]) => ({ title, kind: 'refactor.rewrite', edits: () => edits(wish) }));
  const part = partAt(snapshot, first);
  const base = part === undefined ? 0 : (recipe.partsAt[part.index] ?? 0);
  const rewrite = (title: string, wish: ConvertWish & Required<Pick<ConvertWish, 'lines'>>): Rewrite[] => {
    const { lines } = wish;
    const within = part !== undefined && lines.last < base + part.head.source.lines.length;
    const isMarked = marked.some(({ line }) => line >= lines.first && line <= lines.last);
    const has = () => edits(wish).length > 0;
    const offered =
      within && !isMarked ? keptFor(part, `${lines.first - base} ${lines.last - base} ${title}`, has) : has();
    return offered ? [{ title, kind: 'refactor.rewrite', edits: () => edits(wish) }] : [];
  };
  const found = ON_LINES.flatMap(([title, wish]) => rewrite(title, { ...wish, lines: { first, last } }));
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

const OFFERED = keptOn<Part, Map<string, boolean>>();

/** Whether something would change, asked once of a part that stays as it is. */
function keptFor(part: Part, key: string, ask: () => boolean): boolean {
  const offered = OFFERED.get(part) ?? new Map<string, boolean>();
  OFFERED.set(part, offered);
  const known = offered.get(key) ?? ask();
  offered.set(key, known);
  return known;
}
