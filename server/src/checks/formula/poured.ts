/**
 * Knows whether a step pours in what is measured there: water is often on no list.
 */
import { dimensionOf } from '../../measure/unit.ts';
import type { Step } from '../../recipe/model.ts';

/** `Bind with 300 ml water`: water is often on no list. */
export const pours = ({ sentence }: Step): boolean =>
  sentence.items.some(
    (item) => item.kind === 'measured' && item.unit !== undefined && dimensionOf(item.unit.symbol) === 'volume',
  );
