/**
 * Knows how the lines of a trial are read: its day, what was used, what it took, reached and weighed, and the verdict.
 */
import { isDay } from '../measure/calendar.ts';
import { Cursor, textOf } from './cursor.ts';
import { ItemReader } from './ingredient.ts';
import type { LineReading } from './line-reading.ts';
import { countedIn } from './list-lines.ts';
import { durationOf, joinedDuration, temperatureOf } from './readings.ts';
import { Kind } from './tokens.ts';
import type { Statement } from './tree.ts';

export function tookLine(line: LineReading): Statement {
  const { amount, more, joined: to } = line.amountThenJoined('or two');
  const first = durationOf(line.text, amount, line.faults);
  const second = durationOf(line.text, more, line.faults);
  const duration = (first && second && joinedDuration(first, second)) ?? first;
  if (duration === undefined) line.missing('missing-value', 'write the time: `took 52 min to bake`');
  return { kind: 'took', ...(duration && { duration }), ...(to && { to }) };
}

export function reachedLine(line: LineReading): Statement {
  const { amount, joined: place } = line.amountThenJoined();
  const temperature = temperatureOf(line.text, amount, line.faults);
  if (temperature === undefined) line.missing('missing-value', 'write the temperature: `reached 81 C in the centre`');
  return { kind: 'reached', ...(temperature && { temperature }), ...(place && { place }) };
}

export function weighedLine(line: LineReading): Statement {
  const read = line.amountThenJoined();
  const amount = line.measured(read.amount);
  if (amount === undefined) line.missing('missing-value', 'write the weight: `weighed 1385 g out of the oven`');
  const outOf = read.joined;
  return { kind: 'weighed', ...(amount && { amount }), ...(outOf && { outOf }) };
}

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
