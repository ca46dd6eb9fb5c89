/**
 * Knows how the tables lie in the packed file: one after the other, each by its columns, what several name as steps in one order, the forms of
 * words by where the tables beside them say them.
 * Refuses to know what stands in them.
 */
import { packedIds, unpackedIds } from './packed-ids.ts';
import { BETWEEN_TABLES } from './program.ts';
import { packedSaid, unpackedSaid } from './said-forms.ts';
import { byColumns, byRows } from './table-columns.ts';

/** A table that has a form of its own begins with it, others with a remark. */
export interface Table {
  readonly path: string;
  readonly text: string;
}

/** The table of forms begins with this, and from which to which table it is made. */
const FORMS = /^@(\d+) (\d+)\n/;
const isForms = (path: string): boolean => path.endsWith('forms.tsv');

/** All tables, those of a folder one after the other, without their remarks and the sources that no program asks for, which are for who reads them here. */
export function packedTables(tables: readonly Table[]): string {
  const texts = tables.map(asPacked);
  const packed = tables.map(({ path }, at) => {
    const text = texts[at] ?? '';
    if (!isForms(path)) return byColumns(text);
    const folder = path.slice(0, -'forms.tsv'.length);
    const from = tables.findIndex((table) => table.path.startsWith(folder));
    const to = tables.findLastIndex((table) => table.path.startsWith(folder)) + 1;
    return `@${from} ${to}\n${packedSaid(text, besides(texts, at, from, to))}`;
  });
  return packedIds(packed).join(BETWEEN_TABLES);
}

/** Of these nobody is told where a row is from. */
const UNASKED = /\b(?:(?:prose|heat)[\\/][\w-]+|food-families)\.tsv$/;
const LAST_CELL = /\t[^\t\n]*$/gm;

/** A table without what stays here. */
export function asPacked({ path, text }: Table): string {
  const rows = text.replace(/^#.*/, '#');
  return UNASKED.test(path) && /^#\n.*\tsource\n/.test(rows) ? rows.replace(LAST_CELL, '') : rows;
}

/** Each as it is read. */
export function unpackedTables(packed: string): readonly string[] {
  const texts = unpackedIds(packed.split(BETWEEN_TABLES)).map(byRows);
  return texts.map((text, at) => {
    const [mark, from, to] = FORMS.exec(text) ?? [];
    if (mark === undefined) return text;
    return unpackedSaid(text.slice(mark.length), besides(texts, at, Number(from), Number(to)));
  });
}

/** The tables from one to another, but for this. */
const besides = (texts: readonly string[], at: number, from: number, to: number): readonly string[] =>
  texts.slice(from, to).filter((_, other) => from + other !== at);
