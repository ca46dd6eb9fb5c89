/**
 * Knows how another substance, or another part, is chosen to see where it comes from. It changes what is looked at, never the text.
 */
import { SUBSTANCES } from '../../../publish/report-shape.ts';
import { type Act, textIn } from './act.ts';

/** Carries `{ choose: 'substance' | 'part' }`; the field holds the substance, or `part:NAME`, or nothing for the whole. */
export const madeOf: Act = ({ arg, value, look }) => {
  const choose = textIn(arg, 'choose');
  const chosen = typeof value === 'string' ? value : '';
  if (choose === 'substance') {
    const substance = SUBSTANCES.find((each) => each === chosen);
    return substance === undefined
      ? { refused: 'The page does not say which substance is meant.' }
      : { look: { ...look, madeOf: { ...look.madeOf, substance } } };
  }
  if (choose !== 'part') return { refused: 'The page does not say what is chosen.' };
  const { part: _, ...rest } = look.madeOf ?? {};
  return { look: { ...look, madeOf: chosen.startsWith('part:') ? { ...rest, part: chosen.slice(5) } : rest } };
};
