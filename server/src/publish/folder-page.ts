/**
 * Knows the list of a folder's recipes as a page: by folder, each with what it makes, how it was cooked and what was found.
 * Refuses to look any recipe up.
 */
import { capital } from '../recipe/words.ts';
import { escapeHtml } from './escape-html.ts';
import type { Level } from './view/finding.ts';
import { DEFS, mark } from './view/marks.ts';
import type { ViewState } from './view/state.ts';

export interface FolderRow {
  readonly title: string;
  readonly href: string;
  /** From the folder on; empty for its own. */
  readonly folder: string;
  /** Empty where it does not say. */
  readonly makes: string;
  /** Absent of a recipe that is not looked at yet. */
  readonly state?: ViewState;
  /** Absent on a page for readers. */
  readonly found?: Readonly<Record<Level, number>>;
}

const LEVELS: readonly Level[] = ['error', 'warning', 'note'];

/** What stands in the body; `more` is HTML beneath the list. */
export function folderPage(title: string, rows: readonly FolderRow[], more = ''): string {
  const folders = [...new Set(rows.map(({ folder }) => folder))].sort();
  const withFound = rows.some(({ found }) => found !== undefined);
  const bodies = folders.map((folder) => {
    const own = rows.filter((row) => row.folder === folder).sort((a, b) => a.title.localeCompare(b.title, 'en'));
    const head =
      folder === ''
        ? ''
        : `<tr><th scope="rowgroup" colspan="${withFound ? 4 : 3}">${escapeHtml(folder.split('/').map(capital).join(', '))}</th></tr>\n`;
    return `<tbody class="part">\n${head}${own.map((row) => rowText(row, withFound)).join('\n')}\n</tbody>`;
  });
  const count = rows.length === 1 ? 'One recipe' : `${rows.length} recipes`;
  return `${DEFS}
<header>
<h1>${escapeHtml(title)}</h1>
<p class="state">${rows.length === 0 ? 'There is no recipe here.' : `${count}.`}</p>
</header>
<main>
${rows.length === 0 ? '' : `<table class="recipes">\n<caption class="unseen">The recipes, by folder</caption>\n<thead><tr><th scope="col">Recipe</th><th scope="col" class="makes">Makes</th><th scope="col">Cooked</th>${withFound ? '<th scope="col" class="n">Found</th>' : ''}</tr></thead>\n${bodies.join('\n')}\n</table>`}
${more}
</main>`;
}

function rowText({ title, href, makes, state, found }: FolderRow, withFound: boolean): string {
  const cooked =
    state === undefined
      ? '<span class="unknown">not looked at yet</span>'
      : `${mark(state.mark)} ${escapeHtml([state.strong, state.rest].filter((words) => words !== '').join(' '))}`;
  const levels = LEVELS.filter((level) => (found?.[level] ?? 0) > 0).map(
    (level) =>
      `<span class="of">${mark(level)} ${found?.[level]}<span class="unseen"> ${level}${found?.[level] === 1 ? '' : 's'}</span></span>`,
  );
  return `<tr data-key="${escapeHtml(href)}"><th scope="row"><a href="${escapeHtml(href)}">${escapeHtml(title)}</a></th><td class="makes">${escapeHtml(makes)}</td><td class="cooked">${cooked}</td>${withFound ? `<td class="n">${levels.join(' ')}</td>` : ''}</tr>`;
}

export const FOLDER_STYLE = `
.recipes td, .recipes tbody th { padding-block: 6px; }
.recipes .cooked { color: var(--soft); } .recipes .of { margin-inline-start: 8px; } .recipes .makes { white-space: nowrap; }
.ways { display: flex; flex-wrap: wrap; gap: 4px 20px; max-width: 62rem; margin: 0 auto; padding-top: 14px; }
@media (max-width: 639px) { .recipes thead { display: none; } .recipes tr { display: grid; grid-template-columns: 1fr auto; align-items: baseline; padding-block: 4px; } .recipes td, .recipes th[scope=row] { padding: 0; } .recipes .n { grid-column: 2; } .recipes .makes { text-align: end; } .recipes .cooked { grid-column: 1; } }
@media print { .ways { display: none; } }
`.trim();
