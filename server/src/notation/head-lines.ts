/**
 * Knows how the lines at the head of a recipe or part are read: titles, yield, times, oven.
 */
import { Cursor, isAny, spanOf, takeWhile, textIn } from './cursor.ts';
import type { LineReading } from './line-reading.ts';
import { temperatureOf } from './readings.ts';
import { timesOf } from './time.ts';
import { fileOf, kindParted } from './title.ts';
import type { Statement, TextNode, TitleNode } from './tree.ts';
import { yieldOf } from './yield.ts';

export function yieldLine(line: LineReading, from: number, serves = false): Statement {
  const { amount, of } = yieldOf(line.text, line.tokens, from, line.faults);
  if (amount === undefined) line.missing('missing-value', 'say how many of what: `yield 12 slices`, or `yield 900 g`');
  return { kind: 'yield', ...(amount && { amount }), ...(of && { of }), ...(serves && { serves: true as const }) };
}

export function timeLine(line: LineReading, from: number): Statement {
  const { stated, stray } = timesOf(line.text, new Cursor(line.tokens, from), line.faults);
  if (stated.length === 0) line.missing('missing-value', TIME_HELP);
  else if (stray !== undefined) line.fault('stray-text', spanOf(stray, stray), TIME_HELP);
  return { kind: 'time', stated };
}

export function recipeLine(line: LineReading): Statement {
  const title = textIn(line.text, takeWhile(new Cursor(line.tokens, 1), isAny));
  return { kind: 'recipe', ...titled(line, title, '`recipe Plum slice`') };
}

/** `TITLE [as KIND] [from FILE [: PART]]` */
export function partLine(line: LineReading): Statement {
  const all = textIn(line.text, takeWhile(new Cursor(line.tokens, 1), isAny));
  if (all === undefined) return { kind: 'part', ...titled(line, all, '`part base`') };
  const { title, from, file, filePart } = fileOf(all);
  if (from !== undefined && file === undefined) {
    line.fault('missing-value', from, 'name the file the part comes from: `part base from pastry.quern : sweet paste`');
  }
  return { kind: 'part', ...titled(line, title, '`part base`'), ...(file && { file }), ...(filePart && { filePart }) };
}

function titled(line: LineReading, title: TextNode | undefined, example: string): TitleNode {
  const parted = title && kindParted(title);
  if (title === undefined || (parted !== undefined && parted.name === undefined))
    line.missing('missing-name', `name the ${line.opened}: ${example}`);
  if (parted !== undefined && parted.kind === undefined)
    line.fault('missing-value', parted.as, 'name the kind after `as`: `as shortcrust`');
  const { name, kind } = parted ?? {};
  return { ...(title && { title }), ...(parted && { ofKind: { ...(name && { name }), ...(kind && { kind }) } }) };
}

export function ovenLine(line: LineReading): Statement {
  const { amount, rest } = line.amountThenText();
  const temperature = temperatureOf(line.text, amount, line.faults);
  if (temperature === undefined)
    line.missing('missing-value', 'write the temperature: `oven 180 C`, `oven 160 C fan` or `oven gas 4`');
  return { kind: 'oven', ...(temperature && { temperature }), ...(rest && { rest }) };
}

const TIME_HELP = 'write the times and what they are spent with: `time 20 min at work, 50 min in the oven`';
