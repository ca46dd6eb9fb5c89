/** The pan: what it holds, and what was taken to be so where its line does not say all. */
import { FILL_SOURCE, panFills } from '../../checks/method/pan-fill.ts';
import { percentRange } from '../../measure/number-text.ts';
import { darkOf } from '../../recipe/baking/tins.ts';
import { litresText, panSize } from '../../recipe/measures/pan-size.ts';
import { figure } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import type { Fact, HoverSource } from './fact.ts';

export const hoverPan: HoverSource = ({ recipe }, { line, at, character }) => {
  const { statement, keyword, text } = line;
  const pan = statement.kind === 'pan' ? statement.pan : undefined;
  if (pan === undefined || keyword === undefined || line.faults.length > 0) return undefined;
  const whole = { start: keyword.start, end: pan.end };
  const size = holds(whole, character) ? panSize(pan, recipe.world.measures) : undefined;
  if (size === undefined) return undefined;
  const { volumeMl, rangeMl, count, assumed } = size;
  const facts: Fact[] = [figure('Holds', `${litresText(rangeMl)}, to the brim`)];
  if (rangeMl.low < rangeMl.high) facts.push(figure('Usually', litresText({ low: volumeMl, high: volumeMl })));
  if (count > 1) facts.push(figure('Each', litresText({ low: rangeMl.low / count, high: rangeMl.high / count })));
  if (size.bottomCm2 !== undefined) facts.push(figure('Bottom', `${Math.round(size.bottomCm2)} cm²`));
  const dark = darkOf(pan);
  if (dark !== undefined)
    facts.push(
      figure(
        'Takes heat',
        `${dark.times} times as well as bright metal: in an oven 15 °C cooler as long, else less long`,
        PAN_SOURCE,
      ),
    );
  const fill = panFills(recipe).find((each) => each.pan === pan);
  if (fill !== undefined && !fill.batches && !fill.pieces)
    facts.push(
      figure(
        'Filled',
        `to ${filledText(fill.rawMl, volumeMl)} as it goes in, ${filledText(fill.risenMl, volumeMl)} at its highest`,
        FILL_SOURCE,
      ),
    );
  for (const words of assumed) facts.push(figure('Taken so', words, 'usual sizes of the trade'));
  return { at: placeOf(at, whole), title: text.slice(whole.start, whole.end), facts };
};

/** `55 to 70 %`, of the usual volume. */
const filledText = ([low, high]: readonly [number, number], ml: number): string => percentRange(low / ml, high / ml);

const PAN_SOURCE = 'common practice: 25 °F less in glass and dark tin';
