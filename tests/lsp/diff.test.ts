import { expect, it } from 'vitest';
import type { AsTestedAnswer, DiffAnswer, RecordTrialAnswer, TrialsAnswer } from '../../server/src/lsp/messages.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///k/late.quern';
const files = () =>
  new Map([
    ['/k/quern.json', '{}'],
    [
      '/k/base.quern',
      'recipe Oats\n  200 g     rolled oats\n  100 g     butter\n  do Toast the oats with the butter for 10 min.\n',
    ],
  ]);
const LATE = 'recipe Late oats\n  from    base.quern\n  swap butter for 90 g butter\n';

it('two texts of a variant are told apart as the recipes they come to', async () => {
  const client = await Client.connect({ capabilities: RICH, files: files() });
  const diff = (a: string, b: string) => client.request<DiffAnswer>('quern/diff', { version: 1, uri: URI, a, b });
  expect(await diff(LATE, LATE.replace('90 g', '80 g'))).toEqual({
    version: 1,
    same: false,
    words: expect.stringMatching(/butter down 10 g \(90 g to 80 g\)/),
  });
  expect(await diff(LATE, LATE.replace('swap butter', '# less\n  swap butter'))).toMatchObject({ same: true });
  expect(await diff('', LATE)).toMatchObject({ same: false });
});

it('the trials are listed with what was changed since', async () => {
  const client = await Client.connect({ capabilities: RICH, files: files() });
  await client.open(URI, `${LATE}\ntrial 2026-09-14 by Ines\n  verdict keep\n\ntrial 2026-10-01\n  tested  xmtsac\n`);
  const { trials } = await client.request<TrialsAnswer>('quern/trials', { version: 1, uri: URI });
  expect(trials).toMatchObject([
    { date: '2026-09-14', by: 'Ines', verdict: 'keep', changedLines: null, asWritten: false },
    { date: '2026-10-01', by: null, verdict: null, changedLines: 1, asWritten: false },
  ]);
  expect(await client.request<TrialsAnswer>('quern/trials', { version: 1, uri: 'file:///k/no.quern' })).toMatchObject({
    trials: [],
  });
});

it('of several texts, the first that a trial tested is told by its fingerprint', async () => {
  const client = await Client.connect({ capabilities: RICH, files: files() });
  await client.open(URI, LATE);
  const recorded = await client.request<RecordTrialAnswer>('quern/recordTrial', {
    version: 1,
    uri: URI,
    date: '2026-09-14',
  });
  const cooked = LATE + (recorded.ok ? recorded.edits.map((e) => e.newText).join('') : '');
  await client.replace(URI, 2, cooked.replace('90 g', '70 g'));
  const { trials } = await client.request<TrialsAnswer>('quern/trials', { version: 1, uri: URI });
  const tested = trials[0]?.tested;
  expect(tested?.length).toBeGreaterThan(2);
  const which = async (...texts: string[]) =>
    (await client.request<AsTestedAnswer>('quern/asTested', { version: 1, uri: URI, tested, texts })).at;
  const [more, less] = [LATE.replace('90 g', '95 g'), LATE.replace('90 g', '80 g')];
  expect(await which(more, LATE, `# note\n${LATE}`, less)).toBe(1);
  expect(await which(more, '', 'recipe', less)).toBeNull();
  expect(await which()).toBeNull();
});
