/** A temperature: the same in C and F, for an oven also fan and gas, and what it is the temperature of. */
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf, gasToCelsius } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import type { HeatRole } from '../../recipe/heat.ts';
import { SUGAR_SOURCE, sugarStage } from '../../recipe/measures/sugar-boiling.ts';
import { figure } from '../facts.ts';
import type { Fact, HoverSource } from '../hover.ts';
import { holds, placeOf } from '../place.ts';
import { span, textOf } from '../words.ts';
import { understoodFacts } from './event.ts';
import { heatTrials, reachedTrials } from './trials.ts';

export const hoverTemperature: HoverSource = (snapshot, cursor) => {
  const { line, part, inPart, at, character } = cursor;
  const { statement } = line;
  const reading = part?.steps.find((s) => s.line === inPart)?.heat.find((h) => holds(h.node, character));
  const alone = statement.kind === 'oven' || statement.kind === 'reached' ? statement.temperature : undefined;
  const node = reading?.node ?? (holds(alone, character) ? alone : undefined);
  if (node === undefined) return undefined;
  const role: HeatRole = reading?.role ?? (statement.kind === 'reached' ? 'food' : 'oven');
  return {
    at: placeOf(at, node),
    title: textOf(line, node),
    subtitle: ROLES[role],
    facts: [
      ...temperatureFacts(node, role),
      ...(reading !== undefined
        ? [...understoodFacts(snapshot, cursor, node), ...heatTrials(snapshot, reading)]
        : statement.kind === 'reached'
          ? reachedTrials(snapshot, statement.place)
          : []),
    ],
  };
};

const ROLES: Readonly<Record<HeatRole, string>> = {
  oven: 'in the oven',
  food: 'in the food',
  surroundings: 'around the food',
  liquid: 'in the pot or pan',
  unknown: 'a temperature',
};

/** How much lower a fan oven is set. */
const FAN_C = 20;
const FAN_SOURCE = 'common practice, no source';

function temperatureFacts(node: TemperatureNode, role: HeatRole): Fact[] {
  const celsius = celsiusOf(node);
  const facts = [figure('Celsius', sayC(celsius)), figure('Fahrenheit', sayF(celsius))];
  if (role === 'food') {
    const stage = sugarStage(celsius.low);
    if (stage !== undefined && stage === sugarStage(celsius.high))
      facts.push(figure('Boiled sugar', `${stage}, at sea level`, SUGAR_SOURCE));
  }
  if (role !== 'oven') return facts;
  const still = node.fan ? plus(celsius, FAN_C) : celsius;
  facts.push(
    node.fan
      ? figure('Without the fan', `${sayC(still)}, ${sayF(still)}`, FAN_SOURCE)
      : figure('With the fan', `${sayC(plus(celsius, -FAN_C))}, ${sayF(plus(celsius, -FAN_C))}`, FAN_SOURCE),
  );
  const gas = gasMark(still);
  if (gas !== undefined) facts.push(figure('Gas', `mark ${gas}`));
  return facts;
}

const MARKS = [0.25, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
const MARK_TEXT: Readonly<Record<number, string>> = { 0.25: '¼', 0.5: '½' };

/** The nearest mark, or the two it lies between; none where gas ovens do not reach. */
function gasMark(celsius: Range): string | undefined {
  const low = nearestMark(celsius.low);
  const high = nearestMark(celsius.high);
  if (low === undefined || high === undefined) return undefined;
  return low === high ? low : `${low} to ${high}`;
}

function nearestMark(celsius: number): string | undefined {
  const [best] = [...MARKS].sort((a, b) => Math.abs(gasToCelsius(a) - celsius) - Math.abs(gasToCelsius(b) - celsius));
  if (best === undefined || Math.abs(gasToCelsius(best) - celsius) > 10) return undefined;
  return MARK_TEXT[best] ?? String(best);
}

const plus = (range: Range, by: number): Range => ({ low: range.low + by, high: range.high + by });
const sayC = (c: Range): string => `${span(c, (n) => trimmed(n, 0))} °C`;
const sayF = (c: Range): string => `${span(c, (n) => trimmed(n * 1.8 + 32, 0))} °F`;
