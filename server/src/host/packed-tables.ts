/**
 * Knows how the tables lie in the packed file: one after the other, each by its columns, what several name as steps in one order,
 * the forms of words by what they share.
 * Refuses to know what stands in them.
 */
import { packedForms, unpackedForms } from './packed-forms.ts';
import { packedIds, unpackedIds } from './packed-ids.ts';
import { BETWEEN_TABLES } from './program.ts';
import { byColumns, byRows } from './table-columns.ts';

/** A table without its remark, which is for who reads it here. */
export const packedTable = (path: string, table: string): string =>
  path.endsWith('forms.tsv') ? packedForms(table) : byColumns(table.replace(/^#.*/, '#'));

/** All of them, packed one by one. */
export const packedTogether = (tables: readonly string[]): string => packedIds(tables).join(BETWEEN_TABLES);

/** Each as it is read. */
export const unpackedTables = (packed: string): readonly string[] =>
  unpackedIds(packed.split(BETWEEN_TABLES)).map((table) => unpackedForms(byRows(table)));
