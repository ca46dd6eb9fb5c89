import { expect, it } from 'vitest';
import type { DiffAnswer, TrialsAnswer } from '../../server/src/lsp/messages.ts';
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
