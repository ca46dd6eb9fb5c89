/**
 * Knows what becomes of a recipe with a fault in it: whether it is found by its code, and what else is newly found beside it.
 */
import { fingerprint } from '../../../server/src/recipe/trials/trials.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { openAs, type PublishedRecipe, RECIPES } from './corpus.ts';
import type { Fault } from './faults.ts';

export interface Judgement {
  readonly fault: Fault;
  readonly found: boolean;
  /** The sound recipe has the code already: then it proves nothing. */
  readonly before: boolean;
  /** Codes of warnings and errors beside the one expected that the sound recipe does not have. */
  readonly beside: readonly string[];
}

/** What went wrong, or undefined. */
export function miss({ fault, found, before, beside }: Judgement): string | undefined {
  const name = `${fault.recipe}: ${fault.title}`;
  if (before) return `${name}: ${fault.code} is in the sound recipe already`;
  if (!found) return `${name}: ${fault.code} is not found${beside.length === 0 ? '' : `, but ${beside.join(', ')}`}`;
  return beside.length > MOST_BESIDE ? `${name}: ${beside.join(', ')} are found beside ${fault.code}` : undefined;
}

/** One slip may show in two more ways. */
export const MOST_BESIDE = 2;

/** Throws when the recipe or the words of an edit are not there exactly once. */
export function judge(fault: Fault): Judgement {
  const recipe = recipeOf(fault);
  const broken = brokenBy(fault);
  const before = new Set(recipe.snapshot.findings.open.map((f) => f.code));
  const after = broken.findings.open;
  return {
    fault,
    found: after.some((f) => f.code === fault.code),
    before: before.has(fault.code),
    beside: [
      ...new Set(
        after
          .filter((f) => (f.severity === 'warning' || f.severity === 'error') && f.code !== fault.code)
          .map((f) => f.code)
          .filter((code) => !before.has(code)),
      ),
    ],
  };
}

/** The recipe with the fault in it. */
export function brokenBy(fault: Fault): Snapshot {
  const recipe = recipeOf(fault);
  return openAs(recipe.file, breakText(recipe, fault));
}

function recipeOf(fault: Fault): PublishedRecipe {
  const recipe = RECIPES.find((r) => r.file === fault.recipe);
  if (recipe === undefined) throw new Error(`no recipe ${fault.recipe}`);
  return recipe;
}

function breakText({ text, snapshot }: PublishedRecipe, { recipe, title, edits }: Fault): string {
  let broken = text;
  for (const [find, replace] of edits) {
    const parts = broken.split(find);
    if (parts.length !== 2) throw new Error(`${recipe}: ${title}: \`${find}\` stands there ${parts.length - 1} times`);
    broken = parts.join(replace.replace('{tested}', () => fingerprint(snapshot.recipe)));
  }
  return broken;
}
