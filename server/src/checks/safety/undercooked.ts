import { replaceSpan } from '../../edits/text-edit.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { HeatReading } from '../../recipe/heat.ts';
import type { Ingredient } from '../../recipe/ingredient.ts';
import type { Part, Recipe, Step } from '../../recipe/recipe.ts';
import { baseForm } from '../../recipe/verbs.ts';
import { defineCheck, type Found } from '../check.ts';
import type { House } from '../house.ts';
import { holdMin, type Limit, limitFor } from './limits.ts';

interface Values {
  readonly name: string;
  readonly limit: Limit;
  readonly reading: HeatReading;
  readonly hold: number | undefined;
}

/** A reading below this is a dough's or a syrup's, not a sign that something is cooked. */
const LEAST_DONENESS_C = 45;

export default defineCheck<Values>({
  code: 'undercooked',
  title: 'A food is taken from the heat before it is safe',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title: 'FDA Food Code 2022, 3-401.11; USDA FSIS safe minimum internal temperatures (for consumers)',
  },
  explain: `**What it computes.** For every ingredient that is a risk raw (poultry, minced and whole meat, fish, egg), the highest temperature *in the food* that the steps ask for from the moment it goes in, against the least temperature of the rule set in force. The strictest ingredient decides.

**Why it matters.** Below it, Salmonella and its like survive in numbers that make people ill.

**What to do.** Write the safe temperature and where it is read. A lower one is accepted only with the published time for it, held: \`hold at 63 C for 3 min\`.

**Silent** where a step boils, simmers, braises or steams the food and gives no figure, where no temperature in the food is given at all (that is \`no-safe-temperature\`'s), and for what is bought cooked or pasteurised. Local codes and licensed practice may ask for more; they come first.`,
  *find({ recipe, house }) {
    const told = new Set<HeatReading>();
    for (const part of recipe.parts) {
      for (const [i, ingredient] of part.head.ingredients.entries()) {
        const limit = riskOf(ingredient, house);
        if (limit === undefined) continue;
        const found = coolest(recipe, part, i, ingredient, limit);
        if (found === undefined || told.has(found.values.reading)) continue;
        told.add(found.values.reading);
        yield found;
      }
    }
  },
  say: ({ name, limit, reading, hold }) => {
    const { low } = reading.celsius;
    const held = hold === undefined ? '' : `, or hold ${trimmed(low, 1)} °C for ${hold} min`;
    const time = limit.time === '' ? '' : ` (${limit.time})`;
    return {
      message: `${trimmed(low, 1)} °C in the food is too low for ${name}: cook it to ${limit.celsius} °C, ${limit.fahrenheit} °F${time}${held}. Local rules may ask for more.`,
      value: low,
      unit: 'C',
      band: [limit.celsius, null],
      source: limit.source,
    };
  },
  fix: ({ limit, reading }, _scene, at) => {
    if (reading.node.unit === 'gas') return [];
    const degrees = reading.node.unit === 'F' ? limit.fahrenheit : limit.celsius;
    const { low, high } = reading.node;
    return [
      {
        title: `Write ${degrees} ${reading.node.unit}`,
        effect: 'amounts',
        edits: [replaceSpan(at.line, { start: low.start, end: (high ?? low).end }, String(degrees))],
      },
    ];
  },
  examples: {
    good: [
      'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 75 min, until the thickest part of the thigh reads 74 C.\n',
      'recipe Meat loaf\n  oven    180 C\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 71 C.\n',
    ],
    bad: [
      {
        text: 'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 65 C.\n# "65 C" undercooked *: 74 °C\n',
        after: {
          'Write 74 C':
            'recipe Roast chicken\n  oven    200 C\n  1.6 kg    chicken\n  10 g      fine salt\n  do Rub the chicken with the salt.\n  do Roast for 60 min, until the thickest part of the thigh reads 74 C.\n',
        },
      },
      'recipe Meat loaf\n  oven    350 F\n  800 g     ground beef\n  2 large   eggs\n  do Mix the beef with the eggs.\n  do Bake for 60 min, until the centre reads 140 F.\n# "140 F" undercooked *: 155 °F\n',
      'recipe Thighs\n  oven    200 C\n  800 g     chicken thighs\n  do Brown the thighs for 6 min.\n  do Roast until the centre reads 62 C.\n# "62 C" undercooked *\n',
    ],
  },
});

const BOUGHT_SAFE =
  /\b(?:cooked|pasteuri[sz]ed|canned|tinned|smoked|leftover|roasted|cured|hard-boiled|boiled|poached)\b/i;

function riskOf(ingredient: Ingredient, house: House): Limit | undefined {
  const { food, node, free } = ingredient;
  if (food === undefined || free) return undefined;
  if (BOUGHT_SAFE.test([node.name?.text, node.preparation?.text, node.note?.text].join(' '))) return undefined;
  return limitFor(food, house.foodSafety);
}

/** These cook a food through. Browning and frying may not: there only a figure tells. */
const COOKS_THROUGH: ReadonlySet<string> = new Set(['boil', 'simmer', 'steam', 'braise', 'stew']);

/** The highest reading in the food from its first use on, when it is below the limit and nothing else makes it safe. */
function coolest(
  recipe: Recipe,
  part: Part,
  index: number,
  ingredient: Ingredient,
  limit: Limit,
): Found<Values> | undefined {
  const holds = partsHolding(recipe, part);
  let best: { reading: HeatReading; step: Step; part: Part } | undefined;
  for (const { in: where, step } of stepsFrom(recipe, part, index)) {
    if (!holds.has(where.index)) continue;
    if (!concerns(step, holds, part.index, index)) continue;
    const readings = step.heat.filter(isDoneness);
    // A figure in the food says more than the verb beside it.
    if (
      readings.length === 0 &&
      step.sentence.items.some((i) => i.kind === 'word' && COOKS_THROUGH.has(baseForm(i.word)))
    )
      return undefined;
    for (const reading of readings) {
      if (heldLongEnough(step, reading, limit)) return undefined;
      if (best === undefined || reading.celsius.low > best.reading.celsius.low) best = { reading, step, part: where };
    }
  }
  if (best === undefined || best.reading.celsius.low >= limit.celsius - 0.5) return undefined;
  const { start, end } = best.reading.node;
  return {
    at: { part: best.part.index, line: best.step.line, start, end },
    values: { name: ingredient.name, limit, reading: best.reading, hold: holdMin(limit, best.reading.celsius.low) },
  };
}

/** A figure read in the food as a sign that it is cooked. */
const isDoneness = (r: HeatReading): boolean =>
  r.role === 'food' && r.verbClass !== 'cooling' && r.celsius.low >= LEAST_DONENESS_C;

/** The part, and every later part that takes it in. */
function partsHolding(recipe: Recipe, part: Part): ReadonlySet<number> {
  const holds = new Set([part.index]);
  for (const later of recipe.parts.slice(part.index + 1)) {
    if (later.includes.some((h) => recipe.parts.some((p) => p.head === h && holds.has(p.index))))
      holds.add(later.index);
  }
  for (const { use } of part.usesByLater) holds.add(use.part);
  return holds;
}

function* stepsFrom(recipe: Recipe, part: Part, index: number): Generator<{ in: Part; step: Step }> {
  const first = part.ledger[index]?.uses[0];
  for (const where of recipe.parts.slice(first?.part ?? part.index)) {
    for (const [s, step] of where.steps.entries())
      if (first === undefined || where.index > first.part || s >= first.step) yield { in: where, step };
  }
}

/** Whether a step is about the food: it mentions it, or a part that holds it, or nothing by name. */
function concerns(step: Step, holds: ReadonlySet<number>, part: number, index: number): boolean {
  if (step.mentions.length === 0) return true;
  return step.mentions.some(
    (m) =>
      (m.part !== undefined && holds.has(m.part)) ||
      m.ingredients.some((r) => r.part === part && r.ingredient === index),
  );
}

const HOLDING: ReadonlySet<string> = new Set(['hold', 'keep', 'stay', 'maintain', 'cook']);

/** `hold at 63 C for 3 min`: the published time for that temperature is kept. */
function heldLongEnough(step: Step, reading: HeatReading, limit: Limit): boolean {
  const least = holdMin(limit, reading.celsius.low);
  if (least === undefined) return false;
  const holds = step.sentence.items.some((i) => i.kind === 'word' && HOLDING.has(i.word));
  return holds && step.times.some((t) => t.node.start > reading.node.end && t.node.lowMin >= least);
}
