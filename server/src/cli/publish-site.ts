/**
 * Knows how the recipes of a folder become a site: which are published, and which of their pictures lie beside them.
 * Refuses to publish what builds on what is not there.
 */
import { picturesIn, type ReportPicture } from '../publish/pictures.ts';
import { publishedPage } from '../publish/published.ts';
import { type SiteRecipe, siteOf } from '../publish/site/site.ts';
import { viewState } from '../publish/view/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import { liesIn } from '../workspace/folders.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { isBroken } from '../workspace/variant.ts';
import { housesFor, inputAt, isIgnored, snapshotOf } from './inputs.ts';
import { type Exit, type Io, UsageError } from './io.ts';
import { choiceOf, type Options } from './options.ts';
import { type SitePicture, writeSite } from './site.ts';
import { folderTitle, whereIn } from './where.ts';

export function publishSite(options: Options, template: string | undefined, io: Io): Exit {
  const { out, title } = options.values;
  const [path = '.', ...more] = options.rest;
  if (more.length > 0 || options.flags.has('stdin'))
    throw new UsageError('a site is made of one folder: name it alone');
  const folder = io.resolve(path);
  if (io.kind(folder) !== 'folder') throw new UsageError(`a site is made of a folder, and \`${path}\` is none`);
  if (out === undefined) throw new UsageError('say where the site goes: --out DIR');
  const site = io.resolve(out);
  if (io.kind(site) === 'file') throw new UsageError(`\`${out}\` is a file: --out names a folder`);
  const houses = housesFor(io);
  houses.opened(folder);
  const paths = io.files.recipesBelow(folder).filter((each) => !isIgnored(each, io, houses));
  const recipes: SiteRecipe[] = [];
  const pictures = new Map<string, SitePicture>();
  let unread = 0;
  for (const each of paths) {
    const shown = io.shown(each);
    const snapshot = snapshotOf(inputAt(each, shown, io, folder), houses);
    if (snapshot.outline.recipe === undefined) continue;
    for (const { check, error } of snapshot.bugs)
      io.trouble(`the check ${check} failed: ${String(error)}, which is a bug of Quern`);
    if (!snapshot.isWhole) {
      io.trouble(`\`${shown}\` builds on what is not there, and is not in the site`);
      continue;
    }
    const name = (nameIn(folder, each, io) ?? each).replace(/\.quern$/, '');
    const made = siteRecipe(name, snapshot, options, io);
    if (options.flags.has('proved') && made.page.proof.missing.length > 0) {
      io.err(`\`${shown}\` is not proved, and is not in the site\n`);
      continue;
    }
    unread += made.page.notUnderstood.length;
    const beside = picturesBeside(folder, each, snapshot, io);
    for (const { copy } of beside) pictures.set(copy.path, copy);
    recipes.push({ ...made, pictures: beside.map(({ picture }) => picture) });
  }
  if (recipes.length === 0) throw new UsageError(`there is no recipe to publish in \`${path}\``);
  const made = siteOf(title ?? folderTitle(folder), recipes, template);
  if (!made.ok) throw new UsageError(made.why);
  const { written, same, removed } = writeSite(site, made.files, [...pictures.values()], io);
  io.out(
    `${recipes.length} recipes in ${io.shown(site)}: ${written} files written, ${same} as they were, ${removed} taken away\n`,
  );
  if (unread === 0) return 0;
  io.err(`quern publish: not all of these recipes is understood, and their pages say so\n`);
  return 1;
}

function siteRecipe(name: string, snapshot: Snapshot, options: Options, io: Io): Omit<SiteRecipe, 'pictures'> {
  const page = publishedPage(snapshot, {
    measures: choiceOf(options, 'measures', ['weight-first', 'measure-first'], 'weight-first'),
    label: choiceOf(options, 'label', ['us', 'eu'], snapshot.house.world.measures === 'us' ? 'us' : 'eu'),
    order: choiceOf(options, 'order', ['as-written', 'as-used'], 'as-written'),
    sayLine: whereIn(snapshot, io),
    broken: isBroken,
  });
  return { name, page, state: viewState(snapshot.whole.recipe, page.proof, readTrials(snapshot.outline)) };
}

/** Of the dish and its steps, those that lie in the folder: at the same place beside the page. */
function picturesBeside(
  folder: string,
  path: string,
  snapshot: Snapshot,
  io: Io,
): readonly { readonly picture: ReportPicture; readonly copy: SitePicture }[] {
  return picturesIn(snapshot.outline).flatMap((picture) => {
    if (picture.shows === 'trial') return [];
    const from = io.files.beside(path, picture.file);
    const place = nameIn(folder, from, io);
    if (place === undefined || io.kind(from) !== 'file') {
      io.trouble(
        `\`${picture.file}\` of \`${io.shown(path)}\` is not in the site: it ${place === undefined ? 'lies outside the folder' : 'is not there'}`,
      );
      return [];
    }
    return [{ picture, copy: { path: place, from } }];
  });
}

/** From the folder on, `/` between; undefined where it lies elsewhere, or leads there. */
function nameIn(folder: string, path: string, io: Io): string | undefined {
  const real = (of: string): string => io.files.real?.(of) ?? of;
  if (!liesIn(path, folder) || !liesIn(real(path), real(folder))) return undefined;
  return path
    .slice(folder.length)
    .split(/[\\/]/)
    .filter((part) => part !== '')
    .join('/');
}
