/**
 * Knows what one step takes of the list: how much of each food as the scale shows it, and of what was made before.
 * Refuses to work out an amount that the steps do not settle: it is said in their words, or not at all.
 */
import { likelyGrams } from '../../food/weigh.ts';
import { gramsText } from '../../measure/number-text.ts';
import type { Ingredient, Part, Portion, Recipe, TakenUse } from '../../recipe/model.ts';
import { saidOf } from '../said-of.ts';
import { pageAmount, prettyAmount } from '../two-measures.ts';

export interface Take {
  /** Empty where nobody says how much. */
  readonly amount: string;
  readonly name: string;
  /** What is done to it beforehand, or which share it is. */
  readonly soft: string;
}

/** Shares that differ by less are one. */
const SLACK = 0.02;

export function takesOf(recipe: Recipe, part: Part, line: number): readonly Take[] {
  const isHere = (use: { readonly part: number; readonly line: number }) =>
    use.part === part.index && use.line === line;
  const foods = recipe.parts.flatMap((of) =>
    of.ledger.flatMap(({ ingredient, uses }) =>
      ingredient.ofPart === undefined
        ? uses
            .filter((use) => isHere(use) && use.taken.high > 0)
            .map((use) => foodTake(recipe, of, ingredient, use, part))
        : [],
    ),
  );
  const made = recipe.parts.flatMap((of) =>
    of.usesByLater
      .filter(({ ingredient, use }) => ingredient === undefined && isHere(use))
      // What it weighs by now, nobody has weighed.
      .map(
        ({ use }): Take => ({
          amount: portionText(use.mention.portion, lineOf(part, use.line)),
          name: of.head.name,
          soft: '',
        }),
      ),
  );
  return unique([...made, ...foods]);
}

function foodTake(recipe: Recipe, of: Part, ingredient: Ingredient, use: TakenUse, part: Part): Take {
  const { low, high } = use.taken;
  const isWhole = low >= 1 - SLACK;
  const whole = pageAmount(ingredient, lineOf(of, ingredient.line), recipe.world, 'weight-first').first;
  const said = portionText(use.mention.portion, lineOf(part, use.line));
  const soft = saidOf(ingredient, of.head);
  if (isWhole) return { amount: whole, name: ingredient.name, soft };
  const isSettled = high - low < SLACK && low > 0;
  const share = isSettled && ingredient.weighed.known ? gramsOf(ingredient, low) : '';
  // What is said by its own amount is taken so; of a share the scale's figure stands first.
  if (use.mention.portion.kind === 'amount') return { amount: said, name: ingredient.name, soft };
  const amount = share === '' ? said : share;
  return {
    amount,
    name: ingredient.name,
    soft: share === '' || said === '' ? soft : `${said}${whole === '' ? '' : ` of ${whole}`}`,
  };
}

const lineOf = ({ head }: Part, line: number): string => head.source.lines[line]?.text ?? '';

function gramsOf({ weighed }: Ingredient, share: number): string {
  if (!weighed.known) return '';
  const grams = likelyGrams(weighed) * share;
  const isExact = weighed.grams.high - weighed.grams.low < SLACK * weighed.grams.high;
  return `${isExact ? '' : 'about '}${gramsText(grams)} g`;
}

/** As the step says it: `the rest`, `half`, `30 g`. */
function portionText(portion: Portion, line: string): string {
  switch (portion.kind) {
    case 'rest':
      return 'the rest';
    case 'amount':
      return prettyAmount(portion.measured, line);
    case 'share':
      return portion.of === 0.5 ? (portion.remaining ? 'half of what is left' : 'half') : 'a share';
    case 'some':
      return 'some';
    default:
      return '';
  }
}

/** A food that a step speaks of twice is taken once. */
const unique = (takes: readonly Take[]): readonly Take[] =>
  takes.filter((take, i) => takes.findIndex((other) => other.name === take.name && other.amount === take.amount) === i);
