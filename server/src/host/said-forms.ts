/**
 * Knows how the sorted table of forms is packed: not at all, as the tables beside it make it, but for the rows in which it is otherwise. Made again
 * before a program starts.
 * Refuses to know what the forms mean.
 */
import { type FormRows, madeForms } from '../prose/made-forms.ts';

/** By the heading of its first column, what the rows of a table are. */
const SORTS: ReadonlyMap<string, keyof FormRows> = new Map([
  ['verb', 'verb'],
  ['place', 'thing'],
  ['vessel', 'thing'],
  ['medium', 'thing'],
  ['joint', 'joint'],
  ['time', 'time'],
  ['sign', 'sign'],
  ['word', 'evidence'],
]);
/** Those of a sort one after the other. */
const IN_ORDER = [...SORTS.keys()];

/** The rows that are otherwise, and those forms alone that are not there. */
export function packedSaid(forms: string, tables: readonly string[]): string {
  const made = madeBy(tables);
  const own = forms.split('\n').slice(1, -1);
  const others = own.filter((row) => made.get(formOf(row)) !== row.slice(formOf(row).length + 1));
  const said = new Set(own.map(formOf));
  return [...others, ...[...made.keys()].filter((form) => !said.has(form))].join('\n');
}

/** The table of forms, from the same tables. */
export function unpackedSaid(text: string, tables: readonly string[]): string {
  const made = madeBy(tables);
  if (text !== '')
    for (const row of text.split('\n')) {
      const form = formOf(row);
      if (form === row) made.delete(form);
      else made.set(form, row.slice(form.length + 1));
    }
  let rows = '#\n';
  for (const form of [...made.keys()].sort()) rows += `${form}\t${made.get(form)}\n`;
  return rows;
}

const formOf = (row: string): string => row.split('\t', 1)[0] ?? row;

/** What stands behind each form. */
function madeBy(tables: readonly string[]): Map<string, string> {
  const read = tables.flatMap((table) => asRead(table) ?? []);
  const rows = (of: keyof FormRows): readonly Row[] =>
    read.filter(({ heading }) => SORTS.get(heading) === of).flatMap(({ rows }) => rows);
  read.sort((a, b) => IN_ORDER.indexOf(a.heading) - IN_ORDER.indexOf(b.heading));
  return madeForms({
    verb: rows('verb'),
    thing: rows('thing'),
    joint: rows('joint'),
    time: rows('time'),
    sign: rows('sign'),
    evidence: rows('evidence'),
  }).codes;
}

type Row = FormRows['verb'][number] & FormRows['time'][number];

/** As far as forms are made from it; nothing where none are. */
function asRead(table: string): { readonly heading: string; readonly rows: readonly Row[] } | undefined {
  const [, columns = '', ...lines] = table.split('\n');
  const names = columns.split('\t');
  const heading = names[0] ?? '';
  if (!SORTS.has(heading)) return undefined;
  const [also, forms, is] = ['also', 'forms', 'is'].map((name) => names.indexOf(name));
  const rows = lines.slice(0, -1).map((line) => {
    const cells = line.split('\t');
    const list = (at = -1): string[] => (cells[at] ? cells[at].split(';') : []);
    return { words: [cells[0] ?? '', ...list(also)], forms: list(forms), is: cells[is ?? -1] ?? '' };
  });
  return { heading, rows };
}
