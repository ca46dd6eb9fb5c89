/** The amounts in other measures, or the temperatures on another scale: of the whole recipe, or of one part. */
import { wrongPlaces } from '../../checks/finding.ts';
import { CONVERSIONS } from '../../edits/conversion.ts';
import { convertRecipe } from '../../edits/convert.ts';
import { fieldIn, textIn } from '../page/acts/act.ts';
import { linesOfPart, type Verb } from './verb.ts';

export const convert: Verb = {
  takes: ['to', 'part?', 'both?', 'lines?'],
  title: 'Write in other measures',
  run: ({ snapshot: { document, recipe, findings }, arg }) => {
    const wanted = textIn(arg, 'to');
    const to = CONVERSIONS.find((each) => each === wanted);
    if (to === undefined) return { refused: `\`to\` is one of ${CONVERSIONS.join(', ')}.` };
    const part = textIn(arg, 'part');
    const lines = part === undefined ? linesIn(arg) : linesOfPart(recipe, part);
    if (typeof lines === 'string') return { refused: lines };
    const both = fieldIn(arg, 'both') === true;
    return convertRecipe(document, recipe, { to, both, marked: wrongPlaces(findings), ...(lines && { lines }) });
  },
};

/** `{ first, last }` of the document, from 0. */
function linesIn(arg: unknown): { readonly first: number; readonly last: number } | undefined {
  const lines = fieldIn(arg, 'lines');
  const [first, last] = [fieldIn(lines, 'first'), fieldIn(lines, 'last')];
  return typeof first === 'number' && typeof last === 'number' ? { first, last } : undefined;
}
