import { celsiusOf } from '../../notation/celsius.ts';
import type { TemperatureNode } from '../../notation/tree.ts';
import { ownDegrees } from '../../recipe/journey/degrees.ts';
import { heatsOf } from '../../recipe/journey/figures.ts';
import type { Step } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { overParts } from '../over-parts.ts';
import { firstInOven } from './first-oven.ts';

interface Values {
  readonly above: TemperatureNode;
  readonly step: TemperatureNode;
}

/** One heat on dials that are rounded; of ovens of which one has a fan, which is set 20 °C lower, by some makers not at all (judgement). */
const APART_C = 12;
const FAN_C = 20;
const FAN_APART_C = 22;

interface Ovens {
  /** What the first step that needs an oven lights it at. */
  readonly first: TemperatureNode | undefined;
  readonly all: readonly TemperatureNode[];
}

const ovensIn = overParts((part): Ovens | undefined => {
  const start = firstInOven(part);
  if (start === undefined) return undefined;
  const heats = (step: Step) => heatsOf(step).filter((each) => each.of === 'oven' && each.bound !== 'change');
  const [lit] = heats(start.step);
  return {
    // What bakes at another heat later may have stood in it before.
    first: lit?.event?.act === 'ready' && lit.event.said === 'yes' ? lit.written[0] : undefined,
    all: part.steps.flatMap((step) => heats(step).flatMap(({ written }) => written)),
  };
});

function isOne(above: TemperatureNode, other: TemperatureNode): boolean {
  const [a, b] = [celsiusOf(above), celsiusOf(other)];
  const lower = Number(above.fan) * FAN_C - Number(other.fan) * FAN_C;
  const apart = above.fan === other.fan ? APART_C : FAN_APART_C;
  return a.low + lower - apart <= b.high && b.low <= a.high + lower + apart;
}

const find = foundAgain<Values>((recipe): readonly Found<Values>[] => {
  const above = recipe.oven;
  const ovens = above === undefined ? [] : ovensIn(recipe);
  const first = ovens[0]?.value.first;
  if (above === undefined || first === undefined) return [];
  if (ovens.some(({ value: { all } }) => all.some((each) => each.unit === 'unsaid' || isOne(above.node, each))))
    return [];
  const { start, end } = above.node;
  return [{ at: { line: above.at, start, end }, values: { above: above.node, step: first } }];
});

export default defineCheck<Values>({
  code: 'ovens-disagree',
  title: 'The oven above the parts is at a heat that no step uses',
  family: 'method',
  severity: 'warning',
  scope: 'recipe',
  doubtsFigure: true,
  source: { kind: 'common practice, no source' },
  explain: `**What it computes.** The \`oven\` line, where the first step that needs an oven lights it (\`Heat the oven to 180 C\`): that heat, or one of a later step, must be the same, ${APART_C} °C apart at the most, and where one oven has a fan ${FAN_APART_C} °C beside the ${FAN_C} °C that it is set lower.

**Why it matters.** Half of the readers go by the head, half by the step: one of the two is a slip.

**What to do.** Mend the one that is wrong. **Silent** where no step lights it.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ above, step }) => ({
    message: `The oven is at ${ownDegrees(celsiusOf(above).low, above)} here, and a step heats it to ${ownDegrees(celsiusOf(step).low, step)}: mend the one that is wrong.`,
    value: above.lowDegrees,
    unit: above.unit,
  }),
  examples: {
    good: [
      'recipe Oats\n  oven    180 C\n  200 g     rolled oats\n  do Bake the oats at 160 C fan for 10 min until golden.\n',
      'recipe Oats\n  oven    200 C\n  200 g     rolled oats\n  do Bake the oats for 10 min, then at 150 C for 10 min until golden.\n',
    ],
    bad: [
      'recipe Oats\n  oven    130 C\n#         ^^^^^ ovens-disagree: 180 °C\n  200 g     rolled oats\n  do Heat the oven to 180 C.\n  do Bake the oats for 10 min until golden.\n',
      'recipe Oats\n  oven    350 F\n#         ^^^^^ ovens-disagree\n  200 g     rolled oats\n  do Heat the oven to 250 F and oil a tray.\n  do Bake the oats for 10 min until golden.\n',
    ],
  },
});
