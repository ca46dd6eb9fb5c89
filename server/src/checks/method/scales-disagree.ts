import { replaceSpan } from '../../edits/text-edit.ts';
import { trimmed } from '../../measure/number-text.ts';
import { celsiusOf } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { FAN_LOWER_C } from '../../recipe/dials.ts';
import { degreesIn } from '../../recipe/journey/degrees.ts';
import { type HeatFigure, heatsOf } from '../../recipe/journey/figures.ts';
import { defineCheck, type Found } from '../check.ts';

interface Values {
  readonly first: TemperatureNode;
  readonly other: TemperatureNode;
  /** What the first comes to on the scale of the other: `350`. */
  readonly instead: string | undefined;
}

/** Figures of one heat are as far apart as dials are rounded, or thermometers and rules (judgement: 325 °F and 170 °C are 7 apart). */
const APART_C: Readonly<Record<HeatFigure['of'], number>> = { oven: 9, medium: 6, food: 2, around: 3, nothing: 9 };
/** A fan oven is set lower by so much, °C (appliance makers say 10 to 25; common practice, no source). */
const FAN_LEAST_C = 5;
const FAN_MOST_C = 35;

export default defineCheck<Values>({
  code: 'scales-disagree',
  title: 'One temperature is written on two scales, and they do not agree',
  family: 'method',
  severity: 'warning',
  scope: 'part',
  doubtsFigure: true,
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** A temperature that is written on several scales (\`180C/160C fan/gas 4\`, \`63 C (145 F)\`): each figure against the first. Ovens may be ${APART_C.oven} °C apart, as their dials are rounded (350 °F, 180 °C and gas 4 are one heat; 325 °F is 160 or 170 °C), a figure in the food ${APART_C.food} °C. An oven with a fan is set ${FAN_LEAST_C} to ${FAN_MOST_C} °C lower.

**Why it matters.** Half of the readers go by the one figure, half by the other.

**What to do.** Mend the one that is wrong. **Silent** where the figures belong to different things: \`110 C (60 C inside)\`.`,
  *find(part) {
    for (const step of part.steps)
      for (const heat of heatsOf(step)) {
        const values = heat.written.length > 1 ? disagreement(heat) : undefined;
        if (values !== undefined)
          yield {
            at: { line: step.line, start: values.other.start, end: values.other.end },
            values,
          } satisfies Found<Values>;
      }
  },
  say: ({ first, other, instead }) => ({
    message: `${textOf(first)} is ${instead === undefined ? `not ${textOf(other)}` : `${withUnit(instead, other)}, and ${textOf(other)} is written beside it`}: mend the one that is wrong.`,
    value: other.lowDegrees,
    unit: other.unit,
  }),
  fix: ({ other, instead }, _scene, at) =>
    instead === undefined || other.high !== undefined
      ? []
      : [
          {
            title: `Write ${withUnit(instead, other)}`,
            effect: 'amounts',
            edits: [replaceSpan(at.line, other.low, instead)],
          },
        ],
  examples: {
    good: [
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180C/160C fan/gas 4 for 10 min until golden.\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 325 F (170 C) for 10 min until golden.\n',
    ],
    bad: [
      {
        text: 'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180 C (450 F) for 10 min until golden.\n# "450 F" scales-disagree *: 180 °C is 350 °F\n',
        after: {
          'Write 350 °F':
            'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180 C (350 F) for 10 min until golden.\n',
        },
      },
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at 180C/200C fan for 10 min until golden.\n# "200C fan" scales-disagree *: 160 °C fan\n',
      'recipe Oats\n  200 g     rolled oats\n  do Bake the oats at gas 4 (200 C) for 10 min until golden.\n# "200 C" scales-disagree *: gas 4 is 180 °C\n',
    ],
  },
});

/** The first of the figures that is not the heat of the one before all. */
function disagreement({ written, of }: HeatFigure): Values | undefined {
  const [first, ...others] = written;
  if (first === undefined) return undefined;
  const other = others.find((each) => !agree(first, each, of));
  return other && { first, other, instead: insteadOf(first, other, of) };
}

function agree(first: TemperatureNode, other: TemperatureNode, of: HeatFigure['of']): boolean {
  if (first.unit === 'unsaid' || other.unit === 'unsaid') return true;
  const [a, b] = [celsiusOf(first), celsiusOf(other)];
  if (first.fan === other.fan)
    return Math.abs(a.low - b.low) <= APART_C[of] && Math.abs(a.high - b.high) <= APART_C[of];
  const lower = first.fan ? b.low - a.low : a.low - b.low;
  return lower >= FAN_LEAST_C && lower <= FAN_MOST_C;
}

function insteadOf(first: TemperatureNode, other: TemperatureNode, of: HeatFigure['of']): string | undefined {
  if (other.unit === 'unsaid' || first.lowDegrees !== first.highDegrees) return undefined;
  const shift = first.fan === other.fan ? 0 : other.fan ? -FAN_LOWER_C : FAN_LOWER_C;
  return degreesIn(celsiusOf(first).low + shift, other.unit, of === 'nothing' ? 'oven' : of);
}

const textOf = (node: TemperatureNode): string => withUnit(trimmed(node.lowDegrees, 1), node);

const withUnit = (degrees: string, { unit, fan }: TemperatureNode): string =>
  unit === 'gas' ? `gas ${degrees}` : `${degrees} °${unit === 'F' ? 'F' : 'C'}${fan ? ' fan' : ''}`;
