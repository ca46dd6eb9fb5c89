/**
 * Knows findings as the workflow commands that annotate lines on GitHub.
 * Source: GitHub Docs, "Workflow commands for GitHub Actions" (from memory).
 */
import type { Severity } from '../../checks/severity.ts';
import { visible } from '../../publish/visible.ts';
import type { CheckedFile } from '../checked-file.ts';
import { type Shown, wordsOf } from './related.ts';

const COMMANDS: Readonly<Record<Severity, string>> = {
  error: 'error',
  warning: 'warning',
  info: 'notice',
  hint: 'notice',
};

export function github({ shown, open }: CheckedFile, shownAs: Shown): string {
  return open
    .map((finding) => {
      const { at, severity, code } = finding;
      const properties = {
        file: shown,
        line: at.line + 1,
        endLine: at.line + 1,
        col: at.start + 1,
        endColumn: Math.max(at.end, at.start + 1) + 1,
        title: `quern: ${code}`,
      };
      const list = Object.entries(properties).map(
        ([name, value]) => `${name}=${escapeProperty(visible(String(value)))}`,
      );
      return `::${COMMANDS[severity]} ${list.join(',')}::${escapeData(visible(wordsOf(finding, shownAs)))}\n`;
    })
    .join('');
}

const escapeData = (text: string): string =>
  text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
const escapeProperty = (text: string): string => escapeData(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
