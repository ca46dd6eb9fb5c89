import { htmlPieces } from '../../publish/html.ts';
import { markdownPieces, textPieces } from '../../publish/plain-pages.ts';
import { laidOut, PUBLISH_FORMATS, type PublishFormat, publishedPage } from '../../publish/published.ts';
import type { ReaderPage } from '../../publish/reader-page.ts';
import { fillTemplate } from '../../publish/template.ts';
import { isBroken } from '../../workspace/variant.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, inputAt, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { publishSite } from '../publish-site.ts';
import { whereIn } from '../where.ts';

export const publish: Command = {
  name: 'publish',
  usage:
    'FILE --format html|markdown|text|json-ld | FOLDER --format site --out DIR [--title TEXT] [--measures weight-first|measure-first] [--label us|eu] [--order as-written|as-used] [--template FILE] [--proved] [--stdin --stdin-name NAME]',
  summary: 'the page for readers; of a folder, a site with an index, its allergens and sheets for print',
  options: {
    ...INPUT_OPTIONS,
    format: 'value',
    measures: 'value',
    label: 'value',
    order: 'value',
    template: 'value',
    proved: 'flag',
    out: 'value',
    title: 'value',
  },
  examples: [
    'quern publish tart.quern --format html > tart.html',
    'quern publish tart.quern --format text --measures measure-first',
    'quern publish tart.quern --format html --template house.html',
    'quern publish tart.quern --format json-ld --proved',
    'quern publish recipes --format site --out public --title "Harbour Lane"',
  ],
  async run(options, io): Promise<Exit> {
    const wanted = choiceOf(options, 'format', [...PUBLISH_FORMATS, 'site'], 'html');
    if (wanted === 'site') return publishSite(options, templateOf(options, 'html', io), io);
    const format: PublishFormat = wanted;
    if (options.values.out !== undefined || options.values.title !== undefined)
      throw new UsageError('--out and --title are for a site: --format site');
    const measures = choiceOf(options, 'measures', ['weight-first', 'measure-first'], 'weight-first');
    const order = choiceOf(options, 'order', ['as-written', 'as-used'], 'as-written');
    const template = templateOf(options, format, io);
    const snapshot = snapshotOf(await readOne(options, io), housesFor(io));
    for (const { check, error } of snapshot.bugs)
      io.trouble(`the check ${check} failed: ${String(error)}, which is a bug of Quern`);
    if (!snapshot.isWhole && !options.flags.has('proved'))
      throw new UsageError(
        'the recipe builds on what is not there, so a page would be without it: `quern check` says what is missing',
      );
    const ofHouse = snapshot.house.world.measures === 'us' ? 'us' : 'eu';
    const label = choiceOf(options, 'label', ['us', 'eu'], ofHouse);
    const page = publishedPage(snapshot, { measures, label, order, sayLine: whereIn(snapshot, io), broken: isBroken });
    if (options.flags.has('proved') && page.proof.missing.length > 0) {
      io.err(`quern publish: ${page.title} is not proved:\n`);
      for (const missing of page.proof.missing) io.err(`  ${missing}\n`);
      return 1;
    }
    io.document(template === undefined ? laidOut(page, format) : filled(page, format, template));
    if (page.notUnderstood.length === 0) return 0;
    io.err(`quern publish: not all of ${page.title} is understood, and the page says so:\n`);
    for (const { where, text } of page.notUnderstood) io.err(`  ${where}: ${text}\n`);
    return 1;
  },
};

function templateOf(options: Options, format: PublishFormat, io: Io): string | undefined {
  const path = options.values.template;
  if (path === undefined) return undefined;
  if (format === 'json-ld') throw new UsageError('JSON-LD takes no template');
  return inputAt(io.resolve(path), path, io).text;
}

function filled(page: ReaderPage, format: PublishFormat, template: string): string {
  const pieces = format === 'html' ? htmlPieces(page) : format === 'markdown' ? markdownPieces(page) : textPieces(page);
  const result = fillTemplate(template, { ...pieces });
  if (!result.ok) throw new UsageError(result.why);
  return result.text;
}
