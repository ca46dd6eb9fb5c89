/**
 * Knows how the forms of all rows are written into `data/prose/forms.tsv`, sorted, so that a start makes none: a form, and behind it what
 * stands for each row that has it (`made-forms.ts`).
 * Refuses to know how they are found (`lexicon.ts`).
 */
import { madeForms } from './made-forms.ts';
import { TABLES, type TableName } from './rows.ts';

/** A form that two rows of one part of speech have, and the first word of each. */
interface Claimed {
  readonly form: string;
  readonly as: TableName;
  readonly rows: readonly [string, string];
}

/** The lines of the table, and the forms that two rows claim. */
export function formsTable(): { readonly lines: readonly string[]; readonly claimed: readonly Claimed[] } {
  const { codes, claimed } = madeForms({
    verb: TABLES.verb.all(),
    thing: TABLES.thing.all(),
    time: TABLES.time.all(),
    sign: TABLES.sign.all(),
    joint: TABLES.joint.all(),
    evidence: TABLES.evidence.all(),
  });
  return {
    lines: [...codes].sort(([a], [b]) => (a < b ? -1 : 1)).map((row) => row.join('\t')),
    claimed: claimed.map(({ form, as, rows: [one, other] }) => {
      const name = (row: number): string => TABLES[as].at(row)?.words[0] ?? '';
      return { form, as, rows: [name(one), name(other)] };
    }),
  };
}

/** The text of the file. */
export const formsText = (): string =>
  `# Generated: the forms of the rows of this folder, sorted, with the letter of a table and the number of the row in it. Do not edit.\n${formsTable().lines.join('\n')}\n`;
