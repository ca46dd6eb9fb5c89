/**
 * Knows how a table under `server/data/prose/` is written, and what a row of each says.
 * Refuses to know the forms of its words and how they are found (`lexicon.ts`).
 */
import evidenceText from '../../data/prose/evidence.tsv';
import jointsText from '../../data/prose/joints.tsv';
import mediaText from '../../data/prose/media.tsv';
import placesText from '../../data/prose/places.tsv';
import signsText from '../../data/prose/signs.tsv';
import timesText from '../../data/prose/times.tsv';
import verbsText from '../../data/prose/verbs.tsv';
import vesselsText from '../../data/prose/vessels.tsv';
import type { Range } from '../measure/quantity.ts';
import { baseOf, unitSpelled } from '../measure/unit.ts';
import {
  ACTS,
  type Act,
  COOKS,
  type Cooks,
  CRAFTS,
  type Craft,
  HEAT_OF,
  type HeatOf,
  MEDIA,
  type MediumKind,
  PERS,
  type Per,
  PLACES,
  type PlaceKind,
  TELLS,
  type Tells,
  TIME_KINDS,
  type TimeKind,
  VESSELS,
  type VesselKind,
} from './event.ts';

/** What a temperature beside a word is likely of, and how strongly: points of the score in `temperatures.ts`. */
export type Weights = readonly { readonly of: HeatOf; readonly adds: number }[];

interface Row {
  /** All words of it: the name first, then those of the same. */
  readonly words: readonly string[];
}

export interface VerbRow extends Row {
  /** Forms that no rule makes, of its first word. */
  readonly forms: readonly string[];
  readonly act: Act;
  readonly cooks: Cooks | undefined;
  readonly craft: Craft | undefined;
  readonly lasts: 'waits' | 'works' | 'no';
  readonly where: PlaceKind | undefined;
  readonly medium: MediumKind | undefined;
  readonly figure: Weights;
  /** The base form is a thing as often. */
  readonly noun: boolean;
}

export interface PlaceRow extends Row {
  readonly sort: 'place';
  readonly is: PlaceKind;
  readonly celsius: Range | undefined;
  readonly figure: Weights;
  /** A place without a preposition too. */
  readonly bare: boolean;
}

export interface VesselRow extends Row {
  readonly sort: 'vessel';
  readonly is: VesselKind;
  readonly on: PlaceKind | undefined;
  readonly figure: Weights;
}

export interface MediumRow extends Row {
  readonly sort: 'medium';
  readonly is: MediumKind;
  readonly celsius: Range | undefined;
  readonly figure: Weights;
}

/** What stands for a thing: a place, a vessel, a medium. A form is of one of them. */
export type ThingRow = PlaceRow | VesselRow | MediumRow;

export const TIME_ROLES = [
  'unit',
  'span',
  'hour',
  'day',
  'horizon',
  'next',
  'eve',
  'clock',
  'hand',
  'edge',
  'share',
  'bound',
  'point',
  'within',
  'behind',
  'either',
  'full',
  'number',
  'between',
  'mark',
  'per',
  'batch',
  'other',
  'joins',
  'to',
  'and',
  'of',
  'none',
] as const;
export type TimeRole = (typeof TIME_ROLES)[number];

export interface TimeRow extends Row {
  readonly is: TimeRole;
  /** Of what is done before the day: `the night before`. */
  readonly eve?: true;
  /** Minutes, hours of the clock, shares, or how many times, by what it is: the table's first line says. */
  readonly range: Range | undefined;
  /** Minutes of all of it, or until it comes. */
  readonly all: Range | undefined;
  readonly kind: TimeKind | undefined;
  readonly per: Per | undefined;
}

export interface SignRow extends Row {
  readonly tells: Tells;
  readonly celsius: Range | undefined;
}

export const JOINTS = [
  /** What stands before a noun. */
  'article',
  'number',
  'quantity',
  /** One who cooks or eats: it is the subject and no food. */
  'person',
  /** `it`, `them`: what the sentence spoke of before. */
  'it',
  /** `mixture`, `whole` */
  'mixture',
  /** `the rest` */
  'rest',
  /** `everything`, `both` */
  'all',
  'preposition',
  /** `to`: a place, or a verb behind it. */
  'to',
  'conjunction',
  'or',
  'then',
  /** A participle behind it is told: `is stirred`. */
  'aux',
  /** `has been stirred`: it came first. */
  'had',
  /** A base form behind it is told: `may stand`. */
  'modal',
  /** The base form behind its object is the order: `let it stand`. */
  'let',
  'not',
  /** `Until it loses its pink`: of a sign, that it is there no longer. */
  'lacks',
  /** `isn't`: both. */
  'aux not',
  'if',
  /** `if desired` */
  'optional',
  'when',
  'until',
  'after',
  'before',
  'while',
  'which',
  'purpose',
  'advice',
  /** What is said stands somewhere else: `as directed`. */
  'elsewhere',
  /** It is eaten at once, or not yet. */
  'now',
  'later',
  'particle',
  'adverb',
  'adjective',
  'bound',
] as const;
export type JointKind = (typeof JOINTS)[number];

export const WAYS = ['at', 'to', 'out of', 'off', 'over', 'with', 'without', 'for', 'by', 'of', 'beside'] as const;
/** What a preposition says of what follows it; `beside` of `meanwhile`. */
export type Way = (typeof WAYS)[number];

export const BOUNDS = ['at least', 'at most', 'change'] as const;

export interface JointRow extends Row {
  readonly is: JointKind;
  readonly way: Way | undefined;
  /** Of a temperature right behind it. */
  readonly adds: Weights;
  readonly bound: (typeof BOUNDS)[number] | undefined;
}

export interface EvidenceRow extends Row {
  readonly adds: Weights;
  readonly side: 'before' | 'either';
  /** It is the middle of the food. */
  readonly inside: boolean;
}

type Cell = (column: string) => string;

/** The rows of one or more files, each read when it is first asked for: of most rows nobody asks. */
export class Table<R> {
  private readonly files: readonly { readonly text: string; readonly read: (cell: Cell) => R }[];
  private lines: readonly (() => R)[] | undefined;
  private readonly rows: (R | undefined)[] = [];

  constructor(...files: readonly { readonly text: string; readonly read: (cell: Cell) => R }[]) {
    this.files = files;
  }

  /** The row of a number, from 1; undefined for 0. */
  at(number: number): R | undefined {
    if (number === 0) return undefined;
    let row = this.rows[number];
    if (row === undefined) {
      this.lines ??= this.files.flatMap(({ text, read }) => linesOf(text, read));
      row = this.lines[number - 1]?.();
      this.rows[number] = row;
    }
    return row;
  }

  /** All rows, in the order of their numbers. */
  all(): readonly R[] {
    return this.files.flatMap(({ text, read }) => linesOf(text, read)).map((row) => row());
  }
}

/** The lines of a table; a remark and a heading stand first. */
function linesOf<R>(text: string, read: (cell: Cell) => R): readonly (() => R)[] {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const columns = new Map((lines[0] ?? '').split('\t').map((name, at) => [name, at]));
  return lines.slice(1).map((line) => () => {
    const cells = line.split('\t');
    return read((column) => cells[columns.get(column) ?? cells.length] ?? '');
  });
}

const listOf = (cell: string): readonly string[] => (cell === '' ? [] : cell.split(';').map((word) => word.trim()));
const oneOf = <T extends string>(of: readonly T[], cell: string): T | undefined => of.find((value) => value === cell);
const wordsOf = (name: string, also: string): readonly string[] => [name, ...listOf(also)];

function rangeOf(low: string, high: string): Range | undefined {
  return low === '' ? undefined : { low: Number(low), high: high === '' ? Number.POSITIVE_INFINITY : Number(high) };
}

/** `oven 5;food 1` */
function weightsOf(cell: string): Weights {
  return listOf(cell).flatMap((part) => {
    const [name = '', adds] = part.split(' ');
    const of = oneOf(HEAT_OF, name);
    return of === undefined ? [] : [{ of, adds: Number(adds) }];
  });
}

const readVerb = (cell: Cell): VerbRow => ({
  words: wordsOf(cell('verb'), cell('also')),
  forms: listOf(cell('forms')),
  act: oneOf(ACTS, cell('act')) ?? 'unknown',
  cooks: oneOf(COOKS, cell('cooks')),
  craft: oneOf(CRAFTS, cell('craft')),
  lasts: oneOf(['waits', 'works'], cell('lasts')) ?? 'no',
  where: oneOf(PLACES, cell('where')),
  medium: oneOf(MEDIA, cell('medium')),
  figure: weightsOf(cell('figure')),
  noun: cell('noun') === 'yes',
});

const readPlace = (cell: Cell): PlaceRow => ({
  sort: 'place',
  words: wordsOf(cell('place'), cell('also')),
  is: oneOf(PLACES, cell('is')) ?? 'room',
  celsius: rangeOf(cell('low'), cell('high')),
  figure: weightsOf(cell('figure')),
  bare: cell('bare') === 'yes',
});

const readVessel = (cell: Cell): VesselRow => ({
  sort: 'vessel',
  words: wordsOf(cell('vessel'), cell('also')),
  is: oneOf(VESSELS, cell('is')) ?? 'open',
  on: oneOf(PLACES, cell('on')),
  figure: [],
});

const readMedium = (cell: Cell): MediumRow => ({
  sort: 'medium',
  words: wordsOf(cell('medium'), cell('also')),
  is: oneOf(MEDIA, cell('is')) ?? 'water',
  celsius: rangeOf(cell('low'), cell('high')),
  figure: weightsOf(cell('figure')),
});

const readTime = (cell: Cell): TimeRow => {
  // Of a unit that `unit.ts` has the words and the size are there.
  const unit = cell('low') === '' ? unitSpelled(cell('time')) : undefined;
  const minutes = unit === undefined ? undefined : (baseOf(unit.symbol, 'us') ?? 0) / 60;
  const is = oneOf(TIME_ROLES, cell('is')) ?? 'span';
  return {
    words: [...new Set([...wordsOf(cell('time'), cell('also')), ...(unit?.spellings ?? [])])],
    is: is === 'eve' ? 'next' : is,
    ...(is === 'eve' && { eve: true as const }),
    range: minutes === undefined ? rangeOf(cell('low'), cell('high')) : { low: minutes, high: minutes },
    all: rangeOf(cell('least'), cell('most')),
    kind: oneOf(TIME_KINDS, cell('kind')),
    per: oneOf(PERS, cell('per')),
  };
};

const readSign = (cell: Cell): SignRow => ({
  words: wordsOf(cell('sign'), cell('also')),
  tells: oneOf(TELLS, cell('tells')) ?? 'needed',
  celsius: rangeOf(cell('low'), cell('high')),
});

const readJoint = (cell: Cell): JointRow => ({
  words: wordsOf(cell('joint'), cell('also')),
  is: oneOf(JOINTS, cell('is')) ?? 'adverb',
  way: oneOf(WAYS, cell('way')),
  adds: weightsOf(cell('adds')),
  bound: oneOf(BOUNDS, cell('bound')),
});

const readEvidence = (cell: Cell): EvidenceRow => ({
  words: wordsOf(cell('word'), cell('also')),
  adds: weightsOf(`${cell('of')} ${cell('adds')}`),
  side: oneOf(['before'], cell('side')) ?? 'either',
  inside: cell('inside') === 'yes',
});

/** Each table by what its rows make of a word. Places, vessels and media share their words. */
export const TABLES = {
  verb: new Table({ text: verbsText, read: readVerb }),
  thing: new Table<ThingRow>(
    { text: placesText, read: readPlace },
    { text: vesselsText, read: readVessel },
    { text: mediaText, read: readMedium },
  ),
  joint: new Table({ text: jointsText, read: readJoint }),
  time: new Table({ text: timesText, read: readTime }),
  sign: new Table({ text: signsText, read: readSign }),
  evidence: new Table({ text: evidenceText, read: readEvidence }),
} as const;
export type TableName = keyof typeof TABLES;
