/**
 * Knows how a figure is mended that fits as it stands, in the other scale of a thermometer.
 * Refuses to know which is meant.
 */
import { replaceSpan } from '../edits/text-edit.ts';
import { trimmed } from '../measure/number-text.ts';
import type { TemperatureNode } from '../notation/tree.ts';
import type { Fix } from './check.ts';

/** The fix, in a list; none where no scale is meant. */
export const inScale = (node: TemperatureNode, meant: 'C' | 'F' | undefined, line: number): readonly Fix[] =>
  meant === undefined
    ? []
    : [
        {
          title: `Write ${trimmed(node.lowDegrees, 1)} ${meant}`,
          effect: 'amounts',
          edits: [replaceSpan(line, node.unitSpan, meant)],
        },
      ];
