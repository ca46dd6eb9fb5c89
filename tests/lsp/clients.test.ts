import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CompletionList,
  DocumentDiagnosticReport,
  Hover,
  SymbolInformation,
} from 'vscode-languageserver';
import { POOR, PULLING, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const WET = `recipe Slab
part base as shortcrust
  200 g     plain flour
  100 g     butter
  150 g     water
  do Rub the butter into the flour and bring together with the water.
`;
const textDocument = { uri: URI };

describe('what is declared', () => {
  it('is UTF-16 and incremental for all', async () => {
    for (const capabilities of [RICH, PULLING, POOR]) {
      const { initialized } = await Client.connect({ capabilities });
      expect(initialized.capabilities.positionEncoding).toBe('utf-16');
      expect(initialized.capabilities.textDocumentSync).toMatchObject({ openClose: true, change: 2 });
      expect(initialized.serverInfo).toEqual({ name: 'quern', version: 'test' });
    }
  });

  it('offers findings to be asked for only to a client that asks', async () => {
    expect((await Client.connect({ capabilities: PULLING })).initialized.capabilities.diagnosticProvider).toBeDefined();
    expect((await Client.connect({ capabilities: RICH })).initialized.capabilities.diagnosticProvider).toBeUndefined();
  });

  it('registers nothing with a client that registers nothing', async () => {
    const client = await Client.connect({ capabilities: POOR });
    await client.settled();
    expect(client.asked).toEqual([]);
    const rich = await Client.connect({ capabilities: RICH });
    await rich.settled();
    expect(rich.asked.map((a) => a.method).sort()).toEqual(['client/registerCapability', 'workspace/configuration']);
  });
});

describe('findings', () => {
  it('are pushed with their version to a client that does not ask, and cleared on close', async () => {
    const client = await Client.connect({ capabilities: POOR });
    await client.open(URI, WET, 7);
    await client.settled();
    expect(client.published).toHaveLength(1);
    expect(client.published[0]).toMatchObject({ uri: URI, version: 7 });
    expect(client.codes(URI)).toEqual(['dough-too-wet']);
    await client.notify('textDocument/didClose', { textDocument });
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
  });

  it('are never pushed to a client that asks; unchanged is said in a word', async () => {
    const client = await Client.connect({ capabilities: PULLING });
    await client.open(URI, WET);
    const first = await client.request<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument });
    expect(first).toMatchObject({ kind: 'full', items: [{ code: 'dough-too-wet' }] });
    const again = await client.request('textDocument/diagnostic', { textDocument, previousResultId: first.resultId });
    expect(again).toEqual({ kind: 'unchanged', resultId: first.resultId });
    await client.replace(URI, 2, WET.replace('150 g', '60 g'));
    const fixed = await client.request('textDocument/diagnostic', { textDocument, previousResultId: first.resultId });
    expect(fixed).toMatchObject({ kind: 'full', items: [] });
    await client.notify('textDocument/didClose', { textDocument });
    await client.settled();
    expect(client.published).toEqual([]);
  });

  it('are said to be the same after an edit that changes none of them, and are sent again when they have moved', async () => {
    const client = await Client.connect({ capabilities: PULLING });
    await client.open(URI, WET);
    const ask = (previousResultId?: string) =>
      client.request<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument, previousResultId });
    const first = await ask();
    await client.replace(URI, 2, WET.replace('Rub the', 'Quickly rub the'));
    const reworded = await ask(first.resultId);
    expect(reworded).toEqual({ kind: 'unchanged', resultId: first.resultId });
    expect(await ask()).toMatchObject({ kind: 'full', items: [{ code: 'dough-too-wet' }] });
    await client.replace(URI, 3, `# Tried twice.\n${WET}`);
    const moved = await ask(first.resultId);
    expect(moved).toMatchObject({ kind: 'full', items: [{ range: { start: { line: 5 } } }] });
    await client.replace(URI, 4, `# Tried twice.\n${WET.replace('150 g', '151 g')}`);
    expect(await ask(moved.resultId)).toMatchObject({ kind: 'full', items: [{ code: 'dough-too-wet' }] });
  });

  it('carry what their fixes need', async () => {
    const client = await Client.connect({ capabilities: RICH });
    await client.open(URI, WET.replace('  100 g     butter', '  100 g     butter\n  5 g       honey'));
    await client.settled();
    const [wet, unused] =
      client.published[0]?.diagnostics.toSorted((a, b) => (String(a.code) < String(b.code) ? -1 : 1)) ?? [];
    expect(wet).toMatchObject({ source: 'quern', severity: 2, data: { code: 'dough-too-wet', line: 5 } });
    expect(unused).toMatchObject({
      code: 'unused-ingredient',
      tags: [1],
      codeDescription: { href: 'quern-page:/unused-ingredient.md' },
    });
  });
});

describe('a client that can next to nothing', () => {
  it('gets plain text, plain edits, flat symbols', async () => {
    const client = await Client.connect({ capabilities: POOR });
    await client.open(URI, WET);
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument,
      position: { line: 2, character: 14 },
    });
    expect(hover.contents).toMatchObject({ kind: 'plaintext', value: expect.not.stringContaining('**') });
    const symbols = await client.request<SymbolInformation[]>('textDocument/documentSymbol', { textDocument });
    expect(symbols.map((s) => [s.name, s.containerName])).toContainEqual(['butter', 'base']);
    const list = await client.request<CompletionList>('textDocument/completion', {
      textDocument,
      position: { line: 6, character: 0 },
    });
    expect(list.items.length).toBeGreaterThan(0);
    expect(list.items.every((i) => i.insertTextFormat === undefined && !JSON.stringify(i.textEdit).includes('$'))).toBe(
      true,
    );
  });

  it('gets whole edits where it knows code actions but nothing more', async () => {
    const literals = { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix'] } } };
    const client = await Client.connect({ capabilities: { textDocument: { codeAction: literals } } });
    await client.open(URI, WET);
    const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
      textDocument,
      range: { start: { line: 4, character: 0 }, end: { line: 4, character: 20 } },
      context: { diagnostics: [] },
    });
    expect(actions.every((a) => a.edit?.changes?.[URI] !== undefined)).toBe(true);
    expect(JSON.stringify(actions)).not.toContain('snippet');
  });

  it('is not asked for settings; those it starts with hold', async () => {
    const client = await Client.connect({
      capabilities: POOR,
      initializationOptions: { severities: { 'dough-too-wet': 'off' } },
    });
    await client.open(URI, WET);
    await client.settled();
    expect(client.codes(URI)).toEqual([]);
    await client.notify('workspace/didChangeConfiguration', {
      settings: { quern: { severities: { 'dough-too-wet': 'error' } } },
    });
    await client.settled();
    expect(client.published.at(-1)?.diagnostics[0]?.severity).toBe(1);
  });
});

describe('links to pages', () => {
  const ALLOWED = WET.replace('  150 g', '  allow dough-too-wet because it is spooned\n  150 g');
  it('run the command of a client that has one', async () => {
    const client = await Client.connect({
      capabilities: RICH,
      initializationOptions: { explainCommand: 'quern.explain' },
    });
    await client.open(URI, ALLOWED);
    const hover = await client.request<Hover>('textDocument/hover', {
      textDocument,
      position: { line: 4, character: 10 },
    });
    expect(hover.contents).toMatchObject({
      value: expect.stringContaining('(command:quern.explain?%5B%22dough-too-wet%22%5D)'),
    });
  });
});
