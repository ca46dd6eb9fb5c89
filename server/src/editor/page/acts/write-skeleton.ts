/**
 * Knows what an empty file begins with: the lines that completion offers for a recipe, to be written over.
 */
import { SKELETONS } from '../../completion/keyword.ts';
import type { Act } from './act.ts';

export const writeSkeleton: Act = ({ snapshot: { document } }) => {
  if (document.lines.some(({ text }) => text.trim() !== '')) return { refused: 'Something is written here already.' };
  const text = `${(SKELETONS.recipe?.lines ?? []).join('\n').replace(/[<>]/g, '')}\n`;
  const last = document.lines.length - 1;
  const end = { line: last, character: document.lines[last]?.text.length ?? 0 };
  return { edits: [{ start: { line: 0, character: 0 }, end, text }], said: 'A skeleton is written.' };
};
