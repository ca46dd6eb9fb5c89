/**
 * Knows every form of every row: a word, or words behind each other, is a number (its sense), and a sense is at most one row of each table.
 * Forms are found in a sorted text when they are first seen, so that a start makes none.
 * Refuses to know which of its rows a word is where it stands.
 */
import formsText from '../../data/prose/forms.tsv';
import { onceByText } from '../measure/once.ts';
import { keptOn } from '../notation/kept.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { type Form, formOfLetter } from './forms.ts';
import { adds } from './points.ts';
import {
  type EvidenceRow,
  type JointRow,
  type SignRow,
  TABLES,
  type TableName,
  type ThingRow,
  type TimeRow,
  type VerbRow,
} from './rows.ts';

/** What nobody knows. */
export const UNKNOWN = 0;

interface Sense {
  /** Its words in the table. */
  readonly key: string;
  /** The same with the base of a first word that is inflected, behind which only verbs go on: `bring` of `bringing`. */
  readonly head: string | undefined;
  /** Numbers of its rows, 0 for none. */
  readonly rows: Readonly<Record<TableName, number>>;
  readonly form: Form | undefined;
  readonly isTime: boolean;
  /** A row of any table, and not only the beginning of longer ones. */
  readonly isRow: boolean;
  /** What a further word makes of it; made when it is first asked. */
  longer: ReadonlyMap<string, number> | undefined;
  /** A verb of more words begins so. */
  begins: boolean;
  /** A row of times does. */
  beginsTime: boolean;
}

const NO_ROWS: Readonly<Record<TableName, number>> = { verb: 0, thing: 0, joint: 0, time: 0, sign: 0, evidence: 0 };
const NONE_LONGER: ReadonlyMap<string, number> = new Map();
const NOTHING: Sense = {
  key: '',
  head: undefined,
  rows: NO_ROWS,
  form: undefined,
  isTime: false,
  isRow: false,
  longer: NONE_LONGER,
  begins: false,
  beginsTime: false,
};
/** The rows that were seen, as senses by number: what a number is never changes. */
class Senses {
  private readonly all: Sense[] = [NOTHING];

  at(sense: number): Sense {
    return this.all[sense] ?? NOTHING;
  }

  /** Gives it a number. */
  numbered(sense: Sense): number {
    return this.all.push(sense) - 1;
  }
}

const SENSES = new Senses();
const senseAt = (sense: number): Sense => SENSES.at(sense);

/** Where the first line begins whose form is not before `form`. */
function lowerBound(form: string): number {
  let low = formsText.indexOf('\n') + 1;
  let high = formsText.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const start = Math.max(low, formsText.lastIndexOf('\n', middle - 1) + 1);
    const tab = formsText.indexOf('\t', start);
    if (formsText.slice(start, tab) < form) low = formsText.indexOf('\n', tab) + 1;
    else high = start;
  }
  return low;
}

const TABLE_OF: Readonly<Record<string, TableName>> = {
  v: 'verb',
  t: 'thing',
  j: 'joint',
  m: 'time',
  s: 'sign',
  e: 'evidence',
};

/** The sense of a line of the table, or of words that only begin lines; `as` is the form of a first word that is inflected. */
function made(key: string, codes: readonly string[], as: Form | undefined): number {
  const rows: Record<TableName, number> = { ...NO_ROWS };
  let form = as;
  let head = as === undefined ? undefined : key;
  let isTime = false;
  for (const code of codes) {
    const letter = code.charAt(0);
    const table = TABLE_OF[letter];
    if (letter === 'h') isTime = true;
    else if (letter === '>') {
      const [base = key, end = ''] = code.slice(1).split(':');
      if (base !== key) head = base;
      form ??= formOfLetter(end);
    } else if (table !== undefined && (as === undefined || table === 'verb')) {
      rows[table] = Number.parseInt(code.slice(1), 10);
      if (table === 'verb') form ??= formOfLetter(code.slice(-1)) ?? 'base';
    }
  }
  const isRow = Object.values(rows).some((row) => row > 0);
  const beginsTime = rows.time > 0;
  return SENSES.numbered({ key, head, rows, form, isTime, isRow, longer: undefined, begins: false, beginsTime });
}

/** A word by itself. */
function wordSense(word: string): number {
  const at = lowerBound(word);
  const end = formsText.indexOf('\n', at);
  const [form = '', ...codes] = end < 0 ? [] : formsText.slice(at, end).split('\t');
  const isThere = form === word;
  if (!isThere && !form.startsWith(`${word} `)) return UNKNOWN;
  return rowSense(isThere ? `${word}\t${codes.join('\t')}` : word);
}

/** By what stands on its line: one sense for each as long as the process lives. */
const rowSense = onceByText(
  (row: string): number => {
    const [word = '', ...codes] = row.split('\t');
    return made(word, codes, undefined);
  },
  { texts: Number.POSITIVE_INFINITY },
);

/** All words that may stand behind those of a sense. */
function longerOf(sense: Sense): ReadonlyMap<string, number> {
  if (sense.longer !== undefined) return sense.longer;
  const longer = new Map<string, number>();
  if (sense.head === undefined || sense.head !== sense.key) addLonger(sense, longer, sense.key, undefined);
  if (sense.head !== undefined) addLonger(sense, longer, sense.head, sense.form);
  sense.longer = longer.size === 0 ? NONE_LONGER : longer;
  return sense.longer;
}

function addLonger(sense: Sense, longer: Map<string, number>, key: string, as: Form | undefined): void {
  const before = `${key} `;
  const from = lowerBound(before);
  const lines = formsText.slice(from, lowerBound(`${key}${BEHIND_BLANK}`));
  if (lines === '') return;
  // No loop of this function: the engine would compile it anew while a start waits.
  lines
    .slice(0, -1)
    .split('\n')
    .forEach((line) => {
      const [form = '', ...codes] = line.split('\t');
      const [next = '', ...rest] = form.slice(before.length).split(' ');
      const isVerb = codes.some((code) => code.startsWith('v'));
      sense.begins ||= isVerb;
      sense.beginsTime ||= codes.some((code) => code.startsWith('m'));
      if (!longer.has(next) && (isVerb || as === undefined))
        longer.set(next, made(before + next, rest.length === 0 ? codes : [], as));
    });
}

/** The letter behind the blank. */
const BEHIND_BLANK = '!';

/** Words that no row has are many: the memory is not theirs. */
const MOST_KNOWN = 8192;

/** The sense of a word in small letters with a straight apostrophe; `UNKNOWN` where no row has it. `ice-box` is `ice box`, too. */
export const senseOf = onceByText(senseMade, { texts: MOST_KNOWN });

function senseMade(word: string): number {
  const own = wordSense(word);
  const parted = word.search(/[- ]/);
  if (parted < 0 || senseAt(own).isRow) return own;
  // `to taste` is one word of a sentence.
  let longer = senseOf(word.slice(0, parted));
  for (const next of word.slice(parted + 1).split(/[- ]/)) longer = longerSense(longer, next);
  if (senseAt(longer).isRow) return longer;
  // `pudding-dish` is a dish.
  const last = word.includes('-') ? senseOf(word.slice(word.lastIndexOf('-') + 1)) : UNKNOWN;
  const { rows } = senseAt(last);
  return rows.thing > 0 && rows.verb === 0 ? last : UNKNOWN;
}

const OF_ITEMS = keptOn<readonly SentenceItem[], readonly number[]>();

/** The sense of every item; `UNKNOWN` for what is no word. The same list for the same items, which several passes ask for. */
export function sensesOf(items: readonly SentenceItem[]): readonly number[] {
  let senses = OF_ITEMS.get(items);
  if (senses === undefined) {
    senses = items.map((item) => (item.kind === 'word' ? senseOf(item.word) : UNKNOWN));
    OF_ITEMS.set(items, senses);
  }
  return senses;
}

/** The sense of the words of `sense` with one more behind them; `UNKNOWN` where no row goes on so. */
export function longerSense(sense: number, word: string): number {
  const { longer = longerOf(senseAt(sense)) } = senseAt(sense);
  return longer.size === 0 ? UNKNOWN : (longer.get(word) ?? UNKNOWN);
}

/** Whether a time may have the word. */
export const mayBeTime = (sense: number): boolean => senseAt(sense).isTime;

/** Whether a row of times begins with the words of a sense. */
export function beginsTime(sense: number): boolean {
  const own = senseAt(sense);
  if (own.longer === undefined) longerOf(own);
  return own.beginsTime;
}

/** Whether the words of a sense are a time's alone, which are found by a grammar of their own. */
export function isTimeAlone(sense: number): boolean {
  const { verb, thing, joint, time, sign } = senseAt(sense).rows;
  return time > 0 && verb + thing + joint + sign === 0;
}

/** Whether nobody knows what the words are, whatever a figure beside them may be of. */
export function isStrange(sense: number): boolean {
  const { verb, thing, joint, time, sign } = senseAt(sense).rows;
  return verb + thing + joint + time + sign === 0;
}

/** Whether the words of a sense are of a row, or only begin one. */
export const isRow = (sense: number): boolean => senseAt(sense).isRow;

/** Whether a verb of more words begins with this one. */
export function beginsVerb(sense: number): boolean {
  const own = senseAt(sense);
  longerOf(own);
  return own.begins;
}

export const verbOf = (sense: number): VerbRow | undefined => TABLES.verb.at(senseAt(sense).rows.verb);
/** The form of the verb that the words are. */
export function formOf(sense: number): Form | undefined {
  const { rows, form } = senseAt(sense);
  return rows.verb > 0 ? form : undefined;
}
export const thingOf = (sense: number): ThingRow | undefined => TABLES.thing.at(senseAt(sense).rows.thing);
export const jointOf = (sense: number): JointRow | undefined => TABLES.joint.at(senseAt(sense).rows.joint);
export const timeOf = (sense: number): TimeRow | undefined => TABLES.time.at(senseAt(sense).rows.time);
export const signOf = (sense: number): SignRow | undefined => TABLES.sign.at(senseAt(sense).rows.sign);
export const evidenceOf = (sense: number): EvidenceRow | undefined => TABLES.evidence.at(senseAt(sense).rows.evidence);

/** What tells of a figure that it is read in food, and says nothing of where: a probe. */
export function isThermometer(sense: number): boolean {
  const evidence = evidenceOf(sense);
  return evidence !== undefined && !evidence.inside && adds(evidence.adds, 'food') >= THERMOMETER;
}
const THERMOMETER = 4;
