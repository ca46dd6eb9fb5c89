/**
 * Knows the site of a folder as files: an index, a page a recipe, the table of allergens and the sheets for print, linked by relative names.
 * Refuses to know which of them lie there already, and to run anything: no page has a script.
 */
import { FOLDER_STYLE, folderPage } from '../folder-page.ts';
import { htmlPieces, pageBody } from '../html.ts';
import type { ReportPicture } from '../pictures.ts';
import type { ReaderPage } from '../reader-page.ts';
import { fillTemplate } from '../template.ts';
import { browserStyle, standingAlone } from '../view/alone.ts';
import { DEFS } from '../view/marks.ts';
import type { ViewState } from '../view/state.ts';
import { ALLERGEN_STYLE, allergenTables } from './allergen-table.ts';

export interface SiteRecipe {
  /** Its file from the folder on, `/` between, without its ending. */
  readonly name: string;
  readonly page: ReaderPage;
  readonly state: ViewState;
  /** Those that lie beside the page. */
  readonly pictures: readonly ReportPicture[];
}

export interface SiteFile {
  /** From the folder of the site on, `/` between. */
  readonly path: string;
  readonly text: string;
}

export type SiteMade =
  | { readonly ok: true; readonly files: readonly SiteFile[] }
  /** Of the template. */
  | { readonly ok: false; readonly why: string };

/** One page before it is laid out. */
interface SitePage {
  readonly path: string;
  readonly kind: 'index' | 'recipe' | 'allergens' | 'print';
  readonly title: string;
  readonly body: string;
  readonly of?: SiteRecipe;
}

const OWN: ReadonlySet<string> = new Set(['index', 'allergens', 'print']);

/** Without `template` in the plain look of the page. */
export function siteOf(title: string, recipes: readonly SiteRecipe[], template?: string): SiteMade {
  const rows = recipes.map(({ name, page, state }) => ({
    title: page.title,
    href: addressOf(name),
    folder: name.split('/').slice(0, -1).join('/'),
    makes: page.makes ?? '',
    state,
    allergens: page.allergens,
  }));
  const ways = [
    ['allergens.html', 'Allergens'],
    ['print.html', 'All sheets, for print'],
  ].map(([href, words]) => `<a href="${href}">${words}</a>`);
  const pages: SitePage[] = [
    {
      path: 'index.html',
      kind: 'index',
      title,
      body: folderPage(title, rows, `<nav class="ways" aria-label="Other pages">${ways.join('')}</nav>`),
    },
    { path: 'allergens.html', kind: 'allergens', title: 'Allergens', body: headed('Allergens', allergenTables(rows)) },
    { path: 'print.html', kind: 'print', title, body: sheets(recipes) },
    ...recipes.map((of) => ({
      path: fileOf(of.name),
      kind: 'recipe' as const,
      title: of.page.title,
      body: pageBody(of.page, of.pictures),
      of,
    })),
  ];
  const files: SiteFile[] = [];
  for (const page of pages) {
    const made = template === undefined ? plainly(page) : filled(page, template, rows);
    if (!made.ok) return made;
    files.push({ path: page.path, text: made.text });
  }
  return { ok: true, files };
}

type Filled = ReturnType<typeof fillTemplate>;

/** A page of its own name would be taken for one of the site's. */
const fileOf = (name: string): string => `${OWN.has(name.toLowerCase()) ? `${name}-recipe` : name}.html`;

const addressOf = (name: string): string => fileOf(name).split('/').map(encodeURIComponent).join('/');

const rootOf = (path: string): string => '../'.repeat(path.split('/').length - 1);

const headed = (title: string, main: string): string =>
  `<header>\n<h1>${title}</h1>\n</header>\n<main>\n${main}\n</main>`;

const dataOf = ({ of }: SitePage): string => (of === undefined ? '' : htmlPieces(of.page, of.pictures).data);

function plainly(page: SitePage): Filled {
  const back =
    page.kind === 'index'
      ? ''
      : `<nav class="ways" aria-label="Other pages"><a href="${rootOf(page.path)}index.html">All recipes</a></nav>\n`;
  return {
    ok: true,
    text: standingAlone({
      title: page.title,
      body: `${back}${page.body}`,
      head: dataOf(page),
      style: SITE_STYLE,
      allows: "img-src 'self' file:",
    }),
  };
}

function filled(
  page: SitePage,
  template: string,
  rows: readonly { readonly title: string; readonly href: string; readonly folder: string; readonly makes: string }[],
): Filled {
  const root = rootOf(page.path);
  return fillTemplate(template, {
    root,
    body: page.body,
    style: browserStyle(SITE_STYLE),
    data: dataOf(page),
    title: page.title,
    recipes: rows.map(({ title, href, folder, makes }) => ({ title, href: `${root}${href}`, folder, makes })),
    // One of these is there, by what the page is.
    index: page.kind === 'index' ? {} : null,
    recipe: page.of === undefined ? null : { ...htmlPieces(page.of.page, page.of.pictures) },
  });
}

/** All recipes, each on a sheet of its own. */
function sheets(recipes: readonly SiteRecipe[]): string {
  const each = recipes.map(
    ({ page }, i) => `<article class="sheet">\n${scoped(pageBody(page, []), `r${i + 1}-`)}\n</article>`,
  );
  return each.join('\n').replaceAll(DEFS, '').replace(/^/, `${DEFS}\n`);
}

/** With ids that no other sheet has. Whatever a recipe says has no quotation mark of its own by then. */
function scoped(html: string, prefix: string): string {
  const ids = new Set([...html.replace(DEFS, '').matchAll(/ id="([^"]+)"/g)].map(([, id]) => id ?? ''));
  return html
    .replace(DEFS, '')
    .replace(/ (id|aria-labelledby)="([^"]+)"/g, (all, name: string, id: string) =>
      ids.has(id) ? ` ${name}="${prefix}${id}"` : all,
    )
    .replace(/ href="#([^"]+)"/g, (all, id: string) => (ids.has(id) ? ` href="#${prefix}${id}"` : all));
}

const SITE_STYLE = `
${FOLDER_STYLE}
${ALLERGEN_STYLE}
.sheet + .sheet { border-top: 1px solid var(--rule); margin-top: 48px; }
@media print { .sheet { break-after: page; } .sheet + .sheet { border: 0; margin: 0; } }
`.trim();
