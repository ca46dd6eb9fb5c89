/**
 * Knows how an hour is said by the clock: `eight`, `8.30 am`, `0700`, `13:45`, `eleven thirty`, `nine at night`.
 * Refuses to know what day it is of, and how long it is from one to another.
 */
import type { Range } from '../measure/quantity.ts';
import { numberInWord } from '../notation/words.ts';
import { isTimeAlone, jointOf, timeOf, UNKNOWN, verbOf } from './lexicon.ts';
import { Amounts, isNumber } from './time-amounts.ts';

/** Of the clock's face. */
export const FACE = 12;

export interface Hour extends Range {
  readonly ofTwelve: boolean;
  readonly to: number;
  /** It can be nothing else than an hour. */
  readonly sure: boolean;
}

/** Reads hours, beside amounts. */
export class Faces extends Amounts {
  protected isArticle(at: number): boolean {
    return jointOf(this.senses[at] ?? UNKNOWN)?.is === 'article';
  }

  protected numberAt(at: number): number | undefined {
    const item = this.items[at];
    if (item?.kind === 'measured')
      return isNumber(item) && item.quantity.low === item.quantity.high ? item.quantity.low : undefined;
    if (item?.kind !== 'word' || this.senses[at] === UNKNOWN) return undefined;
    const number = numberInWord(item.word);
    return number === undefined || number.article || number.part || number.lot || number.low < number.high
      ? undefined
      : number.low;
  }

  /** `eight`, `8`, `8.30 am`, `0700`, `13:45`, `eleven thirty`, `nine o'clock`; `nine` before `at night`, which stays outside. */
  protected faceAt(at: number): Hour | undefined {
    const number = this.numberAt(at);
    const item = this.items[at];
    if (number === undefined || item === undefined) return undefined;
    // `0700`
    if (number >= 100) {
      const isClock = item.end - item.start === 4 && number < 2400 && number % 100 < 60 && number % 5 === 0;
      const before = this.items[at - 1];
      const joint = jointOf(this.senses[at - 1] ?? UNKNOWN);
      const isAlone = before === undefined || before.kind === 'mark' || joint?.way === 'to' || this.isPlaced(at);
      return isClock && isAlone && this.isFree(at + 1) ? hourOf(number, at + 1, false, true) : undefined;
    }
    const second = this.minutesAt(at, number);
    const to = second?.to ?? at + 1;
    const hours = Math.floor(number) + (second?.minutes ?? 0) / 60;
    if (hours > 24 || (hours < 0.5 && second?.sure !== true)) return undefined;
    const half = this.rowAt(to);
    const part = half?.is === 'next' && hours <= FACE ? half.all : undefined;
    if (part !== undefined) {
      const hour = hourIn(hours, part);
      return hour === undefined ? undefined : { low: hour, high: hour, ofTwelve: false, to, sure: true };
    }
    if (half?.is === 'clock') {
      const added = half.range?.low ?? 0;
      const face = hours >= FACE && half.range !== undefined ? hours - FACE : hours;
      return { low: face + added, high: face + added, ofTwelve: half.range === undefined, to: this.end, sure: true };
    }
    if (number > FACE && second === undefined) return undefined;
    return { low: hours, high: hours, ofTwelve: hours <= FACE, to, sure: second?.sure === true && number > FACE };
  }

  protected minutesAt(
    at: number,
    number: number,
  ): { readonly minutes: number; readonly to: number; readonly sure: boolean } | undefined {
    if (!Number.isInteger(number)) {
      const minutes = Math.round((number % 1) * 100);
      return minutes < 60 ? { minutes, to: at + 1, sure: false } : undefined;
    }
    const colon = this.items[at + 1];
    const isColon = colon?.kind === 'mark' && colon.mark === ':' && colon.end - colon.start === 1;
    const minutes = this.numberAt(isColon ? at + 2 : at + 1);
    const isMinutes = minutes !== undefined && minutes < 60 && (isColon || (minutes >= 10 && minutes % 5 === 0));
    return isMinutes ? { minutes, to: isColon ? at + 3 : at + 2, sure: isColon } : undefined;
  }

  /** A word stands before it that an hour follows: `at`, `by`, `until`, `from`, `about`, `after`, `before`. */
  protected isPlaced(at: number): boolean {
    const before = this.senses[at - 1] ?? UNKNOWN;
    const joint = jointOf(before);
    // `The noon`, `about the evening`
    if (this.isArticle(at - 1)) return at > 1 && this.isPlaced(at - 1);
    // Of the prepositions only those say when that a figure follows: `at`, `around`.
    if (joint?.is === 'preposition')
      // `By one`, and not `one by one`.
      return joint.way === 'by' ? this.numberAt(at - 2) === undefined : joint.way === 'at' && joint.adds.length > 0;
    if (joint?.is === 'after' || joint?.is === 'before') return true;
    const row = timeOf(before);
    return (
      row?.is === 'between' ||
      (row?.is === 'bound' && (row.kind === undefined || row.kind === 'until' || row.kind === 'point'))
    );
  }

  /** Nothing that it could count or describe follows. */
  protected isFree(to: number): boolean {
    const item = this.items[to];
    if (item === undefined) return true;
    // `at a 10-pound pressure`
    if (item.kind === 'mark') return item.mark !== '-' || this.items[to + 1]?.start !== item.end;
    if (item.kind !== 'word') return false;
    const sense = this.senses[to] as number;
    if (timeOf(sense)?.is === 'unit') return false;
    return (jointOf(sense) ?? verbOf(sense)) !== undefined || isTimeAlone(sense);
  }
}

const hourOf = (number: number, to: number, ofTwelve: boolean, sure: boolean): Hour => {
  const hours = Math.floor(number / 100) + (number % 100) / 60;
  return { low: hours, high: hours, ofTwelve, to, sure };
};

/** Which of the hours that a face shows lies in a part of the day: nine, at night. */
const hourIn = (face: number, { low, high }: Range): number | undefined =>
  [face % FACE, (face % FACE) + FACE, (face % FACE) + 2 * FACE].find((hour) => hour >= low && hour <= high);
