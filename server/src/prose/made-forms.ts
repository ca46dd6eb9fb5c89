/**
 * Knows which forms the rows of the lexicon's tables have, and how each is written down: a letter and number for each row that has it.
 * Refuses to know what else the rows say, and how a form is found (`lexicon.ts`).
 */
import { FORM_LETTERS, nounForms, verbForms } from './forms.ts';
import type { TableName, TimeRow, VerbRow } from './rows.ts';

/** As much of the rows as makes forms, in the order of their numbers. */
export interface FormRows extends Readonly<Record<Exclude<TableName, 'verb' | 'time'>, readonly Worded[]>> {
  readonly verb: readonly Pick<VerbRow, 'words' | 'forms'>[];
  readonly time: readonly (Worded & { readonly is: string })[];
}
type Worded = Pick<VerbRow, 'words'>;

/** A form that two rows of one part of speech have: the second one is not heard. */
export interface Claimed {
  readonly form: string;
  readonly as: TableName;
  /** From 1. */
  readonly rows: readonly [number, number];
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

/** The forms with what stands behind each, a tab between, and those that two rows claim. */
export function madeForms(rows: FormRows): {
  readonly codes: Map<string, string>;
  readonly claimed: readonly Claimed[];
} {
  const codes = new Map<string, string>();
  const claimed: Claimed[] = [];
  const add = (form: string, code: string): void => {
    const own = codes.get(form);
    if (own === undefined) codes.set(form, code);
    else if (!`\t${own}\t`.includes(`\t${code}\t`)) codes.set(form, `${own}\t${code}`);
  };
  let owners = new Map<string, number>();
  const claim = (form: string, as: TableName, row: number, code: string): void => {
    const other = owners.get(form);
    if (other === undefined) {
      owners.set(form, row);
      add(form, code);
    } else if (other !== row) claimed.push({ form, as, rows: [other, row] });
  };
  const claimAll = (as: TableName, formsOf: readonly (readonly string[])[]): void => {
    owners = new Map();
    formsOf.forEach((forms, at) => {
      const code = `${TABLE_LETTERS[as]}${at + 1}`;
      for (const form of forms) claim(form, as, at + 1, code);
    });
  };
  rows.verb.forEach((row, at) => {
    const code = `${TABLE_LETTERS.verb}${at + 1}`;
    for (const verb of row.words) {
      const blank = verb.indexOf(' ');
      const head = blank < 0 ? verb : verb.slice(0, blank);
      const forms = verbForms(head, givenFor(verb, row));
      if (blank < 0) for (const [form, as] of forms) claim(form, 'verb', at + 1, code + FORM_LETTERS[as]);
      else {
        claim(verb, 'verb', at + 1, code + FORM_LETTERS[forms[0]?.[1] ?? 'base']);
        for (const [form, as] of forms) add(form, `${HEAD}${head}:${FORM_LETTERS[as]}`);
      }
    }
  });
  claimAll(
    'thing',
    rows.thing.map(({ words }) => words.flatMap(nounForms)),
  );
  claimAll('time', rows.time.map(timeForms));
  for (const as of ['sign', 'joint', 'evidence'] as const)
    claimAll(
      as,
      rows[as].map(({ words }) => words),
    );
  for (const word of wordsOfTime(rows.time)) add(word, OF_TIME);
  return { codes, claimed };
}

/** `take out` and `take off` have the forms of their first word in common, `quick-freeze` and `blast-freeze` of its second part. */
function givenFor(verb: string, { words, forms }: FormRows['verb'][number]): readonly string[] {
  const first = (of: string): string => of.split(' ', 1)[0] ?? of;
  const [own, given] = [first(verb), first(words[0] ?? '')];
  if (own === given) return forms;
  const [part, of] = [own.lastIndexOf('-') + 1, given.lastIndexOf('-') + 1];
  if (part === 0 || own.slice(part) !== given.slice(of)) return [];
  return forms.map((form) => own.slice(0, part) + form.slice(of));
}

type OfTime = FormRows['time'][number];

/** `weeks`, but no `lasts`. */
const timeForms = ({ is, words }: OfTime): readonly string[] => (COUNTED.has(is) ? words.flatMap(nounForms) : words);
const COUNTED: ReadonlySet<string> = new Set(['unit', 'hour', 'day', 'horizon', 'none'] satisfies TimeRow['is'][]);

const MAKES_TIME: ReadonlySet<string> = new Set([
  'unit',
  'span',
  'hour',
  'day',
  'horizon',
  'next',
  'clock',
] satisfies TimeRow['is'][]);

/** Where a sentence has none of these, it says no time but in figures: the other rows only stand beside one. */
function wordsOfTime(rows: readonly OfTime[]): ReadonlySet<string> {
  const forms = rows.filter(({ is }) => MAKES_TIME.has(is)).flatMap(timeForms);
  const words = new Set(forms.filter((form) => !form.includes(' ')));
  for (const form of forms) {
    const parts = form.split(' ');
    if (!parts.some((part) => words.has(part))) words.add(parts.at(-1) ?? '');
  }
  return words;
}
