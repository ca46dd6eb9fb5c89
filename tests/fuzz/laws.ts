/**
 * Knows what holds of every text there is, read by itself and in a session. A law that is broken throws.
 * Refuses to know where texts come from.
 */
import { isDeepStrictEqual } from 'node:util';
import { crc32 } from 'node:zlib';
import type { DocumentDiagnosticReport } from 'vscode-languageserver';
import { printDocument } from '../../server/src/notation/document.ts';
import { layout } from '../../server/src/notation/layout.ts';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { PULLING } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';
import { edited } from './mutate.ts';
import { Random } from './random.ts';

const { house } = makeHouse(DEFAULTS);
const EDITS = 3;

function opened(text: string): Snapshot {
  return workedOut(Snapshot.open('a.quern', 1, text, house));
}

/** A check that throws fails. */
function workedOut(snapshot: Snapshot): Snapshot {
  void snapshot.findings;
  const [bug] = snapshot.bugs;
  if (bug !== undefined) throw bug.error;
  return snapshot;
}

/** Nobody types any more, so that nothing of the last line is held back. */
const atRest = (snapshot: Snapshot): Snapshot => (snapshot.holdsBack ? workedOut(snapshot.refreshed()) : snapshot);

const found = ({ findings: { open, accepted } }: Snapshot) =>
  [...open, ...accepted].map(({ code, severity, at, said, related, part }) => ({
    code,
    severity,
    at,
    said,
    related,
    part,
  }));

/** Says the first piece in which two lists are not the same, or all of what is no list. */
function same(what: string, got: unknown, wanted: unknown): void {
  if (isDeepStrictEqual(got, wanted)) return;
  const listed = (each: unknown): readonly unknown[] => (Array.isArray(each) ? each : [each]);
  const [a, b] = [listed(got), listed(wanted)];
  const at = (a.length > b.length ? a : b).findIndex((_, i) => !isDeepStrictEqual(a[i], b[i]));
  throw new Error(`${what}: ${JSON.stringify(a[at])} is not ${JSON.stringify(b[at])}`);
}

/** A text prints back, its layout stays when it is laid out, and after every edit the findings are those of the text opened afresh. */
export function holdsAlone(text: string): void {
  let snapshot = opened(text);
  same('printed', printDocument(snapshot.document), text);
  const laid = layout(snapshot.document).join('\n');
  same('laid out again', layout(opened(laid).document).join('\n'), laid);
  const random = new Random(crc32(text));
  for (let i = 0; i < EDITS; i++) {
    const before = snapshot;
    const edit = edited(before.text, random);
    snapshot = workedOut(before.edited(i + 2, [edit]));
    const fresh = found(opened(snapshot.text));
    same('after an edit', found(atRest(snapshot)), fresh);
    const taken = workedOut(snapshot.edited(i + 3, [{ text: before.text }]));
    same('after it was taken back', found(atRest(taken)), found(opened(before.text)));
    same('and made again', found(atRest(workedOut(taken.edited(i + 4, [edit])))), fresh);
  }
}

/** What an editor asks of a text, and of a place in it. */
const OF_TEXT = ['documentSymbol', 'foldingRange', 'semanticTokens/full', 'documentLink', 'codeLens'] as const;
const OF_PLACE = [
  'hover',
  'completion',
  'signatureHelp',
  'definition',
  'typeDefinition',
  'references',
  'documentHighlight',
  'prepareRename',
] as const;

/** Everything asked of an open text is answered while it is edited, and what is found then is what is found in the text opened afresh. */
export async function holdsInSession(text: string, client: Client): Promise<void> {
  const random = new Random(crc32(text));
  const [uri, fresh] = ['file:///k/a.quern', 'file:///k/fresh.quern'];
  const [document, afresh] = [{ uri }, { uri: fresh }];
  let snapshot = opened(text);
  await client.open(uri, text);
  for (let version = 2; version < 2 + EDITS; version++) {
    const edit = edited(snapshot.text, random);
    snapshot = snapshot.edited(version, [edit]);
    await client.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges: [edit] });
    const { start: position } = edit.range;
    for (const method of OF_PLACE)
      await client.request(`textDocument/${method}`, {
        textDocument: document,
        position,
        context: { includeDeclaration: true },
      });
    const range = { start: { line: 0, character: 0 }, end: position };
    await client.request('textDocument/inlayHint', { textDocument: document, range });
    await client.request('textDocument/codeAction', {
      textDocument: document,
      range: { start: position, end: position },
      context: { diagnostics: [] },
    });
  }
  for (const method of OF_TEXT) await client.request(`textDocument/${method}`, { textDocument: document });
  await client.open(fresh, snapshot.text);
  await client.still();
  const [mine, theirs] = await Promise.all([document, afresh].map((each) => pulled(client, each)));
  await client.notify('textDocument/didClose', { textDocument: document });
  await client.notify('textDocument/didClose', { textDocument: afresh });
  same('pulled after edits', mine, theirs);
}

async function pulled(client: Client, textDocument: { readonly uri: string }): Promise<unknown> {
  const report = await client.request<DocumentDiagnosticReport>('textDocument/diagnostic', { textDocument });
  if (report.kind !== 'full') throw new Error('nothing was pulled');
  return report.items.map(({ code, range, message, severity }) => ({ code, range, message, severity }));
}

/** A session that throws what it meets. */
export const session = (): Promise<Client> => Client.connect({ capabilities: PULLING });
