/**
 * Food that lies warm until somebody comes, by words that no list has: pairs that differ in one thing said, of which one is dangerous. The
 * recipes are invented; which is which is FDA Food Code 2022, 3-501.13, 3-501.14 and 3-501.16, and USDA FSIS on the danger zone.
 */
import { describe, expect, test } from 'vitest';
import { dangersIn } from '../../../server/src/checks/by-state/dangers.ts';
import { makeHouse } from '../../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../../server/src/workspace/settings.ts';
import { open } from '../../support/harness.ts';

const { house } = makeHouse(DEFAULTS);

const LEFT: ReadonlySet<string> = new Set(['cooling-too-slow', 'held-too-warm', 'disposition-unsaid']);

/** The gravest that is said of where food lies. */
function said(list: readonly string[], ...steps: readonly string[]): string {
  const text = `recipe Test\n${list.map((line) => `  ${line}\n`).join('')}${steps.map((step) => `  do ${step}\n`).join('')}`;
  const levels = dangersIn(open(text).recipe, house).flatMap(({ code, level }) => (LEFT.has(code) ? [level] : []));
  return levels.some((level) => level !== 'ask') ? 'wrong' : levels.length > 0 ? 'asked' : 'quiet';
}

const STEW = ['1 kg stewing beef', '500 g beef stock', '300 g onions'];
const SIMMER = 'Simmer the beef with the onions in the stock for 2 h.';
const RICE = ['300 g long-grain rice', '600 g water'];
const BOIL = 'Simmer the rice in the water for 12 minutes, until tender.';
const CHICKEN = ['800 g chicken thighs', '200 g yogurt', '10 g salt'];
const MARINATE = 'Mix the chicken with the yogurt and salt.';
const PRAWNS = ['400 g cooked prawns', '200 g mayonnaise', '1 bunch cress'];
const DOUGH = ['250 ml milk', '4 eggs', '500 g plain flour', '7 g instant yeast', '100 g butter'];
const KNEAD = 'Mix the milk, eggs, flour, yeast and butter to a dough and knead for 8 minutes.';
const VENISON = ['1 kg venison, frozen', '500 g onions', '1 l beef stock'];
const BAKE = 'Bake at 180 C for 30 min.';
const GRILL = 'Grill until 75 C inside.';

describe('days after a rest of which nobody says where', () => {
  test.each([
    ['Leave it for a while. Keep on the counter for 3 days.', 'wrong'],
    ['Let stand 10 min before slicing. Keep at room temperature for 3 days.', 'wrong'],
    ['Let stand 10 min before slicing. Keep in the fridge for 3 days.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(STEW, SIMMER, step)).toBe(expected);
  });
});

describe('where it stays, told behind the place', () => {
  test.each([
    ['Whatever is left is shoved to the side of the range, where it stays hardly warm until supper.', 'wrong'],
    [
      'Draw it to the edge of the hob, where it sits just warm till the last of the threshers have had theirs.',
      'wrong',
    ],
    ['The pot is lifted to the corner of the stove, where it waits, barely hot, until the late shift is in.', 'wrong'],
    ['Move the pot to the back of the range; it simmers there until bedtime.', 'quiet'],
    ['Put it in the fridge, where it keeps for three days.', 'quiet'],
    ['Two men carry the urn to the porch, where it stands for 7 hours until it is hand-warm.', 'wrong'],
    ['Set it on the trestle table and eat at once.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(STEW, SIMMER, step)).toBe(expected);
  });
});

describe('warmth that is felt hours later', () => {
  test.each([
    [
      'Slide the stockpot into the fridge as it is. Next morning it is lukewarm in the middle, which is normal.',
      'wrong',
    ],
    ['Stand the whole pot in the walk-in. At breakfast the centre is still tepid.', 'wrong'],
    [
      'Pour it into a lidded bucket and set it in the fridge; it will still be warm in the middle when you get up.',
      'wrong',
    ],
    ['Cool it over ice to 5 C within 2 h. Next morning it is cold, and the fat lifts off.', 'quiet'],
    ['Pour it into cups and drink it while it is still warm.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(STEW, SIMMER, step)).toBe(expected);
  });
});

describe('what the cook does meanwhile', () => {
  test.each([
    ['Take it off, lid on, and go to bed; when you come down it is ready to skim.', 'wrong'],
    ['Put the lid on, go off to work, and skim it when you are home.', 'wrong'],
    ['Cover it and leave for the office: in the evening the flavours will have married.', 'wrong'],
    ['Put the lid on, chill it, go off to work, and skim it when you are home.', 'quiet'],
    ['We eat at one, and what is over goes in the fridge until Father is in from the fields at eight.', 'quiet'],
    ['By noon tomorrow ladle it out.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(STEW, SIMMER, step) === 'wrong').toBe(expected === 'wrong');
  });
});

describe('the evening before', () => {
  const FRY = 'Fry it in oil until piping hot.';
  test.each([
    ['The evening before, tip it into a colander and leave it on the draining board until you need it.', 'wrong'],
    ['The night before, drain it and leave it on the side.', 'wrong'],
    ['The day before, spread it on a tray on the sideboard.', 'wrong'],
    ['The night before, drain it and leave it in the fridge.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(RICE, BOIL, step, FRY)).toBe(expected);
  });

  test('of what nobody weighed', () => {
    expect(said(['2 rice-cooker cups jasmine rice'], 'Boil the rice and leave it on the table till tomorrow.')).toBe(
      'wrong',
    );
    expect(said(['2 rice-cooker cups jasmine rice'], 'Boil the rice and eat it.')).toBe('quiet');
  });
});

describe('two parts of the day in one thought', () => {
  test.each([
    ['Do this after the morning tea and keep it on the platform; the evening guests will praise it.', 'wrong'],
    ['Cover and leave on the side at breakfast time; grill when the supper guests arrive.', 'wrong'],
    ['Leave it on the counter from elevenses until dinner.', 'wrong'],
    ['Do this after breakfast and keep it in the fridge; the evening guests will praise it.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(CHICKEN, MARINATE, step, GRILL)).toBe(expected);
  });
});

describe('out of the freezer', () => {
  const STEWED = 'Simmer the venison with the onions in the stock for 2 h.';
  test.each([
    ['Lift the venison from the freezer and stand it on the draining board until it gives to the thumb.', 'wrong'],
    ['Bring the venison up from the freezer at breakfast and lay it on the table.', 'wrong'],
    ['Take the venison out of the freezer and let it lie in the fridge until it gives.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(VENISON, step, STEWED)).toBe(expected);
  });
});

describe('what goes on top is no dish of its own', () => {
  const MIX = 'Mix the prawns with the mayonnaise.';
  test.each(['Snip the cress over.', 'Chop the cress on top.', 'Then the cress.'])('%s', (step) => {
    expect(said(PRAWNS, MIX, step, 'Leave on the sideboard for 9 h.')).toBe('wrong');
  });

  test('names alone put in', () => {
    expect(
      said(
        ['500 g onions', '1 kg minced beef', '1 l beef stock'],
        'Fry the onions.',
        'Mince and stock.',
        'Simmer for 2 h.',
        'Leave on the sideboard for 9 h.',
      ),
    ).toBe('wrong');
  });
});

describe('a dough of eggs and milk, for a night', () => {
  test.each([
    ['Drape with a towel and go to bed: it takes all night beside the stove.', 'wrong'],
    ['Cover and leave on the worktop while you sleep.', 'wrong'],
    ['Let it rise in the kitchen overnight.', 'wrong'],
    ['Cover and leave in the fridge while you sleep.', 'quiet'],
    ['Let it rise in the kitchen for 3 h.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(DOUGH, KNEAD, step, BAKE)).toBe(expected);
  });

  test('but not of flour, water and yeast, or with a sour starter', () => {
    const mix = 'Mix all to a dough.';
    const night = 'Cover and leave on the worktop while you sleep.';
    expect(said(['500 g plain flour', '330 g water', '2 g instant yeast'], mix, night, BAKE)).toBe('quiet');
    expect(said([...DOUGH, '150 g sourdough starter'], mix, night, BAKE)).toBe('quiet');
  });
});

describe('what is said beside', () => {
  test.each([
    ['Label for 5 days from the cook date.', 'quiet'],
    ['Pour it into trays in an ice bath, 21 C in 2 h, 5 C in 4 more.', 'quiet'],
    ['Cover tightly, turn the oven down to 110 C and go to bed.', 'quiet'],
    ['Leave to stand until the guests are seated, about 10 minutes.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(said(STEW, SIMMER, step)).toBe(expected);
  });
});

describe('a crust keeps no meat', () => {
  const PASTRY = ['250 g plain flour', '120 g butter', '60 g water'];
  const PASTE = 'Rub the butter into the flour and stir in the water.';
  test.each([
    [
      [...PASTRY, '300 g pork mince'],
      'Wrap the mince in the pastry and bake at 200 C until it reads 75 C inside.',
      'wrong',
    ],
    [
      ['400 g bread flour', '7 g instant yeast', '260 g water', '250 g minced lamb'],
      'Mix the flour, yeast and water, top with the lamb and bake at 230 C until it reads 75 C inside.',
      'wrong',
    ],
    [PASTRY, 'Roll out and bake at 200 C for 20 min.', 'quiet'],
    [
      ['400 g bread flour', '7 g instant yeast', '260 g water', '80 g olives'],
      'Mix the flour, yeast, water and olives and bake at 230 C for 35 min.',
      'quiet',
    ],
  ])('%j', (list, bake, expected) => {
    const steps = list.includes('60 g water') ? [PASTE, bake] : [bake];
    expect(said(list, ...steps, 'Cool and keep on the counter for 3 days.')).toBe(expected);
  });
});

describe('what is mixed in goes to what is there', () => {
  test.each([
    ['Mix in the salt and pepper. Leave on the counter overnight.', 'wrong'],
    ['Mix in the salt and pepper. Chill overnight.', 'quiet'],
  ])('%s', (step, expected) => {
    expect(
      said(
        ['1 kg pork mince', '15 g salt', '2 g pepper'],
        'Put the mince in a bowl.',
        step,
        'Fry until it reads 72 C inside.',
      ),
    ).toBe(expected);
  });
});

describe('sweet things that no flour makes a cake of', () => {
  const TOPPING = ['400 g caster sugar', '45 g plain flour', '6 eggs', '240 ml lemon juice'];
  const CAKE = ['200 g caster sugar', '200 g plain flour', '4 eggs', '200 g butter'];
  test.each([
    [TOPPING, 'keep in the pantry for up to 4 weeks', 'wrong'],
    [TOPPING, 'keep on the counter for 3 days', 'wrong'],
    [TOPPING, 'keep in the fridge for up to 4 days', 'quiet'],
    [CAKE, 'keep on the counter for 3 days', 'quiet'],
    [
      ['200 g caster sugar', '90 g plain flour', '4 eggs', '200 g dark chocolate'],
      'keep on the counter for 3 days',
      'quiet',
    ],
  ])('%s, %s: %s', (list, kept, expected) => {
    expect(said(list, 'Whisk everything together.', 'Bake at 175 C for 25 min until set.', `Cool and ${kept}.`)).toBe(
      expected,
    );
  });
});
