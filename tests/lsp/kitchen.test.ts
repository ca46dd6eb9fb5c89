import { expect, it } from 'vitest';
import type { BeginAnswer, KitchenAnswer, RecordTrialAnswer } from '../../server/src/lsp/messages.ts';
import { Client } from '../support/in-process.ts';

const BASE =
  'recipe Sweet paste\n  tags    Larder\n\npart paste as sweet paste\n  200 g     plain flour\n  100 g     butter\n  50 g      caster sugar\n  do Rub the butter into the flour and sugar.\n';
const TART =
  'recipe Apple tart\n  tags    dessert, sunday\n\npart case from paste.quern : paste\npart top\n  300 g     apples\n  do Lay the apples in the case and bake at 180 C for 40 min until brown.\n';
const uri = 'file:///k/tart.quern';

async function kitchen() {
  const files = new Map([
    ['/k/quern.json', '{}'],
    ['/k/paste.quern', BASE],
    ['/k/tart.quern', TART],
    ['/k/foods.quern', 'food flour of the mill\n  like plain flour\n'],
  ]);
  const client = await Client.connect({ files });
  const list = async () => (await client.request<KitchenAnswer>('quern/kitchen', { version: 1 })).recipes;
  await client.open(uri, TART);
  return { files, client, list };
}

it('lists every recipe of the folder by name, with its tags and what it is made with', async () => {
  const { client, list } = await kitchen();
  expect(await list()).toEqual([
    {
      uri,
      name: 'Apple tart',
      line: 0,
      tags: ['dessert', 'sunday'],
      state: 'never cooked',
      trials: 0,
      latest: null,
      uses: [{ uri: 'file:///k/paste.quern', part: 'paste', of: 'Sweet paste' }],
    },
    expect.objectContaining({ name: 'Sweet paste', tags: ['Larder'], uses: [] }),
  ]);
  client.close();
});

it('says how a recipe was cooked by the text that was tested, and by what it builds on', async () => {
  const { files, client, list } = await kitchen();
  const state = async () => (await list()).find(({ name }) => name === 'Apple tart')?.state;
  const begun = await client.request<RecordTrialAnswer>('quern/recordTrial', { version: 1, uri, date: '2026-09-14' });
  if (!begun.ok) throw new Error(begun.why);
  const lines = begun.edits.map(({ newText }) => newText).join('');
  const tried = `${TART.trimEnd()}\n${lines}`.replace(/verdict.*/, 'verdict keep');
  await client.replace(uri, 2, tried);
  expect(await state()).toBe('cooked as written');
  await client.replace(uri, 3, tried.replace('300 g', '320 g'));
  expect(await state()).toBe('cooked, changed since');
  await client.replace(uri, 4, tried);
  expect(await state()).toBe('cooked as written');
  // The base is another: the tart was cooked with the old one.
  files.set('/k/paste.quern', BASE.replace('100 g', '120 g'));
  await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 'file:///k/paste.quern', type: 2 }] });
  expect(await state()).toBe('cooked, changed since');
  client.close();
});

it('says with which files a folder begins, without what only a terminal may write', async () => {
  const { client } = await kitchen();
  const { files } = await client.request<BeginAnswer>('quern/begin', { version: 1 });
  expect(files.map(({ name }) => name)).toEqual(['quern.json', '.gitattributes', '.github/workflows/recipes.yml']);
  client.close();
});
