/**
 * Knows how the lines of a trial are read: its day, what was used, what it took, reached and weighed, and the verdict.
 */
import { isDay } from '../measure/calendar.ts';
import { type Amount, takeAmount } from './amounts.ts';
import { Cursor, spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import { ItemReader } from './ingredient.ts';
import type { LineReading } from './line-reading.ts';
import { countedIn } from './list-lines.ts';
import { durationOf, joinedDuration, temperatureOf } from './readings.ts';
import { isNamePart, Kind } from './tokens.ts';
import type { Span, Statement, TextNode } from './tree.ts';

export function tookLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  const blank = blankOf(line, cursor);
  const first = durationOf(line.text, takeAmount(cursor), line.faults);
  const second = durationOf(line.text, takeAmount(cursor), line.faults);
  const duration = (first && second && joinedDuration(first, second)) ?? first;
  takeWhile(cursor, isNamePart);
  const [to, place] = toAndIn(line, cursor);
  if (duration === undefined && blank === undefined)
    line.missing('missing-value', 'write the time: `took 52 min to bake`');
  return {
    kind: 'took',
    ...(blank && { blank }),
    ...(duration && { duration }),
    ...(to && { to }),
    ...(place && { in: place }),
  };
}

/** `to bake`, `to bake in lower deck`, `in lower deck`. */
function toAndIn(line: LineReading, cursor: Cursor): [to: TextNode | undefined, place: TextNode | undefined] {
  const joiner = cursor.take(Kind.Joiner);
  if (joiner === undefined) {
    line.strayFrom(cursor);
    return [undefined, undefined];
  }
  if (joiner.written?.word === 'in') return [undefined, line.textFrom(cursor)];
  const to = textIn(line.text, takeWhile(cursor, isBeforeJoiner));
  return [to, cursor.take(Kind.Joiner) && line.textFrom(cursor)];
}

const isBeforeJoiner = (kind: Kind): boolean => kind !== Kind.Joiner;

export function startedLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  cursor.take(Kind.Joiner);
  const blank = blankOf(line, cursor);
  const temperature = temperatureOf(line.text, takeAmount(cursor), line.faults);
  if (temperature === undefined && blank === undefined)
    line.missing('missing-value', 'write how warm it went in: `started at 8 C`');
  else if (blank === undefined) line.strayFrom(cursor);
  return { kind: 'started', ...(blank && { blank }), ...(temperature && { temperature }) };
}

export function reachedLine(line: LineReading): Statement {
  const { blank, amount, joined: place } = blankOrAmount(line);
  const temperature = temperatureOf(line.text, amount, line.faults);
  if (temperature === undefined && blank === undefined)
    line.missing('missing-value', 'write the temperature: `reached 81 C in the centre`');
  return {
    kind: 'reached',
    ...(blank && { blank }),
    ...(temperature && { temperature }),
    ...(place && { place }),
  };
}

export function weighedLine(line: LineReading): Statement {
  const read = blankOrAmount(line);
  const amount = line.measured(read.amount);
  if (amount === undefined && read.blank === undefined)
    line.missing('missing-value', 'write the weight: `weighed 1385 g out of the oven`');
  const outOf = read.joined;
  return {
    kind: 'weighed',
    ...(read.blank && { blank: read.blank }),
    ...(amount && { amount }),
    ...(outOf && { outOf }),
  };
}

function blankOrAmount(line: LineReading): {
  readonly blank: Span | undefined;
  readonly amount: Amount | undefined;
  readonly joined: TextNode | undefined;
} {
  const blank = blankOf(line, new Cursor(line.tokens, 1));
  return { blank, ...line.amountThenJoined() };
}

/** `…`, `...` or `?` where a figure will stand. */
function blankOf({ text }: LineReading, cursor: Cursor): Span | undefined {
  const run = takeWhile(cursor, (kind) => kind === Kind.Other);
  return run && BLANK.test(text.slice(run.first.start, run.last.end)) ? spanOf(run.first, run.last) : undefined;
}
const BLANK = /^(?:…|\.{3}|\?)$/;

export function verdictLine(line: LineReading): Statement {
  const value = line.value('write `verdict keep`, `verdict change` or `verdict reject`');
  if (value !== undefined && !['keep', 'change', 'reject'].includes(value.text)) {
    line.fault('bad-verdict', value, 'write `keep`, `change` or `reject`');
  }
  return { kind: 'verdict', ...(value && { value }) };
}

export function trialLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  const token = cursor.take(Kind.DateMark);
  const by = line.joined(cursor);
  const date = token && textOf(line.text, token, token);
  if (date === undefined) line.missing('bad-date', 'write the day as year, month, day: `trial 2026-09-14 by Ines`');
  else if (!isDay(date.text))
    line.fault('bad-date', date, 'there is no such day; write year, month, day: `2026-09-14`');
  return { kind: 'trial', ...(date && { date }), ...(by && { by }) };
}

export function usedLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  const ingredient = new ItemReader(line.text, cursor, line.faults).item();
  const { amount, name = countedIn(amount) } = ingredient ?? {};
  const part = line.joined(cursor);
  if (ingredient === undefined || amount === undefined || name === undefined) {
    line.missing('missing-value', 'write what was used: `used 90 g caster sugar in custard`');
    return { kind: 'used', ...(amount && { amount }), ...(name && { name }), ...(part && { part }) };
  }
  return { kind: 'used', amount, name, ...(part && { part }), ingredient: { ...ingredient, name } };
}
