/**
 * Knows findings as one line each, for grep, lists of places and problem matchers: nothing else is printed.
 */
import { visibleLine } from '../../publish/visible.ts';
import type { CheckedFile } from '../checked-file.ts';
import { placeName, type Shown, wordsOf } from './related.ts';

export function compact({ shown, open }: CheckedFile, shownAs: Shown): string {
  return open
    .map((finding) => {
      const { at, severity, code } = finding;
      const words = visibleLine(wordsOf(finding, shownAs));
      return `${placeName(shown)}:${at.line + 1}:${at.start + 1}: ${severity}: ${words} [${code}]\n`;
    })
    .join('');
}
