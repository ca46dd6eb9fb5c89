/**
 * Knows how turned tables share what they name: a table that gives things an id and a name leaves out a name that is the words of its id, and one
 * that only has ids says how far each stands behind the one before, in the order of the first.
 * Refuses to know what is named.
 */
import { BETWEEN_COLUMNS, TURNED } from './table-columns.ts';

/** A packed table begins with one of these, in the place of what a turned one begins with. */
const [NAMING, NAMED] = ['^', '~'];
const [IDS, NAMES] = ['id\n', 'name\n'];
/** Most rows are about the next thing: their step is not written. */
const USUAL_STEP = 1;

/** All tables, in the order in which they are unpacked. */
export function packedIds(tables: readonly string[]): readonly string[] {
  const places = new Map(idsOf(tables.filter(isNaming)).map((id, at) => [id, at]));
  return tables.map((table) => {
    if (isNaming(table)) return withNames(NAMING, table, (name, words) => (name === words ? '' : name));
    if (!table.startsWith(TURNED + IDS)) return table;
    const at = cellsOf(table, 0).map((id) => places.get(id) ?? Number.NaN);
    if (at.some(Number.isNaN)) return table;
    return withIds(
      NAMED,
      table,
      at.map((place, row) => stepText(place - (at[row - 1] ?? 0))),
    );
  });
}

/** The tables as they were; those that are not packed, as they are. */
export function unpackedIds(packed: readonly string[]): readonly string[] {
  const ids = idsOf(packed.filter((table) => table.startsWith(NAMING)));
  return packed.map((table) => {
    if (table.startsWith(NAMING)) return withNames(TURNED, table, (name, words) => name || words);
    if (!table.startsWith(NAMED)) return table;
    let place = 0;
    return withIds(
      TURNED,
      table,
      cellsOf(table, 0).map((step) => {
        place += step === '' ? USUAL_STEP : Number(step);
        return ids[place] ?? '';
      }),
    );
  });
}

const stepText = (step: number): string => (step === USUAL_STEP ? '' : String(step));

/** Whether it has an id and a name in each row. */
function isNaming(table: string): boolean {
  const [ids = '', names = ''] = table.split(BETWEEN_COLUMNS, 2);
  return ids.startsWith(TURNED + IDS) && names.startsWith(NAMES) && !`${names}\n`.includes('\n\n');
}

/** Each once. */
const idsOf = (tables: readonly string[]): readonly string[] => [
  ...new Set(tables.flatMap((table) => cellsOf(table, 0))),
];

/** What stands in a column, without the word that names it. */
const cellsOf = (table: string, column: number): readonly string[] =>
  (table.split(BETWEEN_COLUMNS, column + 1)[column] ?? '').split('\n').slice(1);

function withIds(mark: string, table: string, cells: readonly string[]): string {
  const end = table.indexOf(BETWEEN_COLUMNS);
  return `${mark}${IDS}${cells.join('\n')}${table.slice(end)}`;
}

/** Each name as it is made from what stands there and the words of its id. */
function withNames(mark: string, table: string, made: (name: string, words: string) => string): string {
  const [ids = '', , ...others] = table.split(BETWEEN_COLUMNS);
  const names = cellsOf(table, 1);
  const cells = cellsOf(table, 0).map((id, row) => made(names[row] ?? '', id.replaceAll('-', ' ')));
  return [mark + ids.slice(mark.length), NAMES + cells.join('\n'), ...others].join(BETWEEN_COLUMNS);
}
