/**
 * Knows what is answered for each address of `quern serve`: the list, a recipe's views, the kitchen, the pictures that recipes name.
 * Refuses whatever is none of these, by looking every address up among the recipes of the folder.
 */
import { escapeHtml } from '../publish/escape-html.ts';
import { FOLDER_STYLE, type FolderRow, folderPage } from '../publish/folder-page.ts';
import { allSteps, KITCHEN_STYLE, kitchenStep } from '../publish/kitchen/page.ts';
import { kitchenFacts } from '../publish/kitchen/steps.ts';
import { publishedPage } from '../publish/published.ts';
import { browserStyle, standingAlone } from '../publish/view/alone.ts';
import { viewFacts } from '../publish/view/facts.ts';
import type { Level } from '../publish/view/finding.ts';
import { VIEWS, type ViewName } from '../publish/view/look.ts';
import { viewState } from '../publish/view/state.ts';
import { viewPage } from '../publish/view/views.ts';
import { titleOf } from '../recipe/names/title.ts';
import { picturesOf } from '../recipe/pictures.ts';
import { readClock } from '../recipe/plan/clock-text.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { isBroken } from '../workspace/variant.ts';
import type { Io } from './io.ts';
import { pricesFor } from './prices.ts';
import type { Shelf } from './shelf.ts';
import type { Asked, WebAnswer } from './web.ts';
import { folderTitle, ownLineIn, whereIn } from './where.ts';

const SHEET = '-/page.css';
const SCRIPT = '-/page.js';
const STAMP = '-/stamp';

const TYPES: Readonly<Record<string, string>> = {
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
  avif: 'image/avif',
};

const NOTHING: WebAnswer = { kind: 'text', type: 'text/plain', text: 'There is nothing here.\n', status: 404 };

/** Where a recipe of the folder is found, from the root of the server on. */
export const addressOf = (name: string): string => name.split('/').map(encodeURIComponent).join('/');

export class ServedPages {
  private readonly shelf: Shelf;
  private readonly io: Io;
  private readonly script: string;
  /** Rows of the list, each for as long as its recipe is the same. */
  private readonly rows = new Map<string, { readonly of: Snapshot; readonly row: FolderRow }>();
  private rowsMade = 0;

  constructor(shelf: Shelf, io: Io, script: string) {
    this.shelf = shelf;
    this.io = io;
    this.script = script;
  }

  answer({ path, query }: Asked): WebAnswer {
    if (path === SHEET) return text('text/css', browserStyle(`${FOLDER_STYLE}\n${KITCHEN_STYLE}`));
    if (path === SCRIPT) return text('text/javascript', this.script);
    const stamp = this.shelf.look();
    if (path === STAMP) return text('text/plain', query.has('list') ? this.listStamp(stamp) : stamp);
    if (path === '') return this.page(this.list(), this.listStamp(stamp), '?list');
    const snapshot = this.shelf.snapshot(path);
    if (snapshot?.outline.recipe !== undefined) return this.page(this.recipe(path, snapshot, query), stamp);
    return this.picture(path);
  }

  /** Works out the next row of the list. */
  prepare(): boolean {
    const name = this.shelf.names().find((each) => this.rowOf(each) === undefined);
    const snapshot = name === undefined ? undefined : this.shelf.snapshot(name);
    if (name === undefined || snapshot === undefined) return false;
    this.rows.set(name, { of: snapshot, row: this.row(name, snapshot) });
    this.rowsMade++;
    return true;
  }

  private rowOf(name: string): FolderRow | undefined {
    const kept = this.rows.get(name);
    return kept !== undefined && kept.of === this.shelf.snapshot(name) ? kept.row : undefined;
  }

  private listStamp(stamp: string): string {
    return `${stamp}-${this.rowsMade}`;
  }

  private page(
    page: Omit<Parameters<typeof standingAlone>[0], 'sheet' | 'head'>,
    stamp: string,
    asked = '',
  ): WebAnswer {
    const head = `<meta name="stamp" content="${stamp}" data-at="/${STAMP}${asked}">\n<script src="/${SCRIPT}" defer></script>`;
    return text('text/html', standingAlone({ ...page, head, sheet: `/${SHEET}` }));
  }

  private list() {
    const title = folderTitle(this.shelf.folder);
    const rows = this.shelf.names().map((name) => this.rowOf(name) ?? this.bareRow(name));
    return { title, body: folderPage(title, rows) };
  }

  /** Of a recipe that nobody has looked at yet. */
  private bareRow(name: string): FolderRow {
    const title = titleOf(this.shelf.snapshot(name)?.outline.recipe?.line.statement).name?.text ?? '';
    return { title: title === '' ? name : title, href: `/${addressOf(name)}`, folder: folderOf(name), makes: '' };
  }

  private row(name: string, snapshot: Snapshot): FolderRow {
    const page = publishedPage(snapshot, {
      measures: 'weight-first',
      label: 'eu',
      sayLine: whereIn(snapshot, this.io),
      broken: isBroken,
    });
    const found: Record<Level, number> = { error: 0, warning: 0, note: 0 };
    for (const { severity } of snapshot.findings.open)
      found[severity === 'error' || severity === 'warning' ? severity : 'note'] += 1;
    return {
      title: page.title,
      href: `/${addressOf(name)}`,
      folder: folderOf(name),
      makes: page.makes ?? '',
      state: viewState(snapshot.whole.recipe, page.proof, readTrials(snapshot.outline)),
      found,
    };
  }

  private recipe(name: string, snapshot: Snapshot, query: Asked['query']) {
    const { recipe, findings } = snapshot.whole;
    const asked = query.get('serve');
    const serve = asked !== undefined && readClock(asked) !== undefined ? asked : undefined;
    const more = serve === undefined ? {} : { serve };
    if (query.has('kitchen')) {
      const facts = kitchenFacts(recipe, findings.open, serve);
      const step = Number(query.get('kitchen'));
      const links = {
        step: (number: number) => queryOf({ kitchen: String(number), ...more }),
        all: queryOf({ kitchen: 'all', ...more }),
        recipe: queryOf({ view: 'recipe', ...more }),
      };
      const isStep = Number.isInteger(step) && step >= 1 && step <= facts.steps.length;
      return {
        title: isStep ? `${facts.title}, step ${step}` : facts.title,
        body: isStep ? kitchenStep(facts, step, links) : allSteps(facts, links),
        bodyClass: 'kitchen',
      };
    }
    const view: ViewName = VIEWS.find((each) => each === query.get('view')) ?? 'recipe';
    const order = query.get('order') === 'part' ? ('part' as const) : undefined;
    const facts = viewFacts(recipe, snapshot.findings, {
      mode: 'read',
      look: { ...more, ...(order && { order }) },
      label: snapshot.house.world.measures === 'us' ? 'us' : 'eu',
      trials: readTrials(snapshot.outline),
      prices: pricesFor(snapshot, this.shelf.pathOf(name) ?? name, this.io),
      sayLine: whereIn(snapshot, this.io),
      ownLine: ownLineIn(snapshot),
      hrefOf: (other, otherOrder) =>
        queryOf({ view: other, ...more, ...(otherOrder === 'part' && { order: otherOrder }) }),
    });
    const ways = `<nav class="ways" aria-label="Other pages"><a href="/">All recipes</a><a href="${escapeHtml(queryOf({ kitchen: '1', ...more }))}">In the kitchen, step by step</a></nav>`;
    return { title: facts.page.title, body: `${ways}\n${viewPage(facts, view)}` };
  }

  /** Only what a recipe names as its picture. */
  private picture(path: string): WebAnswer {
    const { folder } = this.shelf;
    const type = TYPES[path.slice(path.lastIndexOf('.') + 1).toLowerCase()];
    const wanted = this.io.files.join(folder, path);
    const isNamed = (): boolean =>
      this.shelf.names().some((name) => {
        const [from, outline] = [this.shelf.pathOf(name), this.shelf.snapshot(name)?.outline];
        if (from === undefined || outline === undefined) return false;
        return picturesOf(outline).some(({ file }) => this.io.files.beside(from, file.text) === wanted);
      });
    return type === undefined || !isNamed() ? NOTHING : { kind: 'file', path: wanted, within: folder, type };
  }
}

const folderOf = (name: string): string => name.split('/').slice(0, -1).join('/');

const text = (type: 'text/html' | 'text/css' | 'text/javascript' | 'text/plain', words: string): WebAnswer => ({
  kind: 'text',
  type,
  text: words,
});

const queryOf = (query: Readonly<Record<string, string>>): string =>
  `?${Object.entries(query)
    .map(([name, value]) => `${name}=${encodeURIComponent(value)}`)
    .join('&')}`;
