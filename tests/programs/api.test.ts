/** What a program may ask: the same answers as the command line gives, of texts that lie on no disk. */
import { describe, expect, test } from 'vitest';
import type { Machine } from '../../server/src/cli/io.ts';
import { answersFrom } from '../../server/src/programs/answers.ts';
import { inMemory } from '../../server/src/programs/in-memory.ts';
import { quern } from '../support/fake-io.ts';

const LOAF =
  'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min.\n';
const DISK = { 'loaf.quern': LOAF, '--odd.quern': LOAF };
const asked = answersFrom({
  disk: (printed: Pick<Machine, 'out' | 'err'>) => inMemory({ files: DISK, today: '2026-11-29' }, printed),
  today: () => '2026-11-29',
});

describe('a program asks', () => {
  test('for a report, and has what the command line prints', async () => {
    const { out } = await quern(['report', 'loaf.quern', '--format', 'json'], { 'loaf.quern': LOAF });
    expect(await asked.report({ text: LOAF, name: 'loaf.quern' })).toEqual(JSON.parse(out));
    expect(await asked.report({ path: 'loaf.quern' })).toEqual(JSON.parse(out));
  });

  test('with the files that a recipe builds on', async () => {
    const files = { 'base.quern': LOAF };
    const variant = 'recipe Seeded loaf\n  from base.quern\n  30 g sesame seeds\n';
    expect((await asked.report({ text: variant, name: 'v.quern', files })).mass_g).toBeGreaterThan(853);
    const { files: found } = await asked.check({ text: variant, name: 'v.quern' });
    expect(found[0]?.findings.some(({ message }) => message.includes('base.quern'))).toBe(true);
  });

  test('for another size, and the day', async () => {
    expect((await asked.scale({ text: LOAF }, { by: 2 })).text).toContain('1000 g');
    expect((await asked.plan({ text: LOAF }, { serve: '19:30' })).version).toBe(1);
    expect((await asked.convert({ text: LOAF }, 'us')).text).toContain('cup');
    expect((await asked.weigh('3 large eggs', 'us')).grams).toBe(150);
  });

  test.each<[string, () => Promise<unknown>, RegExp]>([
    ['an amount of nothing', () => asked.weigh('--measures'), /write the amount first/],
    ['a size that is none', () => asked.scale({ text: LOAF }, { by: Number.NaN }), /wants a number/],
    ['two sizes', () => asked.scale({ text: LOAF }, { by: 2, to: '3 loaves' }), /give one of/],
    ['no file', () => asked.report({ path: 'nowhere.quern' }), /no file/],
    ['no finding', () => asked.explain('--help'), /there is no finding/],
  ])('%s is refused in words', async (_, question, words) => {
    await expect(question()).rejects.toThrow(words);
  });

  test('a file whose name looks like an option is a file', async () => {
    expect((await asked.report({ path: '--odd.quern' })).recipe).toBe('Loaf');
  });
});
