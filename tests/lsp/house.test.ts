import { describe, expect, it } from 'vitest';
import type { CompletionList, DocumentDiagnosticReport, Location } from 'vscode-languageserver';
import { PULLING, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const FOODS = 'file:///kitchen/foods.quern';
const SLAB = `recipe Slab
  1 cup     quayside flour
  do Sift the flour.
`;
const HOUSE_FLOUR = 'food quayside flour\n  like    bread flour\n  1 cup = 135 g\n';
const massOf = (client: Client): unknown =>
  client.heard.filter((h) => h.method === 'quern/status' && (h.params as { uri: string }).uri === URI).at(-1)?.params;

describe('the house of a file', () => {
  it('lends its foods, and what is typed in them counts before it is saved', async () => {
    const files = new Map([
      ['/kitchen/quern.json', '{}'],
      ['/kitchen/foods.quern', HOUSE_FLOUR],
      ['/kitchen/slab.quern', SLAB],
    ]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB);
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
    expect(massOf(client)).toMatchObject({ massG: { low: 135, high: 135 } });

    await client.open(FOODS, HOUSE_FLOUR);
    await client.replace(FOODS, 2, HOUSE_FLOUR.replace('135', '140'));
    await client.settled();
    expect(massOf(client)).toMatchObject({ massG: { low: 140, high: 140 } });

    await client.notify('textDocument/didClose', { textDocument: { uri: FOODS } });
    await client.settled();
    expect(massOf(client)).toMatchObject({ massG: { low: 135, high: 135 } });
  });

  it('offers its own food in the place of the one that the book calls so', async () => {
    const foods = 'food plain flour\n  like    bread flour\n  1 cup = 135 g\n';
    const client = await Client.connect({ capabilities: RICH, files: new Map([['/kitchen/foods.quern', foods]]) });
    await client.open(URI, 'recipe Slab\n  100 g  plain fl');
    const { items } = await client.request<CompletionList>('textDocument/completion', {
      textDocument: { uri: URI },
      position: { line: 1, character: 17 },
    });
    const own = items.filter(({ label }) => label === 'plain flour');
    expect(own.map(({ detail }) => detail)).toEqual([expect.stringContaining('1 cup = 135 g')]);
  });

  it('defines its foods in their own file', async () => {
    const files = new Map([
      ['/kitchen/quern.json', '{}'],
      ['/kitchen/foods.quern', HOUSE_FLOUR],
    ]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB);
    const [found] = await client.request<Location[]>('textDocument/definition', {
      textDocument: { uri: URI },
      position: { line: 1, character: 16 },
    });
    expect(found).toEqual({ uri: FOODS, range: { start: { line: 0, character: 5 }, end: { line: 0, character: 19 } } });
  });

  it('is read again when its file changes on disk, and findings asked for anew', async () => {
    const files = new Map([['/kitchen/quern.json', '{ "severities": { "unknown-food": "off" } }']]);
    const client = await Client.connect({ capabilities: PULLING, files });
    await client.open(URI, SLAB);
    const pull = () =>
      client.request<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument: { uri: URI } });
    expect(await pull()).toMatchObject({ items: [] });
    files.set('/kitchen/quern.json', '{}');
    await client.notify('workspace/didChangeWatchedFiles', {
      changes: [{ uri: 'file:///kitchen/quern.json', type: 2 }],
    });
    expect(await pull()).toMatchObject({ items: [{ code: 'unknown-food' }] });
    expect(client.asked.filter((a) => a.method === 'workspace/diagnostic/refresh')).toHaveLength(1);
  });

  it('appears where there was none, and goes away', async () => {
    const files = new Map<string, string>();
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB);
    await client.settled();
    expect(client.codes(URI)).toEqual(['unknown-food']);
    files.set('/kitchen/quern.json', '{ "severities": { "unknown-food": "off" } }');
    const changes = [{ uri: 'file:///kitchen/quern.json', type: 1 }];
    await client.notify('workspace/didChangeWatchedFiles', { changes });
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
    files.delete('/kitchen/quern.json');
    await client.notify('workspace/didChangeWatchedFiles', { changes });
    await client.settled();
    expect(client.codes(URI)).toEqual(['unknown-food']);
  });

  it('a client that watches nothing is believed on save', async () => {
    const files = new Map([['/kitchen/quern.json', '{}']]);
    const client = await Client.connect({ files });
    await client.open(URI, SLAB);
    await client.settled();
    files.set('/kitchen/quern.json', '{ "severities": { "unknown-food": "off" } }');
    await client.notify('textDocument/didSave', { textDocument: { uri: URI } });
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
  });

  it.each([RICH, PULLING, {}])(
    'has its mistakes pushed on quern.json, and cleared when they are mended',
    async (can) => {
      const json = 'file:///kitchen/quern.json';
      const files = new Map([['/kitchen/quern.json', '{\n  "measures": "buckets"\n}']]);
      const client = await Client.connect({ capabilities: can, files });
      await client.open(URI, SLAB);
      await client.settled();
      const told = () => client.published.filter((p) => p.uri === json).map((p) => p.diagnostics);
      expect(told()).toMatchObject([
        [{ message: expect.stringContaining('one of'), source: 'quern', range: { start: { line: 1, character: 14 } } }],
      ]);
      files.set('/kitchen/quern.json', '{}');
      await client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: json, type: 2 }] });
      await client.settled();
      expect(told()).toHaveLength(2);
      expect(told().at(-1)).toEqual([]);
    },
  );

  it('has the mistakes of its foods on their blocks, pushed or pulled', async () => {
    const foods = 'food quay flour\n  like    no such thing\n\nfood dock flour\n  like    plain flour\n';
    for (const can of [RICH, PULLING]) {
      const files = new Map([
        ['/kitchen/quern.json', '{}'],
        ['/kitchen/foods.quern', foods],
      ]);
      const client = await Client.connect({ capabilities: can, files });
      await client.open(FOODS, foods);
      await client.settled();
      const pulled = await client.request<DocumentDiagnosticReport>('textDocument/diagnostic', {
        textDocument: { uri: FOODS },
      });
      const all =
        can === RICH
          ? client.published.findLast((p) => p.uri === FOODS)?.diagnostics
          : pulled.kind === 'full' && pulled.items;
      expect(all).toContainEqual(
        expect.objectContaining({
          message: 'This food could not be used as it stands: no food is called no such thing.',
          range: { start: { line: 0, character: 5 }, end: { line: 0, character: 15 } },
        }),
      );
      await client.replace(FOODS, 2, foods.replace('no such thing', 'bread flour'));
      await client.settled();
      const mended = await client.request<DocumentDiagnosticReport>('textDocument/diagnostic', {
        textDocument: { uri: FOODS },
      });
      expect(JSON.stringify(mended)).not.toContain('could not be used');
    }
  });

  it('says in the log what of quern.json cannot be used', async () => {
    const files = new Map([['/kitchen/quern.json', '{ "colour": 3 }']]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB);
    await client.settled();
    const log = client.heard.filter((h) => h.method === 'window/logMessage');
    expect(JSON.stringify(log)).toContain('`colour` is no setting');
  });
});

describe('a file that builds on another', () => {
  const BASE = 'recipe Bread\n  500 g     bread flour\n  325 g     water\n  do Mix the flour and the water.\n';
  const VARIANT = 'recipe Olive bread\n  from    bread.quern\n  add 80 g olives\n';
  const files = () =>
    new Map([
      ['/kitchen/quern.json', '{}'],
      ['/kitchen/bread.quern', BASE],
    ]);
  const mass = (client: Client): unknown => (massOf(client) as { massG: unknown }).massG;

  it('is worked out with what it builds on, as typed', async () => {
    const client = await Client.connect({ capabilities: RICH, files: files() });
    await client.open(URI, VARIANT);
    await client.settled();
    expect(mass(client)).toMatchObject({ low: 905 });
    await client.open('file:///kitchen/bread.quern', BASE);
    await client.replace('file:///kitchen/bread.quern', 2, BASE.replace('325 g', '350 g'));
    await client.settled();
    expect(mass(client)).toMatchObject({ low: 930 });
    await client.notify('textDocument/didClose', { textDocument: { uri: 'file:///kitchen/bread.quern' } });
    await client.settled();
    expect(mass(client)).toMatchObject({ low: 905 });
  });

  it('says so when that is missing, until it is there', async () => {
    const texts = files();
    texts.delete('/kitchen/bread.quern');
    const client = await Client.connect({ capabilities: RICH, files: texts });
    await client.open(URI, VARIANT);
    await client.settled();
    expect(client.codes(URI)).toContain('missing-file');
    texts.set('/kitchen/bread.quern', BASE);
    await client.notify('workspace/didChangeWatchedFiles', {
      changes: [{ uri: 'file:///kitchen/bread.quern', type: 1 }],
    });
    await client.settled();
    expect(client.codes(URI)).not.toContain('missing-file');
  });
});

describe('settings of the editor', () => {
  const CUP = 'recipe A\n  1 cup     water\n  do Boil the water.\n';
  it('are asked for, hold at once, and follow a change', async () => {
    // NIST SP 811: a US cup is 236.6 ml; a metric cup is 250 ml.
    const client = await Client.connect({ capabilities: RICH, settings: { measures: 'metric', severities: null } });
    await client.open(URI, CUP);
    await client.settled();
    const grams = () => (massOf(client) as { massG: { low: number } }).massG.low;
    const metric = grams();
    client.settings = { measures: 'us' };
    await client.notify('workspace/didChangeConfiguration', { settings: null });
    await client.settled();
    expect(metric / grams()).toBeCloseTo(250 / 236.588, 2);
  });

  it('that cannot be used are left out and said', async () => {
    const client = await Client.connect({
      capabilities: RICH,
      settings: { measures: 'buckets', trace: { server: 'off' } },
    });
    await client.open(URI, CUP);
    await client.settled();
    const log = JSON.stringify(client.heard.filter((h) => h.method === 'window/logMessage'));
    expect(log).toContain('`measures` is one of');
    expect(log).not.toContain('trace');
  });
});
