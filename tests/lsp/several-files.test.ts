/** Whatever is typed, saved, made and deleted in several files of several houses: what is told is what a server told that starts then. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Diagnostic, DocumentDiagnosticReport, WorkspaceDiagnosticReport } from 'vscode-languageserver';
import { PULLING, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const BASE =
  'recipe Bread\npart dough\n  500 g     quay flour\n  325 g     water\n  do Mix the flour and the water.\npart crust\n  20 g      butter\n  do Brush with the butter.\n';
const FOODS = 'food quay flour\n  like    bread flour\n  1 cup = 135 g\n';

/** Every file of the kitchen, with what may stand in it. */
const TEXTS: Readonly<Record<string, readonly string[]>> = {
  '/k/quern.json': [
    '{}',
    '{ "severities": { "unknown-food": "off" } }',
    '{ "measures": "metric", "ignore": ["pastry/**"] }',
    '{ "measures": ',
  ],
  '/k/foods.quern': [FOODS, FOODS.replace('135', '140'), FOODS.replace('bread flour', 'no such thing'), '# none\n', ''],
  '/k/a.quern': [BASE, BASE.replace('325', '900'), BASE.replace('part crust', 'part top'), `${BASE}from c.quern\n`, ''],
  '/k/b.quern': [
    'recipe Olive bread\n  from    a.quern\n  add 80 g olives to dough\n',
    'recipe Olive bread\n  from    a.quern\n  drop butter from crust\n',
    'recipe Olive bread\n  from    pastry/c.quern\n',
    'recipe Olive bread\n  from    d.quern\n',
  ],
  '/k/d.quern': [
    'recipe Rolls\n  from    b.quern\n  swap water for 200 g quay flour\n',
    'recipe Rolls\npart dough from a.quern : dough\npart lid from pastry/c.quern\n',
  ],
  '/k/pastry/c.quern': [
    'recipe Tart\n  1 cup     quay flour\n  1 blob    pier salt\n  do Mix the flour.',
    'recipe Tart\npart case from ../a.quern : crust\n  5 g       pier salt\n',
    'food pier salt\n  like    fine salt\n',
  ],
  '/k/pastry/foods.quern': ['food pier salt\n  like    fine salt\n', FOODS.replace('135', '90'), 'recipe Not foods\n'],
  '/k/pastry/quern.json': ['{ "severities": { "unknown-unit": "off" } }', '{}'],
};
const PATHS = Object.keys(TEXTS);
const RECIPES = PATHS.filter((path) => path.endsWith('.quern'));
const TYPED = ['  1 cup     quay flour', '\n', 'from b.quern', '  do Fold in the rest of the butter.', ' 3', '# why\n'];
const SETTINGS = [null, { measures: 'metric' }, { severities: { 'unknown-food': 'error', 'unused-part': 'off' } }];

const anyPath = fc.constantFrom(...PATHS);
const anyRecipe = fc.constantFrom(...RECIPES);
const nth = fc.nat(4);
const command = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('write' as const), path: anyPath, nth }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('delete' as const), path: anyPath }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('open' as const), path: anyRecipe, nth }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('replace' as const), path: anyRecipe, nth }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('type' as const), path: anyRecipe, nth: fc.nat(5) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('close' as const), path: anyRecipe }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('save' as const), path: anyRecipe }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('settings' as const), nth: fc.nat(2) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('delete folder' as const) }) },
);
type Command = typeof command extends fc.Arbitrary<infer C> ? C : never;

const uriOf = (path: string) => `file://${path}`;
const pick = (path: string, n: number): string => {
  const texts = TEXTS[path] ?? [];
  return texts[n % texts.length] ?? '';
};

/** A client, and what lies on its disk and stands in its windows. */
interface World {
  readonly client: Client;
  readonly files: Map<string, string>;
  readonly open: Map<string, { readonly text: string; readonly version: number }>;
}

async function start(capabilities: typeof RICH, files: Map<string, string>, settings: unknown): Promise<World> {
  const client = await Client.connect({ capabilities, files, settings });
  await client.notify('workspace/didChangeWorkspaceFolders', {
    event: { added: [{ uri: 'file:///k', name: 'k' }], removed: [] },
  });
  return { client, files, open: new Map() };
}

async function open({ client, open }: World, path: string, text: string): Promise<void> {
  open.set(path, { text, version: 1 });
  await client.open(uriOf(path), text);
}

async function act(world: World, command: Command): Promise<void> {
  const { client, files } = world;
  const changed = (path: string, type: number) =>
    client.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uriOf(path), type }] });
  switch (command.kind) {
    case 'write': {
      const type = files.has(command.path) ? 2 : 1;
      files.set(command.path, pick(command.path, command.nth));
      return changed(command.path, type);
    }
    case 'delete':
      return files.delete(command.path) ? changed(command.path, 3) : undefined;
    case 'delete folder':
      for (const path of [...files.keys()]) if (path.startsWith('/k/pastry/')) files.delete(path);
      return changed('/k/pastry', 3);
    case 'settings':
      client.settings = SETTINGS[command.nth];
      return client.notify('workspace/didChangeConfiguration', { settings: null });
    case 'open':
      if (world.open.has(command.path)) return;
      return open(world, command.path, files.get(command.path) ?? pick(command.path, command.nth));
  }
  const { path } = command;
  const now = world.open.get(path);
  if (now === undefined) return;
  const version = now.version + 1;
  switch (command.kind) {
    case 'replace': {
      const text = pick(path, command.nth);
      world.open.set(path, { text, version });
      return client.replace(uriOf(path), version, text);
    }
    case 'type': {
      const put = TYPED[command.nth] ?? '';
      world.open.set(path, { text: now.text + put, version });
      const lines = now.text.split('\n');
      const end = { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 };
      return client.notify('textDocument/didChange', {
        textDocument: { uri: uriOf(path), version },
        contentChanges: [{ range: { start: end, end }, text: put }],
      });
    }
    case 'close':
      world.open.delete(path);
      return client.notify('textDocument/didClose', { textDocument: { uri: uriOf(path) } });
    case 'save': {
      const type = files.has(path) ? 2 : 1;
      files.set(path, now.text);
      await client.notify('textDocument/didSave', { textDocument: { uri: uriOf(path) } });
      return changed(path, type);
    }
  }
}

type Told = Readonly<Record<string, readonly unknown[]>>;
const plain = (diagnostics: readonly Diagnostic[]) =>
  diagnostics.map(({ range, severity, code, message, relatedInformation }) => ({
    range,
    severity,
    code,
    message,
    relatedInformation,
  }));
const withFindings = (all: readonly (readonly [string, readonly Diagnostic[]])[]): Told =>
  Object.fromEntries(
    all
      .filter(([, found]) => found.length > 0)
      .map(([uri, found]): [string, readonly unknown[]] => [uri, plain(found)])
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

/** What the client shows of each file. */
function shown({ client }: World): Told {
  const last = new Map(client.published.map(({ uri, diagnostics }) => [uri, diagnostics]));
  return withFindings([...last]);
}

async function checkFolder({ client }: World): Promise<void> {
  await client.request('quern/checkFolder', { version: 1 });
  await client.settled();
}

async function pulled({ client }: World): Promise<Told> {
  const { items } = await client.request<WorkspaceDiagnosticReport>('workspace/diagnostic', { previousResultIds: [] });
  return withFindings(items.flatMap((i) => (i.kind === 'full' ? [[i.uri, i.items] as const] : [])));
}

async function fresh({ client, files, open: texts }: World, capabilities: typeof RICH): Promise<World> {
  const world = await start(capabilities, new Map(files), client.settings);
  await world.client.settled();
  for (const [path, { text }] of texts) await open(world, path, text);
  await world.client.settled();
  return world;
}

const SLAB = 'recipe Slab\n  1 cup     quay flour\n  do Sift the flour.\n';
const foods = '/k/foods.quern';

describe('foods that are closed without being saved', () => {
  it.each([
    ['taken out', FOODS, '# none\n', []],
    ['put in', '# none\n', FOODS, ['unknown-food']],
    ['changed', FOODS, FOODS.replace('quay', 'pier'), []],
  ])('%s: the saved ones hold again', async (_, saved, typed, want) => {
    const files = new Map([
      ['/k/quern.json', '{}'],
      [foods, saved],
    ]);
    const world = await start(RICH, files, null);
    const slab = uriOf('/k/slab.quern');
    await open(world, '/k/slab.quern', SLAB);
    await open(world, foods, saved);
    await world.client.settled();
    expect(world.client.codes(slab)).toEqual(want);
    await world.client.replace(uriOf(foods), 2, typed);
    await world.client.settled();
    expect(world.client.codes(slab)).toEqual(typed === FOODS ? [] : ['unknown-food']);
    await act(world, { kind: 'close', path: foods });
    await world.client.settled();
    expect(world.client.codes(slab)).toEqual(want);
  });

  it('opened with another text than lies on disk, are as typed', async () => {
    const files = new Map([
      ['/k/quern.json', '{}'],
      [foods, FOODS],
    ]);
    const world = await start(RICH, files, null);
    await open(world, '/k/slab.quern', SLAB);
    await world.client.settled();
    await open(world, foods, '# none\n');
    await world.client.settled();
    expect(world.client.codes(uriOf('/k/slab.quern'))).toEqual(['unknown-food']);
  });
});

describe('what is found on the last line while it has no end', () => {
  const URI = uriOf('/k/slab.quern');
  const START = 'recipe Slab\n  200 g     rolled oats\n  80 g      butter\n  do Rub the butter into the oats.\n';
  const typeOn = (client: Client) =>
    client.notify('textDocument/didChange', {
      textDocument: { uri: URI, version: 2 },
      contentChanges: [
        {
          range: { start: { line: 4, character: 0 }, end: { line: 4, character: 0 } },
          text: '  do Brush with the rest of the butter.',
        },
      ],
    });

  it('is pushed once nobody is about to type on', async () => {
    const { client } = await start(RICH, new Map(), null);
    await client.open(URI, START);
    await client.settled();
    await typeOn(client);
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
    await client.still();
    expect(client.codes(URI)).toEqual(['overdrawn-amount']);
    const told = client.published.length;
    await client.still();
    expect(client.published).toHaveLength(told);
  });

  it('is there to be pulled then, and the client is told so', async () => {
    const { client } = await start(PULLING, new Map(), null);
    const pull = async () => {
      const report = await client.request<DocumentDiagnosticReport>('textDocument/diagnostic', {
        textDocument: { uri: URI },
      });
      return report.kind === 'full' ? report.items.map((d) => d.code) : report.kind;
    };
    await client.open(URI, START);
    expect(await pull()).toEqual([]);
    await typeOn(client);
    expect(await pull()).toEqual([]);
    await client.still();
    expect(client.asked.map((a) => a.method)).toContain('workspace/diagnostic/refresh');
    expect(await pull()).toEqual(['overdrawn-amount']);
  });
});

describe('an open file that is deleted', () => {
  it('keeps the findings of what is typed, though the folder was checked', async () => {
    const files = new Map([['/k/slab.quern', SLAB]]);
    const world = await start(RICH, files, null);
    await open(world, '/k/slab.quern', SLAB);
    await checkFolder(world);
    await act(world, { kind: 'delete', path: '/k/slab.quern' });
    await world.client.settled();
    expect(world.client.codes(uriOf('/k/slab.quern'))).toEqual(['unknown-food']);
  });
});

describe('a file that its house leaves out from now on', () => {
  it('has no findings any more, once its own house is gone', async () => {
    const files = new Map([
      ['/k/quern.json', '{ "ignore": ["pastry/**"] }'],
      ['/k/pastry/quern.json', '{}'],
      ['/k/pastry/slab.quern', SLAB],
    ]);
    const world = await start(RICH, files, null);
    const slab = uriOf('/k/pastry/slab.quern');
    await checkFolder(world);
    expect(world.client.codes(slab)).toEqual(['unknown-food']);
    await act(world, { kind: 'delete', path: '/k/pastry/quern.json' });
    await world.client.settled();
    expect(world.client.codes(slab)).toEqual([]);
  });
});

const commands = fc.array(command, { minLength: 1, maxLength: 10 });
const kitchen = () => new Map(PATHS.map((path) => [path, pick(path, 0)]));

describe('what is told of several files, houses and settings', () => {
  it('is what a fresh server tells, where it is pushed', async () => {
    await fc.assert(
      fc.asyncProperty(commands, async (made) => {
        const world = await start(RICH, kitchen(), null);
        await world.client.settled();
        await checkFolder(world);
        for (const one of made) {
          await act(world, one);
          await world.client.settled();
        }
        await world.client.still();
        const other = await fresh(world, RICH);
        await checkFolder(other);
        // A file that was made is in the list once the folder is checked again.
        const told = shown(other);
        for (const [uri, found] of Object.entries(shown(world))) expect([uri, found]).toEqual([uri, told[uri]]);
        await checkFolder(world);
        expect(shown(world)).toEqual(told);
        world.client.close();
        other.client.close();
      }),
      { numRuns: 100 },
    );
  });

  it('is what a fresh server tells, where it is pulled', async () => {
    await fc.assert(
      fc.asyncProperty(commands, async (made) => {
        const world = await start(PULLING, kitchen(), null);
        await world.client.settled();
        for (const one of made) {
          await act(world, one);
          await pulled(world);
        }
        await world.client.still();
        const other = await fresh(world, PULLING);
        expect(await pulled(world)).toEqual(await pulled(other));
        world.client.close();
        other.client.close();
      }),
      { numRuns: 100 },
    );
  });
});
