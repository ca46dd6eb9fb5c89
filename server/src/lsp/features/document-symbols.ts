import type { DocumentSymbol, DocumentSymbolParams, SymbolInformation } from 'vscode-languageserver';
import { type SymbolNode, symbols } from '../../editor/symbols.ts';
import { keptOn } from '../../notation/kept.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { type Feature, onDocument } from '../feature.ts';

/** The protocol's kinds: File, Class, Variable, Method, Event, Struct. */
const KINDS: Readonly<Record<SymbolNode['kind'], DocumentSymbol['kind']>> = {
  recipe: 1,
  part: 5,
  ingredient: 13,
  step: 6,
  trial: 24,
  food: 23,
};

export const documentSymbolsFeature: Feature = {
  capability: () => ({ documentSymbolProvider: true }),
  requests: [
    onDocument<DocumentSymbolParams, DocumentSymbol[] | SymbolInformation[]>(
      'textDocument/documentSymbol',
      [],
      (snapshot, _params, { abilities }) => {
        const nodes = symbols(snapshot);
        return abilities.hierarchicalSymbols
          ? nodes.map((node) => treeOf(node, snapshot))
          : nodes.flatMap((node) => flatOf(node, snapshot, undefined));
      },
    ),
  ],
};

const TREES = keptOn<SymbolNode, DocumentSymbol>();

/** The same tree again for the same node. */
function treeOf(node: SymbolNode, snapshot: Snapshot): DocumentSymbol {
  let tree = TREES.get(node);
  if (tree === undefined) {
    tree = makeTree(node, snapshot);
    TREES.set(node, tree);
  }
  return tree;
}

function makeTree(node: SymbolNode, snapshot: Snapshot): DocumentSymbol {
  const { name, detail, kind, from, nameAt, children } = node;
  return {
    name,
    ...(detail !== '' && { detail }),
    kind: KINDS[kind],
    range: rangeOf(node, snapshot),
    selectionRange: { start: { line: from, character: nameAt.start }, end: { line: from, character: nameAt.end } },
    ...(children.length > 0 && { children: children.map((child) => treeOf(child, snapshot)) }),
  };
}

function flatOf(node: SymbolNode, snapshot: Snapshot, containerName: string | undefined): SymbolInformation[] {
  const { name, kind, children } = node;
  const here: SymbolInformation = {
    name,
    kind: KINDS[kind],
    ...(containerName !== undefined && { containerName }),
    location: { uri: snapshot.uri, range: rangeOf(node, snapshot) },
  };
  return [here, ...children.flatMap((child) => flatOf(child, snapshot, name))];
}

function rangeOf({ from, to }: SymbolNode, { document }: Snapshot) {
  return { start: { line: from, character: 0 }, end: { line: to, character: document.lines[to]?.text.length ?? 0 } };
}
