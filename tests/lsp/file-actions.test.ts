import { describe, expect, it } from 'vitest';
import type { ClientCapabilities, CodeAction, TextDocumentEdit } from 'vscode-languageserver';
import { RICH } from '../support/fake-editor.ts';
import { Client, type ClientOptions } from '../support/in-process.ts';

const URI = 'file:///k/tart.quern';
const TART = `recipe Tart
part sweet paste as sweet paste
  200 g     plain flour
  100 g     butter
  do Rub the butter into the flour.
part top
  do Bake the paste at 180 C for 20 min until gold.
`;
const MAKING: ClientCapabilities = {
  ...RICH,
  workspace: {
    ...RICH.workspace,
    workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename', 'delete'] },
  },
};

async function actionsAt(
  line: number,
  options: ClientOptions,
  text = TART,
  only = ['refactor'],
): Promise<CodeAction[]> {
  const client = await Client.connect(options);
  await client.open(URI, text);
  const place = { line, character: 0 };
  return client.request<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri: URI },
    range: { start: place, end: place },
    context: { diagnostics: [], only },
  });
}
const titled = (actions: CodeAction[], title: RegExp) => actions.find((a) => title.test(a.title));

describe('moving a part to a file', () => {
  it('makes the file, fills it, and leaves the line that takes it', async () => {
    const found = titled(await actionsAt(2, { capabilities: MAKING }), /file of its own/);
    expect(found?.kind).toBe('refactor.extract');
    const [create, fill, change] = found?.edit?.documentChanges ?? [];
    expect(create).toMatchObject({ kind: 'create', uri: 'file:///k/sweet-paste.quern', options: { overwrite: false } });
    expect((fill as TextDocumentEdit).edits[0]).toMatchObject({
      newText: expect.stringMatching(/^part sweet paste as/),
    });
    expect(change).toMatchObject({
      textDocument: { uri: URI, version: 1 },
      edits: [{ newText: 'part sweet paste from sweet-paste.quern : sweet paste' }],
    });
  });

  it('is not offered to a client that cannot make files', async () => {
    expect(titled(await actionsAt(2, { capabilities: RICH }), /file of its own/)).toBeUndefined();
  });
});

describe('a trial', () => {
  it("is the client's command where it has one, else an edit with the server's date", async () => {
    const asked = await actionsAt(0, {
      capabilities: RICH,
      initializationOptions: { recordTrialCommand: 'quern.recordTrial' },
    });
    expect(titled(asked, /Record a trial/)?.command?.command).toBe('quern.recordTrial');
    const plain = titled(await actionsAt(0, { capabilities: RICH }), /Record a trial/);
    expect(JSON.stringify(plain?.edit)).toMatch(
      /trial 2026-11-25\\n {2}took {4}… min to bake {2}# the steps say 20 min/,
    );
  });

  it('is a fix of what was changed since the last one', async () => {
    const changed = `${TART}\ntrial 2026-09-14\n  tested  000\n  verdict keep\n`;
    const line = changed.split('\n').findIndex((l) => / g /.test(l));
    const found = titled(await actionsAt(line, { capabilities: RICH }, changed, ['quickfix']), /Record a trial/);
    expect([found?.kind, found?.diagnostics?.map((d) => d.code)]).toEqual(['quickfix', ['untested-change']]);
    expect(JSON.stringify(found?.edit)).toMatch(/trial 2026-11-25/);
  });

  it('is offered at the head and at trials, and not at every line', async () => {
    expect(titled(await actionsAt(3, { capabilities: RICH }), /Record a trial/)).toBeUndefined();
  });
});

it('a variant is written out in full, at its head', async () => {
  const files = new Map([
    ['/k/quern.json', '{}'],
    ['/k/base.quern', TART],
  ]);
  const late = 'recipe Late\n  from    base.quern\n  swap plain flour for 190 g plain flour\n';
  const found = titled(await actionsAt(1, { capabilities: RICH, files }, late), /in full/);
  expect(found?.kind).toBe('refactor.inline');
  expect(JSON.stringify(found?.edit)).toMatch(/190 g {5}plain flour/);
  expect(titled(await actionsAt(1, { capabilities: RICH, files }), /in full/)).toBeUndefined();
});
