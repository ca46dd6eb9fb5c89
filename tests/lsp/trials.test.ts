import { expect, it } from 'vitest';
import type { RecordTrialAnswer, StatusParams } from '../../server/src/lsp/messages.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///k/oats.quern';
const OATS = 'recipe Oats\n  200 g     rolled oats\n  do Toast the oats for 10 min until golden.\n';

it('a trial is started by request, and the record goes out with the status', async () => {
  const client = await Client.connect({ capabilities: RICH });
  await client.open(URI, OATS);
  await client.settled();
  const record = () => {
    const last = client.heard.filter((h) => h.method === 'quern/status').at(-1)?.params as StatusParams | undefined;
    return last?.record;
  };
  expect(record()).toEqual({ state: 'never cooked', trials: 0, latest: null });
  const answer = await client.request<RecordTrialAnswer>('quern/recordTrial', {
    version: 1,
    uri: URI,
    date: '2026-11-25',
  });
  expect(answer).toMatchObject({ ok: true, first: { start: { line: 5 } } });
  const text = answer.ok ? OATS + answer.edits.map((e) => e.newText).join('') : '';
  await client.replace(URI, 2, text);
  await client.settled();
  expect(record()).toEqual({ state: 'cooked as written', trials: 1, latest: '2026-11-25' });
  await client.replace(URI, 3, text.replace('200 g', '220 g'));
  await client.settled();
  expect(record()).toMatchObject({ state: 'cooked, changed since' });
  expect(client.codes(URI)).toContain('untested-change');
});

it('says why there is none', async () => {
  const client = await Client.connect({ capabilities: RICH });
  await client.open(URI, 'food quay oats\n');
  const ask = (params: object) => client.request<RecordTrialAnswer>('quern/recordTrial', { version: 1, ...params });
  expect(await ask({ uri: URI, date: '2026-11-25' })).toMatchObject({
    ok: false,
    why: expect.stringMatching(/no recipe/),
  });
  expect(await ask({ uri: 'file:///k/other.quern', date: '2026-11-25' })).toMatchObject({ ok: false });
  await client.replace(URI, 2, OATS);
  expect(await ask({ uri: URI, date: 'today' })).toMatchObject({ ok: false, why: expect.stringMatching(/date/) });
});
