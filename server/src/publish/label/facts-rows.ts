/**
 * Knows the rows of a label in the order of each law: 21 CFR 101.9(c), Regulation (EU) 1169/2011, annex XV.
 */

import type { Label } from '../declared.ts';
import type { LabelFigure } from '../label.ts';
import type { LabelField } from '../report-shape.ts';

export interface FactsRow {
  readonly name: string;
  /** How far it stands within the row above. */
  readonly within: 0 | 1 | 2;
  readonly figure: LabelFigure | null;
  /** What says for which ingredients it is not known. */
  readonly from: LabelField;
}

type Field = Exclude<keyof Label, 'of' | 'basis' | 'mass_g'>;
type Row = readonly [name: string, within: 0 | 1 | 2, field: Field, from?: LabelField];

const US: readonly Row[] = [
  ['Calories', 0, 'energy'],
  ['Total Fat', 0, 'fat'],
  ['Saturated Fat', 1, 'saturates'],
  ['Trans Fat', 1, 'trans_fat'],
  ['Cholesterol', 0, 'cholesterol'],
  ['Sodium', 0, 'sodium', 'salt'],
  ['Total Carbohydrate', 0, 'carbohydrate'],
  ['Dietary Fiber', 1, 'fibre'],
  ['Total Sugars', 1, 'sugars'],
  ['Added Sugars', 2, 'added_sugars'],
  ['Protein', 0, 'protein'],
  ['Vitamin D', 0, 'vitamin_d'],
  ['Calcium', 0, 'calcium'],
  ['Iron', 0, 'iron'],
  ['Potassium', 0, 'potassium'],
];

const EU: readonly Row[] = [
  ['Energy', 0, 'energy'],
  ['Fat', 0, 'fat'],
  ['of which saturates', 1, 'saturates'],
  ['Carbohydrate', 0, 'carbohydrate'],
  ['of which sugars', 1, 'sugars'],
  ['Fibre', 0, 'fibre'],
  ['Protein', 0, 'protein'],
  ['Salt', 0, 'salt'],
];

const rowsOf = (rows: readonly Row[], label: Label): readonly FactsRow[] =>
  rows.map(([name, within, field, from]) => ({
    name,
    within,
    figure: label[field],
    from: from ?? (field as LabelField),
  }));

export const usRows = (label: Label): readonly FactsRow[] => rowsOf(US, label);
export const euRows = (label: Label): readonly FactsRow[] => rowsOf(EU, label);
