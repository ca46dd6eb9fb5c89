/** Names of pictures after `picture`: those of the recipe's folder, and of the folder that is begun. */
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';

/** More than a list shows are found by another letter. */
const MOST = 200;

export function completePicture({ snapshot, before, character }: Typing): Completions {
  const [, typed] = /^\s*picture\s+([^,]*)$/su.exec(before) ?? [];
  if (typed === undefined) return NOTHING;
  const names = snapshot.pictureNames(typed);
  const items = names.slice(0, MOST).map(
    (name): Completion => ({
      label: name,
      kind: 'file',
      start: character - typed.length,
      end: character,
      text: name,
      filter: name,
    }),
  );
  return names.length > MOST ? { items, incomplete: true } : all(items);
}
