/** What an editor draws into the text: hints and lenses, by real messages. */
import { describe, expect, it } from 'vitest';
import type { CodeLens, InlayHint } from 'vscode-languageserver';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const SLAB = `recipe Slab
  yield   12 squares
part base as shortcrust
  200 g     plain flour
  1/2 cup   whole milk
  do Rub the flour and the milk together, and bake at 180 C for 20 min until gold.
`;
const textDocument = { uri: URI };
const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
const DRAWS = {
  ...RICH,
  workspace: { ...RICH.workspace, inlayHint: { refreshSupport: true }, codeLens: { refreshSupport: true } },
  textDocument: { ...RICH.textDocument, inlayHint: { resolveSupport: { properties: ['tooltip', 'textEdits'] } } },
};
const OURS = {
  scaleCommand: 'quern.scale',
  recordTrialCommand: 'quern.recordTrial',
  showPageCommand: 'quern.showPage',
};

describe('hints', () => {
  it('stand behind what they are of; why, and what a double click writes, is worked out when asked', async () => {
    const client = await Client.connect({ capabilities: DRAWS });
    await client.open(URI, SLAB);
    const [hint, ...more] = await client.request<InlayHint[]>('textDocument/inlayHint', { textDocument, range });
    expect(more).toEqual([]);
    expect(hint).toMatchObject({ position: { line: 4, character: 22 }, label: '= 122 g', paddingLeft: true });
    expect(hint?.textEdits).toBeUndefined();
    const whole = await client.request<InlayHint>('inlayHint/resolve', hint);
    expect(JSON.stringify(whole.tooltip)).toContain('Weight');
    expect(whole.textEdits?.map((e) => e.newText).join('')).toContain('= 122 g');
    await client.replace(URI, 2, SLAB);
    expect((await client.request<InlayHint>('inlayHint/resolve', hint)).textEdits).toBeUndefined();
  });

  it('come whole to a client that cannot ask again', async () => {
    const client = await Client.connect({ capabilities: RICH });
    await client.open(URI, SLAB);
    const [hint] = await client.request<InlayHint[]>('textDocument/inlayHint', { textDocument, range });
    expect(hint?.textEdits?.length).toBeGreaterThan(0);
    expect(hint?.data).toBeUndefined();
  });

  it('are those that the settings show, and are asked for again when these change', async () => {
    const settings = { inlayHints: { grams: false, scale: true }, codeLens: 'off' };
    const client = await Client.connect({ capabilities: DRAWS, settings });
    await client.open(URI, SLAB);
    await client.settled();
    const labels = async () =>
      (await client.request<InlayHint[]>('textDocument/inlayHint', { textDocument, range })).map((h) => h.label);
    expect(await labels()).toEqual(['(350 F)']);
    const asked = () => client.asked.filter((a) => a.method === 'workspace/inlayHint/refresh').length;
    const before = asked();
    client.settings = null;
    await client.notify('workspace/didChangeConfiguration', { settings: null });
    await client.settled();
    expect(await labels()).toEqual(['= 122 g']);
    expect(asked()).toBeGreaterThan(before);
  });
});

describe('lenses', () => {
  const ask = (client: Client) => client.request<CodeLens[]>('textDocument/codeLens', { textDocument });

  it('say what a recipe comes to once they are looked at, and run what the client has', async () => {
    const client = await Client.connect({ capabilities: DRAWS, initializationOptions: OURS });
    await client.open(URI, SLAB);
    const [facts, ...others] = await ask(client);
    expect(facts?.command).toBeUndefined();
    expect(others.flatMap((l) => l.command ?? [])).toEqual([
      { title: 'Scale…', command: 'quern.scale', arguments: [{ uri: URI }] },
      { title: 'Record a trial', command: 'quern.recordTrial', arguments: [{ uri: URI }] },
      { title: 'Show the recipe', command: 'quern.showPage', arguments: [{ uri: URI }] },
    ]);
    const resolved = await client.request<CodeLens>('codeLens/resolve', facts);
    expect(resolved.command).toEqual({ title: expect.stringContaining('never tried'), command: '' });
  });

  it('offer only what the server does itself to a client that names no commands', async () => {
    const client = await Client.connect({ capabilities: RICH, initializationOptions: {} });
    await client.open(URI, SLAB);
    expect((await ask(client)).map((l) => l.command?.command)).toEqual([undefined, 'quern.trial', undefined]);
  });

  it('say what it costs by the prices of the house, as they stand in an open file', async () => {
    const foods = 'food wheat for slabs\n  like plain flour\n  price 2 per 1 kg\n';
    const files = new Map([['/kitchen/foods.quern', foods]]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB.replace('plain flour', 'wheat for slabs'));
    const [facts] = await ask(client);
    const cost = async () => (await client.request<CodeLens>('codeLens/resolve', facts)).command?.title;
    expect(await cost()).toContain('costs at least 0.40');
    await client.open('file:///kitchen/foods.quern', foods.replace('price 2', 'price 3'));
    expect(await cost()).toContain('costs at least 0.60');
  });
});
