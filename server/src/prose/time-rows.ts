/**
 * Knows where the words of a sentence are a row of `times.tsv`, whoever it is that they speak of.
 * Refuses to know what the rows make together (`time-amounts.ts`, `times.ts`).
 */
import type { SentenceItem } from '../notation/tree.ts';
import { numberInWord } from '../notation/words.ts';
import { beginsTime, jointOf, longerSense, senseOf, timeOf, UNKNOWN } from './lexicon.ts';
import type { TimeRole, TimeRow } from './rows.ts';

/** The sense of what lies in a name: nothing begins or goes on there. */
export const IN_NAME = -1;

/** A verb with a subject that is not `you`: `goes` as `go`, `comes` as `come`. */
function ofThird(before: number, word: string): number {
  const short = longerSense(before, word.slice(0, -1));
  return short === UNKNOWN && word.endsWith('es') ? longerSense(before, word.slice(0, -2)) : short;
}

/** Finds the rows of times at items. */
export class TimeRows {
  protected readonly items: readonly SentenceItem[];
  protected readonly senses: readonly number[];
  /** Behind the row that `rowAt` found last. */
  protected end = 0;
  /** What `rowAt` found, by item, and behind which. */
  protected readonly rows: (TimeRow | undefined)[] = [];
  protected readonly ends: number[] = [];
  /** Whether somebody is spoken of, where that was asked. */
  private people: boolean | undefined;

  constructor(items: readonly SentenceItem[], senses: readonly number[]) {
    this.items = items;
    this.senses = senses;
    for (let at = 0; at < senses.length; at++) {
      this.rows.push(undefined);
      this.ends.push(0);
    }
  }

  /** Whether a time may begin at an item: most words are in no row of one, and no number. */
  protected mayBegin(at: number): boolean {
    const item = this.items[at];
    if (item?.kind === 'word') return beginsTime(this.senses[at] ?? UNKNOWN) || numberInWord(item.word) !== undefined;
    return item?.kind === 'duration' || item?.kind === 'measured';
  }

  /** The longest row that begins at an item. */
  protected rowAt(at: number): TimeRow | undefined {
    if (at >= this.senses.length) return undefined;
    const known = this.ends[at];
    if (known !== undefined && known > 0) this.end = known;
    else this.find(at);
    return this.rows[at];
  }

  protected find(at: number): void {
    const own = this.senses[at] as number;
    const isPerson = jointOf(own)?.is === 'person';
    let row = this.longestFrom(at, own, false);
    const { end } = this;
    this.people ??= this.senses.some((sense) => jointOf(sense)?.is === 'person');
    if (!this.people) {
      this.rows[at] = row;
      this.ends[at] = end;
      return;
    }
    // `While the kids are out` is said as `while you are out`.
    const other = this.longestFrom(at, isPerson ? senseOf('you') : own, true);
    if (other !== undefined && (row === undefined || this.end > end)) row = other;
    else this.end = end;
    this.rows[at] = row;
    this.ends[at] = this.end;
  }

  /** `as you`: whoever it is, they are `you`. */
  private longestFrom(at: number, first: number, asYou: boolean): TimeRow | undefined {
    const { senses } = this;
    this.end = at + 1;
    if (first <= UNKNOWN) return undefined;
    let sense = first;
    let row = timeOf(sense);
    let isOther = first !== senses[at];
    for (let i = at + 1; i < senses.length; i++) {
      const item = this.items[i];
      if (item?.kind !== 'word' || senses[i] === IN_NAME) break;
      const own = jointOf(senses[i] as number)?.is;
      // `the kids`
      if (asYou && own === 'article' && jointOf(senses[i + 1] ?? UNKNOWN)?.is === 'person') continue;
      const word = asYou && own === 'person' ? 'you' : asYou && isOther && own === 'aux' ? 'are' : item.word;
      isOther ||= word !== item.word;
      const longest = longerSense(sense, word);
      // `The early chef's in`; `the verger locks up`, as `you lock up`
      if (longest !== UNKNOWN) sense = longest;
      else if (word.endsWith("'s")) sense = longerSense(sense, word.slice(0, -2));
      else sense = isOther && word.endsWith('s') ? ofThird(sense, word) : UNKNOWN;
      if (sense === UNKNOWN) break;
      const longer = timeOf(sense);
      if (longer !== undefined) {
        row = longer;
        this.end = i + 1;
      }
    }
    return asYou && !isOther ? undefined : row;
  }

  /** The item behind a row of one of these roles; undefined where none stands there. */
  protected past(at: number, ...roles: readonly TimeRole[]): number | undefined {
    const row = this.rowAt(at);
    return row !== undefined && roles.includes(row.is) ? this.end : undefined;
  }

  protected wordAt(at: number): string {
    const item = this.items[at];
    return item?.kind === 'word' && this.senses[at] !== IN_NAME ? item.word : '';
  }

  protected markAt(at: number): string {
    const item = this.items[at];
    return item?.kind === 'mark' ? item.mark : '';
  }

  protected pastArticle(at: number): number {
    const word = this.wordAt(at);
    return word !== '' && jointOf(this.senses[at] as number)?.is === 'article' && numberInWord(word) === undefined
      ? at + 1
      : at;
  }
}
