import { expect, it, test } from 'vitest';
import { isBlank } from '../../client/src/blank.ts';
import type { ReadAnswer } from '../../server/src/lsp/messages.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///k/new.quern';
const files = () => new Map([['/k/quern.json', '{ "measures": "metric" }']]);

const connected = Client.connect({ capabilities: RICH, files: files() });
const read = async (text: string, uri = URI) =>
  (await connected).request<ReadAnswer>('quern/read', { version: 1, uri, text });

const CARD =
  'Shortbread\nMakes 20 fingers\n\n250g plain flour\n125 g butter\n1 frobnicate\n\nRub the butter into the flour.\n';

it('a printed recipe is answered in the notation, with how many lines were not understood', async () => {
  expect(await read(CARD)).toEqual({
    version: 1,
    text: expect.stringMatching(
      /^recipe Shortbread\n {2}Makes 20 fingers\n\n {2}250 ?g +plain flour\n {2}125 g +butter\n/,
    ),
    missed: expect.any(Number),
  });
  expect(await read(CARD.replaceAll('\n', '\r\n'), 'untitled:Untitled-1')).toMatchObject({ version: 1 });
});

test.each([
  ['nothing', ''],
  ['prose', 'Dear Nan,\n\nthank you for the cake.\nIt was good.\n'],
  ['one line of a list', 'Cake\n\n200 g flour\n\nMix.\n'],
  ['a recipe of the notation', 'recipe Cake\n  200 g     flour\n  100 g     butter\n  do Mix.\n'],
  ['a part of one', '  200 g     flour\n  100 g     butter\n  do Mix the flour and the butter.\n'],
  ['code', 'const a = 1;\nfor (const b of c) {\n  d(b);\n}\n'],
  ['more than is read of a text', `${CARD}${'Mix again.\n'.repeat(20_000)}`],
  ['a table of numbers', '1\t2\t3\n4\t5\t6\n7\t8\t9\n'],
])('%s is no printed recipe', async (_, text) => {
  expect(await read(text)).toBeNull();
});

it.each([
  ['', true],
  ['\n  \n\t\r\n', true],
  ['# mine\n\n  # from a card\n', true],
  ['# mine\n200 g flour\n', false],
  ['recipe', false],
])('%j holds nothing yet: %o', (text, blank) => {
  expect(isBlank(text)).toBe(blank);
});
