/**
 * Knows how mistakes of a house become findings: those of `quern.json` on that file, those of its foods on their blocks.
 * Refuses to give them codes: they are no findings of a recipe, and no `allow` accepts them.
 */
import type { Diagnostic } from 'vscode-languageserver';
import type { PlacedFault } from '../workspace/settings-places.ts';
import type { FoodFault } from '../workspace/store.ts';
import { rangeOf } from './convert.ts';

const WARNING = 2;

export const houseDiagnostics = (faults: readonly PlacedFault[]): Diagnostic[] =>
  faults.map(({ words, start, end }) => ({
    range: { start, end },
    severity: WARNING,
    source: 'quern',
    message: words,
  }));

export const foodDiagnostics = (faults: readonly FoodFault[]): Diagnostic[] =>
  faults.map((fault) => ({
    range: rangeOf(fault),
    severity: WARNING,
    source: 'quern',
    message: `This food could not be used as it stands: ${fault.words}.`,
  }));
