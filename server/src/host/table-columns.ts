/**
 * Knows how a table is packed column by column, a twelfth smaller than row by row: what stands below each other is alike. Figures that stand
 * beside each other stay together.
 * Refuses to know what stands in it.
 */

/** A table that is turned begins with this, one that is not with a remark, or with a form of its own. */
export const TURNED = '|';
export const BETWEEN_COLUMNS = '\u0001';
/** In the place of columns that a row is too short for. */
const NONE = '\u0002';

/** The table by its columns; one that has no rows to turn, as it is. */
export function byColumns(table: string): string {
  const [remark, ...rows] = table.split('\n');
  if (remark !== '#' || rows.pop() !== '' || table.includes(BETWEEN_COLUMNS) || table.includes(NONE)) return table;
  const cells = rows.map((row) => row.split('\t'));
  const width = Math.max(0, ...cells.map(({ length }) => length));
  if (width < 2) return table;
  const areFigures = Array.from({ length: width }, (_, at) => figuresIn(cells.map((row) => row[at] ?? '')));
  const starts = areFigures.flatMap((are, at) => (at > 0 && are && areFigures[at - 1] === true ? [] : [at]));
  const columns = starts.map((start, at) =>
    cells.map((row) => (row.length > start ? row.slice(start, starts[at + 1]).join('\t') : NONE)).join('\n'),
  );
  return TURNED + columns.join(BETWEEN_COLUMNS);
}

/** Below a word that names them. */
function figuresIn([, ...column]: readonly string[]): boolean {
  const said = column.filter((cell) => cell !== '');
  return said.filter((cell) => /^[\d.]+$/.test(cell)).length > said.length * 0.8;
}

/** The table by its rows again; one that was not turned, as it is. */
export function byRows(packed: string): string {
  if (!packed.startsWith(TURNED)) return packed;
  const [first = [], ...others] = packed
    .slice(TURNED.length)
    .split(BETWEEN_COLUMNS)
    .map((column) => column.split('\n'));
  const rows = first.map((start, row) => {
    let text = start;
    for (const column of others) {
      const cells = column[row] ?? NONE;
      if (cells === NONE) break;
      text += `\t${cells}`;
    }
    return text;
  });
  return `#\n${rows.join('\n')}\n`;
}
