/**
 * Knows the trials of a file, read once for all checks of it, and what was changed since one of them.
 */
import type { Block, Outline } from '../../notation/outline.ts';
import type { Recipe } from '../../recipe/model.ts';
import { changedSince, type Fact, factsOfPart, readTrials, type Trial } from '../../recipe/trials/trials.ts';
import { onceFor, onceWith } from '../once.ts';
import { type Given, type Last, lent, overParts } from '../over-parts.ts';

/** Oldest first; the same objects for as long as no trial changes or moves. */
export const trialsOf = ({ trials }: Outline): readonly Trial[] => readOnce(trials);

const readOnce = onceFor((trials: readonly Block[]): readonly Trial[] => readTrials({ trials }));

/** The facts of a recipe; the same list for as long as none of them changes. */
export const factsIn = (recipe: Recipe): readonly Fact[] => gathered(recipe).facts;

/** Facts that a trial's marks do not have. */
export const changedIn = onceWith((tested: readonly string[], facts: readonly Fact[]): readonly Fact[] =>
  changedSince(facts, tested),
);

interface Gathered {
  readonly byPart: readonly Given<readonly Fact[]>[];
  readonly facts: readonly Fact[];
}

const gathered = lent((recipe: Recipe, last?: Last<Gathered>): Gathered => {
  const byPart = factsByPart(recipe);
  const old = last?.value;
  const same = old?.byPart.length === byPart.length && byPart.every((given, i) => isSame(given, old.byPart[i]));
  return { byPart, facts: same ? old.facts : byPart.flatMap(({ value }) => value) };
});

const factsByPart = overParts((part): readonly Fact[] | undefined => {
  const facts = factsOfPart(part);
  return facts.length === 0 ? undefined : facts;
});

function isSame(now: Given<readonly Fact[]>, last: Given<readonly Fact[]> | undefined): boolean {
  if (now === last) return true;
  return (
    now.value.length === last?.value.length &&
    now.value.every((fact, i) => {
      const old = last.value[i];
      return fact.part === old?.part && fact.line === old.line && fact.mark === old.mark;
    })
  );
}
