/**
 * A measure that is far off is always told: of every kind, each measure is brought past each of its far ends, by the tenth or the tenfold of one
 * line (or more, until it is out) of three published formulas. Something is warned of that is not of the formula as it stands.
 */
import { describe, expect, test } from 'vitest';
import { KINDS } from '../../../server/src/recipe/measures/kinds.ts';
import { open } from '../../support/harness.ts';
import { broughtFar, type Far, told, triedOn, verdictIn } from './far-measures.ts';
import { recipeOf } from './published-formulas.ts';

/** So many of each kind, for each end of a measure. */
const FORMULAS_EACH = 3;

const FARS: readonly Far[] = ['too low', 'too high'];

describe.each(KINDS.map((kind) => [kind.name, kind] as const))('%s', (name, kind) => {
  const formulas = triedOn(name).map((formula) => ({ formula, sound: open(recipeOf(formula)) }));
  const ends = kind.measures.flatMap((held) =>
    FARS.filter((_, side) => held.implausible[side] !== null).map(
      (far) => [`${held.measure} ${far}`, held, far] as const,
    ),
  );

  test.each(ends)('%s is told', (_end, held, far) => {
    let tried = 0;
    const silent: string[] = [];
    for (const { formula, sound } of formulas) {
      if (tried === FORMULAS_EACH) break;
      if (verdictIn(sound, held) === far) continue;
      const brought = broughtFar(formula, held, far);
      if (brought === undefined) continue;
      tried++;
      const before = new Set(told(sound));
      if (told(brought.snapshot).every((each) => before.has(each))) silent.push(`${formula.id}: ${brought.line}`);
    }
    expect(silent).toEqual([]);
    expect(tried, 'no formula was brought there').toBeGreaterThan(0);
  });
});
