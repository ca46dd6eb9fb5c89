/**
 * Knows every form of every row: a word, or words behind each other, is a number (its sense), and a sense is at most one row of each table.
 * Refuses to know which of them a word is where it stands.
 */
import { type Form, nounForms, verbForms } from './forms.ts';
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

/** What the words of one sense may be. */
interface Sense {
  verb?: VerbRow;
  form?: Form;
  thing?: ThingRow;
  joint?: JointRow;
  time?: TimeRow;
  sign?: SignRow;
  evidence?: EvidenceRow;
  /** A verb of more words begins so: they may stand behind its object. */
  begins?: true;
}

/** A form that two rows of one part of speech have: the second one is not heard. */
export interface Claimed {
  readonly form: string;
  readonly as: keyof Sense;
  readonly rows: readonly [string, string];
}

/** Senses by number; words that only begin longer ones have an empty one. */
const SENSES: Sense[] = [{}];
const BY_WORD = new Map<string, number>();
/** From a sense and the next word on to the longer sense: `sense * STEP + word`. */
const LONGER = new Map<number, number>();
const STEP = 1 << 15;
/** The last words of times. */
const TIME_ENDS = new Set<number>();
const claimed: Claimed[] = [];

function numberOf(form: string): number {
  let sense = UNKNOWN;
  for (const word of form.split(' ')) {
    let own = BY_WORD.get(word);
    if (own === undefined) {
      own = SENSES.push({}) - 1;
      BY_WORD.set(word, own);
    }
    if (sense === UNKNOWN) sense = own;
    else {
      const key = sense * STEP + own;
      let longer = LONGER.get(key);
      if (longer === undefined) {
        longer = SENSES.push({}) - 1;
        LONGER.set(key, longer);
      }
      sense = longer;
    }
  }
  return sense;
}

type RowOf = Exclude<keyof Sense, 'form' | 'begins'>;

function claim<K extends RowOf>(form: string, as: K, row: NonNullable<Sense[K]>): boolean {
  const sense: Pick<Sense, K> = SENSES[numberOf(form)] ?? {};
  const other = sense[as];
  if (other !== undefined && other !== row)
    claimed.push({ form, as, rows: [other.words[0] ?? '', row.words[0] ?? ''] });
  if (other !== undefined) return false;
  sense[as] = row;
  return true;
}

for (const row of readVerbs())
  row.words.forEach((verb, at) => {
    // The forms that are given are those of the first word of the row.
    for (const [form, as] of verbForms(verb, at === 0 ? row.forms : givenFor(verb, row)))
      if (claim(form, 'verb', row)) {
        (SENSES[numberOf(form)] as Sense).form = as;
        const blank = form.indexOf(' ');
        if (blank > 0) (SENSES[numberOf(form.slice(0, blank))] as Sense).begins = true;
      }
  });
for (const row of readThings())
  for (const noun of row.words) for (const form of nounForms(noun)) claim(form, 'thing', row);
for (const row of readTimes())
  for (const word of row.words)
    for (const form of nounForms(word)) {
      claim(form, 'time', row);
      TIME_ENDS.add(BY_WORD.get(form.slice(form.lastIndexOf(' ') + 1)) ?? UNKNOWN);
    }
for (const row of readSigns()) for (const word of row.words) claim(word, 'sign', row);
for (const row of readJoints()) for (const word of row.words) claim(word, 'joint', row);
for (const row of readEvidence()) for (const word of row.words) claim(word, 'evidence', row);

/** `take out` and `take off` have the forms of their first word in common. */
function givenFor(verb: string, { words, forms }: VerbRow): readonly string[] {
  const first = (of: string): string => of.split(' ', 1)[0] ?? of;
  return first(verb) === first(words[0] ?? '') ? forms : [];
}

/** Forms that two rows claim: a test holds that there are none. */
export const twiceClaimed: readonly Claimed[] = claimed;

/** The sense of a word in small letters with a straight apostrophe; `UNKNOWN` where no row has it. */
export function senseOf(word: string): number {
  const sense = BY_WORD.get(word);
  if (sense !== undefined) return sense;
  // `to taste` is one word of a sentence.
  const blank = word.indexOf(' ');
  return blank < 0 ? UNKNOWN : longerSense(BY_WORD.get(word.slice(0, blank)) ?? UNKNOWN, word.slice(blank + 1));
}

/** The sense of the words of `sense` with one more behind them; `UNKNOWN` where no row goes on so. */
export function longerSense(sense: number, word: string): number {
  const own = BY_WORD.get(word);
  return own === undefined ? UNKNOWN : (LONGER.get(sense * STEP + own) ?? UNKNOWN);
}

/** Whether a time may end with the word. */
export const endsTime = (sense: number): boolean => TIME_ENDS.has(sense);

/** The same by the sense of that word. */
export const joinedSense = (sense: number, own: number): number => LONGER.get(sense * STEP + own) ?? UNKNOWN;

/** Whether the words of a sense are of a row, or only begin one. */
export function isRow(sense: number): boolean {
  const { verb, thing, joint, time, sign, evidence } = SENSES[sense] as Sense;
  return (verb ?? thing ?? joint ?? time ?? sign ?? evidence) !== undefined;
}

/** Whether a verb of more words begins with this one. */
export const beginsVerb = (sense: number): boolean => SENSES[sense]?.begins === true;
export const verbOf = (sense: number): VerbRow | undefined => SENSES[sense]?.verb;
/** The form of the verb that the words are. */
export const formOf = (sense: number): Form | undefined => SENSES[sense]?.form;
export const thingOf = (sense: number): ThingRow | undefined => SENSES[sense]?.thing;
export const jointOf = (sense: number): JointRow | undefined => SENSES[sense]?.joint;
export const timeOf = (sense: number): TimeRow | undefined => SENSES[sense]?.time;
export const signOf = (sense: number): SignRow | undefined => SENSES[sense]?.sign;
export const evidenceOf = (sense: number): EvidenceRow | undefined => SENSES[sense]?.evidence;
