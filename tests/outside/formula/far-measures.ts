/**
 * Knows how a formula is brought past a far end of a measure of its kind, by one line of it, and what is told of it then.
 * Refuses to judge: the test does.
 */
import { bandValuesIn } from '../../../server/src/checks/formula/arithmetic.ts';
import { contentsOf } from '../../../server/src/recipe/measures/contents.ts';
import type { KindMeasure, MeasureName } from '../../../server/src/recipe/measures/kind.ts';
import { type Verdict, verdictOn } from '../../../server/src/recipe/measures/kinds.ts';
import { measure } from '../../../server/src/recipe/measures/measures.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';
import { open } from '../../support/harness.ts';
import { FORMULAS, type Formula, recipeOf } from './published-formulas.ts';

export type Far = 'too low' | 'too high';

/** Of kinds and measures that no published formula of the table has: made up, in the middle of their bands. */
const MADE_UP: Readonly<Record<string, readonly string[]>> = {
  cordial: ['500 water; 500 caster sugar; 150 lemon juice; 15 citric acid', '500 water; 600 sugar; 200 lime juice'],
  ganache: ['300 dark chocolate; 200 double cream', '200 dark chocolate; 200 double cream; 20 butter'],
  roast: ['1500 beef; 15 fine salt; 30 oil', '1800 chicken; 18 fine salt; 20 butter'],
  jelly: ['6 agar; 700 apple juice; 90 caster sugar'],
  'set cream': ['4 agar; 400 double cream; 400 whole milk; 80 caster sugar'],
  rub: ['1500 pork shoulder; 20 fine salt; 15 paprika; 10 brown sugar'],
  marinade: ['1000 chicken thigh; 60 lemon juice; 60 olive oil; 12 fine salt'],
};

/** Those that a kind is tried on, without those of which a print is likely wrong. */
export const triedOn = (kind: string): readonly Formula[] => [
  ...FORMULAS.filter(({ as, suspect }) => as === kind && !suspect),
  ...(MADE_UP[kind] ?? []).map((list, i) => ({
    id: `${kind}, made up ${i + 1}`,
    kind,
    as: kind,
    suspect: false,
    source: 'made up',
    lines: list.split('; '),
    derived: [],
  })),
];

/** The tenth and the tenfold, and past them until it is out. */
const TIMES = [0.1, 10, 0.03, 30, 0.01, 100, 0.001, 1000];
/** Of the whole, what is put to a list that has none of it. */
const SHARES = [0.1, 0.3, 1, 3];
const PUT_TO: Readonly<Partial<Record<MeasureName, string>>> = {
  'salt share': 'fine salt',
  'cure salt': 'fine salt',
  'baking soda': 'baking soda',
  'baking powder': 'baking powder',
  yeast: 'instant yeast',
  'acid share': 'citric acid',
  'milk solids': 'skimmed milk powder',
  'lactose in water': 'skimmed milk powder',
};

export interface Brought {
  /** The line that was changed, as it stands now. */
  readonly line: string;
  readonly snapshot: Snapshot;
}

/** With one line changed so that the measure lies past its far end, by no more than it must; undefined where no line does that. */
export function broughtFar(formula: Formula, held: KindMeasure, far: Far): Brought | undefined {
  const { lines } = formula;
  const tried = (changed: readonly string[], line: string): Brought | undefined => {
    const snapshot = open(recipeOf({ ...formula, lines: changed }));
    return verdictIn(snapshot, held) === far ? { line, snapshot } : undefined;
  };
  for (const by of TIMES)
    for (const [at, line] of lines.entries()) {
      const [grams = '', ...name] = line.split(' ');
      const changed = `${rounded(Number(grams) * by)} ${name.join(' ')}`;
      const brought = tried(lines.with(at, changed), changed);
      if (brought !== undefined) return brought;
    }
  const whole = lines.reduce((sum, line) => sum + Number.parseFloat(line), 0);
  const put = PUT_TO[held.measure];
  for (const share of put === undefined ? [] : SHARES) {
    const added = `${rounded(whole * share)} ${put}`;
    const brought = tried([...lines, added], added);
    if (brought !== undefined) return brought;
  }
  return undefined;
}

const rounded = (grams: number): number => Number(grams.toPrecision(4));

/** Where a measure of the last part lies. */
export function verdictIn({ recipe }: Snapshot, held: KindMeasure): Verdict | undefined {
  const part = recipe.parts.at(-1);
  const worked = part && measure(held.measure, contentsOf(part));
  return worked?.known ? verdictOn(worked, held) : undefined;
}

/** Errors and warnings, each as its code and, of a band, the measure and its side. */
export const told = ({ findings }: Snapshot): readonly string[] =>
  findings.open
    .filter(({ severity }) => severity === 'error' || severity === 'warning')
    .map(({ code, found }) => {
      const band = bandValuesIn(found.values);
      return [code, band?.measure.measure, band?.verdict].filter((word) => word !== undefined).join(' ');
    });
