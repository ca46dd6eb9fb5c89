/**
 * Knows the method of a recipe on its page: by part, figures of heat and time in bold, and marked what was found.
 * Refuses to read a sentence.
 */
import { escapeHtml } from '../escape-html.ts';
import type { PageSection, PageStep } from '../reader-page.ts';
import type { Piece } from '../step-text.ts';
import type { Reading } from './facts.ts';
import type { ViewFinding } from './finding.ts';
import { gravest, type Notes } from './found.ts';
import { picturesOf } from './pictures.ts';
import { lineWords, partHeading, partKey, rowMarks } from './rows.ts';

/** Empty for readers where there is none. */
export function methodSection(reading: Reading, notes: Notes): string {
  const told = reading.page.sections.filter((s) => s.method.length > 0);
  const none = '<p class="empty"><b>No step is written.</b> A step starts with <b>do</b>.</p>';
  if (told.length === 0 && reading.mode === 'read') return '';
  const parts = told.map((section) => {
    const heading = told.length === 1 && reading.mode === 'read' ? '' : partHeading(section, reading, notes);
    const key = reading.mode === 'live' ? ` data-key="steps-${partKey(section, reading)}"` : '';
    const rows = section.method.map((step, i) => row(step, i, section, reading, notes));
    return `${heading}<ol class="steps"${key}>\n${rows.join('\n')}\n</ol>`;
  });
  return `<section aria-labelledby="method">
<h2 id="method">Method</h2>
${told.length === 0 ? none : `<div class="read">\n${parts.join('\n')}\n</div>`}
</section>`;
}

function row(step: PageStep, index: number, section: PageSection, reading: Reading, notes: Notes): string {
  const { line, pieces } = step;
  const found = line === section.line ? [] : notes.on(line);
  const words = pieces.map((piece) => pieceHtml(piece, step, found, reading.differs.pieces.has(piece))).join('');
  const key = `s-${partKey(section, reading)}-${index}`;
  const told = notes.tell(line) + picturesOf(reading, line);
  return `<li${rowMarks(key, line, section, reading)}>${lineWords(words, line, reading, index === 0)}${told}</li>`;
}

function pieceHtml(piece: Piece, step: PageStep, findings: readonly ViewFinding[], differs: boolean): string {
  const said = figureHtml(piece);
  const level = gravest(findings.filter((finding) => marks(finding, piece, step)));
  const classes = [...(level === undefined ? [] : ['at', level]), ...(differs ? ['looked'] : [])];
  return classes.length === 0 ? said : `<span class="${classes.join(' ')}">${said}</span>`;
}

function figureHtml({ kind, text }: Piece): string {
  const said = escapeHtml(text);
  if (kind === 'heat' || kind === 'time') return `<b>${said}</b>`;
  return kind === 'aside' ? `<span class="soft">${said}</span>` : said;
}

/** What is found of a whole step is marked at its figures, where it has any. */
function marks({ start, end }: ViewFinding, piece: Piece, { pieces }: PageStep): boolean {
  if (piece.kind === 'aside' || piece.start >= end || piece.end <= start) return false;
  const isWhole = start <= (pieces[0]?.start ?? 0) && end >= (pieces.at(-1)?.start ?? 0);
  return !isWhole || piece.kind !== undefined || pieces.every(({ kind }) => kind === undefined);
}
