/**
 * Knows how it is said that a file could not be read as it lies there.
 */
import { encodingWords } from '../checks/encoding-words.ts';
import type { ReadFault } from './ports.ts';

/** After the name of the file: `is UTF-16, …`, `cannot be read: …`. */
export const faultWords = (fault: ReadFault): string =>
  fault.kind === 'encoding' ? encodingWords(fault.encoding) : `cannot be read: ${fault.why}`;
