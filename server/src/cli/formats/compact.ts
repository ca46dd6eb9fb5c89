/**
 * Knows findings as one line each, for grep, lists of places and problem matchers: nothing else is printed.
 */
import type { CheckedFile } from '../checked-file.ts';

export function compact(files: readonly CheckedFile[]): string {
  return files
    .flatMap(({ shown, open }) =>
      open.map(
        ({ at, severity, code, message }) =>
          `${shown}:${at.line + 1}:${at.start + 1}: ${severity}: ${oneLine(message)} [${code}]\n`,
      ),
    )
    .join('');
}

const oneLine = (text: string): string => text.replace(/\s*[\r\n]+\s*/g, ' ');
