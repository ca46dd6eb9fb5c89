/**
 * Knows what a recipe lacks to be promised to a reader: cooked as written, and nothing left that would fail.
 * Refuses to weigh one lack against another.
 */
import type { Finding, Findings } from '../checks/finding.ts';
import type { Recipe } from '../recipe/model.ts';
import { type RecipeState, recipeRecord } from '../recipe/trials/state.ts';
import type { Trial } from '../recipe/trials/trials.ts';
import { dateText } from './date-text.ts';

export interface Proof {
  readonly state: RecipeState;
  /** The trial that cooked it as it stands. */
  readonly by?: { readonly date: string; readonly name?: string };
  /** What is missing, each in words; empty when the recipe is proved. */
  readonly missing: readonly string[];
}

/** A finding, and where it was written: `line 7`, `line 7 of base.quern`. */
export interface PlacedFinding {
  readonly finding: Finding;
  readonly where: string;
}

/** The findings of a file that builds on no other. */
export const placedIn = ({ open }: Findings): PlacedFinding[] =>
  open.map((finding) => ({ finding, where: `line ${finding.at.line + 1}` }));

/** `trials` are those of the recipe's own file: what a base was cooked as proves nothing of a variant. */
export function proofOf(recipe: Recipe, findings: readonly PlacedFinding[], trials: readonly Trial[]): Proof {
  const { state, asWritten } = recipeRecord(recipe, trials);
  const missing: string[] = [];
  if (state === 'never cooked') missing.push('no trial: nobody has written down cooking it');
  else if (state === 'cooked, changed since') missing.push('no trial tested it as it stands now');
  if (asWritten !== undefined && asWritten.verdict !== 'keep')
    missing.push(
      asWritten.verdict === undefined
        ? `the trial of ${asWritten.date} has no verdict`
        : `the trial of ${asWritten.date} ends with \`verdict ${asWritten.verdict}\``,
    );
  if (recipe.name === '') missing.push('it has no name');
  if (recipe.yield === undefined) missing.push('no yield is written');
  if (!recipe.parts.some((p) => p.steps.length > 0)) missing.push('it has no steps');
  for (const { finding, where } of findings)
    if (finding.severity === 'error' || finding.severity === 'warning')
      missing.push(`${where}: ${finding.said.message} [${finding.code}]`);
  const by =
    asWritten === undefined
      ? undefined
      : { date: asWritten.date, ...(asWritten.by !== undefined && { name: asWritten.by }) };
  return { state, ...(by && { by }), missing };
}

/** What a page says of it, in one sentence. */
export function stateText({ state, by }: Proof): string {
  switch (state) {
    case 'never cooked':
      return 'Not yet cooked as written.';
    case 'cooked, changed since':
      return 'Cooked, and changed since: not yet cooked as it stands here.';
    case 'cooked as written':
      return `Cooked as written${by === undefined ? '' : ` on ${dateText(by.date)}${by.name === undefined ? '' : ` by ${by.name}`}`}.`;
  }
}
