/**
 * Knows how words of a recipe stand in Markdown as the text that they are: no mark, no link, no HTML, no formula.
 * Refuses to know what is said.
 */

/** Marks wherever they stand, and what would begin an entity. */
const MARKS = /[\\`*_{}[\]<>#|~$]|&(?=#?\w+;)/g;
/** What would begin a list or a rule at the beginning of a paragraph. */
const BEGINS = /^(?:[-+](?=\s|$)|[-=](?=[-=\s]*$))|^(\d{1,9})([.)])(?=\s|$)/;

/** A text that somebody wrote. */
export const markdownText = (text: string): string =>
  text
    .replace(MARKS, '\\$&')
    .replace(BEGINS, (begins, number?: string, point?: string) =>
      number === undefined ? `\\${begins}` : `${number}\\${point}`,
    );

/** What a link, an image, HTML, an entity or a formula begins with, and what strikes words out. */
const FOREIGN = /\\(?!\|)|[[\]<>$~`]|&(?=#?\w+;)/g;
/** Between two marks that stand alone: a run of them would end at another such run. */
const CODE = /(?<!`)(`[^`]+`)(?!`)/;

/**
 * A line of Quern's own Markdown in which words of a recipe stand: its emphasis, its tables and its code stay, and nothing of the recipe
 * becomes a link, an image or HTML.
 */
export const markdownLine = (line: string): string =>
  line
    .split(CODE)
    .map((piece, i) => (i % 2 === 1 ? piece : piece.replace(FOREIGN, '\\$&')))
    .join('');
