import type { CompletionItem, CompletionList, CompletionParams } from 'vscode-languageserver';
import { CHECKS } from '../../checks/index.ts';
import type { Completion, CompletionKind } from '../../editor/completion/item.ts';
import { completions } from '../../editor/completion.ts';
import { foodFacts } from '../../editor/facts.ts';
import { caretIn } from '../../editor/place.ts';
import { explainPage } from '../../publish/page.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Abilities, record } from '../capabilities.ts';
import { factsOf, readPosition } from '../convert.ts';
import { type Feature, onDocument, onRequest, type View } from '../feature.ts';

const EMPTY: CompletionList = { isIncomplete: false, items: [] };

export const completionFeature: Feature = {
  capability: () => ({ completionProvider: { resolveProvider: true, triggerCharacters: [' '] } }),
  requests: [
    onDocument<CompletionParams, CompletionList>('textDocument/completion', EMPTY, (snapshot, params, view) => {
      const byBlank = params.context?.triggerKind === 2;
      const path = view.pathOf(snapshot.uri);
      const others = () => (path === undefined ? undefined : { path, entries: view.kitchen().index.entries() });
      const position = caretIn(snapshot, readPosition(params.position));
      const { items, incomplete } = completions(snapshot, position, byBlank, others);
      const { line } = position;
      return {
        isIncomplete: incomplete,
        items: items
          .filter(({ skeleton }) => skeleton === undefined || view.abilities.snippets)
          .map((item, i) => itemOf(item, i, line, snapshot, view.abilities)),
      };
    }),
    onRequest<CompletionItem, CompletionItem | null>('completionItem/resolve', null, resolve),
  ],
};

/** The protocol's kinds: Variable, Module, Unit, Class, Keyword, Property, EnumMember, Value, File. */
const KINDS: Readonly<Record<CompletionKind, CompletionItem['kind'] & number>> = {
  ingredient: 6,
  part: 9,
  unit: 11,
  kind: 7,
  keyword: 14,
  food: 10,
  code: 20,
  value: 12,
  file: 17,
};

function itemOf(item: Completion, i: number, line: number, { uri }: Snapshot, { snippets }: Abilities): CompletionItem {
  const { label, kind, detail, start, end, text, snippet, filter, food, code } = item;
  const data = food !== undefined ? { uri, food } : code !== undefined ? { uri, code } : undefined;
  return {
    label,
    kind: KINDS[kind],
    ...(detail !== undefined && { detail }),
    sortText: String(i).padStart(4, '0'),
    filterText: filter,
    ...(snippets && snippet !== undefined && { insertTextFormat: 2 }),
    textEdit: {
      range: { start: { line, character: start }, end: { line, character: end } },
      newText: snippets && snippet !== undefined ? snippet : text,
    },
    ...(data && { data }),
  };
}

/** What is long is looked up only for the item in focus. */
function resolve(item: CompletionItem, view: View): CompletionItem {
  const { uri, food: id, code } = record(item.data);
  const markdown = view.abilities.completionMarkdown;
  if (typeof code === 'string') {
    const check = CHECKS.find((c) => c.code === code);
    if (check === undefined) return item;
    const value = markdown ? explainPage(check) : check.explain;
    return { ...item, documentation: { kind: markdown ? 'markdown' : 'plaintext', value } };
  }
  const snapshot = typeof uri === 'string' ? view.snapshot(uri) : undefined;
  const food = typeof id === 'string' ? snapshot?.house.world.book.byId(id) : undefined;
  return food === undefined
    ? item
    : { ...item, documentation: factsOf({ title: food.name, facts: foodFacts(food) }, markdown, view.abilities) };
}
