import type {
  SemanticTokens,
  SemanticTokensDelta,
  SemanticTokensDeltaParams,
  SemanticTokensParams,
  SemanticTokensRangeParams,
} from 'vscode-languageserver';
import { TOKEN_MODIFIERS, TOKEN_TYPES, type Token, tokens } from '../../editor/tokens.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { readRange } from '../convert.ts';
import { type Feature, onDocument, type View } from '../feature.ts';

const EMPTY: SemanticTokens = { data: [] };

export const semanticTokensFeature: Feature = {
  capability: () => ({
    semanticTokensProvider: {
      legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] },
      full: { delta: true },
      range: true,
    },
  }),
  requests: [
    onDocument<SemanticTokensParams, SemanticTokens>('textDocument/semanticTokens/full', EMPTY, remember),
    onDocument<SemanticTokensDeltaParams, SemanticTokens | SemanticTokensDelta>(
      'textDocument/semanticTokens/full/delta',
      EMPTY,
      (snapshot, params, view) => {
        const before = view.remembered.get(snapshot.uri);
        const now = remember(snapshot, params, view);
        if (before === undefined || before.id !== params.previousResultId) return now;
        return { resultId: now.resultId ?? '', edits: difference(before.data, now.data) };
      },
    ),
    onDocument<SemanticTokensRangeParams, SemanticTokens>(
      'textDocument/semanticTokens/range',
      EMPTY,
      (snapshot, params) => {
        const { start, end } = readRange(params.range);
        return { data: encode(tokens(snapshot, start.line, end.line)) };
      },
    ),
  ],
};

function remember(snapshot: Snapshot, _params: unknown, view: View): SemanticTokens {
  const data = encode(tokens(snapshot));
  // Each answer for a document has another.
  const id = String(Number(view.remembered.get(snapshot.uri)?.id ?? 0) + 1);
  view.remembered.set(snapshot.uri, { id, data });
  return { resultId: id, data };
}

const TYPE_INDEX = new Map(TOKEN_TYPES.map((type, i) => [type, i]));
const MODIFIER_BIT = new Map(TOKEN_MODIFIERS.map((modifier, i) => [modifier, 1 << i]));

/** Five numbers a token, places counted from the token before. */
function encode(list: readonly Token[]): number[] {
  const data: number[] = [];
  let line = 0;
  let start = 0;
  for (const token of list) {
    const down = token.line - line;
    let modifiers = 0;
    for (const modifier of token.modifiers) modifiers |= MODIFIER_BIT.get(modifier) ?? 0;
    data.push(
      down,
      down === 0 ? token.start - start : token.start,
      token.end - token.start,
      TYPE_INDEX.get(token.type) ?? 0,
      modifiers,
    );
    ({ line, start } = token);
  }
  return data;
}

/** One edit for the stretch between what begins and what ends alike. */
function difference(before: readonly number[], now: readonly number[]): SemanticTokensDelta['edits'] {
  const most = Math.min(before.length, now.length);
  let head = 0;
  while (head < most && before[head] === now[head]) head++;
  if (head === before.length && head === now.length) return [];
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === now[now.length - 1 - tail]) tail++;
  return [{ start: head, deleteCount: before.length - head - tail, data: now.slice(head, now.length - tail) }];
}
