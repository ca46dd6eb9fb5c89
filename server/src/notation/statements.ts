/**
 * Knows how one line becomes a statement of our tree, with a fault for everything that could not be read.
 * Refuses to know the lines around it: what stands where it may not is `outline.ts`'s to say.
 */
import { Cursor, spanOf, takeWhile, textIn, textOf } from './cursor.ts';
import { ovenLine, partLine, recipeLine, timeLine, yieldLine } from './head-lines.ts';
import { itemFaults } from './item-faults.ts';
import type { Component } from './keywords.ts';
import { label } from './label.ts';
import { LineReading } from './line-reading.ts';
import { itemFrom, listedItem, swapLine, unreadLine } from './list-lines.ts';
import { PAN_HELP, panOf } from './pan.ts';
import { pictureLine } from './picture-line.ts';
import { plainItem } from './plain-item.ts';
import { scan } from './scan.ts';
import { sentenceOf } from './sentence.ts';
import { saysTime } from './time.ts';
import { isNamePart, Kind } from './tokens.ts';
import type { Line, Statement, TextField } from './tree.ts';
import { reachedLine, startedLine, tookLine, trialLine, usedLine, verdictLine, weighedLine } from './trial-lines.ts';
import { saidYield } from './yield.ts';

/** Longer than any line of a recipe; past it a line is kept but not read. */
const LONGEST_LINE = 4000;

/** Reads one line, without its line end. Any text is a line; nothing throws. */
export function readLine(text: string): Line {
  if (text.length > LONGEST_LINE) return tooLong(text);
  const tokens = scan(text, 'without blanks');
  const last = tokens.at(-1);
  const comment = last?.kind === Kind.Comment ? textOf(text, last, last) : undefined;
  if (comment !== undefined) tokens.pop();
  const [first] = tokens;
  if (first === undefined) {
    const statement = { kind: 'blank' } as const;
    return comment === undefined ? { text, statement, faults: [] } : { text, statement, comment, faults: [] };
  }
  const opened = label(text, tokens);
  const reading = new LineReading(text, tokens, opened);
  const statement = statementOf(reading);
  const { faults, keyword } = reading;
  if (comment !== undefined) return { text, ...(keyword && { keyword }), statement, comment, faults };
  return keyword === undefined ? { text, statement, faults } : { text, keyword, statement, faults };
}

function statementOf(line: LineReading): Statement {
  const { opened } = line;
  switch (opened) {
    case undefined:
      return unopened(line);
    case 'do':
      return stepLine(line);
    case 'optional':
      return itemFrom(line, 1, { named: true });
    case 'add':
      return { kind: 'add', ingredient: itemFrom(line, 1, { named: true }) };
    case 'by':
    case 'serve':
    case 'note':
    case 'source':
      return textLine(line, opened);
    case 'from': {
      const file = line.value('name the file it builds on: `from base.quern`');
      return { kind: 'from', ...(file && { file }) };
    }
    case 'picture':
      return pictureLine(line);
    case 'tested': {
      const value = line.value('this line is written by Quern when a trial is recorded: leave it out');
      return { kind: 'tested', ...(value && { value }) };
    }
    case 'saw': {
      const value = line.value('say what was seen: `saw Set to the middle.`');
      return { kind: 'saw', ...(value && { value }) };
    }
    case 'verdict':
      return verdictLine(line);
    case 'drop': {
      const name = line.value('name what is left out: `drop nutmeg`');
      return { kind: 'drop', ...(name && { name }) };
    }
    case 'food': {
      const name = line.value('name the food: `food stoneground flour`');
      return { kind: 'food', ...(name && { name }) };
    }
    case 'like': {
      const name = line.value('name the food it is like: `like wholemeal flour`');
      return { kind: 'like', ...(name && { name }) };
    }
    case 'yield':
      return yieldBehind(line);
    case 'time':
      return timeLine(line, 1);
    case 'oven':
      return ovenLine(line);
    case 'component':
      return componentLine(line);
    case 'trim':
      return trimLine(line);
    case 'trial':
      return trialLine(line);
    case 'took':
      return tookLine(line);
    case 'started':
      return startedLine(line);
    case 'reached':
      return reachedLine(line);
    case 'weighed':
      return weighedLine(line);
    case 'used':
      return usedLine(line);
    case 'price':
      return priceLine(line);
    case 'swap':
      return swapLine(line);
    case 'allow':
      return allowLine(line);
    case 'recipe':
      return recipeLine(line);
    case 'part':
      return partLine(line);
    case 'pan': {
      const pan = panOf(line.text, line.tokens, line.faults);
      if (pan === undefined) line.missing('bad-pan', PAN_HELP);
      return { kind: 'pan', ...(pan && { pan }) };
    }
    case 'tags':
      return { kind: 'tags', tags: line.names('name the tags, with commas between: `tags autumn, supper club`') };
    case 'also':
      return {
        kind: 'also',
        names: line.names('name the other words for the food: `also strong flour, bread flour`'),
      };
    case 'contains':
      return { kind: 'contains', names: line.names('name the allergens: `contains wheat, milk`') };
  }
}

function stepLine(line: LineReading): Statement {
  const sentence = sentenceOf(line.text, line.tokens, 1, line.faults);
  if (line.tokens.length === 1) line.missing('missing-value', 'a step is a sentence: `do Whisk the eggs.`');
  return { kind: 'step', sentence };
}

function textLine(line: LineReading, field: TextField): Statement {
  const value = line.value(`write something after \`${field}\``);
  return { kind: 'text', field, ...(value && { value }) };
}

/** `yield 12 slices`, and `yield serves 6` as a line of its own says it. */
function yieldBehind(line: LineReading): Statement {
  const said = saidYield(line.tokens.slice(1));
  const [first, second] = line.tokens;
  if (said === undefined || said.from === 0 || first === undefined || second === undefined) return yieldLine(line, 1);
  line.keyword = spanOf(first, second);
  return yieldLine(line, 1 + said.from, said.serves);
}

/** A line without a keyword: how much is made, an ingredient, or what could not be read. */
function unopened(line: LineReading): Statement {
  const said = saidYield(line.tokens);
  if (said !== undefined) {
    const [first] = line.tokens;
    if (said.from > 0 && first !== undefined) line.keyword = spanOf(first, first);
    return yieldLine(line, said.from, said.serves);
  }
  const plain = plainItem(line.text, line.tokens, line.faults);
  if (plain !== undefined) {
    itemFaults(line.text, plain, line.faults);
    return plain;
  }
  if (saysTime(line.tokens)) return timeLine(line, 0);
  return listedItem(line) ?? unreadLine(line);
}

function componentLine(line: LineReading): Statement {
  const amount = line.share();
  const component = line.tokens[0]?.written?.component as Component;
  if (amount?.unit?.symbol !== '%')
    line.missing('missing-value', `write the share of the weight: \`${component} 12 %\``);
  return { kind: 'component', component, ...(amount && { amount }) };
}

function trimLine(line: LineReading): Statement {
  const amount = line.share();
  if (amount?.unit?.symbol !== '%') line.missing('missing-value', 'write what share is trimmed away: `trim 41 %`');
  return { kind: 'trim', ...(amount && { amount }) };
}

function priceLine(line: LineReading): Statement {
  const read = line.amountThenJoined();
  const amount = line.measured(read.amount);
  const per = line.measured(read.per);
  if (amount === undefined || per === undefined)
    line.missing('missing-value', 'write the price and for how much: `price 1.40 per 1 kg`');
  return { kind: 'price', ...(amount && { price: amount.low }), ...(per && { per }) };
}

function allowLine(line: LineReading): Statement {
  const cursor = new Cursor(line.tokens, 1);
  const code = textIn(line.text, takeWhile(cursor, isNamePart));
  const reason = line.joined(cursor);
  if (code === undefined)
    line.missing('missing-value', 'name the finding that is accepted: `allow dough-too-wet because …`');
  return { kind: 'allow', ...(code && { code }), ...(reason && { reason }) };
}

function tooLong(text: string): Line {
  const detail = `the line has ${text.length} characters; a line holds one ingredient or one step, ${LONGEST_LINE} at most`;
  return {
    text,
    statement: { kind: 'unread', words: { start: 0, end: text.length, text } },
    faults: [{ code: 'line-too-long', start: 0, end: 60, detail }],
  };
}
