/**
 * Knows every form of every row: a word, or words behind each other, is a number (its sense), and a sense is at most one row of each table.
 * Refuses to know which of them a word is where it stands.
 */
import { FORMS, type Form, nounForms, verbForms } from './forms.ts';
import {
  type EvidenceRow,
  type JointRow,
  readEvidence,
  readJoints,
  readSigns,
  readThings,
  readTimes,
  readVerbs,
  type SignRow,
  type ThingRow,
  type TimeRow,
  type VerbRow,
} from './rows.ts';

/** What nobody knows. */
export const UNKNOWN = 0;

/** The rows of each table; that at 0 stands for none. */
const ROWS = {
  verb: [undefined, ...readVerbs()],
  thing: [undefined, ...readThings()],
  joint: [undefined, ...readJoints()],
  time: [undefined, ...readTimes()],
  sign: [undefined, ...readSigns()],
  evidence: [undefined, ...readEvidence()],
} as const;
type Table = keyof typeof ROWS;

/** A form that two rows of one part of speech have: the second one is not heard. */
export interface Claimed {
  readonly form: string;
  readonly as: Table;
  readonly rows: readonly [string, string];
}

/** The most words, and words behind each other, that the tables may have. */
const MOST = 1 << 15;
/** By sense the number of its row of each table, and the form of its verb by its number in FORMS. */
const OF: Readonly<Record<Table, Uint16Array>> = {
  verb: new Uint16Array(MOST),
  thing: new Uint16Array(MOST),
  joint: new Uint16Array(MOST),
  time: new Uint16Array(MOST),
  sign: new Uint16Array(MOST),
  evidence: new Uint16Array(MOST),
};
const FORM_OF = new Uint8Array(MOST);
/** A verb of more words begins so: they may stand behind its object. */
const BEGINS = new Uint8Array(MOST);
/** Words without one of which no time is said, but in figures. */
const HAS_TIME = new Uint8Array(MOST);
/** The sense is a row's, and does not only begin a longer one. */
const IS_ROW = new Uint8Array(MOST);

const BY_WORD = new Map<string, number>();
/** From a sense and the next word on to the longer sense: `sense * MOST + word`. */
const LONGER = new Map<number, number>();
const claimed: Claimed[] = [];
let senses = 1;

function numberOf(form: string): number {
  let sense = UNKNOWN;
  for (const word of form.split(' ')) {
    let own = BY_WORD.get(word);
    if (own === undefined) {
      own = senses++;
      BY_WORD.set(word, own);
    }
    if (sense === UNKNOWN) sense = own;
    else {
      const key = sense * MOST + own;
      let longer = LONGER.get(key);
      if (longer === undefined) {
        longer = senses++;
        LONGER.set(key, longer);
      }
      sense = longer;
    }
  }
  return sense;
}

/** Gives a form to a row; false where another row has it. */
function claim(form: string, as: Table, row: number): boolean {
  const sense = numberOf(form);
  const other = OF[as][sense] ?? 0;
  if (other !== 0) {
    if (other !== row)
      claimed.push({ form, as, rows: [ROWS[as][other]?.words[0] ?? '', ROWS[as][row]?.words[0] ?? ''] });
    return false;
  }
  OF[as][sense] = row;
  IS_ROW[sense] = 1;
  return true;
}

function claimAll(as: Table, forms: (word: string) => readonly string[]): void {
  ROWS[as].forEach((row, at) => {
    for (const word of row?.words ?? []) for (const form of forms(word)) claim(form, as, at);
  });
}

ROWS.verb.forEach((row, at) => {
  row?.words.forEach((verb) => {
    for (const [form, as] of verbForms(verb, givenFor(verb, row))) {
      if (!claim(form, 'verb', at)) continue;
      FORM_OF[numberOf(form)] = FORMS.indexOf(as) + 1;
      const blank = form.indexOf(' ');
      if (blank > 0) BEGINS[numberOf(form.slice(0, blank))] = 1;
    }
  });
});
const MAKES_TIME: ReadonlySet<TimeRow['is']> = new Set(['unit', 'span', 'hour', 'day', 'horizon', 'next', 'clock']);
const asItIs = (word: string): readonly string[] => [word];
claimAll('thing', nounForms);
claimAll('time', nounForms);
// Where a sentence has none of these, it says no time but in figures: the other rows only stand beside one.
const timeForms = ROWS.time.flatMap((row) =>
  row !== undefined && MAKES_TIME.has(row.is) ? row.words.flatMap(nounForms) : [],
);
const wordsOf = (form: string): readonly number[] => form.split(' ').map((word) => BY_WORD.get(word) ?? UNKNOWN);
for (const sense of timeForms.filter((form) => !form.includes(' ')).flatMap(wordsOf)) HAS_TIME[sense] = 1;
for (const words of timeForms.map(wordsOf))
  if (!words.some((sense) => HAS_TIME[sense] === 1)) HAS_TIME[words.at(-1) ?? UNKNOWN] = 1;
claimAll('sign', asItIs);
claimAll('joint', asItIs);
claimAll('evidence', asItIs);

/** `take out` and `take off` have the forms of their first word in common, `quick-freeze` and `blast-freeze` of its second part. */
function givenFor(verb: string, { words, forms }: VerbRow): readonly string[] {
  const first = (of: string): string => of.split(' ', 1)[0] ?? of;
  const [own, given] = [first(verb), first(words[0] ?? '')];
  if (own === given) return forms;
  const [part, of] = [own.lastIndexOf('-') + 1, given.lastIndexOf('-') + 1];
  if (part === 0 || own.slice(part) !== given.slice(of)) return [];
  return forms.map((form) => own.slice(0, part) + form.slice(of));
}

/** Forms that two rows claim: a test holds that there are none. */
export const twiceClaimed: readonly Claimed[] = claimed;

/** The sense of a word in small letters with a straight apostrophe; `UNKNOWN` where no row has it. `ice-box` is `ice box`, too. */
export function senseOf(word: string): number {
  const sense = BY_WORD.get(word);
  if (sense !== undefined && (IS_ROW[sense] === 1 || !word.includes('-'))) return sense;
  // `to taste` is one word of a sentence.
  const parted = word.search(/[- ]/);
  if (parted < 0) return UNKNOWN;
  let longer = BY_WORD.get(word.slice(0, parted)) ?? UNKNOWN;
  for (const next of word.slice(parted + 1).split(/[- ]/)) longer = longerSense(longer, next);
  if (IS_ROW[longer] === 1) return longer;
  // `pudding-dish` is a dish.
  const last = BY_WORD.get(word.slice(word.lastIndexOf('-') + 1)) ?? UNKNOWN;
  return word.includes('-') && OF.thing[last] !== 0 && OF.verb[last] === 0 ? last : UNKNOWN;
}

/** The sense of the words of `sense` with one more behind them; `UNKNOWN` where no row goes on so. */
export function longerSense(sense: number, word: string): number {
  const own = sense === UNKNOWN ? undefined : BY_WORD.get(word);
  return own === undefined ? UNKNOWN : (LONGER.get(sense * MOST + own) ?? UNKNOWN);
}

/** The same by the sense of that word. */
export const joinedSense = (sense: number, own: number): number =>
  sense === UNKNOWN || own === UNKNOWN ? UNKNOWN : (LONGER.get(sense * MOST + own) ?? UNKNOWN);

/** Whether a time may have the word. */
export const mayBeTime = (sense: number): boolean => HAS_TIME[sense] === 1;

/** Whether the words of a sense are a time's alone, which are found by a grammar of their own. */
export const isTimeAlone = (sense: number): boolean =>
  OF.time[sense] !== 0 &&
  verbOf(sense) === undefined &&
  (thingOf(sense) ?? jointOf(sense) ?? signOf(sense)) === undefined;

/** Whether the words of a sense are of a row, or only begin one. */
export const isRow = (sense: number): boolean => IS_ROW[sense] === 1;
/** Whether a verb of more words begins with this one. */
export const beginsVerb = (sense: number): boolean => BEGINS[sense] === 1;

export const verbOf = (sense: number): VerbRow | undefined => ROWS.verb[OF.verb[sense] ?? 0];
/** The form of the verb that the words are. */
export const formOf = (sense: number): Form | undefined => FORMS[(FORM_OF[sense] ?? 0) - 1];
export const thingOf = (sense: number): ThingRow | undefined => ROWS.thing[OF.thing[sense] ?? 0];
export const jointOf = (sense: number): JointRow | undefined => ROWS.joint[OF.joint[sense] ?? 0];
export const timeOf = (sense: number): TimeRow | undefined => ROWS.time[OF.time[sense] ?? 0];
export const signOf = (sense: number): SignRow | undefined => ROWS.sign[OF.sign[sense] ?? 0];
export const evidenceOf = (sense: number): EvidenceRow | undefined => ROWS.evidence[OF.evidence[sense] ?? 0];
