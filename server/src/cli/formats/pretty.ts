/**
 * Knows how findings look in a terminal, where nothing of a recipe or a name changes how the rest looks: a line a finding that an editor's problem matcher can read, then the summary.
 */
import type { Severity } from '../../checks/severity.ts';
import { visibleLine } from '../../publish/visible.ts';
import type { Io } from '../io.ts';
import { plural } from './plural.ts';
import { type Counts, inLines, type Printing } from './printing.ts';
import { placeName, wordsOf } from './related.ts';

const COLORS: Readonly<Record<Severity, string>> = { error: '31', warning: '33', info: '36', hint: '2' };

export function pretty(io: Pick<Io, 'color' | 'shown'>): Printing {
  const paint = (text: string, color: string) => (io.color ? `\u001b[${color}m${text}\u001b[0m` : text);
  const files = inLines(({ shown, open }) => {
    const lines = open.map((finding) => {
      const { at, severity, code } = finding;
      const words = visibleLine(wordsOf(finding, io.shown));
      return `${placeName(shown)}:${at.line + 1}:${at.start + 1}: ${paint(severity, COLORS[severity])}: ${words} ${paint(`[${code}]`, '2')}\n`;
    });
    return lines.length === 0 ? '' : `${lines.join('')}\n`;
  });
  return {
    add: files.add,
    text: (counts, problems) => `${files.text(counts, problems)}${summary(counts)}\n`,
  };
}

function summary(counts: Counts): string {
  const found = (['error', 'warning', 'info', 'hint'] as const)
    .filter((s) => counts[s] > 0)
    .map((s) => plural(counts[s], s));
  const accepted = counts.accepted === 0 ? '' : `; ${plural(counts.accepted, 'finding')} accepted with a reason`;
  const baselined = counts.baselined === 0 ? '' : `; ${counts.baselined} known from the baseline`;
  return `${plural(counts.files, 'file')} checked: ${found.length === 0 ? 'nothing found' : found.join(', ')}${accepted}${baselined}.`;
}
