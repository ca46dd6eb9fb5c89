/** The other scale behind a temperature: of a step, or of the oven in the head. */
import { convertTemperature, type HeatToConvert, ovenHeat } from '../../edits/convert-temperature.ts';
import { replaceSpan } from '../../edits/text-edit.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import type { Hint } from './hint.ts';

export const scaleHints = ({ head, steps }: Part): Hint[] =>
  steps.flatMap((step) => {
    const text = head.source.lines[step.line]?.text ?? '';
    return heatsOf(step).flatMap((heat) => scaleHint(step.line, text, heat));
  });

export function ovenHints({ oven, outline }: Recipe): Hint[] {
  const line = oven === undefined ? undefined : outline.head.find(({ at }) => at === oven.at)?.line;
  return oven === undefined || line === undefined ? [] : scaleHint(oven.at, line.text, ovenHeat(oven.node));
}

/** As a cook writes it, in brackets behind; nothing where both are there. */
function scaleHint(line: number, text: string, heat: HeatToConvert): Hint[] {
  const [node, ...more] = heat.written;
  if (node === undefined || more.length > 0 || (node.unit !== 'C' && node.unit !== 'F')) return [];
  const other = convertTemperature(line, text, heat, { scale: node.unit === 'C' ? 'F' : 'C' });
  if (other === undefined) return [];
  const label = `(${other.after})`;
  const behind = { start: heat.end, end: heat.end };
  return [{ line, of: heat, label, edits: (_, at) => [replaceSpan(at, behind, ` ${label}`)] }];
}
