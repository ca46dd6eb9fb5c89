/**
 * Knows when a fridge's temperature must be Fahrenheit written as Celsius.
 */
import { celsiusOf } from '../../notation/celsius.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Step } from '../../recipe/recipe.ts';

const FRIDGE: ReadonlySet<string> = new Set([
  'fridge',
  'refrigerator',
  'refrigerate',
  'chill',
  'chiller',
  'walk-in',
  'icebox',
]);

/** 30 to 45 °C beside a fridge: 40 °F is meant. */
export function isFridgeInWrongUnit(reading: HeatReading, step: Step): boolean {
  const { low } = celsiusOf(reading.node);
  if (reading.role !== 'surroundings' || reading.node.unit !== 'C' || low < 30 || low > 45) return false;
  return FRIDGE.has(reading.verb ?? '') || clauseOf(step, reading).some((w) => FRIDGE.has(w));
}

/** The words about a reading, in its own clause. */
function clauseOf(step: Step, { node }: HeatReading): string[] {
  const words: string[] = [];
  for (const item of step.sentence.items) {
    if ((item.kind === 'mark' && /[.;,:]/.test(item.mark)) || (item.kind === 'word' && item.word === 'then')) {
      if (item.start >= node.start) break;
      words.length = 0;
    } else if (item.kind === 'word') words.push(item.word);
  }
  return words;
}
