/** A temperature: the same in C and F, for an oven also fan and gas, and what it is the temperature of. */
import { trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { Statement, TemperatureNode } from '../../notation/tree.ts';
import { FAN_LOWER_C, FAN_LOWER_F, gasMark } from '../../recipe/dials.ts';
import { degreesIn } from '../../recipe/journey/degrees.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { SUGAR_SOURCE, sugarStage } from '../../recipe/measures/sugar-boiling.ts';
import { figure } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import { span, textOf } from '../words.ts';
import { understoodFacts } from './event.ts';
import type { Fact, HoverSource } from './fact.ts';
import { heatTrials, reachedTrials } from './trials.ts';

export const hoverTemperature: HoverSource = (snapshot, cursor) => {
  const { line, part, inPart, at, character } = cursor;
  const { statement } = line;
  const step = part?.steps.find((s) => s.line === inPart);
  const heat = step && heatsOf(step).find((each) => holds(each, character));
  if (heat !== undefined && !heat.isHalf)
    return {
      at: placeOf(at, heat),
      title: textOf(line, heat),
      subtitle: HEAT_OF[heat.of],
      facts: [
        ...heat.written.slice(0, 1).flatMap((node) => temperatureFacts(node, heat.of)),
        ...understoodFacts(snapshot, cursor, heat),
        ...heatTrials(snapshot, heat),
      ],
    };
  const alone = isAlone(statement) ? statement.temperature : undefined;
  if (!holds(alone, character) || alone === undefined) return undefined;
  const of = statement.kind === 'oven' ? 'oven' : 'food';
  return {
    at: placeOf(at, alone),
    title: textOf(line, alone),
    subtitle: HEAT_OF[of],
    facts: [
      ...temperatureFacts(alone, of),
      ...(statement.kind === 'reached' ? reachedTrials(snapshot, statement.place) : []),
    ],
  };
};

/** A line of one temperature. */
const isAlone = (of: Statement): of is Extract<Statement, { kind: 'oven' | 'started' | 'reached' }> =>
  of.kind === 'oven' || of.kind === 'started' || of.kind === 'reached';

const HEAT_OF: Readonly<Record<HeatFigure['of'], string>> = {
  oven: 'in the oven',
  food: 'in the food',
  around: 'around the food',
  medium: 'in the pot or pan',
  nothing: 'a temperature',
};

const FAN_SOURCE = 'common practice, no source';

function temperatureFacts(node: TemperatureNode, of: HeatFigure['of']): Fact[] {
  if (node.unit === 'unsaid') return [];
  const celsius = celsiusOf(node);
  const facts = [
    figure('Celsius', onScale(node, 'C', celsius, of)),
    figure('Fahrenheit', onScale(node, 'F', celsius, of)),
  ];
  if (of === 'food') {
    const stage = sugarStage(celsius.low);
    if (stage !== undefined && stage === sugarStage(celsius.high))
      facts.push(figure('Boiled sugar', `${stage}, at sea level`, SUGAR_SOURCE));
  }
  if (of !== 'oven') return facts;
  const lower = node.unit === 'F' ? FAN_LOWER_F / 1.8 : FAN_LOWER_C;
  const still = node.fan ? plus(celsius, lower) : celsius;
  const other = node.fan ? still : plus(celsius, -lower);
  facts.push(
    figure(node.fan ? 'Without the fan' : 'With the fan', `${dialled(other, 'C')}, ${dialled(other, 'F')}`, FAN_SOURCE),
  );
  const [low, high] = [gasMark(still.low), gasMark(still.high)];
  if (low !== undefined && high !== undefined)
    facts.push(figure('Gas', `mark ${low === high ? low : `${low} to ${high}`}`));
  return facts;
}

/** On the scale that it is written in as it is written; on the other as a dial has it, or to the degree. */
function onScale(node: TemperatureNode, scale: 'C' | 'F', celsius: Range, of: HeatFigure['of']): string {
  const own = node.unit === scale ? { low: node.lowDegrees, high: node.highDegrees } : undefined;
  return `${own === undefined ? span(celsius, (c) => degreesIn(c, scale, of) ?? '') : span(own, (n) => trimmed(n, 1))} °${scale}`;
}

const dialled = (celsius: Range, scale: 'C' | 'F'): string =>
  `${span(celsius, (c) => degreesIn(c, scale, 'oven') ?? '')} °${scale}`;

const plus = (range: Range, by: number): Range => ({ low: range.low + by, high: range.high + by });
