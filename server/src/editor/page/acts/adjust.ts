/**
 * Knows how a measure is turned on the page, left again, and written at its value.
 * Refuses to work out what moves.
 */

import { meant } from '../../../publish/view/formula/figures.ts';
import type { MeasureName } from '../../../recipe/measures/kind.ts';
import type { Part } from '../../../recipe/model.ts';
import { capital } from '../../../recipe/words.ts';
import { adjusted, measureCalled, partCalled } from '../../adjusted.ts';
import { type Act, type Done, numberIn, textIn } from './act.ts';

const GONE = { refused: 'The part, or its measure, is not there any more.' };

function meantBy({ snapshot, arg }: Done): { readonly part: Part; readonly measure: MeasureName } | undefined {
  const [part, measure] = [
    partCalled(snapshot, textIn(arg, 'part') ?? ''),
    measureCalled(textIn(arg, 'measure') ?? ''),
  ];
  return part === undefined || measure === undefined ? undefined : { part, measure };
}

/** Carries `{ part, measure, to }`, or the value of a field in the table's figures. */
export const turn: Act = (done) => {
  const { arg, value, look } = done;
  const of = meantBy(done);
  if (of === undefined) return GONE;
  if (value !== null && value !== undefined && typeof value !== 'number')
    return { refused: 'Write a number, such as 24.' };
  const to = typeof value === 'number' ? meant(of.measure, value) : numberIn(arg, 'to');
  const turned = { part: of.part.head.name, measure: of.measure, ...(to !== undefined && { value: to }) };
  return { look: { ...look, turn: turned } };
};

export const leave: Act = ({ look: { turn: _, ...rest } }) => ({ look: rest });

/** Carries `{ part, measure, to }`; what is written is not turned any more. */
export const adjust: Act = (done) => {
  const { snapshot, arg, look } = done;
  const [of, to] = [meantBy(done), numberIn(arg, 'to')];
  if (of === undefined) return GONE;
  if (to === undefined) return { refused: 'The page does not say to which value.' };
  const result = adjusted(snapshot, of.part, { targets: [{ measure: of.measure, to }] });
  if (!result.ok) return { refused: `${capital(result.why)}.` };
  const { turn: _, ...rest } = look;
  const said = result.moved.map(({ ingredient, after }) => `${ingredient.name} ${after}`).join(', ');
  return { edits: result.edits, said: `${said}: written.`, look: rest };
};
