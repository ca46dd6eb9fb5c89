/**
 * Knows the published formulas of `published-formulas.tsv`, the kinds of ours that they are, and what we work out of them.
 * Refuses to judge: the test does.
 */
import { readFileSync } from 'node:fs';
import { bandValuesIn } from '../../../server/src/checks/formula/arithmetic.ts';
import { contentsOf } from '../../../server/src/recipe/measures/contents.ts';
import { MEASURES } from '../../../server/src/recipe/measures/definitions.ts';
import type { MeasureName } from '../../../server/src/recipe/measures/kind.ts';
import { kindNamed } from '../../../server/src/recipe/measures/kinds.ts';
import { measure } from '../../../server/src/recipe/measures/measures.ts';
import type { MeasureValue } from '../../../server/src/recipe/measures/worked-ratio.ts';
import type { Snapshot } from '../../../server/src/workspace/snapshot.ts';

export interface Formula {
  readonly id: string;
  /** The name that the table gives it, and the kind of ours. */
  readonly kind: string;
  readonly as: string;
  /** The print is likely wrong: no band may rest on it. */
  readonly suspect: boolean;
  readonly source: string;
  /** `170 plain flour`: grams and name. */
  readonly lines: readonly string[];
  /** What another hand worked out of the same grams. */
  readonly derived: readonly { readonly name: string; readonly value: number }[];
}

/** Kinds of the table that have another name with us. */
const AS: Readonly<Record<string, string>> = {
  'rich/flaky pie dough': 'shortcrust',
  'brownie/bar': 'brownie',
  burger: 'sausage',
  'crumble/streusel': 'crumble',
  curd: 'fruit curd',
  'fruit pie filling': 'fruit filling',
  'mashed potato': 'mash',
  'pate/terrine': 'terrine',
  'praline/brittle': 'brittle',
  'syrup/cordial': 'syrup',
};

/** Those that are of a kind of their own with us. */
const OWN: Readonly<Record<string, string>> = {
  'beeton-1212-common-short-crust': 'shortcrust',
  'beeton-1207-family-paste': 'suet crust',
  'beeton-1213-butter-crust': 'suet crust',
  'beeton-1214-dripping-crust': 'suet crust',
  'beeton-1215-suet-crust': 'suet crust',
  'beeton-1218-flead-crust': 'suet crust',
  'beeton-1216-raised-pie-crust': 'hot-water crust',
  'beeton-1217-raised-pie': 'hot-water crust',
  'bbb-131-raised-pies': 'hot-water crust',
  'bbb-216-caramels': 'caramels',
  'candyhome-vanilla-caramels': 'caramels',
  'candyhome-jelly-caramels': 'caramels',
  'candyhome-chocolate-caramels': 'caramels',
  'wi5-plain-caramels': 'caramels',
  'beeton-1597-toffee': 'toffee',
  'farmer-butter-scotch': 'toffee',
  'wi5-peach-butter': 'fruit butter',
  'wi5-plum-butter': 'fruit butter',
};

export const FORMULAS: readonly Formula[] = readFileSync(new URL('published-formulas.tsv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line) => {
    const [id = '', kind = '', print, source = '', list = '', measures = ''] = line.split('\t');
    return {
      id,
      kind,
      as: OWN[id] ?? AS[kind] ?? kind,
      suspect: print === 'suspect',
      source,
      lines: list.split('; '),
      derived: measures.split('; ').flatMap((m) => {
        const cut = m.lastIndexOf(' ');
        return cut < 0 ? [] : [{ name: m.slice(0, cut), value: Number(m.slice(cut + 1)) }];
      }),
    };
  });

/** Those of a kind that the project has. */
export const KNOWN = FORMULAS.filter(({ as }) => kindNamed(as) !== undefined);

export const recipeOf = ({ id, as, lines }: Formula): string =>
  `recipe ${id}\npart mix as ${as}\n${lines.map((l) => `  ${l.replace(' ', ' g  ')}\n`).join('')}`;

export const isMeasure = (name: string): name is MeasureName => name in MEASURES;

/** What of its kind's formula family is found in it as an error or a warning, of measures that the print gives. */
export function foundIn(formula: Formula, snapshot: Snapshot): string[] {
  const ofKind = new Set(
    FORMULAS.filter(({ as }) => as === formula.as).flatMap(({ derived }) => derived.map((d) => d.name)),
  );
  const printed = new Set(formula.derived.map((d) => d.name));
  return snapshot.findings.open
    .filter(({ check, severity }) => check.family === 'formula' && severity !== 'info')
    .filter(({ found }) => {
      // Water `to mix` and salt `to taste` are not in the list, so that what hangs on them cannot be told.
      const held = bandValuesIn(found.values)?.measure.measure;
      return held === undefined || printed.has(held) || !ofKind.has(held);
    })
    .map(({ severity, code, said }) => `${severity} ${code}: ${said.message}`);
}

/** A measure of the formula as we work it out. */
export function workedOf({ recipe }: Snapshot, name: MeasureName): MeasureValue {
  const part = recipe.parts.at(-1);
  if (part === undefined) throw new Error('there is no part');
  return measure(name, contentsOf(part));
}
