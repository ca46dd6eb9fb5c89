/** What an earlier run found is taken again only where it would be found again: the same output, byte for byte, as without it. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { jobsOver } from '../../server/src/cli/check-many.ts';
import type { KeptTexts, Machine, Workers } from '../../server/src/cli/io.ts';
import { inMemory } from '../../server/src/programs/in-memory.ts';
import { quern } from '../support/fake-io.ts';

/** Texts that last as long as the test, and how often one was written. */
function keptTexts(build = 'a') {
  const texts = new Map<string, string>();
  const kept: KeptTexts & { readonly texts: Map<string, string>; writes: number } = {
    build,
    texts,
    writes: 0,
    digest: (text) => createHash('sha256').update(text).digest('base64url'),
    read: (name) => texts.get(name),
    write: (name, text) => {
      texts.set(name, text);
      kept.writes++;
      return undefined;
    },
  };
  return kept;
}

type Files = Readonly<Record<string, string>>;
const run = (args: readonly string[], files: Files, kept: KeptTexts | undefined) =>
  quern(args, files, '', undefined, false, { keptTexts: () => kept });

const LOAF = (water: number) =>
  `recipe Loaf as lean bread\n  500 g     bread flour\n  ${water} g     water\n  10 g      salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n`;
const FOOD = (grams: number) => `food oat cream\n  like double cream\n  1 cup = ${grams} g\n`;

/** Texts for each of a few names: a base, variants of it, foods of the house, its settings, and what is no recipe. */
const TEXTS: Readonly<Record<string, readonly string[]>> = {
  'base.quern': [LOAF(340), LOAF(600), '', 'recipe Loaf\npart dough\n  1 cup oat cream\n'],
  'variant.quern': [
    'recipe Seeded\n  from base.quern\n  30 g sesame seeds\n',
    'recipe Seeded\n  from bsae.quern\n',
    LOAF(350),
  ],
  'deep/other.quern': [
    'recipe Cream\n  2 cups oat cream\n',
    'recipe Cream\n  part dough from ../base.quern : dough\n',
    FOOD(200),
  ],
  'foods.quern': [FOOD(230), FOOD(60), 'food oat cream\n'],
  'quern.json': [
    '{}',
    '{ "measures": "metric" }',
    '{ "severities": { "dough-too-wet": "error" } }',
    '{ nothing',
    '{ "ignore": ["deep/**"] }',
  ],
  'deep/quern.json': ['{ "measures": "australian" }'],
};

/** One change: a file takes another of its texts, or is no more. */
const change = fc.constantFrom(...Object.keys(TEXTS)).chain((name) =>
  fc.record({
    name: fc.constant(name),
    text: fc.option(fc.constantFrom(...(TEXTS[name] ?? [])), { nil: undefined, freq: 4 }),
  }),
);

describe('results of other runs', () => {
  test('give what a run without them gives, through any changes', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(change, { minLength: 1, maxLength: 8 }),
        fc.constantFrom('json', 'pretty', 'sarif'),
        async (changes, format) => {
          const kept = keptTexts();
          let files: Files = {
            'base.quern': LOAF(340),
            'variant.quern': 'recipe Seeded\n  from base.quern\n',
            'quern.json': '{}',
          };
          const args = ['check', '--format', format];
          for (const { name, text } of [{ name: 'base.quern', text: LOAF(340) }, ...changes]) {
            const { [name]: _, ...others } = files;
            files = text === undefined ? others : { ...others, [name]: text };
            const [first, again, without] = [
              await run(args, files, kept),
              await run(args, files, kept),
              await run(args, files, undefined),
            ];
            expect(first).toEqual(without);
            expect(again).toEqual(without);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test('are not written again where nothing is new, and are asked again where a base is another', async () => {
    const kept = keptTexts();
    const files = {
      'base.quern': LOAF(340),
      'variant.quern': 'recipe Seeded\n  from base.quern\n',
      'far.quern': LOAF(350),
    };
    await run(['check'], files, kept);
    await run(['check'], files, kept);
    expect(kept.writes).toBe(1);
    await run(['check'], { ...files, 'base.quern': LOAF(341) }, kept);
    expect(kept.writes).toBe(2);
  });

  test.each<[string, (text: string) => string]>([
    ['cut off', (text) => text.slice(0, text.length / 2)],
    ['of another build', (text) => text.replace(/^quern results 1 a/, 'quern results 1 b')],
    ['of something else', () => 'nothing'],
    ['with a line that is no JSON', (text) => text.replace(/ \[\[.*\]$/m, ' [[')],
    ['empty', () => ''],
  ])('a text that is %s is as none', async (_, spoil) => {
    const kept = keptTexts();
    const files = { 'loaf.quern': LOAF(600) };
    const first = await run(['check'], files, kept);
    for (const [name, text] of kept.texts) kept.texts.set(name, spoil(text));
    expect(await run(['check'], files, kept)).toEqual(first);
    // And is made anew.
    expect(kept.writes).toBe(2);
  });

  test('that cannot be written are missed by nobody who did not say where', async () => {
    const kept: KeptTexts = { ...keptTexts(), write: () => 'no space is left' };
    const files = { 'loaf.quern': LOAF(600) };
    expect(await run(['check'], files, kept)).toEqual(await run(['check'], files, undefined));
    const told = await run(['check', '--cache', 'kept'], files, kept);
    expect(told.err).toContain('nothing is kept in `kept`: no space is left');
    expect(told.exit).toBe((await run(['check'], files, undefined)).exit);
  });

  test('are left alone by --fix, --no-cache and a text from standard input', async () => {
    const kept = keptTexts();
    const files = { 'loaf.quern': LOAF(600) };
    await run(['check', '--no-cache'], files, kept);
    await run(['check', '--fix'], files, kept);
    await quern(['check', '--stdin'], files, LOAF(600), undefined, false, { keptTexts: () => kept });
    expect(kept.writes).toBe(0);
    expect((await run(['check', '--no-cache', '--cache', 'x'], files, kept)).err).toContain('give one of them');
  });
});

describe('many files', () => {
  const files = Object.fromEntries(
    Array.from({ length: 220 }, (_, i) => [`r${i}.quern`, i % 20 === 3 ? LOAF(600) : '']),
  );

  /** Workers of the same disk, of which the first is done last. */
  const workersOver = (on: Files): Workers => ({
    count: 100,
    async run<Job, Answer>(jobs: readonly Job[], answered: (answer: Answer, job: Job) => void) {
      const machine: Machine = {
        ...inMemory({ files: on, input: '', today: '2026-11-25' }, { out: () => {}, err: () => {} }),
        keptTexts: () => keptTexts(),
      };
      const answer = jobsOver(machine) as unknown as (job: Job) => Answer;
      for (const job of jobs.toReversed()) answered(answer(job), job);
    },
  });
  const byWorkers = (args: readonly string[], on: Files, kept: KeptTexts | undefined) =>
    quern(args, on, '', undefined, false, { keptTexts: () => kept, workers: workersOver(on) });

  test.each(['json', 'pretty', 'sarif'])(
    'are printed in their order as %s, whoever checked them and whenever',
    async (format) => {
      const args = ['check', '--format', format];
      const without = await run(args, files, undefined);
      expect(await byWorkers(args, files, undefined)).toEqual(without);
      const kept = keptTexts();
      // Some are kept, in the middle and at both ends; the rest are checked by workers.
      await run(['check', 'r0.quern', 'r1.quern', 'r123.quern', 'r219.quern', '--format', format], files, kept);
      expect(await byWorkers(args, files, kept)).toEqual(without);
      expect(await byWorkers(args, files, kept)).toEqual(without);
      expect(kept.writes).toBe(2);
      const changed = { ...files, 'r3.quern': LOAF(600) };
      expect(await byWorkers(args, changed, kept)).toEqual(await run(args, changed, undefined));
    },
  );
});

describe('--shard', () => {
  const files = Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`r${i}.quern`, LOAF(300 + i)]));
  const checked = async (shard: string, of: Files = files): Promise<string[]> =>
    (
      JSON.parse((await quern(['check', '--shard', shard, '--format', 'json'], of)).out) as {
        files: { path: string }[];
      }
    ).files.map(({ path }) => path);

  test('gives each file to one share', async () => {
    const shares = await Promise.all(['1/3', '2/3', '3/3'].map((shard) => checked(shard)));
    expect(shares.flat().sort()).toEqual(Object.keys(files).sort());
    for (const share of shares) expect(share.length).toBeGreaterThan(5);
  });

  test('moves no file when another goes', async () => {
    const { 'r7.quern': _, ...fewer } = files;
    expect(await checked('2/3', fewer)).toEqual((await checked('2/3')).filter((path) => path !== 'r7.quern'));
  });

  test.each(['0/3', '4/3', '1', 'a/b', '1/0', '-1/3'])('%s is bad usage', async (shard) => {
    const { exit, err } = await quern(['check', `--shard=${shard}`], files);
    expect([exit, err]).toEqual([2, expect.stringContaining('such as 3/8')]);
  });
});
