/** What is safe is a closed class: each word of it says what it must, in every form, and what only sounds like it does not. */
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { Event, PlaceKind } from '../../server/src/prose/event.ts';
import { longerSense, senseOf, thingOf, UNKNOWN, verbOf } from '../../server/src/prose/lexicon.ts';
import { read } from '../../server/src/prose/read.ts';

/** The row of words that stand behind each other. */
function rowOf<T>(of: (sense: number) => T, words: string): T {
  let sense = UNKNOWN;
  for (const word of words.split(' ')) sense = sense === UNKNOWN ? senseOf(word) : longerSense(sense, word);
  return of(sense);
}

const list = (words: string): readonly string[] => words.split(', ');
const each = (lists: Readonly<Record<string, string>>): [string, string][] =>
  Object.entries(lists).flatMap(([as, words]) => list(words).map((word): [string, string] => [word, as]));

/** `ice` and what is cooled by it are media; whoever asks takes them for cold. */
const PLACES: Readonly<Partial<Record<PlaceKind | 'ice', string>>> = {
  cold: 'fridge, refrigerator, icebox, chiller, blast chiller, walk-in, reach-in, lowboy, cold room, cold store, cool box, cooler, ice chest, ice bath',
  ice: 'ice, iced water, ice water, crushed ice',
  cool: 'cellar, larder, cool place, cold place, spring house, wine cabinet, snow',
  frozen: 'freezer, deep freeze, ice and salt, dry ice, nitrogen',
  hot: 'low flame, low oven, slow cooker, steam table, hot cupboard, warming drawer, heated cabinet, rice cooker, flask, haybox, insulated box',
  warm: 'lamp, heat lamp, chafing dish, warm place, back of the stove, airing cupboard',
  room: 'counter, worktop, bench, table, sideboard, windowsill, kitchen, pass, cupboard, sink, floor, car',
  outdoors: 'garage, porch, shed, sun, doorstep, balcony',
};

test.each(each(PLACES as Record<string, string>))('%s is %s', (place, is) => {
  const said = place === 'pass' ? 'the pass' : place;
  expect(rowOf(thingOf, said)?.is).toBe(is);
});

test.each(
  each({
    through:
      'boil, hard-boil, simmer, bubble, poach, steam, stew, braise, casserole, pot-roast, slow-cook, pressure-cook, pressure-can, confit',
    'as read':
      'bake, roast, grill, broil, barbecue, griddle, plank, toast, fry, deep-fry, pan-fry, stir-fry, shallow-fry, sauté, scramble, coddle, soft-boil, microwave, hot-smoke, spit-roast, finish',
    outside: 'sear, brown, char, blacken, torch, singe, blanch, parboil, flash-fry, gratinate, scald',
    barely: 'melt, warm, infuse, soften, temper, dissolve, cold-smoke',
  }),
)('to %s cooks %s', (verb, cooks) => {
  expect(rowOf(verbOf, verb)?.cooks).toBe(cooks);
});

test.each(list('dry, cure, age, hang, mature, smoke, ferment, pickle, salt, brine, bloom'))(
  'to %s cooks nothing through',
  (verb) => {
    const row = rowOf(verbOf, verb);
    expect(row).toBeDefined();
    expect(row?.cooks === undefined || row.cooks === 'barely').toBe(true);
  },
);

test.each(list('refrigerate, chill, ice, retard'))('to %s is in the cold', (verb) => {
  expect(rowOf(verbOf, verb)).toMatchObject(verb === 'ice' ? { medium: 'ice' } : {});
  const [event] = read(sentenceIn(`${verb} the custard for 2 h.`).items, []);
  expect(event?.where.some(({ is }) => is === 'cold') || event?.act === 'cool').toBe(true);
});

test.each(list('serve, eat, plate, dish up, send out, hand round, enjoy'))('to %s is to eat', (verb) => {
  expect(rowOf(verbOf, verb)?.act).toBe('eat');
});

const fateOf = (text: string): Event['fate'] =>
  read(sentenceIn(text).items, []).reduce<Event['fate']>((fate, event) => event.fate ?? fate, undefined);

test.each(list('at once, while hot, immediately, to the table'))('serve %s is now', (when) => {
  expect(fateOf(`Serve ${when}.`)).toBe('now');
});

test.each(list('ahead, when wanted, for the picnic, for the party, for the lunch box, for the buffet'))(
  'make it %s is for later',
  (when) => {
    expect(fateOf(`Put it aside ${when}.`)).toBe('later');
  },
);
