/** `quern adjust`: what it prints and writes, and what it says to bad usage. */
import { describe, expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const LOAF = `recipe Loaf

part dough as lean bread
  500 g     bread flour
  300 g     water
  10 g      fine salt
  3 g       instant yeast

  do Mix the flour with 200 g of the water.
  do Knead in the salt, the yeast and the remaining water.
`;
const TWO = `${LOAF}
part topping
  20 g      sesame seeds

  do Scatter the sesame seeds over the dough.
`;
const adjust = (args: string, text = LOAF) =>
  quern(['adjust', 'loaf.quern', ...args.split(' ')], { 'loaf.quern': text });

describe('what it prints', () => {
  test('the measure before and after with what is usual, the grams that change, and why', async () => {
    const { out, err, exit, written } = await adjust('--part dough --hydration 65%');
    expect(exit).toBe(0);
    expect(out).toBe(`dough: water per flour 60 % → 65 % (usual: 55 to 90 %)
  water  300 g → 325 g  (25 g more)
What moves: water, of all on the list the purest in water.
The rest stays; the dough then weighs 838 g.
`);
    expect(err).toBe('note: Nothing is written yet; --write writes it.\n');
    expect(written).toEqual({});
  });

  test('--write writes the list and what the steps take of it', async () => {
    const { written, err } = await adjust('--part dough --hydration 65% --write');
    expect(Object.values(written)).toEqual([
      LOAF.replace('300 g     water', '325 g     water').replace('200 g of the water', '217 g of the water'),
    ]);
    expect(err).toBe('');
  });

  test('JSON has the figures, what it brings and the whole text', async () => {
    const { out, err } = await adjust('--part dough --hydration 65% --salt 2.2% --hold mass --format json');
    const json = JSON.parse(out);
    expect(json).toMatchObject({ version: 1, part: 'dough', brings: [] });
    expect(json.measures).toHaveLength(2);
    expect(json.measures[0]).toMatchObject({ name: 'hydration', unit: '1', to: 0.65, band: [0.55, 0.9] });
    expect(json.measures[1].after[0]).toBeCloseTo(0.022, 3);
    expect(json.changes.map((c: { name: string }) => c.name)).toEqual(
      expect.arrayContaining(['water', 'fine salt', 'bread flour']),
    );
    const mass = (key: string) =>
      json.changes.reduce((sum: number, c: Record<string, number>) => sum + (c[key] ?? 0), 0);
    expect(mass('grams_after')).toBeCloseTo(mass('grams'), -1);
    expect(json.text).toContain('of the water.');
    expect(err).toBe('');
  });

  test.each(['65%', '0.65', '65', '65 %'])('the value as %s', async (value) => {
    const { out } = await quern(['adjust', 'loaf.quern', '--hydration', value], { 'loaf.quern': LOAF });
    expect(out).toContain('→ 65 %');
  });

  test('what stands so already moves nothing', async () => {
    const { out, exit, err } = await adjust('--salt-share 1.2% --keep water', LOAF.replace('10 g ', '9.76 g '));
    expect(exit).toBe(0);
    expect(out + err).toMatch(/→ 1\.2 %/);
  });

  test('a nearer name: the hydration of a cake is its own', async () => {
    const cake =
      'recipe C\npart batter as muffin\n  200 g     plain flour\n  180 g     milk\n  80 g      sugar\n  10 g      baking powder\n  1         egg\n  do Mix all.\n';
    const { out } = await quern(['adjust', 'c.quern', '--hydration', '90%'], { 'c.quern': cake });
    expect(out).toContain('water per flour');
    expect(out).toContain('→ 89 to 91 %');
  });
});

describe('what it refuses, and what to write instead', () => {
  test.each<[string, string, RegExp]>([
    [
      'no measure',
      '--part dough',
      /say which measure.*--hydration \(water per flour: 60 %; usual 55 to 90 %\).*--salt/,
    ],
    [
      'a measure there is not',
      '--part dough --hydratoin 65%',
      /no measure --hydratoin; dough, as lean bread, has --hydration/,
    ],
    ['a part there is not', '--part crust --hydration 65%', /no part `crust` with a list; the parts are dough/],
    ['no number', '--part dough --hydration wet', /--hydration: write a number such as 24% or 0\.24, not `wet`/],
    ['less than nothing', '--part dough --hydration -5%', /less than nothing/],
    ['a temperature', '--part dough --hydration 65C', /no temperature/],
    ['a figure that could be two', '--part dough --salt 0.5', /`0\.5` would be 50%: write 50% or 0\.5%/],
    ['a hold there is not', '--part dough --hydration 65% --hold butter', /--hold is mass or flour, not `butter`/],
    [
      'one kept that is not listed',
      '--part dough --hydration 65% --keep lard',
      /`lard` is not in the dough; on its list are bread flour/,
    ],
    [
      'what has to move is kept',
      '--part dough --hydration 65% --keep water,flour',
      /nothing on the list of the dough that may move brings water but water and bread flour, which are to be kept/,
    ],
    [
      'one measure twice',
      '--part dough --salt 2% --salt-share 2% --brine-salt 2% --freezing-point 2',
      /not known|cannot be had|can come no|can each be had/,
    ],
    ['a value without end', '--part dough --hydration 1e99', /write a number/],
    ['no value', '--part dough --hydration', /--hydration wants a value/],
    ['a file too many', '--part dough --hydration 65% more.quern', /left over/],
    ['another format', '--hydration 65% --format yaml', /--format is one of text, json/],
  ])('%s', async (_, args, words) => {
    const { exit, err, out, written } = await adjust(args);
    expect(err).toMatch(words);
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(written).toEqual({});
  });

  test('which part, where there are several lists', async () => {
    const { exit, err } = await adjust('--hydration 65%', TWO);
    expect(err).toMatch(/say which part with --part NAME; the parts are dough, topping/);
    expect(exit).toBe(2);
  });

  test('what cannot be had says how near it comes, and what stands in the way', async () => {
    const paste =
      'recipe P\npart base as sweet paste\n  240 g     plain flour\n  130 g     butter\n  1 large   egg yolk\n  70 g      ice water\n  do Bind all.\n';
    const { exit, err } = await quern(['adjust', 'p.quern', '--hydration', '5%'], { 'p.quern': paste });
    expect(err).toMatch(/can come no lower than \d+ %, so not to 5 %: butter and egg yolk bring the rest of it/);
    expect(exit).toBe(2);
  });

  test('with JSON it is said in JSON too', async () => {
    const { out, exit } = await adjust('--part dough --hydration wet --format json');
    expect(JSON.parse(out)).toMatchObject({ version: 1, error: expect.stringContaining('24%') });
    expect(exit).toBe(2);
  });

  test('nothing is written that brings an error', async () => {
    // 2 % of salt is the least at which vegetables are kept under brine (USDA Complete Guide to Home Canning, 2015, guide 6).
    const kraut =
      'recipe Kraut\npart jar as lacto-ferment\n  1000 g    white cabbage\n  22 g      fine salt\n  do Rub the salt into the cabbage and pack it under its brine.\n  do Leave at 18 C for 3 weeks.\n';
    const { exit, err, written } = await quern(['adjust', 'k.quern', '--salt', '0.5%', '--write'], {
      'k.quern': kraut,
    });
    expect(err).toMatch(/nothing is written, since it would bring (?:weak-brine|low-acid-preserve): /);
    expect(exit).toBe(2);
    expect(written).toEqual({});
  });
});
