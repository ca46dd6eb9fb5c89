/** Names of what a recipe builds on: files after `from`, parts after the colon, and what the base lists after `swap` and `drop`. */
import { sameName } from '../../recipe/words.ts';
import type { Entry } from '../../workspace/folder.ts';
import { basesAt } from '../inherited.ts';
import { relativeTo } from '../moved-files.ts';
import { fileName } from '../place.ts';
import { completeIngredient } from './food.ts';
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';

/** More files than a list shows are found by another letter. */
const MOST = 100;

/** After `from` in the head: a recipe. */
export function completeBase(typing: Typing): Completions {
  const match = /^\s*from\s+(.*)$/su.exec(typing.before);
  return match === null ? NOTHING : files(typing, match[1] ?? '', ({ recipe }) => recipe?.name);
}

/** After `part NAME from`: a file, then a part of it; undefined where the line takes none. */
export function completeTaken(typing: Typing): Completions | undefined {
  const { before, snapshot, character } = typing;
  const match = /^\s*part\s+\S.*?\sfrom\s+([^:]*)(:\s*)?([^:]*)$/su.exec(before);
  if (match === null) return undefined;
  const [, file = '', colon, typed = ''] = match;
  const base = snapshot.base(file.trim())?.whole;
  if (base === undefined || (colon === undefined && !/\s$/.test(file)))
    return colon === undefined ? files(typing, file, ({ recipe, parts }) => namesOf(recipe?.name, parts)) : NOTHING;
  const lead = colon === undefined ? ': ' : colon === ':' ? ' ' : '';
  return all(
    base.recipe.parts
      .map(({ head }) => head.name)
      .filter((name) => name !== '')
      .map((name) => {
        const start = character - typed.length;
        return { label: name, kind: 'part', start, end: character, text: lead + name, filter: name };
      }),
  );
}

/** After `drop`, and after `swap`: what the base lists, then `for` and any food. */
export function completeChanged(typing: Typing): Completions {
  const { before, line, snapshot, at, character } = typing;
  if (/^\s*swap\s+.*?\sfor\s/su.test(before)) return completeIngredient(typing);
  const [, keyword, typed] = /^\s*(swap|drop)\s+(.*)$/su.exec(before) ?? [];
  if (typed === undefined) return NOTHING;
  const after = keyword === 'swap' && !/\sfor\s/.test(line.text) ? ' for ' : '';
  const start = character - typed.length;
  const items = new Map<string, Completion>();
  for (const { base, part } of basesAt(snapshot, at)) {
    for (const { name, node, line: listed } of part.head.ingredients) {
      const amount = part.head.source.lines[listed]?.text.slice(node.amount?.start, node.amount?.end) ?? '';
      const detail = node.amount === undefined ? fileName(base.uri) : `${amount} in ${fileName(base.uri)}`;
      if (after !== '' && /\s$/.test(typed) && sameName(name, typed.trim()))
        return all([{ label: 'for', kind: 'keyword', start: character, end: character, text: 'for ', filter: 'for' }]);
      if (!items.has(name))
        items.set(name, {
          label: name,
          kind: 'ingredient',
          detail,
          start,
          end: character,
          text: name + after,
          filter: name,
        });
    }
  }
  return all([...items.values()]);
}

const namesOf = (recipe: string | undefined, parts: Entry['parts']): string | undefined =>
  recipe === undefined && parts.length === 0
    ? undefined
    : [...(recipe === undefined ? [] : [recipe]), ...parts.map((p) => p.name)].join(', ');

/** Files as this one would name them, the nearest first; those that hold nothing to build on are left out. */
function files({ others, character }: Typing, typed: string, holds: (entry: Entry) => string | undefined): Completions {
  const kitchen = others();
  if (kitchen === undefined) return NOTHING;
  const found = kitchen.entries.flatMap((entry) => {
    const detail = entry.path === kitchen.path ? undefined : holds(entry);
    const text = relativeTo(kitchen.path, entry.path);
    return detail === undefined || !text.toLowerCase().includes(typed.toLowerCase()) ? [] : [{ text, detail }];
  });
  const far = (text: string): number => text.split('/').length;
  found.sort((a, b) => far(a.text) - far(b.text) || (a.text < b.text ? -1 : 1));
  const items = found.slice(0, MOST).map(({ text, detail }): Completion => {
    const start = character - typed.length;
    return { label: text, kind: 'file', detail, start, end: character, text, filter: text };
  });
  return { items, incomplete: found.length > MOST };
}
