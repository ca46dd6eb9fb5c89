import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  DocumentSymbol,
  Hover,
  Location,
  SemanticTokens,
  SemanticTokensDelta,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { PULLING, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const SLAB = `recipe Slab
  yield   12 squares
part base as shortcrust
  200 g     plain flour
 100g  butter
  150 g     water
  do Rub the butter into the flour and bring together with the water.
part top
  20 g      honey
  do Spread the honey over the base.
`;
const textDocument = { uri: URI };
const place = (line: number, character: number) => ({ textDocument, position: { line, character } });

async function opened(options?: Parameters<typeof Client.connect>[0]): Promise<Client> {
  const client = await Client.connect({ capabilities: RICH, ...options });
  await client.open(URI, SLAB);
  return client;
}

describe('one real message each', () => {
  it('hover in markdown, with the range of what is explained', async () => {
    const client = await opened();
    const hover = await client.request<Hover>('textDocument/hover', place(3, 14));
    expect(hover.range).toEqual({ start: { line: 3, character: 2 }, end: { line: 3, character: 23 } });
    expect(hover.contents).toMatchObject({
      kind: 'markdown',
      value: expect.stringContaining('**200 g     plain flour**'),
    });
  });

  it('completion with exact edits in order, documentation on resolve', async () => {
    const client = await opened();
    const text = SLAB.replace('  do Rub', '  30 g      but\n  do Rub');
    await client.replace(URI, 2, text);
    const list = await client.request<CompletionList>('textDocument/completion', place(6, 15));
    expect(list.isIncomplete).toBe(true);
    const [first] = list.items;
    expect(first).toMatchObject({
      label: 'butter',
      sortText: '0000',
      filterText: 'butter',
      textEdit: { newText: 'butter', range: { start: { line: 6, character: 12 }, end: { line: 6, character: 15 } } },
    });
    expect(first?.documentation).toBeUndefined();
    const resolved = await client.request<CompletionItem>('completionItem/resolve', first);
    expect(resolved.documentation).toMatchObject({ kind: 'markdown', value: expect.stringMatching(/In 100 g: water/) });
  });

  it('code actions: a fix at once, a size when it is chosen', async () => {
    const client = await opened();
    const range = { start: { line: 5, character: 0 }, end: { line: 5, character: 20 } };
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range,
      context: { diagnostics: [] },
    });
    const fix = actions.find((a) => a.isPreferred);
    expect(fix?.kind).toBe('quickfix');
    expect(fix?.diagnostics?.[0]?.code).toBe('dough-too-wet');
    expect(fix?.edit?.documentChanges?.[0]).toMatchObject({ textDocument: { uri: URI, version: 1 } });
    const allow = actions.find((a) => a.title.startsWith('Allow'));
    expect(JSON.stringify(allow?.edit)).toContain(
      '"snippet":{"kind":"snippet","value":"  allow dough-too-wet because $' + '{1:reason}\\n"}',
    );
    const head = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const sizes = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: head,
      context: { diagnostics: [] },
    });
    const double = sizes.find((a) => a.title === 'Scale the recipe by two');
    expect(double?.edit).toBeUndefined();
    const resolved = await client.request<CodeAction>('codeAction/resolve', double);
    expect(JSON.stringify(resolved.edit)).toContain('"newText":"24"');
    await client.replace(URI, 2, SLAB);
    const late = await client.request<CodeAction>('codeAction/resolve', double);
    expect(late.edit).toBeUndefined();
  });

  it.each([
    [['quickfix'], ['quickfix']],
    [['refactor'], ['refactor.rewrite', 'refactor.move']],
    [['source.organizeImports'], []],
    [['source.fixAll'], []],
  ])('code actions honour only %j', async (only, kinds) => {
    const client = await opened();
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: { start: { line: 5, character: 0 }, end: { line: 5, character: 20 } },
      context: { diagnostics: [], only },
    });
    expect([...new Set(actions.map((a) => a.kind))]).toEqual(kinds);
  });

  it('formatting, whole and in part', async () => {
    const client = await opened();
    const options = { tabSize: 8, insertSpaces: false };
    const whole = await client.request<unknown[]>('textDocument/formatting', { textDocument, options });
    expect(whole.length).toBe(1);
    const range = { start: { line: 0, character: 0 }, end: { line: 4, character: 0 } };
    expect(await client.request('textDocument/rangeFormatting', { textDocument, range, options })).toEqual([]);
  });

  it('symbols as a tree whose ranges hold their names', async () => {
    const client = await opened();
    const [recipe] = await client.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument });
    expect(recipe?.name).toBe('Slab');
    expect(recipe?.children?.map((c) => c.name)).toEqual(['base', 'top']);
    const check = (node: DocumentSymbol): void => {
      expect(node.selectionRange.start.line).toBeGreaterThanOrEqual(node.range.start.line);
      expect(node.selectionRange.end.line).toBeLessThanOrEqual(node.range.end.line);
      for (const child of node.children ?? []) check(child);
    };
    if (recipe !== undefined) check(recipe);
  });

  it('semantic tokens whole, in part and as a difference', async () => {
    const client = await opened();
    const full = await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
    expect(full.data.length % 5).toBe(0);
    await client.replace(URI, 2, SLAB.replace('20 g      honey', '25 g      runny honey'));
    const delta = await client.request<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
      textDocument,
      previousResultId: full.resultId,
    });
    const data = [...full.data];
    for (const { start, deleteCount, data: put } of delta.edits) data.splice(start, deleteCount, ...(put ?? []));
    const again = await client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
    expect(data).toEqual(again.data);
    expect(delta.edits[0]?.data?.length).toBeLessThan(again.data.length / 2);
    const range = { start: { line: 2, character: 0 }, end: { line: 2, character: 5 } };
    const part = await client.request<SemanticTokens>('textDocument/semanticTokens/range', { textDocument, range });
    expect(part.data.slice(0, 3)).toEqual([2, 5, 4]);
  });

  it('folding, selection, definition, references, highlights', async () => {
    const client = await opened();
    expect(await client.request('textDocument/foldingRange', { textDocument })).toContainEqual({
      startLine: 2,
      endLine: 6,
    });
    const [selection] = await client.request<{ parent?: unknown }[]>('textDocument/selectionRange', {
      textDocument,
      positions: [{ line: 6, character: 12 }],
    });
    expect(selection?.parent).toBeDefined();
    const definition = await client.request<Location[]>('textDocument/definition', place(9, 32));
    expect(definition).toEqual([
      { uri: URI, range: { start: { line: 2, character: 5 }, end: { line: 2, character: 9 } } },
    ]);
    const context = { includeDeclaration: true };
    expect(await client.request('textDocument/references', { ...place(8, 14), context })).toHaveLength(2);
    const highlights = await client.request<{ kind: number }[]>('textDocument/documentHighlight', place(8, 14));
    expect(highlights.map((h) => h.kind)).toEqual([3, 2]);
  });

  it('rename with its placeholder; a name that cannot be is refused with the reason', async () => {
    const client = await opened();
    expect(await client.request('textDocument/prepareRename', place(9, 20))).toMatchObject({ placeholder: 'honey' });
    expect(await client.request('textDocument/prepareRename', place(0, 0))).toBeNull();
    const edit = await client.request<WorkspaceEdit>('textDocument/rename', {
      ...place(9, 20),
      newName: 'golden syrup',
    });
    expect(JSON.stringify(edit)).toContain('golden syrup');
    await expect(client.request('textDocument/rename', { ...place(9, 20), newName: 'honey, warm' })).rejects.toThrow(
      /cannot be read as a name/,
    );
  });

  it('scale and explain', async () => {
    const client = await opened();
    const scaled = await client.request<{ ok: boolean; changes: string[] }>('quern/scale', {
      version: 1,
      uri: URI,
      to: 'double',
    });
    expect(scaled.ok).toBe(true);
    expect(scaled.changes).toContainEqual(expect.stringMatching(/^plain flour 200.* → 400 g$/));
    expect(await client.request('quern/scale', { version: 1, uri: URI, to: 'to 12 pears' })).toMatchObject({
      ok: false,
    });
    expect(await client.request('quern/scale', { version: 1, uri: 'file:///no', to: 'double' })).toMatchObject({
      ok: false,
    });
    const page = await client.request<{ title: string; markdown: string }>('quern/explain', {
      version: 1,
      code: 'dough-too-wet',
    });
    expect(page.markdown).toContain('# dough-too-wet');
    expect(await client.request('quern/explain', { version: 1, code: 'no-such-code' })).toBeNull();
  });

  it('the status whenever the numbers change, and not else', async () => {
    const client = await opened();
    await client.settled();
    const statuses = () => client.heard.filter((h) => h.method === 'quern/status').map((h) => h.params);
    expect(statuses()).toMatchObject([
      {
        version: 1,
        uri: URI,
        documentVersion: 1,
        massG: { low: 470, high: 470 },
        yield: '12 squares',
        findings: { warning: 1 },
      },
    ]);
    await client.replace(URI, 2, `${SLAB}# a remark\n`);
    await client.settled();
    expect(statuses()).toHaveLength(1);
  });
});

describe('a document that is not open', () => {
  it.each([
    ['textDocument/hover', null],
    ['textDocument/definition', []],
    ['textDocument/foldingRange', []],
    ['textDocument/codeAction', []],
  ])('%s answers the empty value', async (method, empty) => {
    const client = await Client.connect({ capabilities: PULLING });
    const params = {
      textDocument: { uri: 'untitled:nothing' },
      position: { line: 9, character: 9 },
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
      context: { diagnostics: [] },
    };
    expect(await client.request(method, params)).toEqual(empty);
  });
});

describe('positions outside the text', () => {
  it.each([
    'textDocument/hover',
    'textDocument/completion',
    'textDocument/definition',
    'textDocument/documentHighlight',
  ])('%s is clamped', async (method) => {
    const client = await opened();
    for (const position of [
      { line: 1e9, character: 1e9 },
      { line: 0, character: 1e9 },
      { line: -1, character: -1 },
    ])
      await client.request(method, { textDocument, position });
    expect(client.heard.filter((h) => h.method === 'window/logMessage')).toEqual([]);
  });
});
