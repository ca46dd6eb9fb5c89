import { describe, expect, it } from 'vitest';
import { type Feature, onDocument } from '../../server/src/lsp/feature.ts';
import { FEATURES } from '../../server/src/lsp/features/index.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const broken: Feature = {
  requests: [
    onDocument('textDocument/hover', null, () => {
      throw new RangeError('the pan is too hot');
    }),
  ],
};

describe('a handler that fails', () => {
  it('answers the empty value, is logged with feature, version and stack, and the others go on', async () => {
    const features = [...FEATURES.filter((f) => f.requests[0]?.method !== 'textDocument/hover'), broken];
    const client = await Client.connect({ capabilities: RICH, features, rethrow: false });
    await client.open(URI, 'recipe A\npart b\n  1 g salt\n  do Stir the salt.\n', 3);
    const params = { textDocument: { uri: URI }, position: { line: 0, character: 0 } };
    expect(await client.request('textDocument/hover', params)).toBeNull();
    expect(await client.request('textDocument/foldingRange', params)).toEqual([{ startLine: 1, endLine: 3 }]);
    const log = JSON.stringify(client.heard.filter((h) => h.method === 'window/logMessage'));
    expect(log).toContain('textDocument/hover failed on version 3: RangeError: the pan is too hot');
    expect(log).toContain('fence.test.ts');
  });

  it('is an error in tests', async () => {
    const client = await Client.connect({ capabilities: RICH, features: [broken] });
    await client.open(URI, 'recipe A\n');
    const params = { textDocument: { uri: URI }, position: { line: 0, character: 0 } };
    await expect(client.request('textDocument/hover', params)).rejects.toThrow(/too hot/);
  });
});
