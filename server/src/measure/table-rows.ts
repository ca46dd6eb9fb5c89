/**
 * Knows how a table of `server/data` is cut: a remark, a heading, then a row to a line, its cells between tabs.
 * Refuses to know what the cells say.
 */

/** The rows behind remark and heading, as cells. */
export const rowsIn = (text: string): readonly (readonly string[])[] =>
  text
    .split('\n')
    .slice(2)
    .filter((line) => line !== '')
    .map((line) => line.split('\t'));

/** The words of a cell that `;` parts; none of an empty one. */
export const wordsIn = (cell = ''): readonly string[] => cell.split(';').filter((word) => word !== '');
