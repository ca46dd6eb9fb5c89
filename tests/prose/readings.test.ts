/** What single rules of the passes make of a sentence: two senses of a word, verbs in two places, what is denied, conditional, left out. */
import { describe, expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { unknownWords } from '../../server/src/prose/audit.ts';
import { eventsOf, namesIn } from '../outside/sentences/score.ts';
import { shownOf } from './shown.ts';

/** The verbs that a sentence orders or tells, as written. */
const verbsOf = (text: string): string =>
  eventsOf(text)
    .map(({ verb }) => (verb === undefined ? '-' : text.slice(verb.start, verb.end).toLowerCase()))
    .join(' ');

describe('a word that is a verb and a thing', () => {
  test.each([
    ['Salt the water, then oil the pan.', 'salt oil'],
    ['Add the salt, oil and butter.', 'add'],
    ['Boil the sugar, honey and salt with the water.', 'boil'],
    ['Cover the peppers, onions and salt with vinegar.', 'cover'],
    ['Dry the fish and salt with care.', 'dry salt'],
    ['Brown the onions; add brown sugar.', 'brown add'],
    ['Cook over a low heat; do not boil.', 'cook boil'],
    ['Soak and drain the beans.', 'soak drain'],
    ['Remove the ring, wash and store in a dry place.', 'remove wash store'],
    ['Stir until the sauce boils and thickens, then serve.', 'stir serve'],
    ['Cook until tender, brown and dry.', 'cook'],
    ['Cook until tender and drain.', 'cook drain'],
    ['When cold turn out.', 'turn out'],
    ['Keep in a dark, dry, cool place.', 'keep'],
    ['These can be removed after an hour.', 'removed'],
    ['Can the peaches.', 'can'],
    ['Freezing may crack the jars.', 'crack'],
    ['Add boiling stock, stirring.', 'add stirring'],
    ['It is skimmed off, and poured into jars.', 'skimmed off poured into'],
    ['Spot it with butter.', 'spot'],
    ['Apples that are ripe will keep for a week.', 'keep'],
    ['Saturday, rub the joint.', 'rub'],
    ['After a month, slice it.', 'slice'],
    ['Carve at once like a roast.', 'carve'],
    ['Get it into the fridge.', 'get'],
    ['Cover and cool for 10 minutes.', 'cover cool'],
    ['Fork it up.', 'fork'],
    ['Chill, tub and label.', 'chill tub label'],
    ['Let the pressure fall by itself, cool the jars.', 'cool'],
    ['The pink stuff is left out.', 'left out'],
    ['Cream, beat, chill.', 'cream beat chill'],
    ['Wash well, salt and set aside.', 'wash salt set aside'],
    ['Bake until golden and bubbling.', 'bake'],
    ['In a bowl whisk the eggs.', 'whisk'],
    ['With a mixer beat the butter.', 'beat'],
    ['That is all the cooking it gets.', ''],
    ['Fry until it stops steaming.', 'fry'],
    ['Add the baking powder.', 'add'],
    ['The jars are then filled and sealed.', 'filled sealed'],
    ['Slice as thin as you can.', 'slice'],
  ])('%s', (text, verbs) => expect(verbsOf(text)).toBe(verbs));
});

describe('verbs of several words', () => {
  test.each([
    ['Bring the milk to a boil.', ['heat through: @stove, by water']],
    ['Set the bowl aside.', ['reserve: in open']],
    ['Turn the oven off.', ['adjust: off oven']],
    ['Kill the heat.', ['adjust: off stove']],
    ['Heat in the oven.', ['heat barely: @oven']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('what is denied, conditional or a choice', () => {
  test.each([
    ['Do not leave it out or keep it warm.', ['stay not: @room', 'stay not: @hot']],
    ["It isn't refrigerated.", ['cool told not: @cold']],
    ['Do not let it boil.', ['heat through at most: @stove, by water']],
    [
      'Fry in the pan or bake in the oven.',
      ['heat as read: @stove, in open, by fat, either 1', 'heat as read: @oven, by air, either 1'],
    ],
    ['If desired, chill for 1 hour.', ['cool optional: @cold, 60 min']],
    ['If it is thick, chill it.', ['cool if: @cold']],
    ['Stand until it no longer steams.', ['stay: until warm']],
    ['No need to chill it.', ['cool not: @cold']],
    ["Don't bother chilling it.", ['cool not: @cold']],
    ['Forget the fridge!', ['stay: not @cold']],
    ['Skip the fridge.', ['stay not: not @cold']],
    ['Nobody is to touch it.', []],
    ['Do you chill it first?', ['cool told asked: @cold']],
    ['Chill it?', ['cool asked: @cold']],
    ['It improves when it is left at room temperature for 8 h.', ['stay told if: @room, 480 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('what nobody is to do', () => {
  test.each([
    ['Eat at once rather than letting it sit on the sill all day.', ['eat: now', 'stay not: @room, 480-1440 min']],
    ['Serve it now instead of leaving it in the shed overnight.', ['eat: now', 'stay not: @outdoors, 480-960 min']],
    ['Without rinsing the pan, simmer it for 20 min.', ['heat through: @stove, in open, by water, 20 min']],
    ['There is to be no leaving it on the bench for 5 h.', ['stay not: @room, 300 min']],
    [
      'It must neither be stood in the attic for 9 h nor frozen.',
      ['stay told not: @room, 540 min', 'freeze told not: @frozen'],
    ],
    ['It cannot safely be left on the sill for 5 h.', ['stay told not: @room, 300 min']],
    ['It will not keep in the attic for 5 h, so eat it.', ['stay as read not: @room, 300 min', 'eat: now']],
    ['It is dangerous to stand it in the attic for 5 h.', []],
    ['Beware of keeping it in the attic for 5 h.', ['stay as read not: @room, 300 min']],
    ['Not once should you rest it in the attic for 5 h.', ['stay not: @room, 300 min']],
    ['Broth left on the sill overnight goes in the bin.', ['discard told: @room, 480-960 min']],
    ['No stew should stand on the sill for 5 h.', ['stay told not: @room, 300 min']],
    ['See that nobody leaves it on the sill for 5 h.', ['read', 'stay told not: @room, 300 min']],
    ['The rules forbid leaving it on the sill for 5 h.', ['stay not: @room, 300 min']],
    ['Should it have stood on the sill for 5 h, throw it out.', ['stay told not: @room, 300 min', 'discard']],
    ['Leaving it on the sill for 5 h is dangerous.', ['stay beside not: @room, 300 min']],
    ['It has no business standing on the sill for 5 h.', ['stay not: @room, 300 min']],
    ['Throw out what has stood on the bench for 8 hours.', ['discard', 'stay before not: @room, 480 min']],
    ['With no lid on, leave it to stand overnight.', ['stay', 'stay: 480-960 min']],
    ['Leave it on the sill without covering it for 9 hours.', ['stay: @room, 540 min']],
    [
      'Fry without stirring, then leave on the sill for 9 hours.',
      ['heat as read: @stove, by fat', 'stay: @room, 540 min'],
    ],
  ])('%s', (text, events) => expect(shownOf(text).map((event) => event.replace('not @', '@'))).toEqual(events));
});

describe('what is told in passing', () => {
  test.each([
    ['After a rest of nine hours on the sill, skim it.', ['stay before: @room, 540 min', 'remove']],
    ['Allow the brew eight hours beside the stove.', ['stay: @~room, 480 min']],
    ['Let this simmer 20 minutes.', ['heat through: @stove, by water, 20 min']],
    ['Nine hours beside the loom.', ['stay: @~room, 540 min']],
    ['Five minutes a side in a hot pan.', ['heat as read: @~stove, in open, 5 min a side']],
    ['All night in the saucepan.', ['stay: in open, 480-960 min']],
    ['I usually stand it on the desk for 7 h.', ['stay: @room, 420 min']],
    ['It spends 7 h on top of the freezer.', ['stay: @~room, 420 min']],
    ['Dump it in the bothy for two days.', ['put: @~room, 2880 min']],
    ['See to it that the pan stays on the sill for 5 h.', ['read: in open', 'stay told: @room, 300 min']],
    ['Make sure it stays on the sill for 9 hours.', ['read', 'stay told: @room, 540 min']],
    ['See that the pot stays in the larder for 2 h.', ['read: in lidded', 'stay told: @cool, 120 min']],
    ['Check that it is cold.', ['read']],
    ['When it has stood in the shed for 8 hours, strain it.', ['stay before: @outdoors, 480 min', 'remove: when ?']],
    ['Only when it has stood in the shed for 8 h is it ready.', ['stay told if: @outdoors, 480 min']],
    ['Taste it only after it has been in the attic all day.', ['read', 'stay before: @room, 480-1440 min']],
    ['Throw it out once it has stood in the sun for 4 hours.', ['discard: 240 min, when ?']],
    ['When it has boiled 20 minutes, add the salt.', ['heat through before: 20 min', 'combine: when hot']],
    ['Throw it out once it has boiled for 4 hours.', ['discard: when hot']],
    [
      'Allow an hour to bake, and twenty minutes to cool.',
      ['heat as read: @oven, by air, 60 min', 'cool told: 20 min'],
    ],
    [
      'Two hours to boil the oranges; half an hour to stand.',
      ['heat through told: @stove, by water, 120 min', 'stay told: 30 min'],
    ],
    ['It will require two hours to roast.', ['heat as read told: @oven, by air, 120 min']],
    ['Simmer ten minutes to thicken it.', ['heat through: @stove, by water, 10 min']],
    [
      'Keeps 7 days in the fridge, 3 months frozen.',
      ['stay told: @cold, 10080 min', 'freeze told: @frozen, 120960-133920 min'],
    ],
    [
      'They keep in the fridge for 2 days or frozen for 2 months.',
      ['stay told: @cold, 2880 min, either 1', 'freeze told: @frozen, 80640-89280 min, either 1'],
    ],
    [
      'Leave till morning; half an hour to boil it.',
      ['stay: until 360-960 min', 'heat through told: @stove, by water, 30 min'],
    ],
    ['ROAST BEEF.--Season the meat.', ['combine']],
    ['Add two swedes peeled and cut in quarters, then toast.', ['combine', 'heat as read: by air']],
    ['Put in one onion, cut fine, two spoonfuls of salt.', ['put']],
    [
      'Put it away and either brown them in the oven or bin them.',
      ['stay', 'heat outside: @oven, either 1', 'discard: either 1'],
    ],
    ['Stir, and when firm decorate with peel.', ['combine', 'combine: when set']],
    ['Cook at a 10-pound pressure for an hour.', ['heat as read: by pressure, 60 min']],
    ['Ten minutes before it is done, add the peel.', ['unknown', 'combine: point 10 min']],
    [
      'Fry for 5 minutes on one side; turn and fry 4 on the other.',
      ['heat as read: @stove, by fat, 5 min', 'adjust', 'heat as read: @stove, by fat, 4 min'],
    ],
    ['Let these stand covered for 2 h.', ['stay: 120 min']],
    [
      'Boil with the swedes, cut in slices, and the bread, for two or more hours.',
      ['heat through: @stove, by water, 120-… min'],
    ],
    ['Process pints 25 minutes and quarts 30 minutes.', ['combine: 25 min, 30 min']],
    [
      'All dry, home-canned food should be boiled 10 minutes to make it safe.',
      ['heat through told: @stove, by water, 10 min'],
    ],
    ['Set it on the counter and do not touch it for two hours.', ['stay: @room, 120 min']],
    ['Leave it on the rack and never move it all night.', ['stay: in tool, 480-960 min', 'put not']],
    ['Take the dish out of the oven.', ['remove: out of oven, in open']],
    ['Draw the kettle off the flame.', ['remove: off stove, in lidded']],
    ['An hour beside the stove.', ['stay: @~room, 60 min']],
    // What was not done with it says which.
    ['What is not drunk that day keeps in the fridge for 9 days.', ['stay told: @cold, 12960 min']],
    ["Whatever doesn't go at the fair stays in the freezer.", ['stay told: @frozen']],
    // Whatever was told of before, this is an order.
    ['My father cannot abide them, so peel the tomatoes.', ['cut']],
    ["They wouldn't touch it raw, so fry it in oil.", ['heat as read: @stove, by fat']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('who comes and goes tells how long', () => {
  test.each([
    ['Leave it until the verger locks up.', ['stay: until 120-720 min']],
    ['Leave it until the early chef’s in.', ['stay: until 300-960 min']],
    ['Leave it till the lads come home from school.', ['stay: until 240-660 min']],
    ['On the counter it stays until morning.', ['stay told: @room, until 360-960 min']],
    ['Up it goes, and there it stays until evening.', ['stay told: until 60-900 min']],
    ['Set the delay and close the lid.', ['stay: @room', 'close: in tool']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('held so warm', () => {
  test.each([
    ['Keep it lukewarm in the bain-marie.', ['stay as read: @bath, @warm']],
    ['Keep it where you can bear a finger in it.', ['stay as read: @warm']],
    ['Leave it until lukewarm.', ['stay: until warm']],
    ['Let it stand in lukewarm water.', ['stay: by water']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('places that do not work', () => {
  test.each([
    ['Leave it in the broken freezer for nine hours.', ['stay: @room, 540 min']],
    ['Set it in the oven with its element off all night.', ['stay: @room, 480-960 min']],
    ['Stand it in the ice chest with no ice for 2 h.', ['stay: @room, 120 min']],
    ['Stand it in the ice chest without power for 2 h.', ['stay: @room, 120 min']],
    ['Stand it in an ice chest whose ice has melted for 9 h.', ['stay: @room, 540 min']],
    ['Leave it unrefrigerated for 9 h.', ['stay: @room, 540 min']],
    ['Stand it in the slow cooker with its plug out for 9 h.', ['stay: @room, 540 min']],
    ['Leave it in the slow cooker, unplugged, overnight.', ['stay: @room, 480-960 min']],
    ['Stand it in the warming drawer that is turned off for 8 hours.', ['stay: @room, 480 min']],
    ['In an unlit stove, 9 h.', ['stay: @room, 540 min']],
    ['Circulator off.', ['stay: @room']],
    ['Leave out of the fridge for an hour.', ['stay: out of cold, 60 min']],
    ['Leave in the fridge with no lid overnight.', ['stay: @cold, in tool, 480-960 min']],
    ['Bake in the oven with the fan off for 20 minutes.', ['heat as read: @oven, by air, 20 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('places one in the other', () => {
  test.each([
    ['Leave it in the pantry fridge in the cellar for 2 days.', ['stay: @cool, @cold, 2880 min']],
    ['Stand it in a drawer in the chiller for 2 days.', ['stay: @room, @cold, 2880 min']],
    ['Stand it on a shelf in the cellar for 2 days.', ['stay: @room, @cool, 2880 min']],
    ['Leave it in the cool corner of the garage overnight.', ['stay: @outdoors, @cool, 480-960 min']],
    ['Take it out of the fridge in the garage.', ['remove: out of cold']],
    ['Set it on top of the freezer overnight.', ['stay: @~room, 480-960 min']],
    ['Pop it in the fridge for 2 hours.', ['put: @cold, 120 min']],
    ['Put it directly into the fridge for 2 hours.', ['put: to cold, 120 min']],
    ['Stand it beside the radiator on the 23rd.', ['stay: @warm']],
    ['Process at 11 pounds for 25 min.', ['combine: by pressure, 25 min']],
    ['Pop it in the oven for 20 minutes.', ['put: @oven, 20 min']],
    ['Leave it outside overnight.', ['stay: @outdoors, 480-960 min']],
    ['Leave it somewhere warm for 8 hours.', ['stay: @warm, 480 min']],
    ['Leave it in the dish you baked it in, on the sill, all night.', ['stay: @room, in open, 480-960 min']],
    ['Rest it in the bowl it was mixed in, for 1 h.', ['stay: in open, 60 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('what is told of what somebody does', () => {
  test.each([
    ['I leave mine on the counter overnight.', ['stay told: @room, 480-960 min']],
    ['We used to hang it in the barn for a week.', ['stay told: @outdoors, 10080 min']],
    ['My mother always kept hers on the windowsill for a week.', ['stay told advice: @room, 10080 min']],
    ['My mother always kept hers on the windowsill for a week; so do I.', ['stay told: @room, 10080 min']],
    ['Hanne kept it on the windowsill for a week.', ['stay told if: @room, 10080 min']],
    ['Hanne used to hang it in the barn for a week.', ['stay told advice: @outdoors, 10080 min']],
    ['The hook is used to hang it.', []],
    ['Keeps a year in the pantry.', ['stay told: @cool, 525600-527040 min']],
    [
      'Boil 5 minutes, so every strip passes 70 C.',
      ['heat through: @stove, by water, 5 min', 'read told: 70 C of food'],
    ],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('figures and places of another clause', () => {
  test.each([
    ['Keep in the cellar, which stays at 13 C.', ['stay as read: @cool, 13 C of around']],
    ['Store in the larder, which never gets above 10 C.', ['stay: @cool, at most 10 C of around']],
    ['When the probe says 63 C it is as juicy as it gets.', ['read told: 63 C of food']],
    ['Drain; when cold, fridge.', ['remove', 'stay: @cold, when cold']],
    ['Film on top, blast chiller to 4 C within the hour.', ['cover', 'stay: @cold, 4 C of food, limit 60 min']],
    ['Give it 40 minutes at 180 C.', ['heat as read: 180 C of oven, 40 min']],
    ['Place in the cabinet, dial at 60 C.', ['put: @room, 60 C of around', 'unknown']],
    ['Hold at 60 C the 12 hours till morning.', ['stay as read: 60 C of around, 720 min']],
    ['Toss, breaking it up, until brown.', ['combine: until colour', 'cut beside']],
    ['Bake, turning once, until brown.', ['heat as read: @oven, by air, until colour', 'adjust beside']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('numbers without a scale', () => {
  test.each([
    ['Roast until the thermometer registers 145.', ['heat as read: @oven, by air, 63 C of food, until figure']],
    ['Fry at 180 for 4 minutes.', ['heat as read: @stove, by fat, 180 C of medium, 4 min']],
    ['Pull at 54.', ['remove: 54 C of food']],
    ['Check 40 jars.', ['read']],
    ['Hold from 0500 at 60 C.', ['stay as read: 60 C of around']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('places', () => {
  test.each([
    ['Keep in the cold case.', ['stay as read: @cold']],
    ['Leave behind the stove for 2 h.', ['stay: @~room, 120 min']],
    ['Draw the pot aside.', ['remove: off stove, in lidded']],
    ['Cook on low 8 hours.', ['heat as read: @stove, 480 min']],
    ['Leave it in the scullery for two days.', ['stay: @room, 2880 min']],
    ['Leave it in the zibbet for two days.', ['stay: @~room, 2880 min']],
    ['Leave beside the stove for 2 h.', ['stay: @~room, 120 min']],
    ['Fridge, two days.', ['stay: @cold, 2880 min']],
    ['Take it out of the fridge.', ['remove: out of cold']],
    ['left out overnight', ['stay told: @room, 480-960 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

test('a time is the nearest earlier verb’s that can last, and one beside takes an interval alone', () => {
  expect(shownOf('Simmer 2 h, stirring every 10 min.')).toEqual([
    'heat through: @stove, by water, 120 min',
    'combine beside: every 10 min',
  ]);
  expect(shownOf('Simmer; add salt, 20 minutes.')).toEqual(['heat through: @stove, by water, 20 min', 'combine']);
});

test('words that no row has are listed by where they stand', () => {
  const unknown = (text: string): string =>
    unknownWords(sentenceIn(text).items, namesIn(sentenceIn(text).items))
      .map(({ as, word }) => `${as} ${word}`)
      .join(', ');
  expect(unknown('Frobnicate the dough in the zibbet until it zings.')).toBe(
    'order frobnicate, place zibbet, sign zings',
  );
  expect(unknown('Stir the soup in the pan until thick.')).toBe('');
});

describe('what is done beside, and how many times over', () => {
  test.each([
    [
      'Meanwhile, simmer the sauce for 20 min. Add the cream.',
      ['heat through: @stove, by water, 20 min, meanwhile', 'combine: meanwhile'],
    ],
    [
      'Roast for 1 h. In the meantime, boil the rice.',
      ['heat as read: @oven, by air, 60 min', 'heat through: @stove, by water, meanwhile'],
    ],
    [
      'While the cake bakes, boil the syrup for 5 min.',
      ['heat as read told: @oven, by air', 'heat through: @stove, by water, 5 min, meanwhile'],
    ],
    [
      'Simmer for 20 minutes while you stir the sauce.',
      ['heat through: @stove, by water, 20 min', 'combine told: meanwhile'],
    ],
    ['Fry in 3 batches for 4 min each.', ['heat as read: @stove, by fat, 4 min a piece, 3 times over']],
    ['Fry in two or three batches, 4 min a batch.', ['heat as read: @stove, by fat, 4 min a batch, 2-3 times over']],
    ['Bake the batches for 4 min.', ['heat as read: @oven, by air, 4 min']],
    [
      'Bake at 325 F for 20 minutes, or in a convection oven at 300 F for 15 minutes.',
      [
        'heat as read: @oven, by air, 163 C of oven, 20 min, either 1',
        'heat as read: @oven, 149 C of oven, 15 min, either 1',
      ],
    ],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('how long it is good, and where', () => {
  test.each([
    ['Jar, label 6 days, walk-in at 3 C.', ['pack', 'ready', 'stay: @cold, 3 C of around, life 8640 min']],
    ['Chill to 3 C, 5 days shelf life.', ['cool: @cold, 3 C of food, life 7200 min']],
    ['To hold for tomorrow: spread on trays and stand them in the chiller.', ['combine: in open', 'stay: @cold']],
    ['To keep a week: jar it, and into the fridge.', ['pack: to cold, 10080 min']],
    ['To keep overnight: cover.', ['stay as read: 480-960 min', 'cover']],
    ['Freezes 2 months.', ['freeze told: @frozen, 80640-89280 min']],
    ['Cool, box, eat in 2 days.', ['cool', 'pack', 'eat: life 2880 min, now']],
    ['Cool in 2 days.', ['cool: 2880 min']],
    ['Rest it in the cellar for 3 days.', ['stay: @cool, 4320 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('what is on, and what is only set', () => {
  test.each([
    ['The oven stays on all night.', ['heat as read told: @oven, 480-960 min']],
    ['Leave the oven on, eight hours.', ['heat as read: @oven, 480 min']],
    ['Do not leave the oven on all night.', ['heat as read not: not @oven, 480-960 min']],
    ['Leave it in the oven all night.', ['stay: @oven, 480-960 min']],
    ['Oven 190C. Chop the leeks.', ['adjust: @oven, 190 C of oven', 'cut']],
    ['Oven 190C. 20 minutes.', ['heat as read: @oven, 190 C of oven, 20 min']],
    ['Rub the joint. Oven 190C.', ['combine', 'heat as read: @oven, 190 C of oven']],
    ['Covered dish, 170 C 20 min, middle 75 C.', ['heat as read told: in open, 170 C of oven, 75 C of food, 20 min']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});

describe('a place that is looked at, or denied', () => {
  test.each([
    ['It looks grand on the dresser.', []],
    ['It stands on the dresser. Not on the dresser.', ['stay told not: @room', 'stay not: not @room']],
    ['It stands on the dresser for 2 days.', ['stay told: @room, 2880 min']],
    ['In Whitby we had it on the lawn.', ['stay advice: @~room, @outdoors']],
    ['We had it on the bench for 2 days.', ['stay: @room, 2880 min']],
    ['Move it to the fridge (at 4 C if yours shows it).', ['put: to cold, 4 C of around']],
    ['Move it to the fridge if it is hot.', ['put if: to cold']],
  ])('%s', (text, events) => expect(shownOf(text)).toEqual(events));
});
