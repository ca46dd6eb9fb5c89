/** `quern scale` and `quern convert`: what they print, write and refuse. */
import { describe, expect, test } from 'vitest';
import { quern } from '../support/fake-io.ts';

const ROLLS = `recipe Rolls
  yield   16 rolls

part dough as enriched bread
  500 g     bread flour   # strong
  1 1/2 tsp fine salt
  300 g     water
  3 large   eggs

  do Mix the flour, salt, water and eggs.
  do Divide in 16 and bake at 180 C fan for 20 min.
`;

const run = (command: string, ...args: string[]) => quern([command, 'rolls.quern', ...args], { 'rolls.quern': ROLLS });

describe('scale', () => {
  test('to pieces of a weight, and says what that is', async () => {
    const { out, err, exit } = await run('scale', '--to', '24 rolls of 60 g');
    expect(exit).toBe(0);
    expect(out).toContain('yield   24 rolls');
    expect(out).toContain('do Divide in 24 and bake');
    expect(err).toContain('24 of 60 g are 1440 g of dough');
  });

  test('whole eggs, exact figures, and a pan the file does not name', async () => {
    expect((await run('scale', '--whole-eggs')).out).toContain('1 large   egg\n');
    expect((await run('scale', '--by', '0.7', '--exact')).out).toContain('1.05 tsp');
    const pan = await run('scale', '--to-pan', 'round 30 x 4 cm', '--from-pan', 'round 20 x 4 cm');
    expect(pan.out).toContain('1125 g    bread flour   # strong');
    expect((await run('scale', '--to-pan', 'round 30 x 4 cm')).err).toMatch(/from round 24 x 3 cm/);
  });

  test('--dry-run shows the difference and the rounding, and writes nothing', async () => {
    const { out, err, written } = await run('scale', '--by', '0.9', '--write', '--dry-run');
    expect(written).toEqual({});
    expect(out).toMatch(/^-\s+500 g {5}bread flour/m);
    expect(out).toMatch(/^\+\s+450 g {5}bread flour/m);
    expect(err).toMatch(/^rounded: fine salt 1 1\/2 tsp → 1 3\/8 tsp \(1\.9 % more\)$/m);
  });

  test('JSON carries the factor, the changes and what is said', async () => {
    const json = JSON.parse((await run('scale', '--by', '2', '--format', 'json')).out);
    expect(json).toMatchObject({ version: 1, by: 2, said: expect.any(Array), text: expect.stringContaining('1000 g') });
    expect(json.changes).toContain('bread flour 500 g → 1000 g');
  });

  test.each<[string[], RegExp]>([
    [['--by', '2', '--whole-eggs'], /give one of/],
    [['--to-pan', 'round 30 x 4 cm', '--by', '2'], /give one of/],
    [['--have', '2 lemons'], /no lemons/],
    [['--to-pan', 'big one'], /no pan/],
    [['--by', '2', '--part', 'glaze'], /the parts are dough/],
  ])('%j is refused with what to write', async (args, words) => {
    const { exit, err } = await run('scale', ...args);
    expect(exit).toBe(2);
    expect(err).toMatch(words);
  });
});

describe('convert', () => {
  test('to weights, keeping the comment and the column', async () => {
    const { out, err, exit } = await run('convert', '--to', 'weight');
    expect(exit).toBe(0);
    expect(out).toContain('  500 g     bread flour   # strong\n  9 g       fine salt\n');
    expect(out).toContain('  150 g     eggs\n');
    expect(err).toBe('');
  });

  test('both side by side', async () => {
    const { out } = await run('convert', '--to', 'weight', '--both');
    expect(out).toContain('  1 1/2 tsp = 9 g  fine salt\n');
    expect(out).toContain('  3 large = 150 g  eggs\n');
    expect(out).toContain('180 C fan');
  });

  test('to a formula, and back with one weight of flour', async () => {
    const { out } = await run('convert', '--to', 'percent');
    expect(out).toContain(
      '  500 g     bread flour   # strong\n  1.8 %     fine salt\n  60 %      water\n  30 %      eggs\n',
    );
    const back = await quern(['convert', 'f.quern', '--to', 'weight'], { 'f.quern': out });
    expect(back.out).toContain('  9 g       fine salt\n  300 g     water\n  150 g     eggs\n');
    const nominal = { 'f.quern': out.replace('500 g ', '100 % ') };
    expect((await quern(['convert', 'f.quern', '--to', 'weight'], nominal)).err).toMatch(
      /give the weight of its flour/,
    );
    expect((await quern(['convert', 'f.quern', '--to', 'weight', '--flour', '2 kg'], nominal)).out).toContain(
      '1200 g    water',
    );
  });

  test.each([
    ['still', 'bake at 200 C for'],
    ['fahrenheit', 'bake at 350 F fan for'],
    ['gas', 'bake at gas 6 for'],
  ])('ovens to %s', async (to, step) => {
    expect((await run('convert', '--to', to)).out).toContain(step);
  });

  test('what a variant swaps in and adds, and says that the rest is written in its base', async () => {
    const { out, err } = await quern(['convert', 'a.quern', '--to', 'us'], {
      'base.quern': 'recipe Base\n  200 g  plain flour\n  50 g  butter\n\n  do Mix the flour and butter.\n',
      'a.quern':
        'recipe A\n  from base.quern\n  swap butter for 60 g butter, cold\n  add 120 g mature cheddar, grated\n',
    });
    expect(out).toBe(
      'recipe A\n  from base.quern\n  swap butter for 4 tbsp + 3/4 tsp butter, cold\n  add 1 cup + 1 tbsp mature cheddar, grated\n',
    );
    expect(err).toContain('The lines of base.quern stay as they are written there.');
  });

  test('some lines only', async () => {
    const { out } = await run('convert', '--to', 'us', '--lines', '5-6');
    expect(out).toContain('cup     bread flour');
    expect(out).toContain('300 g     water');
    expect(out).toContain('180 C fan');
    expect((await run('convert', '--to', 'us', '--part', 'dough')).out).toContain('F fan');
  });

  test('--dry-run writes nothing, --write writes', async () => {
    const dry = await run('convert', '--to', 'weight', '--write', '--dry-run');
    expect(dry.written).toEqual({});
    expect(dry.out).toMatch(/^\+ {2}9 g {7}fine salt/m);
    expect((await run('convert', '--to', 'weight', '--write')).written['/kitchen/rolls.quern']).toContain('9 g ');
  });

  test.each<[string[], RegExp]>([
    [[], /--to is one of weight, us, metric, percent/],
    [['--to', 'stones'], /--to is one of/],
    [['--to', 'us', '--lines', 'all'], /line numbers such as 4-9/],
    [['--to', 'weight', '--flour', 'lots'], /weight such as "1 kg"/],
    [['--to', 'us', '--part', 'glaze'], /the parts are dough/],
  ])('%j is refused with what to write', async (args, words) => {
    const { exit, err } = await run('convert', ...args);
    expect(exit).toBe(2);
    expect(err).toMatch(words);
  });
});
