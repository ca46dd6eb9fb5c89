/** A measure of a part brought to a value: `measure` is its name, `value` is `68 %`. */
import { measureNamed, readValue } from '../../edits/adjust/wish.ts';
import { sameName } from '../../recipe/words.ts';
import { adjusted } from '../adjusted.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const adjust: Verb = {
  takes: ['measure', 'value', 'part?', 'hold?'],
  title: 'Adjust a measure',
  run: ({ snapshot, arg }) => {
    const { recipe } = snapshot;
    const listed = recipe.parts.filter(({ head }) => head.ingredients.length > 0);
    const named = textIn(arg, 'part');
    const part = named === undefined ? listed[0] : listed.find(({ head }) => sameName(head.name, named));
    if (part === undefined || (named === undefined && listed.length > 1))
      return { refused: `Say which part: ${listed.map(({ head }) => head.name).join(', ')}.` };
    const measure = measureNamed(part, textIn(arg, 'measure') ?? '');
    if (measure === undefined) return { refused: 'Say which measure, such as `hydration`.' };
    const to = readValue(measure, textIn(arg, 'value') ?? '');
    if (typeof to === 'string') return { refused: to };
    const held = textIn(arg, 'hold');
    const hold = (['mass', 'flour'] as const).filter((each) => each === held);
    const result = adjusted(snapshot, part, { targets: [{ measure, to }], hold });
    if (!result.ok) return { refused: result.why };
    const changes = result.moved.map(({ ingredient, before, after }) => `${ingredient.name} ${before} → ${after}`);
    return { edits: result.edits, changes, said: result.said };
  },
};
