/**
 * Knows the trials of a file, read once for all checks of it.
 */
import { readTrials } from '../../recipe/trials.ts';
import { onceFor } from '../once.ts';

/** Oldest first. */
export const trialsOf = onceFor(readTrials);
