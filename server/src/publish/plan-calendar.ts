/**
 * Knows the plan of a day as a calendar by RFC 5545, in the times of wherever it is opened (floating).
 * Refuses to know who reads it.
 */
import type { PlanClock, PlanFacts, PlanStep } from './plan-facts.ts';
import { heatText, lengthOf, namedStep, ovenName } from './plan-words.ts';

/** `today` is the day on which it is made: '2026-09-14'. The day of the serving is that too, where the plan names none. */
export function planCalendar(facts: PlanFacts, today: string): string {
  const serving = facts.date ?? today;
  const stamp = `${today.replaceAll('-', '')}T000000Z`;
  const event = (id: string, from: PlanClock, to: PlanClock, summary: string, about: readonly string[]): string[] => [
    'BEGIN:VEVENT',
    `UID:${digest(`${facts.recipes.join('|')} ${serving} ${facts.serve} ${id}`)}@quern.invalid`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${floating(serving, facts.serve, from.min)}`,
    // What takes no time ends as it begins: RFC 5545, 3.6.1.
    ...(to.min > from.min ? [`DTEND:${floating(serving, facts.serve, to.min)}`] : []),
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped([...about, facts.note].join('\n'))}`,
    'END:VEVENT',
  ];
  const eaten: PlanClock = { at: facts.serve, days_before: 0, min: 0 };
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Quern//Plan of a day//EN',
    'CALSCALE:GREGORIAN',
    ...facts.preheats.flatMap(({ oven, from, to, ...heat }, i) =>
      event(`oven ${i}`, from, to, `Light ${ovenName(facts, oven)}: ${heatText(heat)}`, []),
    ),
    ...facts.steps.flatMap((step, i) => [
      ...event(`step ${i}`, step.from, step.to, namedStep(facts, step), aboutStep(step)),
      ...step.oven_turns
        .slice(1)
        .flatMap((turn, n) =>
          event(`turn ${i} ${n}`, turn, turn, `Turn ${ovenName(facts, step.oven)} to ${heatText(turn)}`, []),
        ),
    ]),
    ...event('serving', eaten, eaten, `Eaten: ${facts.recipes.join(', ')}`, []),
    'END:VCALENDAR',
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join('');
}

function aboutStep({ minutes, minutes_from: from, hands, where, waits_min: waits }: PlanStep): readonly string[] {
  const long = minutes === 0 ? 'It says no minutes.' : `${lengthOf(minutes)}, ${hands ? 'by hand' : 'by itself'}.`;
  const put =
    from === 'put'
      ? ['It says no minutes: these are put for it.']
      : from === 'estimate'
        ? ['These minutes are an estimate.']
        : [];
  return [long, ...put, ...(waits > 0 ? [`It waits ${lengthOf(waits)} then.`] : []), `In the recipe: ${where}.`];
}

/** `20260914T193000`, so many minutes from the serving. */
function floating(date: string, serve: string, min: number): string {
  const at = new Date(Date.parse(`${date}T${serve}:00Z`) + min * 60_000);
  return at.toISOString().slice(0, 19).replaceAll(/[-:]/g, '');
}

/** A TEXT: RFC 5545, 3.3.11; nothing of it ends a line. */
const escaped = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[\0-\x08\x0b-\x1f\x7f]/g, '\ufffd')
    .replace(/[\\;,]/g, '\\$&')
    .replaceAll('\n', '\\n');

const MOST_OCTETS = 75;

/** No line is longer than 75 octets, and none is cut within a character: RFC 5545, 3.1. */
function folded(line: string): string {
  const encoder = new TextEncoder();
  let text = '';
  let octets = 0;
  for (const character of line) {
    const size = encoder.encode(character).length;
    if (octets + size > MOST_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}

/** The same for the same text, and hardly ever for another: FNV-1a, twice over 32 bits. */
function digest(text: string): string {
  const run = (seed: number): string => {
    let hash = seed;
    for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193) >>> 0;
    return hash.toString(16).padStart(8, '0');
  };
  return run(0x811c9dc5) + run(0x9747b28c);
}
