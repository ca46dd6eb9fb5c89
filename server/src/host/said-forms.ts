/**
 * Knows how the sorted table of forms is packed beside the tables it is made from: a form that stands there in a cell, or as one of several in it, is
 * a step from the one before to where it stands; the others are packed by themselves. Unpacked before a program starts.
 * Refuses to know what stands in it.
 */
import { packedForms, unpackedForms } from './packed-forms.ts';
import { BETWEEN_COLUMNS } from './table-columns.ts';

/** Most are the next: their step is not written. */
const USUAL_STEP = 1;

/** The forms, and behind those that no other table says the steps to those that they do, and what stands beside each. */
export function packedSaid(forms: string, tables: readonly string[]): string {
  const beside = new Map(rowsOf(forms).map((row) => [formOf(row), row.slice(formOf(row).length + 1)]));
  const steps: string[] = [];
  const besideSaid: string[] = [];
  let last = -1;
  saidIn(tables).forEach((form, at) => {
    const own = beside.get(form);
    if (own === undefined) return;
    steps.push(at - last === USUAL_STEP ? '' : String(at - last));
    besideSaid.push(own);
    beside.delete(form);
    last = at;
  });
  const others = [...beside].map(([form, own]) => `${form}\t${own}\n`);
  return [packedForms(`#\n${others.join('')}`), steps.join('\n'), besideSaid.join('\n')].join(BETWEEN_COLUMNS);
}

/** The table of forms, from the same tables. */
export function unpackedSaid(text: string, tables: readonly string[]): string {
  const [others = '', steps = '', besideSaid = ''] = text.split(BETWEEN_COLUMNS);
  const said = saidIn(tables);
  const beside = besideSaid.split('\n');
  const rows = rowsOf(unpackedForms(others));
  let at = -1;
  if (besideSaid !== '')
    steps.split('\n').forEach((step, row) => {
      at += step === '' ? USUAL_STEP : Number(step);
      rows.push(`${said[at]}\t${beside[row]}`);
    });
  // By their codes, as they were.
  return `#\n${rows.sort().join('\n')}\n`;
}

const rowsOf = (table: string): string[] => table.split('\n').slice(1, -1);
const formOf = (row: string): string => row.slice(0, row.indexOf('\t'));

/** What the tables say, each once, in their order. */
const saidIn = (tables: readonly string[]): readonly string[] => [
  ...new Set(tables.flatMap((table) => table.split(/[;\t\n]/))),
];
