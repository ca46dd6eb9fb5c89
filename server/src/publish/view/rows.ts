/**
 * Knows what the rows of list and method share: words that lead to their line, the caret's row, the heading of a part, and keys by which a
 * row stays the same.
 * Refuses to know what stands in a row.
 */
import { escapeHtml } from '../escape-html.ts';
import type { PageSection } from '../reader-page.ts';
import type { Reading } from './facts.ts';
import type { Notes } from './found.ts';

/** Words that lead to their line where there is a text; the first of a list is the stop of all of it. */
export function lineWords(html: string, line: number, { mode }: Reading, isStop: boolean, level?: string): string {
  if (mode !== 'live') return level === undefined ? html : `<span class="at ${level}">${html}</span>`;
  const classes = level === undefined ? 'at' : `at ${level}`;
  return `<a class="${classes}" href="#line-${line}" data-line="${line}" tabindex="${isStop ? 0 : -1}">${html}</a>`;
}

/** The attributes of a row; what comes from another file has no line of its own. */
export function rowMarks(key: string, line: number, section: PageSection, { mode, line: caret }: Reading): string {
  if (mode !== 'live') return '';
  return ` data-key="${key}"${line !== section.line && line === caret ? HERE : ''}`;
}

const HERE = ' class="here" aria-current="true"';

/** The name of a part, with what is found of all of it; `id` is for links to it. */
export function partHeading({ name, line }: PageSection, reading: Reading, notes: Notes, id?: string): string {
  if (name === '') return notes.tell(line);
  const words = escapeHtml(name);
  const called = line === undefined ? words : lineWords(words, line, reading, false);
  const here = reading.mode === 'live' && line !== undefined && line === reading.line ? HERE : '';
  return `<h3${id === undefined ? '' : ` id="${id}"`}${here}>${called}</h3>\n${notes.tell(line)}`;
}

/** By its name, so that it stays the same while parts come and go around it. */
export function partKey(section: PageSection, { page: { sections } }: Reading): string {
  const alike = sections.filter(({ name }) => name === section.name).indexOf(section);
  return escapeHtml(alike > 0 ? `${section.name}-${alike + 1}` : section.name);
}
