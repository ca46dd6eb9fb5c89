/** What a step takes of an ingredient where it is named, and what is left of it then. */
import { portionEdit, shareText, sureShares } from '../../edits/portion-text.ts';
import type { LedgerEntry, Part, Recipe, TakenUse } from '../../recipe/model.ts';
import { sayPortion } from '../facts.ts';
import type { Hint } from './hint.ts';

export function takenHints(recipe: Recipe, part: Part): Hint[] {
  return part.steps.flatMap((step, index) =>
    step.mentions.flatMap((mention): Hint[] => {
      const [ref, ...more] = mention.ingredients;
      const entry = ref === undefined || more.length > 0 ? undefined : recipe.parts[ref.part]?.ledger[ref.ingredient];
      const at = entry?.uses.findIndex((u) => u.part === part.index && u.step === index && u.mention === mention) ?? -1;
      const use = entry?.uses[at];
      if (entry === undefined || use === undefined) return [];
      const label = takenLabel(entry, use, at);
      if (label === undefined) return [];
      const lead = writes(entry, use);
      return [
        {
          line: step.line,
          of: mention,
          label,
          ...(lead !== undefined && { edits: () => [portionEdit(recipe, use, `${lead} of the `)] }),
        },
      ];
    }),
  );
}

/** `75 g, 25 g left`; what the sentence says itself is not said again, and nothing where nothing is taken or sure. */
function takenLabel({ ingredient, uses, left, unsure }: LedgerEntry, use: TakenUse, at: number): string | undefined {
  const { taken, mention } = use;
  if (taken.high <= 0.001 || use.over || !ingredient.weighed.known) return undefined;
  if (mention.portion.kind === 'some' || taken.high - taken.low > 0.5 || (unsure && at === uses.length - 1))
    return undefined;
  const after = uses[at + 1]?.before ?? left;
  const rest = after.high > 0.02 ? `${sayPortion(ingredient, after)} left` : undefined;
  const said = mention.portion.kind === 'amount' ? undefined : sayPortion(ingredient, taken);
  const words = [said, rest].filter((w) => w !== undefined);
  return words.length === 0 ? undefined : words.join(', ');
}

/** The amount that may stand in the sentence; undefined where it does, or where only a part of the sense would. */
function writes({ ingredient }: LedgerEntry, use: TakenUse): string | undefined {
  const { portion, forced, verb } = use.mention;
  if (portion.kind === 'amount' || forced || verb) return undefined;
  const [share] = sureShares([use]) ?? [];
  return share === undefined ? undefined : shareText(ingredient, share);
}
