/** The items that a sentence is cut into: figures with their points, degrees and scales. */
import { describe, expect, test } from 'vitest';
import { parseDocument } from '../../server/src/notation/document.ts';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { SentenceItem } from '../../server/src/notation/tree.ts';

const shown = (text: string, item: SentenceItem): string => {
  const written = text.slice(item.start, item.end);
  if (item.kind === 'temperature') return `{${written}: ${item.lowDegrees}-${item.highDegrees} ${item.unit}}`;
  if (item.kind === 'duration') return `{${written}: ${item.lowMin}-${item.highMin} min}`;
  return item.kind === 'measured' ? `{${written}}` : written;
};
const itemsOf = (text: string): string =>
  sentenceIn(text)
    .items.map((item) => shown(text, item))
    .join(' ');

describe('figures of a sentence', () => {
  test.each([
    ['Bake in 325 F. oven', 'Bake in {325 F.: 325-325 F} oven'],
    ['Bake at 325 F. Cool', 'Bake at {325 F: 325-325 F} . Cool'],
    ['boil 5 min., then', 'boil {5 min.: 5-5 min} , then'],
    ['in 1-1/2 hours', 'in {1-1/2 hours: 90-90 min}'],
    ['to 350 degrees F', 'to {350 degrees F: 350-350 F}'],
    ['to 350 degrees F. for', 'to {350 degrees F.: 350-350 F} for'],
    ['to 180ºC', 'to {180ºC: 180-180 C}'],
    ['248° Fahr. as', '{248° Fahr.: 248-248 F} as'],
    ['185°-210° F', '{185°-210° F: 185-210 F}'],
    ['60° to 70° F', '{60° to 70° F: 60-70 F}'],
    ['a 350° oven', 'a {350°: 350-350 F} oven'],
    ['or 250 degrees', 'or {250 degrees: 250-250 unsaid}'],
    ['at -5 degrees C', 'at {-5 degrees C: -5--5 C}'],
    ['bake at mark 4', 'bake at {mark 4: 4-4 gas}'],
    ['Mark 4 squares', 'Mark {4 squares}'],
    ['to a high degree', 'to a high degree'],
  ])('%s', (text, items) => expect(itemsOf(text)).toBe(items));
});

describe('a comma among the digits of a step', () => {
  const faults = (step: string): string[] =>
    parseDocument(`do ${step}`).lines.flatMap((line) => line.faults.map(({ code }) => code));
  test.each(['Process 30 min above 2,000 ft.', 'Process at 11 lb up to 1,000 feet.', 'Cut 1,200 rounds.'])(
    'is of thousands where nothing is weighed: %s',
    (step) => expect(faults(step)).toEqual([]),
  );
  test.each(['Add 1,000 g of the beef.', 'Roll 1,5 cm thick.', 'Boil for 1,5 h.'])(
    'else it is asked about: %s',
    (step) => expect(faults(step)).toEqual(['decimal-comma']),
  );
});
