/**
 * Knows where a trial reached another temperature than the steps promise.
 */
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import type { Recipe } from '../../recipe/model.ts';
import { isOutsideFood, type Trial } from '../../recipe/trials/trials.ts';
import type { Found } from '../check.ts';
import { onceFor, onceWith } from '../once.ts';
import type { Values } from './held-values.ts';
import { farHeat, type HeatAt, heatIn, type Reached, textAt } from './nearest-figures.ts';

const heatFound = onceWith(
  (
    { at, temperature, celsius, place }: Reached,
    { part, step, celsius: promised, node }: HeatAt,
    date: string,
  ): Found<Values> => {
    const measured = `${trimmed(temperature.lowDegrees, 1)} ${temperature.unit}`;
    return {
      at: { part: part.index, line: step.line, start: node.start, end: node.end },
      values: {
        what: 'temperature',
        of: place?.text ?? 'the food',
        written: textAt(part, step.line, node),
        measured,
        differs: differenceOf(celsius, promised, temperature.unit),
        date,
        trialAt: { line: at, start: temperature.start, end: temperature.end },
        // A lower figure is not written for the cook: it may not be safe.
        ...(celsius.low > promised.high && { write: measured }),
      },
    };
  },
);

/** `4 C lower`, on the scale of the trial. */
function differenceOf(celsius: Range, promised: Range, unit: TemperatureNode['unit']): string {
  const [by, way] =
    celsius.low > promised.high ? [celsius.low - promised.high, 'higher'] : [promised.low - celsius.low, 'lower'];
  return unit === 'F' ? `${trimmed(by * 1.8, 0)} °F ${way}` : `${trimmed(by, 1)} °C ${way}`;
}

/** What the oven, the fridge or the room had is not what the food had. */
const reachedInFood = onceFor(({ reached }: Trial) => reached.filter(({ place }) => !isOutsideFood(place)));

export const temperatures = (recipe: Recipe, latest: Trial): readonly Found<Values>[] =>
  reachedInFood(latest).flatMap((line) => {
    const far = farHeat(line, heatIn(recipe));
    return far === undefined ? [] : [heatFound(line, far, latest.date)];
  });
