/** The recipe, or one part of it, at another size: `to` is `by 1.5`, `12 slices`, `round 28 x 3 cm`, `for 230 g plums`. */
import { scaleRecipe } from '../../edits/scale.ts';
import { readTarget } from '../../edits/scale-target.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const scale: Verb = {
  takes: ['to', 'part?'],
  title: 'Scale the recipe',
  run: ({ snapshot: { document, recipe }, arg }) => {
    const target = readTarget(textIn(arg, 'to') ?? '');
    if (target === undefined) return { refused: 'Write a size such as `by 1.5`, `double` or `to 12 slices`.' };
    const scaled = scaleRecipe(document, recipe, target, textIn(arg, 'part'));
    return scaled.ok ? scaled.scaling : { refused: scaled.why };
  },
};
