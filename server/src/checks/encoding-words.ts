/**
 * Knows how it is said that a file is not UTF-8.
 */
import type { OtherEncoding } from './check.ts';

/** After the name of the file: `is UTF-16, …`. */
export function encodingWords({ name, isRead, byte, line }: OtherEncoding): string {
  if (isRead) return `is ${name}: it is read, but nothing is written into it until it is saved as UTF-8`;
  if (name !== undefined) return `is ${name} and is not read: save it as UTF-8`;
  const where = `byte ${(byte ?? 0).toString(16).toUpperCase().padStart(2, '0')} on line ${(line ?? 0) + 1}`;
  return `is not UTF-8 and is not read: ${where} is of another encoding, such as Windows-1252; save it as UTF-8`;
}
