import { cpSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Location, SymbolInformation, WorkspaceEdit } from 'vscode-languageserver-protocol';
import type { CheckFolderAnswer, RecordTrialAnswer } from '../../server/src/lsp/messages.ts';
import { FakeEditor, RICH } from '../support/fake-editor.ts';

let editor: FakeEditor | undefined;
let kitchen: string;
const uriOf = (file: string) => pathToFileURL(join(kitchen, file)).href;
const textOf = (file: string) => readFileSync(join(kitchen, file), 'utf8');

beforeEach(() => {
  kitchen = mkdtempSync(join(tmpdir(), 'quern kitchen é '));
  cpSync('examples', kitchen, { recursive: true });
});
afterEach(() => {
  editor?.kill();
  rmSync(kitchen, { recursive: true, force: true });
});

const start = async () => {
  const e = await FakeEditor.start({ capabilities: RICH, root: pathToFileURL(kitchen).href });
  editor = e;
  return e;
};

describe('a morning in a kitchen of several files', () => {
  it('a part is renamed, its file is moved, and the tart still finds it', async () => {
    const e = await start();
    const [paste, tart] = [uriOf('pastry/sweet-paste.quern'), uriOf('pastry/lemon-tart.quern')];
    await e.open(tart, textOf('pastry/lemon-tart.quern'));
    const clean = await e.codes(tart);
    const [found] = await e.request<Location[]>('textDocument/definition', {
      textDocument: { uri: tart },
      position: e.middleOf(tart, ': sweet paste'),
    });
    expect(found?.uri).toBe(paste);

    await e.open(paste, textOf('pastry/sweet-paste.quern'));
    const renamed = await e.request<WorkspaceEdit>('textDocument/rename', {
      textDocument: { uri: paste },
      position: e.middleOf(paste, 'part sweet paste'),
      newName: 'tart paste',
    });
    await e.apply(renamed);
    expect(e.text(tart)).toContain('part case from sweet-paste.quern : tart paste');
    expect(await e.codes(tart)).toEqual(clean);

    const moved = uriOf('tart-paste.quern');
    const mended = await e.request<WorkspaceEdit>('workspace/willRenameFiles', {
      files: [{ oldUri: paste, newUri: moved }],
    });
    await e.apply(mended);
    expect(e.text(tart)).toContain('part case from ../tart-paste.quern : tart paste');
    writeFileSync(join(kitchen, 'pastry/sweet-paste.quern'), e.text(paste));
    renameSync(join(kitchen, 'pastry/sweet-paste.quern'), join(kitchen, 'tart-paste.quern'));
    await e.close(paste);
    await e.notify('workspace/didChangeWatchedFiles', {
      changes: [
        { uri: paste, type: 3 },
        { uri: moved, type: 1 },
      ],
    });
    await e.type(tart, 'Lemon tart', 'Sharp lemon tart');
    expect(await e.codes(tart)).toEqual(clean);
    const symbols = await e.request<SymbolInformation[]>('workspace/symbol', { query: 'tart paste' });
    expect(symbols.map((s) => s.location.uri)).toEqual([moved]);
    expect(await e.stop()).toBe(0);
  });

  it('a trial is recorded, an amount changed and put back', async () => {
    const e = await start();
    const scones = uriOf('bakes/scones.quern');
    await e.open(scones, textOf('bakes/scones.quern'));
    const clean = await e.codes(scones);
    const answer = await e.request<RecordTrialAnswer>('quern/recordTrial', {
      version: 1,
      uri: scones,
      date: '2026-11-25',
    });
    if (answer.ok)
      await e.applyEdits(
        scones,
        answer.edits.map((edit) => ({ ...edit })),
      );
    expect(e.text(scones)).toMatch(
      /\ntrial 2026-11-25\n {2}took {4}… min to bake {2}# the steps say 12-14 min; likely \d+ min \(\d+ to \d+\)\n/,
    );
    expect(await e.codes(scones)).toEqual(clean);
    await e.type(scones, '90 g      unsalted', '95 g      unsalted');
    expect(await e.codes(scones)).toContain('untested-change');
    await e.type(scones, '95 g      unsalted', '90 g      unsalted');
    expect(await e.codes(scones)).toEqual(clean);
    expect(await e.stop()).toBe(0);
  });

  it('the whole folder is checked, and a base that loses its flour is told of where it is used', async () => {
    const e = await start();
    const before = await e.request<CheckFolderAnswer>('quern/checkFolder', { version: 1 });
    expect(before).toMatchObject({ finished: true });
    expect(before.files).toBeGreaterThan(15);
    const draft = uriOf('first-draft.quern');
    const codes = (uri: string) => e.published.findLast((p) => p.uri === uri)?.diagnostics.map((d) => d.code);
    expect(codes(draft)).toContain('decimal-comma');
    rmSync(join(kitchen, 'bakes/scones.quern'));
    await e.notify('workspace/didChangeWatchedFiles', { changes: [{ uri: uriOf('bakes/scones.quern'), type: 3 }] });
    await e.until(
      'the missing base',
      () => codes(uriOf('bakes/cheese-scones.quern'))?.includes('missing-file') || undefined,
    );
    expect(await e.stop()).toBe(0);
  });
});
