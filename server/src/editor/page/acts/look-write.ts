/**
 * Knows how what is looked at is written: by the edits that made it, as one change.
 * Refuses to write into the file that a recipe builds on.
 */
import { editsBetween } from '../../../edits/text-edit.ts';
import { lookedAt } from '../looked.ts';
import type { Act } from './act.ts';
import { lookBack } from './look-at.ts';

export const lookWrite: Act = (done) => {
  const { snapshot, look } = done;
  if (snapshot.whole !== snapshot) return { refused: 'It builds on another file, so it is not written here.' };
  const { snapshot: written, looking } = lookedAt(snapshot, look);
  if (looking === undefined) return { refused: 'The text says so already.' };
  return {
    edits: editsBetween(snapshot.document, written.document),
    said: `${looking.at}: written.`,
    ...lookBack(done),
  };
};
