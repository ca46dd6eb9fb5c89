/** Of every example and hostile text, and of texts by chance: whatever is asked over the protocol, the answer keeps its rules. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import type {
  CodeAction,
  CompletionList,
  SemanticTokens,
  SemanticTokensDelta,
  SignatureHelp,
} from 'vscode-languageserver';
import { anyText, quernText } from '../support/arbitrary.ts';
import { OWN_CLIENT, PULLING } from '../support/fake-editor.ts';
import { EXAMPLES } from '../support/harness.ts';
import { Client } from '../support/in-process.ts';
import { type At, faultsOf, linesOf, tokenFaults } from '../support/well-formed.ts';

const SETTINGS = { inlayHints: { grams: true, percent: true, taken: true, scale: true }, codeLens: 'all' };
const CAPABILITIES = {
  ...PULLING,
  textDocument: { ...PULLING.textDocument, inlayHint: { resolveSupport: { properties: ['tooltip', 'textEdits'] } } },
};
const client = await Client.connect({
  capabilities: CAPABILITIES,
  settings: SETTINGS,
  initializationOptions: { ...OWN_CLIENT, ...SETTINGS },
});
afterAll(() => client.close());

const OF_PLACE = [
  'hover',
  'completion',
  'signatureHelp',
  'definition',
  'typeDefinition',
  'implementation',
  'references',
  'documentHighlight',
  'prepareRename',
  'rename',
  'prepareCallHierarchy',
  'selectionRange',
  'onTypeFormatting',
] as const;
const OF_TEXT = [
  'documentSymbol',
  'foldingRange',
  'documentLink',
  'codeLens',
  'formatting',
  'diagnostic',
  'inlayHint',
  'rangeFormatting',
] as const;
/** What of an answer may be asked for again, and by which request. */
const RESOLVED: Readonly<Record<string, string>> = {
  completion: 'completionItem/resolve',
  codeLens: 'codeLens/resolve',
  inlayHint: 'inlayHint/resolve',
};
const KINDS = ['quickfix', 'refactor', 'source'];
/** So many items of a long answer are asked for again. */
const MOST = 8;

let versions = 0;

/** Opens the text under a name of its own, asks everything, and closes it: the faults with what was asked. */
async function faults(text: string, everyPlace: number): Promise<string[]> {
  const uri = `file:///k/${versions++}.quern`;
  const lines = linesOf(text);
  const textDocument = { uri };
  const found: string[] = [];
  const judge = (what: string, answer: unknown, position?: At): void => {
    const where = position === undefined ? '' : ` at ${position.line}:${position.character}`;
    found.push(...faultsOf(answer, lines, uri).map((fault) => `${what}${where}${fault}`));
  };
  const whole = {
    start: { line: 0, character: 0 },
    end: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 },
  };
  const options = { tabSize: 2, insertSpaces: true };
  await client.open(uri, text);
  for (const method of OF_TEXT) {
    const answer = await client.request(`textDocument/${method}`, { textDocument, range: whole, options });
    judge(method, answer);
    await resolved(method, answer, judge);
  }
  for (const position of placesIn(lines, everyPlace)) {
    for (const method of OF_PLACE) {
      const answer = await asked(`textDocument/${method}`, {
        textDocument,
        position,
        positions: [position],
        context: { includeDeclaration: true, triggerKind: 1, isRetrigger: false },
        newName: 'zwieback',
        ch: '\n',
        options,
      });
      judge(method, answer, position);
      await resolved(method, answer, judge);
      if (method === 'completion') {
        const inside = lines[position.line] === undefined || cuts(lines, position) ? undefined : position;
        found.push(...completionFaults(answer as CompletionList | null, inside));
      }
      if (method === 'signatureHelp') found.push(...signatureFaults(answer as SignatureHelp | null));
    }
    const at = { start: position, end: position };
    for (const only of KINDS) {
      const context = { diagnostics: [], only: [only] };
      const actions = await client.request<CodeAction[]>('textDocument/codeAction', {
        textDocument,
        range: at,
        context,
      });
      judge(`${only} actions`, actions, position);
      for (const action of actions.slice(0, MOST))
        if (action.edit === undefined)
          judge(action.title, await client.request('codeAction/resolve', action), position);
    }
  }
  found.push(...(await tokensAfterEdits(uri, text)));
  await client.notify('textDocument/didClose', { textDocument });
  return found;
}

/** A rename may be refused in words. */
async function asked(method: string, params: object): Promise<unknown> {
  try {
    return await client.request(method, params);
  } catch (error) {
    if (isFailed(error)) return null;
    throw error;
  }
}

/** The protocol's code for a request that is understood and cannot be done. */
const isFailed = (error: unknown): boolean => error instanceof Error && 'code' in error && error.code === -32803;

async function resolved(
  method: string,
  answer: unknown,
  judge: (what: string, answer: unknown) => void,
): Promise<void> {
  const again = RESOLVED[method];
  if (again === undefined || answer === null) return;
  const items = Array.isArray(answer) ? answer : (answer as CompletionList).items;
  for (const item of items.slice(0, MOST)) judge(again, await client.request(again, item));
}

/** What is completed replaces something around the caret, on its line. */
function completionFaults(list: CompletionList | null, caret: At | undefined): string[] {
  if (caret === undefined) return [];
  const { line, character } = caret;
  return (list?.items ?? []).flatMap(({ label, textEdit }) => {
    const range = textEdit !== undefined && 'range' in textEdit ? textEdit.range : undefined;
    if (range === undefined) return [`${label}: no range`];
    const around =
      range.start.line === line &&
      range.end.line === line &&
      range.start.character <= character &&
      range.end.character >= character;
    return around ? [] : [`${label} at ${line}:${character}: not around the caret`];
  });
}

const signatureFaults = (help: SignatureHelp | null): string[] =>
  (help?.signatures ?? []).flatMap(({ label, parameters = [] }) =>
    parameters.flatMap(({ label: of }) =>
      typeof of !== 'string' && of[0] <= of[1] && of[1] <= label.length ? [] : [`${label}: ${String(of)}`],
    ),
  );

/** All tokens hold by themselves, and those told as changes are the same as those told whole. */
async function tokensAfterEdits(uri: string, text: string): Promise<string[]> {
  const textDocument = { uri };
  const full = () => client.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
  let { data, resultId = '' } = await full();
  const found = tokenFaults(data, linesOf(text));
  let now = text;
  const EDITS = [
    (t: string) => t.replace(/\d/, '7'),
    (t: string) => `# 🧈\n${t}`,
    (t: string) => t.replace(/do /, 'do Add the butter 🧈 for 5 min. '),
    (t: string) => t.slice(0, t.length >> 1),
  ];
  for (const [i, edit] of EDITS.entries()) {
    now = edit(now);
    await client.replace(uri, i + 2, now);
    const told = await client.request<SemanticTokens | SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
      textDocument,
      previousResultId: resultId,
    });
    const after = [...data];
    if ('data' in told) after.splice(0, after.length, ...told.data);
    else for (const e of told.edits.toReversed()) after.splice(e.start, e.deleteCount, ...(e.data ?? []));
    found.push(...tokenFaults(after, linesOf(now)));
    const whole = await full();
    if (JSON.stringify(after) !== JSON.stringify(whole.data)) found.push(`edit ${i}: the changes are not the whole`);
    ({ data, resultId = '' } = whole);
  }
  return found;
}

const cuts = (lines: readonly string[], { line, character }: At): boolean =>
  /[\udc00-\udfff]/.test(lines[line]?.[character] ?? '');

/** Places spread over the text, ends of lines and places outside it. */
function placesIn(lines: readonly string[], every: number): At[] {
  const places: At[] = [];
  for (let line = 0; line < lines.length; line += every) {
    const length = lines[line]?.length ?? 0;
    places.push({ line, character: Math.min(length, 4 + (line % 7)) }, { line, character: length });
    // Between the halves of a character, where an editor never is.
    const half = (lines[line] ?? '').search(/[\ud800-\udbff][\udc00-\udfff]/);
    if (half >= 0) places.push({ line, character: half + 1 });
  }
  return [...places, { line: lines.length + 3, character: 9 }];
}

const HOSTILE = 'tests/corpus/hostile';
const hostile = readdirSync(HOSTILE).map((name): [string, string] => [
  name,
  readFileSync(`${HOSTILE}/${name}`, 'utf8'),
]);

describe('every answer keeps the rules of the protocol', () => {
  test.each(EXAMPLES)('%s', async (_file, text) => expect(await faults(text, 5)).toEqual([]));

  test.each(EXAMPLES)('%s with other letters and line ends', async (_file, text) => {
    const other = text.replaceAll('butter', '🧈 bütter').replaceAll('Bake', 'Bake 🔥').replaceAll('\n', '\r\n');
    expect(await faults(other, 9)).toEqual([]);
  });

  test.each(hostile)('%s', async (_file, text) => {
    const every = Math.max(1, Math.ceil(linesOf(text).length / 6));
    expect(await faults(text, every)).toEqual([]);
  });

  test('texts by chance', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(quernText, anyText), async (text) => {
        expect(await faults(text, Math.max(1, Math.ceil(linesOf(text).length / 3)))).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});
