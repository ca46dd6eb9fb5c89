/** Of what sort something is, who builds on whom, a line moved, the line just left laid out: by real messages. */
import { describe, expect, it } from 'vitest';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
  CodeAction,
  Location,
  TextEdit,
} from 'vscode-languageserver';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const BASE = `recipe Base tart
part crust as shortcrust
  200 g     plain flour
  100 g     butter
  50 g      quay cream
  do Rub the butter into the flour and bind with the cream.
`;
const PLUM = `recipe Plum tart
  from base.quern
part fruit
  400 g     plums
  do Lay the plums in the crust.
`;
const PIE = `recipe Pie
part lid from base.quern : crust
part fruit
  400 g     plums
  do Lay the plums in the lid.
`;
const FOODS = 'food quay cream\n  like double cream\n';
const FILES = new Map([
  ['/kitchen/quern.json', '{}'],
  ['/kitchen/base.quern', BASE],
  ['/kitchen/plum.quern', PLUM],
  ['/kitchen/pie.quern', PIE],
  ['/kitchen/foods.quern', FOODS],
]);
const uriOf = (name: string): string => `file:///kitchen/${name}.quern`;
const opened = async (name: string, initializationOptions: object = { pageScheme: 'quern-page' }) => {
  const client = await Client.connect({ capabilities: RICH, files: new Map(FILES), initializationOptions });
  await client.open(uriOf(name), FILES.get(`/kitchen/${name}.quern`) ?? '');
  return client;
};
const at = (name: string, needle: string) => {
  const lines = (FILES.get(`/kitchen/${name}.quern`) ?? '').split('\n');
  const line = lines.findIndex((text) => text.includes(needle));
  return { textDocument: { uri: uriOf(name) }, position: { line, character: lines[line]?.indexOf(needle) ?? 0 } };
};

describe('of what sort it is', () => {
  const type = (client: Client, where: object) => client.request<Location[]>('textDocument/typeDefinition', where);

  it('a part is of its kind, whose page has the bands and their source', async () => {
    const client = await opened('base');
    expect((await type(client, at('base', 'shortcrust'))).map((l) => l.uri)).toEqual([
      'quern-page:/kind-shortcrust.md',
    ]);
    const page = await client.request<{ title: string; markdown: string }>('quern/explain', {
      version: 1,
      code: 'kind-shortcrust',
    });
    expect(page.title).toBe('shortcrust');
    expect(page.markdown).toMatch(/\| Water per flour \| 18 to 53 % \|.*\| \S.* \|/);
  });

  it('an ingredient is of its food: a page, or where the house describes it', async () => {
    const client = await opened('base');
    const [flour] = await type(client, at('base', 'plain flour'));
    expect(flour?.uri).toMatch(/^quern-page:\/food-[a-z-]+\.md$/);
    const code = flour?.uri.replace(/^quern-page:\/|\.md$/g, '');
    const page = await client.request<{ markdown: string }>('quern/explain', { version: 1, code });
    expect(page.markdown).toMatch(/\| protein \| \d/);
    expect((await type(client, at('base', 'quay'))).map((l) => l.uri)).toEqual([uriOf('foods')]);
    // Named in a step, by its last word.
    expect((await type(client, at('base', 'cream.'))).map((l) => l.uri)).toEqual([uriOf('foods')]);
  });

  it('is not told to a client that has no place for a page', async () => {
    const client = await opened('base', {});
    expect(await type(client, at('base', 'shortcrust'))).toEqual([]);
    expect((await type(client, at('base', 'quay'))).length).toBe(1);
  });
});

describe('who builds on whom', () => {
  const prepare = (client: Client, where: object) =>
    client.request<CallHierarchyItem[] | null>('textDocument/prepareCallHierarchy', where);
  const incoming = (client: Client, item: CallHierarchyItem | undefined) =>
    client.request<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
  const outgoing = (client: Client, item: CallHierarchyItem | undefined) =>
    client.request<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', { item });

  it('of a recipe: the files that take it in, and the one it takes in', async () => {
    const client = await opened('base');
    const [base] = (await prepare(client, at('base', 'Base tart'))) ?? [];
    expect(base).toMatchObject({ name: 'Base tart', detail: 'base.quern' });
    const users = await incoming(client, base);
    expect(users.map(({ from }) => from.name).sort()).toEqual(['Pie', 'Plum tart']);
    const plum = users.find(({ from }) => from.name === 'Plum tart');
    expect(plum?.fromRanges).toEqual([{ start: { line: 1, character: 7 }, end: { line: 1, character: 17 } }]);
    expect(await incoming(client, plum?.from)).toEqual([]);
    expect((await outgoing(client, plum?.from)).map(({ to }) => to.name)).toEqual(['Base tart']);
  });

  it('of a part: the parts that are made of it', async () => {
    const client = await opened('base');
    const [crust] = (await prepare(client, at('base', 'crust as'))) ?? [];
    expect(crust?.name).toBe('crust');
    const users = await incoming(client, crust);
    expect(users.map(({ from }) => `${from.name} ${from.detail}`)).toEqual(['lid pie.quern']);
    expect((await outgoing(client, users[0]?.from)).map(({ to }) => to.name)).toEqual(['crust']);
  });

  it('begins from a link, too, and nowhere in a list', async () => {
    const client = await opened('plum');
    expect((await prepare(client, at('plum', 'base.quern')))?.map(({ uri }) => uri)).toEqual([uriOf('base')]);
    expect(await prepare(client, at('plum', 'plums'))).toBeNull();
  });
});

describe('lines', () => {
  const range = (line: number) => ({ start: { line, character: 4 }, end: { line, character: 4 } });
  const ask = (client: Client, line: number, only?: string[]) =>
    client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument: { uri: uriOf('base') },
      range: range(line),
      context: { diagnostics: [], ...(only && { only }) },
    });

  it('move for who asks for that, and stand in no light bulb', async () => {
    const client = await opened('base');
    expect((await ask(client, 3)).filter(({ kind }) => kind === 'refactor.move')).toEqual([]);
    const titles = (await ask(client, 3, ['refactor.move'])).map(({ title }) => title);
    expect(titles).toEqual(['Move the line up', 'Move the line down']);
    expect((await ask(client, 2, ['refactor'])).map(({ title }) => title)).toContain('Move the line down');
    expect(await ask(client, 5, ['refactor.move'])).toEqual([]);
  });

  it('are laid out when they are left', async () => {
    const client = await Client.connect({ capabilities: RICH });
    const uri = uriOf('new');
    await client.open(uri, 'recipe A\n 100g  butter\n\n 50g sugar\n');
    const options = { tabSize: 2, insertSpaces: true };
    const typed = (line: number) =>
      client.request<TextEdit[]>('textDocument/onTypeFormatting', {
        textDocument: { uri },
        position: { line, character: 0 },
        ch: '\n',
        options,
      });
    const edits = await typed(2);
    expect(edits.length).toBe(1);
    expect(edits.every((e) => e.range.start.line === 1 && e.range.end.line === 1)).toBe(true);
    expect(await typed(0)).toEqual([]);
  });
});
