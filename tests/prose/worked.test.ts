/** Sentences as printed in cookery books of the public domain and on cards of the US government, read by hand: what each orders. */
import { expect, test } from 'vitest';
import { shownOf } from './shown.ts';

test.each<[string, string[]]>([
  [
    'Brown in 325 F. oven 20 to 25 minutes or in 375 F. convection oven 6 minutes',
    ['heat outside: @oven, 163 C of oven, 20-25 min, either 1', 'heat outside: @oven, 191 C of oven, 6 min, either 1'],
  ],
  ['Internal temperature must reach 145 F. for 15 seconds', ['read told: 63 C of food, 0.25 min']],
  ['Hold for service at 140 F. or higher', ['stay as read: at least 60 C of around, later']],
  ['Refrigerate at 41 F. until ready', ['cool: @cold, 5 C of around, until needed']],
  [
    'FERMENT: Cover. Set in warm place (80 F.) 1-1/2 hours or until double',
    ['rise: @warm, 27 C of around, 90 min, until risen', 'cover', 'put: @warm, until risen'],
  ],
  ['Place beef in 190 F. water', ['put: by water, 88 C of medium']],
  [
    'Keeps for 3 d in the fridge, or 3 months at -18 C',
    ['stay told: @cold, 4320 min, either 1', 'stay: -18 C of around, 120960-133920 min, either 1'],
  ],
  [
    'Refrigerate for up to 3 d or at -18 C for up to 20 d',
    ['cool: @cold, limit 4320 min, either 1', 'cool: -18 C of around, life 28800 min, either 1'],
  ],
  [
    'Keep in the fridge for 4 d, or for 20 d in the freezer',
    ['stay: @cold, 5760 min, either 1', 'stay: @frozen, 28800 min, either 1'],
  ],
  ['Keep in the fridge for 4 d or overnight', ['stay: @cold, 5760 min (1), 480-960 min (1)']],
  ['Grill 5 minutes on one side, 4 minutes on the other', ['heat as read: @oven, by air, 5 min, 4 min']],
  ['Fry on griddle at 350 F. 3 minutes each side', ['heat as read: @stove, by metal, 177 C of medium, 3 min a side']],
  [
    'Soak overnight and drain the beans, boil',
    ['steep: by water, 480-960 min', 'remove', 'heat through: @stove, by water'],
  ],
  [
    'Steam ten minutes, put into the cooker five to eight hours',
    ['heat through: @stove, by steam, 10 min', 'put: to hot, 300-480 min'],
  ],
  ['Let stand on back of range one hour', ['stay: @warm, 60 min']],
  [
    'Six minutes by the fire, then heat, adding cream or butter',
    ['heat as read: @stove, 6 min', 'heat barely', 'combine beside'],
  ],
  ['Put a pan on to heat; meanwhile beat four eggs', ['put: to stove, in open', 'combine: meanwhile']],
  ['Set in a cool place overnight to jelly', ['put: @cool, 480-960 min', 'stay']],
  ['Cool gravy (set pan in iced water); refrigerate', ['cool', 'stay: in open, by ice', 'cool: @cold']],
  ['Should stand overnight in a cool place, not in a refrigerator', ['stay told: @cool, not @cold, 480-960 min']],
  ['If not eaten hot, let it remain in the pot until cold', ['stay if: in lidded, until cold']],
  ['Store 2 weeks or less in a cool place, 60 to 70 °F', ['stay: @cool, 16-21 C of around, life 20160 min']],
  ['May be saved if thawed but about 40° F', ['reserve told if: 4 C of around']],
  [
    'Boil until a hard ball forms or 250 degrees is reached',
    ['heat through: @stove, by water, 121 C of food, until stage'],
  ],
  ['Exhaust to 170° F. (10 minutes), seal cans', ['heat as read: 77 C of food, 10 min', 'close: in jar']],
  [
    'Heat to simmering (185–210 °F); stir to keep it from sticking',
    ['heat through: @stove, by water, 85-99 C of food', 'combine'],
  ],
  ['Reduce heat, baste every 15 minutes until cooked', ['adjust', 'combine: every 15 min, until through']],
  ['Oil and vinegar may then be added', ['combine told']],
  ['Let cool 5 minutes before carving into 16 slices', ['cool: 5 min', 'cut']],
  [
    'When hot add the yolks; stand until very cold; freeze',
    ['combine: when hot', 'stay: until cold', 'freeze: @frozen'],
  ],
  ['Mix with vinegar, four hours in the sun', ['combine: @outdoors, by acid, 240 min']],
  ['Take beans that have been soaked, boil 1 hour', ['ready', 'heat through: @stove, by water, 60 min']],
  ['Return the plank to the oven to finish broiling the fish', ['return: to oven', 'heat as read: @oven, by air']],
  ['Set aside for use in Step 5', ['reserve: later']],
  ['In Step 7, reduce baking time to 1-1/2 hours', ['adjust: elsewhere']],
  ['Poach as directed', ['heat through: @stove, by water, elsewhere']],
  ['By the fire one hour, then put in a pound of beef', ['heat as read: @stove, 60 min', 'put']],
  ['Once the jar is sealed, allow to set until cold', ['stay: when closed, until cold']],
  ['Repack in ice and salt; in a cold place several hours', ['pack: @frozen', 'stay: @cool, 180-360 min']],
  ['Add hot water (120 F.), mixing at low speed', ['combine: 49 C of medium', 'combine beside']],
  [
    'The next day add sugar; place in a cool oven 2 nights',
    ['combine: point 720-1440 min', 'put: @oven, 960-1920 min'],
  ],
  ["Don't put the veal in until it is boiling", ['put: when boiling']],
  ['Stir until hot; do not let it boil', ['combine: until hot', 'heat through at most: @stove, by water']],
  ['Roast to desired internal temperature (see table)', ['heat as read: @oven, by air, elsewhere']],
])('%s', (sentence, events) => {
  expect(shownOf(sentence)).toEqual(events);
});
