import { describe, expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const GOOD =
  'recipe Oat slab\n  yield   8 bars\n\n  200 g     rolled oats\n  80 g      butter\n\n  do Rub the butter into the oats.\n  do Bake at 180 C for 20 min until golden.\n';
const WET =
  'recipe Crust\n  yield   1 crust\n\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  120 g     water\n\n  do Rub the butter into the flour and bind with the water.\n';
const BROKEN = `${GOOD}\n  and so on and so on for ever and ever.\n`;

describe('check', () => {
  test.each<[string, string[], number]>([
    ['nothing found', ['check', 'good.quern'], 0],
    ['a warning is no failure by itself', ['check', 'wet.quern'], 0],
    ['unless asked', ['check', 'wet.quern', '--fail-on', 'warning'], 1],
    ['or counted', ['check', 'wet.quern', '--max-warnings', '0'], 1],
    ['an error is', ['check', 'broken.quern'], 1],
    ['the format changes no exit code', ['check', 'broken.quern', '--format', 'json'], 1],
    ['a path that matches nothing', ['check', 'no-such.quern'], 2],
    ['an unknown option', ['check', '--colour'], 2],
    ['an unknown level', ['check', '--fail-on', 'doom'], 2],
    ['the whole folder', ['check'], 1],
  ])('%s', async (_, args, exit) => {
    const ran = await quern(args, { 'good.quern': GOOD, 'wet.quern': WET, 'broken.quern': BROKEN });
    expect(ran.exit).toBe(exit);
  });

  test('a line a finding, counted from 1, with code, then the summary', async () => {
    const { out } = await quern(['check', 'wet.quern'], { 'wet.quern': WET });
    expect(out).toMatch(/^wet\.quern:7:13: warning: .*68 %.*18 to 53 % is usual.* \[dough-too-wet\]$/m);
    expect(out).toMatch(/1 file checked: .*1 warning/);
  });

  test('JSON counts from 0 and holds the contract’s fields', async () => {
    const { out, err } = await quern(['check', 'wet.quern', '--format', 'json'], { 'wet.quern': WET });
    const json = JSON.parse(out);
    expect(json.version).toBe(1);
    expect(json.summary).toMatchObject({ files: 1, error: 0, warning: 1 });
    const finding = json.files[0].findings.find((f: { code: string }) => f.code === 'dough-too-wet');
    expect(finding).toMatchObject({
      severity: 'warning',
      unit: '1',
      band: [0.18, 0.53],
      range: { start: { line: 6, character: 12 }, end: { line: 6, character: 17 } },
    });
    expect(finding.value).toBeCloseTo(0.68, 1);
    expect(finding.fixes).toHaveLength(1);
    expect(finding.source.length).toBeGreaterThan(10);
    expect(err).toBe('');
  });

  test('with JSON a failure is JSON too', async () => {
    const { out, exit } = await quern(['check', 'no-such.quern', '--format', 'json']);
    expect(JSON.parse(out)).toMatchObject({ version: 1, error: expect.stringContaining('no-such.quern') });
    expect(exit).toBe(2);
  });

  test('standard input under a name', async () => {
    const { out, exit } = await quern(
      ['check', '--stdin', '--stdin-name', 'tart.quern', '--fail-on', 'warning'],
      {},
      WET,
    );
    expect(exit).toBe(1);
    expect(out).toContain('tart.quern:7:13');
  });

  test('--fix mends only what changes no quantity, and leaves alone what it did not read', async () => {
    const idle = GOOD.replace('  do Rub', '  allow dough-too-wet because it is a batter\n  do Rub');
    const { written } = await quern(['check', '--fix', 'a.quern'], { 'a.quern': idle });
    expect(written['/kitchen/a.quern']).toBe(GOOD);
    const unread = GOOD.replace('80 g ', '80,5 g').replace('  do Rub', '  Rub');
    for (const text of [WET, unread, GOOD.replace('80 g ', '3 T ')])
      expect((await quern(['check', '--fix', 'a.quern'], { 'a.quern': text })).written).toEqual({});
  });

  test('the house’s severities, ignored paths and foods count, and its mistakes are said', async () => {
    const files = {
      'wet.quern': WET,
      'drafts/wet.quern': WET,
      'foods.quern': 'food harbour oats\n  like    rolled oats\n  1 cup = 90 g\n',
      'own.quern': GOOD.replace('200 g     rolled oats', '1 cup     harbour oats'),
      'quern.json': '{ "severities": { "dough-too-wet": "error" }, "ignore": ["drafts/**"], "measure": "us" }',
    };
    const { out, err, exit } = await quern(['check', '--format', 'json'], files);
    const json = JSON.parse(out);
    expect(json.files.map((f: { path: string }) => f.path)).toEqual(['foods.quern', 'own.quern', 'wet.quern']);
    expect(json.files[2].findings[0].severity).toBe('error');
    // Part of the house was not used, whatever else was found.
    expect(exit).toBe(2);
    expect(err).toContain('`measure` is no setting');
    const weighed = await quern(['weigh', '1 cup harbour oats'], files);
    expect(weighed.out).toMatch(/^90 g/);
  });
});

describe('weigh', () => {
  test.each([
    ['150 g plain flour', /^150 g/],
    ['1 1/2 cup plain flour', /^188 g \(180 to 225\) plain flour\n1 US cup of plain flour weighs 125 g/],
    ['3 large eggs', /^150 g \(141 to 159\) egg/],
    ['1 stick butter', /^113 g/],
    ['2 cloves garlic', /^6 g|^\d/],
    ['1 can of 400 g tomatoes', /^400 g/],
    ['1 pint whole milk --measures metric', /^586 g .*1 imperial pint of whole milk/s],
    ['1 tbsp water --measures australian', /^20 g .*Australian tbsp/s],
    ['2 eggs --measures canadian', /^105 g \(99 to 111\)/],
  ])('%s', async (words, want) => {
    const { out, exit } = await quern(['weigh', ...words.split(/ (?=--)|(?<=--measures) /)]);
    expect(out).toMatch(want);
    expect(out).toMatch(/\(.+\)\n$/);
    expect(exit).toBe(0);
  });

  test('the likely figure goes before the range, and is that of the report', async () => {
    const weighed = JSON.parse((await quern(['weigh', '1 1/2 cup plain flour', '--format', 'json'])).out);
    expect(weighed).toMatchObject({ grams: 187.5, grams_low: 180, grams_high: 225 });
    const recipe = 'recipe Paste\n  1 1/2 cup plain flour\n  100 g water\n  do Mix the flour and water.\n';
    const { parts, mass_g } = JSON.parse(
      (await quern(['report', 'a.quern', '--format', 'json'], { 'a.quern': recipe })).out,
    );
    expect(parts[0].ingredients[0].grams).toBe(weighed.grams);
    expect(mass_g).toBe(weighed.grams + 100);
    expect(parts[0].ingredients[0].bakers_percent).toBe(100);
  });

  test('what is not known says so and offers what is near', async () => {
    const { out, exit } = await quern(['weigh', '1 cup plain fluor']);
    expect(out).toMatch(/^not known/);
    expect(out).toMatch(/plain flour/);
    expect(exit).toBe(1);
  });

  test('a food without an amount is bad usage', async () => {
    expect((await quern(['weigh', 'flour'])).exit).toBe(2);
    expect((await quern(['weigh'])).exit).toBe(2);
  });
});

describe('report', () => {
  test('a strength that is written counts in the sums', async () => {
    const recipe =
      'recipe Sums\n  500 g ground beef, 80 % lean\n  100 g vodka 50 % vol\n  100 g vinegar (3 % acidity)\n  do Mix it all.\n';
    const { parts } = JSON.parse((await quern(['report', 'a.quern', '--format', 'json'], { 'a.quern': recipe })).out);
    // 100 g of fat in the beef; 42.43 g of alcohol in 100 g of 50 % vol (OIML R 22); water 94.78 + 2 in 100 g of vinegar (NDB 02053).
    expect(parts[0].composition_g).toMatchObject({ fat: 100, alcohol: 42.43 });
    expect(parts[0].composition_g.water).toBeCloseTo(5 * 61.94 + 57.57 + 96.78, 1);
  });

  test('JSON holds the contract’s fields, null where not known', async () => {
    const { out } = await quern(['report', 'wet.quern', '--format', 'json'], { 'wet.quern': WET });
    const report = JSON.parse(out);
    expect(report).toMatchObject({
      version: 1,
      recipe: 'Crust',
      yield: { amount: 1, unit: 'crust', each_g: 420 },
      mass_g: 420,
      allergens: { us: ['milk', 'wheat'] },
    });
    expect(report.parts[0]).toMatchObject({ name: 'crust', kind: 'shortcrust', mass_g: 420 });
    expect(report.parts[0].ingredients[0]).toMatchObject({
      name: 'plain flour',
      written: '200 g',
      grams: 200,
      grams_from: 'weight',
      bakers_percent: 100,
      share_percent: 47.6,
    });
    expect(report.parts[0].measures[0]).toMatchObject({
      name: 'hydration',
      unit: '1',
      band: [0.18, 0.53],
      verdict: 'too high',
    });
    for (const field of [
      'water',
      'protein',
      'fat',
      'carbohydrate',
      'sugar',
      'starch',
      'fibre',
      'ash',
      'alcohol',
      'salt',
    ])
      expect(report.parts[0].composition_g).toHaveProperty(field);
    for (const field of [
      'energy_kcal',
      'fat_g',
      'saturates_g',
      'carbohydrate_g',
      'sugars_g',
      'fibre_g',
      'protein_g',
      'salt_g',
      'sodium_mg',
    ])
      expect(report.per_serving).toHaveProperty(field);
    const unknown = JSON.parse(
      (
        await quern(['report', 'u.quern', '--format', 'json'], {
          'u.quern': WET.replace('plain flour', 'xyloquartz').replace('200 g', '2 cup'),
        })
      ).out,
    );
    expect(unknown.mass_g).toBeNull();
    expect(unknown.parts[0].ingredients[0]).toMatchObject({ food: null, grams: null });
    expect(unknown.allergens.not_known).toEqual(['xyloquartz']);
  });

  test('text says each gram’s reason', async () => {
    const { out } = await quern(['report', 'wet.quern'], { 'wet.quern': WET });
    expect(out).toMatch(/plain flour\s+200 g\s+47\.6 %\s+100 % of flour/);
    expect(out).toMatch(/hydration: 68 %, far above \(18 to 53 %\)/);
  });
});

describe('trial', () => {
  test('begins a trial of today with the mark of what it tests, and writes it where that is asked for', async () => {
    const files = {
      'good.quern': GOOD,
      'nutty.quern': 'recipe Nut slab\n  from    good.quern\n  swap butter for 90 g butter\n',
    };
    const { out, written } = await quern(['trial', 'nutty.quern', '--by', 'Ines'], files);
    expect(out).toMatch(
      /\n\ntrial 2026-11-25 by Ines\n {2}took {4}… min to bake {2}# the steps say 20 min\n {2}tested {2}[0-9a-z]{9}\n {2}# verdict .*\n$/,
    );
    expect(written).toEqual({});
    const ran = await quern(['trial', 'good.quern', '--date', '2026-09-14', '--write'], files);
    const [text = ''] = Object.values(ran.written);
    expect(text).toContain('trial 2026-09-14\n');
    expect(ran.out).toBe('');
    expect(ran.err).toMatch(/^note: \d+ to \d+ g usually comes out of the oven: weigh it/);
    const { out: report } = await quern(['report', 'good.quern'], { 'good.quern': text });
    expect(report).toContain('cooked as written');
  });

  test.each<[string, string[]]>([
    ['a day that is none', ['good.quern', '--date', 'today']],
    ['a base that is not there', ['lost.quern']],
    ['a file of foods', ['foods.quern']],
  ])('%s is refused', async (_, args) => {
    const files = {
      'good.quern': GOOD,
      'lost.quern': 'recipe Lost\n  from    gone.quern\n  200 g     rolled oats\n',
      'foods.quern': 'food mill flour\n  like    plain flour\n',
    };
    const ran = await quern(['trial', ...args], files);
    expect([ran.exit, ran.out]).toEqual([2, '']);
  });
});

test('report --cooked takes away what cooking does, and says what it assumes', async () => {
  const text =
    'recipe Roast\n  yield 4 portions\npart roast\n  1 kg beef sirloin\n  10 g salt\n  do Rub the beef with the salt, and roast at 180 C for 60 min.\n';
  const of = async (...flags: string[]) =>
    JSON.parse((await quern(['report', 'r.quern', '--format', 'json', ...flags], { 'r.quern': text })).out);
  const [raw, cooked] = [await of(), await of('--cooked')];
  expect(raw.nutrition.assumes).toEqual([]);
  expect(cooked.nutrition.assumes.join(' ')).toContain('In the oven: beef sirloin');
  // USDA Table of Nutrient Retention Factors, release 6 (2007), BEEF,ROASTED: 80 % of the potassium stays.
  const potassium = ({ nutrition }: typeof raw): number => nutrition.us_per_serving.potassium.value;
  expect(potassium(cooked) / potassium(raw)).toBeCloseTo(0.8, 1);
  expect(cooked.per_serving.sodium_mg).toBeLessThan(raw.per_serving.sodium_mg);
});

test('report says what several trials measured, and where they agree says it once', async () => {
  const trial = (date: string, min: number) =>
    `\ntrial ${date}\n  took    ${min} min to bake\n  reached 90 C in the centre\n  used    ${min * 10} g rolled oats\n`;
  const { out } = await quern(['report', 'good.quern'], {
    'good.quern': GOOD + trial('2026-09-01', 20) + trial('2026-09-08', 22),
  });
  expect(out).toContain('  trials bake: 20 to 22 min, 21 on average of 2\n');
  expect(out).toContain('  trials the centre: 90 C in each of 2\n');
  expect(out).toContain('  trials rolled oats: 200 to 220 g, 210 on average of 2\n');
});

describe('scale, format and explain', () => {
  test('scale prints the text, and what does not scale on standard error', async () => {
    const { out, err } = await quern(['scale', 'good.quern', '--by', '2'], { 'good.quern': GOOD });
    expect(out).toBe(GOOD.replace('8 bars', '16 bars').replace('200 g', '400 g').replace('80 g ', '160 g'));
    expect(err).toMatch(/note: Baking/);
  });

  test('scale prints a variant written out in full, and does not write it', async () => {
    const files = {
      'good.quern': GOOD,
      'nutty.quern': 'recipe Nut slab\n  from    good.quern\n  swap butter for 90 g butter\n',
      'lost.quern': 'recipe Lost slab\n  from    gone.quern\n',
    };
    const printed = await quern(['scale', 'nutty.quern', '--by', '2'], files);
    expect(printed.out).toMatch(/^recipe Nut slab\n {2}yield {3}16 bars\n/);
    expect(printed.out).toMatch(/400 g {5}rolled oats\n {2}180 g {5}butter/);
    expect(printed.out).not.toContain('from');
    expect(printed.err).toMatch(/^note: The recipe builds on another file/);
    expect(printed.written).toEqual({});
    for (const option of ['--write', '--dry-run']) {
      const refused = await quern(['scale', 'nutty.quern', '--by', '2', option], files);
      expect(refused.exit).toBe(2);
      expect(refused.err).toMatch(/builds on another file.*without --write/);
      expect(refused.written).toEqual({});
    }
    expect((await quern(['scale', 'lost.quern', '--by', '2'], files)).err).toMatch(/builds on what is not there/);
  });

  test('scale --write and --dry-run', async () => {
    const { written } = await quern(['scale', 'good.quern', '--to', '16 bars', '--write'], { 'good.quern': GOOD });
    expect(written['/kitchen/good.quern']).toContain('400 g');
    const dry = await quern(['scale', 'good.quern', '--to', '16 bars', '--dry-run'], { 'good.quern': GOOD });
    expect(dry.out).toMatch(/^\+ {2}yield {3}16 bars$/m);
    expect(dry.written).toEqual({});
  });

  test.each([
    [['scale', 'good.quern'], /give one of --by/],
    [['scale', 'good.quern', '--by', '2', '--to', '3'], /give one of/],
    [['scale', 'good.quern', '--by', 'lots'], /wants a number/],
    [['scale', 'good.quern', '--to', '12 litres'], /bars/],
    [['format', '--check', '--write', '.'], /one of them/],
    [['explain', 'no-such-code'], /no finding/],
    [['frobnicate'], /no command/],
  ])('%j is bad usage, and says what to write', async (args, words) => {
    const ran = await quern(args, { 'good.quern': GOOD });
    expect(ran.exit).toBe(2);
    expect(ran.err).toMatch(words);
  });

  test('format prints, checks and writes', async () => {
    const loose = GOOD.replace('200 g     rolled', '200g rolled');
    expect((await quern(['format', 'a.quern'], { 'a.quern': loose })).out).toBe(GOOD);
    const checked = await quern(['format', '--check'], { 'a.quern': loose, 'b.quern': GOOD });
    expect([checked.exit, checked.out]).toEqual([1, 'a.quern\n']);
    expect((await quern(['format', '--write'], { 'a.quern': loose })).written['/kitchen/a.quern']).toBe(GOOD);
  });

  test('explain lists all codes, and gives the page of one', async () => {
    expect((await quern(['explain'])).out).toMatch(/formula\n(?:.*\n)*\s+dough-too-wet\s+warning/);
    const page = (await quern(['explain', 'dough-too-wet'])).out;
    for (const part of ['# dough-too-wet', 'Source', 'An example that raises it', 'allow dough-too-wet because'])
      expect(page).toContain(part);
    expect(page).not.toMatch(/^# ".*" dough-too-wet/m);
  });

  test('explain shows how a freezing point and a jam come about', async () => {
    const sorbet = 'recipe Gin ice as sorbet\n  300 g     water\n  250 g     sugar\n  300 g     gin\n';
    const { out } = await quern(['explain', 'freeze-out-of-range', 'gin.quern'], { 'gin.quern': sorbet });
    expect(out).toContain('| sugar | 250 | 0.05 | 250 | 0 |');
    expect(out).toMatch(/the sugars lower it by [\d.]+ °C .* alcohol and salt by [\d.]+ °C/);
    const jam = 'recipe Plum jam as jam\n  1 kg      plums\n  200 g     sugar\n';
    expect((await quern(['explain', 'jam-wont-set', 'jam.quern'], { 'jam.quern': jam })).out).toContain(
      '200 g ÷ 1000 g of fruit = 0.2.',
    );
  });

  test('explain shows the arithmetic on a recipe, line by line', async () => {
    const { out } = await quern(['explain', 'dough-too-wet', 'wet.quern'], { 'wet.quern': WET });
    expect(out).toContain('## In wet.quern');
    expect(out).toContain('| plain flour | 200 | 0 | 200 |');
    expect(out).toContain('| water | 120 | 120 | 0 |');
    expect((await quern(['explain', 'raw-egg', 'wet.quern'], { 'wet.quern': WET })).out).toContain(
      'Nothing of it is found',
    );
  });

  test('explain shows the arithmetic on a variant as it is written out', async () => {
    const files = {
      'sausage.quern':
        'recipe Sausage\n  1 kg      pork shoulder, minced\n  2.5 g     curing salt\n  do Mix the pork with the curing salt and poach until the centre reads 72 C.\n',
      'strong.quern': 'recipe Strong sausage\n  from    sausage.quern\n  swap curing salt for 5 g curing salt\n',
    };
    const { out } = await quern(['explain', 'curing-salt-dose', 'strong.quern'], files);
    expect(out).toContain('**Line 3.**');
    expect(out).toContain('| pork shoulder | 1000 |');
    expect(out).toContain('5 g curing salt × 6.25 % = 0.3125 g of nitrite');
  });

  test('a curing salt that the house describes counts as what it is like', async () => {
    const files = {
      'quern.json': '{}',
      'foods.quern': 'food rosy powder\n  like curing salt\n',
      'ham.quern':
        'recipe Ham\n  1 kg      pork shoulder\n  20 g      rosy powder\n  do Rub the pork with the rosy powder and cure at 4 C for 7 d.\n',
    };
    expect((await quern(['check', 'ham.quern'], files)).out).toContain('1250 ppm of nitrite');
  });

  test.each([
    ['1 tin chickpeas', 'canned-chickpea'],
    ['1 can of 200 g salmon', 'canned-salmon'],
    ['1 bunch coriander', 'coriander-leaf'],
    ['2 tins of 400 g chopped tomatoes', 'canned-tomato'],
    ['1 cup coriander', null],
  ])('weigh settles the name in %s as a recipe does', async (words, food) => {
    const weighed = JSON.parse((await quern(['weigh', words, '--format', 'json'])).out);
    expect(weighed.food).toBe(food);
    const text = `recipe T\n  ${words}\n  do Mix.\n`;
    const { out } = await quern(['report', 't.quern', '--format', 'json'], { 't.quern': text });
    const [listed] = JSON.parse(out).parts[0].ingredients;
    expect(listed).toMatchObject({ food, grams_low: weighed.grams_low, grams_high: weighed.grams_high });
  });

  test('weigh names the food of which it does not know how much there is', async () => {
    expect((await quern(['weigh', '1 tub butter'])).out).toMatch(/^not known, butter: a tub has no fixed size/);
  });

  test('an editor starts the server, and a person is told so', async () => {
    expect(await quern(['lsp', '--help'])).toMatchObject({ exit: 0, out: expect.stringContaining('lsp --stdio') });
    expect(await quern(['lsp'])).toMatchObject({ exit: 2, err: expect.stringContaining('--stdio') });
    expect(await quern(['lsp', '--stdio'])).toMatchObject({ exit: 'serving', err: '' });
  });

  test('a folder is no file', async () => {
    const ran = await quern(['publish', 'pies'], { 'pies/a.quern': 'recipe A\n' });
    expect([ran.exit, ran.err]).toEqual([2, 'quern publish: `pies` is a folder: name one file\n']);
  });

  test('what is converted already is said to be, and no diff is shown', async () => {
    const ran = await quern(['convert', 'a.quern', '--to', 'celsius', '--dry-run'], {
      'a.quern': 'recipe A\n  oven    180 C\n  200 g     oats\n  do Bake the oats for 5 min.\n',
    });
    expect([ran.exit, ran.out, ran.err]).toEqual([0, '', expect.stringContaining('Nothing is to be converted')]);
  });

  test.each(['2026-02-30', '2026-13-01', '2026-9-4', 'today'])('%s is no day of a trial', async (day) => {
    const ran = await quern(['trial', 'a.quern', '--date', day], {
      'a.quern': 'recipe A\n  1 g  salt\n  do Taste the salt.\n',
    });
    expect([ran.exit, ran.err]).toEqual([2, expect.stringContaining(`not \`${day}\``)]);
  });

  test('the foods of the house stand in columns', async () => {
    const { out } = await quern(['config', 'a.quern'], {
      'quern.json': '{}',
      'a.quern': 'recipe A\n',
      'foods.quern': 'food rye\n  like    rye flour\n\nfood quay flour\n  like    plain flour\n',
    });
    expect(out).toMatch(/ {2}rye {9}foods\.quern\n {2}quay flour {2}foods\.quern\n/);
  });

  test('help names every command', async () => {
    const { out, exit } = await quern(['--help']);
    for (const name of ['check', 'report', 'scale', 'format', 'weigh', 'explain', 'lsp']) expect(out).toContain(name);
    expect(exit).toBe(0);
  });
});
