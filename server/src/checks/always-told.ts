/**
 * Knows which findings no house turns off and no baseline takes up: what can hurt someone, and that a file was not read at all.
 */
import type { Family } from './check.ts';

export const WRONG_ENCODING = 'wrong-encoding';

export const isAlwaysTold = ({ family, code }: { readonly family: Family; readonly code: string }): boolean =>
  family === 'safety' || code === WRONG_ENCODING;
