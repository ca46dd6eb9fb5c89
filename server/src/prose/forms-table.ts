/**
 * Knows how the forms of all rows are written into `data/prose/forms.tsv`, sorted, so that a start makes none: a form, and behind it a letter
 * and number for each row that has it.
 * Refuses to know how they are found (`lexicon.ts`).
 */
import { FORM_LETTERS, nounForms, verbForms } from './forms.ts';
import { TABLES, type TableName, type TimeRow, type VerbRow } from './rows.ts';

/** A form that two rows of one part of speech have: the second one is not heard. */
export interface Claimed {
  readonly form: string;
  readonly as: TableName;
  readonly rows: readonly [string, string];
}

/** The letter of a table. */
const TABLE_LETTERS = {
  verb: 'v',
  thing: 't',
  joint: 'j',
  time: 'm',
  sign: 's',
  evidence: 'e',
} as const satisfies Readonly<Record<TableName, string>>;
/** The word alone begins verbs of more words, as a form of another: `bringing` of `bring`. */
const HEAD = '>';
/** Words without one of which no time is said, but in figures. */
const OF_TIME = 'h';

/** The lines of the table, and the forms that two rows claim. */
export function formsTable(): { readonly lines: readonly string[]; readonly claimed: readonly Claimed[] } {
  const codes = new Map<string, string[]>();
  const owners = new Map<string, number>();
  const claimed: Claimed[] = [];
  const add = (form: string, code: string): void => {
    const own = codes.get(form);
    if (own === undefined) codes.set(form, [code]);
    else if (!own.includes(code)) own.push(code);
  };
  const claim = (form: string, as: TableName, row: number, ending = ''): void => {
    const key = `${as} ${form}`;
    const other = owners.get(key);
    if (other === undefined) {
      owners.set(key, row);
      add(form, `${TABLE_LETTERS[as]}${row}${ending}`);
    } else if (other !== row) {
      const name = (number: number): string => TABLES[as].at(number)?.words[0] ?? '';
      claimed.push({ form, as, rows: [name(other), name(row)] });
    }
  };
  TABLES.verb.all().forEach((row, at) => {
    for (const verb of row.words) {
      const [head = '', ...rest] = verb.split(' ');
      const forms = verbForms(head, givenFor(verb, row));
      if (rest.length === 0) for (const [form, as] of forms) claim(form, 'verb', at + 1, FORM_LETTERS[as]);
      else {
        claim(verb, 'verb', at + 1, FORM_LETTERS[forms[0]?.[1] ?? 'base']);
        for (const [form, as] of forms) add(form, `${HEAD}${head}:${FORM_LETTERS[as]}`);
      }
    }
  });
  TABLES.thing.all().forEach(({ words }, at) => {
    for (const form of words.flatMap(nounForms)) claim(form, 'thing', at + 1);
  });
  TABLES.time.all().forEach((row, at) => {
    for (const form of timeForms(row)) claim(form, 'time', at + 1);
  });
  for (const as of ['sign', 'joint', 'evidence'] as const)
    TABLES[as].all().forEach((row, at) => {
      for (const form of row.words) claim(form, as, at + 1);
    });
  for (const word of wordsOfTime(TABLES.time.all())) add(word, OF_TIME);
  const lines = [...codes].sort(([a], [b]) => (a < b ? -1 : 1)).map(([form, own]) => [form, ...own].join('\t'));
  return { lines, claimed };
}

/** The text of the file. */
export const formsText = (): string =>
  `# Generated: the forms of the rows of this folder, sorted, with the letter of a table and the number of the row in it. Do not edit.\n${formsTable().lines.join('\n')}\n`;

/** `take out` and `take off` have the forms of their first word in common, `quick-freeze` and `blast-freeze` of its second part. */
function givenFor(verb: string, { words, forms }: VerbRow): readonly string[] {
  const first = (of: string): string => of.split(' ', 1)[0] ?? of;
  const [own, given] = [first(verb), first(words[0] ?? '')];
  if (own === given) return forms;
  const [part, of] = [own.lastIndexOf('-') + 1, given.lastIndexOf('-') + 1];
  if (part === 0 || own.slice(part) !== given.slice(of)) return [];
  return forms.map((form) => own.slice(0, part) + form.slice(of));
}

/** `weeks`, but no `lasts`. */
const timeForms = ({ is, words }: TimeRow): readonly string[] => (COUNTED.has(is) ? words.flatMap(nounForms) : words);
const COUNTED: ReadonlySet<TimeRow['is']> = new Set(['unit', 'hour', 'day', 'horizon', 'none']);

const MAKES_TIME: ReadonlySet<TimeRow['is']> = new Set(['unit', 'span', 'hour', 'day', 'horizon', 'next', 'clock']);

/** Where a sentence has none of these, it says no time but in figures: the other rows only stand beside one. */
function wordsOfTime(rows: readonly TimeRow[]): ReadonlySet<string> {
  const forms = rows.filter(({ is }) => MAKES_TIME.has(is)).flatMap(timeForms);
  const words = new Set(forms.filter((form) => !form.includes(' ')));
  for (const form of forms) {
    const parts = form.split(' ');
    if (!parts.some((part) => words.has(part))) words.add(parts.at(-1) ?? '');
  }
  return words;
}
