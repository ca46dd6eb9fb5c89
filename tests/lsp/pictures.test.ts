import { expect, it } from 'vitest';
import { Client } from '../support/in-process.ts';

const uri = 'file:///k/tart.quern';
const TEXT = 'recipe Tart\n  yield   1 tart\n  picture tart (1).jpg, Cut\n  200 g     bread\n  do Toast the bread.\n';
const OWN = { capabilities: { textDocument: { hover: { contentFormat: ['markdown' as const] } } } };

it('finds a picture that is put there, and misses it when it goes', async () => {
  const files = new Map([
    ['/k/quern.json', '{}'],
    ['/k/tart.quern', TEXT],
  ]);
  const client = await Client.connect({ ...OWN, files });
  await client.open(uri, TEXT);
  await client.settled();
  expect(client.codes(uri)).toContain('picture-missing');
  files.set('/k/tart (1).jpg', '');
  const changed = (type: number) =>
    client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: 'file:///k/tart%20(1).jpg', type }] });
  await changed(1);
  await client.settled();
  expect(client.codes(uri)).not.toContain('picture-missing');
  const hover = await client.request<{ contents: { value: string } }>('textDocument/hover', {
    textDocument: { uri },
    position: { line: 2, character: 12 },
  });
  expect(hover.contents.value).toContain('![Cut](file:///k/tart%20%281%29.jpg');
  files.delete('/k/tart (1).jpg');
  await changed(3);
  await client.settled();
  expect(client.codes(uri)).toContain('picture-missing');
  client.close();
});
