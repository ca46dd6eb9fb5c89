/**
 * Knows a kitchen of several files in memory, and how one line of a test asks what reaches across them.
 * Refuses to know what is expected.
 */
import { definitionAcross, referencesAcross } from '../../server/src/editor/across-files.ts';
import type { Completion } from '../../server/src/editor/completion/item.ts';
import { completions } from '../../server/src/editor/completion.ts';
import { hover } from '../../server/src/editor/hover.ts';
import type { Kitchen } from '../../server/src/editor/kitchen.ts';
import type { Located } from '../../server/src/editor/place.ts';
import { renameAcross } from '../../server/src/editor/rename-across.ts';
import { applyEdits, type TextEdit } from '../../server/src/edits/text-edit.ts';
import { hoverText } from '../../server/src/lsp/convert.ts';
import { printDocument } from '../../server/src/notation/document.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { Store } from '../../server/src/workspace/store.ts';
import { memoryFiles } from './in-process.ts';

/** Files by name; the one with `$0` is asked. The house's `quern.json` is there, empty where none is given. */
export function kitchenOf(files: Readonly<Record<string, string>>) {
  const texts = new Map(Object.entries(files).map(([name, text]) => [`/k/${name}`, text.replace('$0', '')]));
  if (!texts.has('/k/quern.json')) texts.set('/k/quern.json', '{}');
  const store = new Store(
    memoryFiles(texts),
    (uri) => (uri.startsWith('file://') ? uri.slice('file://'.length) : undefined),
    (path) => `file://${path}`,
  );
  const [name, marked] = Object.entries(files).find(([, text]) => text.includes('$0')) ?? ['', ''];
  const path = `/k/${name}`;
  store.opened(`file://${path}`, 1, texts.get(path) ?? '');
  store.rooted(['/k']);
  const snapshot = store.snapshot(`file://${path}`) ?? Snapshot.open('', 0, '', store.snapshotAt(path)?.house as never);
  const before = (marked.split('$0')[0] ?? '').split('\n');
  const position = { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
  const kitchen: Kitchen = { index: store.index(), snapshotAt: (of) => store.snapshotAt(of) };

  /** `file:line:words`, lines from 1. */
  const show = ({ path: other, at }: Located): string => {
    const text = texts.get(other ?? path)?.split('\n')[at.line] ?? '';
    return `${(other ?? path).slice('/k/'.length)}:${at.line + 1}:${text.slice(at.start, at.end)}`;
  };

  const offered = (): readonly Completion[] =>
    completions(snapshot, position, false, () => ({ path, entries: kitchen.index.entries() })).items;

  return {
    snapshot,
    kitchen,
    path,
    /** `label | detail` */
    offered: (): string[] =>
      offered().map(({ label, detail }) => (detail === undefined ? label : `${label} | ${detail}`)),
    /** The line once the completion of that label is taken. */
    completed: (label: string): string => {
      const line = snapshot.document.lines[position.line]?.text ?? '';
      const item = offered().find((c) => c.label === label);
      return item === undefined
        ? `not offered: ${label}`
        : line.slice(0, item.start) + item.text + line.slice(item.end);
    },
    definition: (): string | undefined => {
      const found = definitionAcross(snapshot, position, kitchen);
      return found && show(found);
    },
    references: (withDefinition = true): string[] =>
      referencesAcross(snapshot, path, position, withDefinition, kitchen).map(show),
    hover: (): string | undefined => {
      const found = hover(snapshot, position);
      return found && hoverText(found);
    },
    /** Every file that changes, as it is afterwards, or why none does. */
    renamed: (to: string): Record<string, string> | string => {
      const renamed = renameAcross(snapshot, path, position, to, kitchen);
      if (!renamed.ok) return renamed.why;
      const all: (readonly [string, readonly TextEdit[]])[] = [[path, renamed.own], ...renamed.edits];
      return Object.fromEntries(
        all
          .filter(([, edits]) => edits.length > 0)
          .map(([of, edits]) => {
            const file = store.snapshotAt(of);
            return [of.slice('/k/'.length), file === undefined ? '' : printDocument(applyEdits(file.document, edits))];
          }),
      );
    },
  };
}
