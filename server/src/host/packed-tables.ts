/**
 * Knows how the tables lie in the packed file: one after the other, each by its columns, what several name as steps in one order, the forms of
 * words, and what names end with, by where the tables beside them say them.
 * Refuses to know what stands in them.
 */
import { packedEndings, unpackedEndings } from './packed-endings.ts';
import { packedIds, unpackedIds } from './packed-ids.ts';
import { BETWEEN_TABLES } from './program.ts';
import { packedSaid, unpackedSaid } from './said-forms.ts';
import { byColumns, byRows } from './table-columns.ts';

/** A table that has a form of its own begins with it, others with a remark. */
export interface Table {
  readonly path: string;
  readonly text: string;
}

/** A table that others make begins with this, and from which to which table it is made. */
const MADE = /^([@%])(\d+) (\d+)\n/;

interface Making {
  readonly file: string;
  readonly packed: (text: string, tables: readonly string[]) => string;
  readonly unpacked: (text: string, tables: readonly string[]) => string;
}

const MAKINGS: ReadonlyMap<string, Making> = new Map([
  ['@', { file: 'forms.tsv', packed: packedSaid, unpacked: unpackedSaid }],
  ['%', { file: 'endings.tsv', packed: packedEndings, unpacked: unpackedEndings }],
]);

/** All tables, those of a folder one after the other, without their remarks and the sources that no program asks for, which are for who reads them here. */
export function packedTables(tables: readonly Table[]): string {
  const texts = tables.map(asPacked);
  const packed = tables.map(({ path }, at) => {
    const text = texts[at] ?? '';
    const [mark, making] = [...MAKINGS].find(([, { file }]) => path.endsWith(file)) ?? [];
    if (making === undefined) return byColumns(text);
    const folder = path.slice(0, -making.file.length);
    const from = tables.findIndex((table) => table.path.startsWith(folder));
    const to = tables.findLastIndex((table) => table.path.startsWith(folder)) + 1;
    return `${mark}${from} ${to}\n${making.packed(text, besides(texts, at, from, to))}`;
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
    const [begins = '', mark = '', from, to] = MADE.exec(text) ?? [];
    const making = MAKINGS.get(mark);
    return making?.unpacked(text.slice(begins.length), besides(texts, at, Number(from), Number(to))) ?? text;
  });
}

/** The tables from one to another, but for this. */
const besides = (texts: readonly string[], at: number, from: number, to: number): readonly string[] =>
  texts.slice(from, to).filter((_, other) => from + other !== at);
