import { htmlPage, htmlPieces } from '../../publish/html.ts';
import { jsonLd } from '../../publish/json-ld.ts';
import { markdownPage, markdownPieces, textPage, textPieces } from '../../publish/plain-pages.ts';
import { type PlacedFinding, placedIn } from '../../publish/proof.ts';
import { type ReaderPage, readerPage } from '../../publish/reader-page.ts';
import { fillTemplate } from '../../publish/template.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { BROKEN_CODES } from '../../workspace/variant.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, inputAt, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { whereIn } from '../where.ts';

const FORMATS = ['html', 'markdown', 'text', 'json-ld'] as const;
type Format = (typeof FORMATS)[number];

export const publish: Command = {
  name: 'publish',
  usage:
    'FILE --format html|markdown|text|json-ld [--measures weight-first|measure-first] [--label us|eu] [--template FILE] [--proved] [--stdin --stdin-name NAME]',
  summary: 'the page for readers',
  options: {
    ...INPUT_OPTIONS,
    format: 'value',
    measures: 'value',
    label: 'value',
    template: 'value',
    proved: 'flag',
  },
  examples: [
    'quern publish tart.quern --format html > tart.html',
    'quern publish tart.quern --format text --measures measure-first',
    'quern publish tart.quern --format html --template house.html',
    'quern publish tart.quern --format json-ld --proved',
  ],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', FORMATS, 'html');
    const measures = choiceOf(options, 'measures', ['weight-first', 'measure-first'], 'weight-first');
    const template = templateOf(options, format, io);
    const snapshot = snapshotOf(await readOne(options, io), housesFor(io));
    const { recipe, findings } = snapshot.whole;
    for (const { check, error } of snapshot.bugs)
      io.trouble(`the check ${check} failed: ${String(error)}, which is a bug of Quern`);
    if (!snapshot.isWhole && !options.flags.has('proved'))
      throw new UsageError(
        'the recipe builds on what is not there, so a page would be without it: `quern check` says what is missing',
      );
    const ofHouse = snapshot.house.world.measures === 'us' ? 'us' : 'eu';
    const label = choiceOf(options, 'label', ['us', 'eu'], ofHouse);
    const trials = readTrials(snapshot.outline);
    const sayLine = whereIn(snapshot, io);
    const placed = placedFindings(snapshot, sayLine);
    const page = readerPage(recipe, findings, { measures, label }, trials, placed, sayLine);
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

/** What is found in the whole recipe, each by the file and line that say it, and what a variant asks of its base in vain. */
function placedFindings(snapshot: Snapshot, sayLine: (line: number) => string): PlacedFinding[] {
  const { whole } = snapshot;
  if (whole === snapshot) return placedIn(snapshot.findings);
  const asked = placedIn(snapshot.findings).filter(({ finding }) => BROKEN_CODES.has(finding.code));
  const found = whole.findings.open.map((finding) => ({ finding, where: sayLine(finding.at.line) }));
  return [...asked, ...found];
}

function laidOut(page: ReaderPage, format: Format): string {
  switch (format) {
    case 'html':
      return htmlPage(page);
    case 'markdown':
      return markdownPage(page);
    case 'text':
      return textPage(page);
    case 'json-ld':
      return jsonLd(page);
  }
}

function templateOf(options: Options, format: Format, io: Io): string | undefined {
  const path = options.values.template;
  if (path === undefined) return undefined;
  if (format === 'json-ld') throw new UsageError('JSON-LD takes no template');
  return inputAt(io.resolve(path), path, io).text;
}

function filled(page: ReaderPage, format: Format, template: string): string {
  const pieces = format === 'html' ? htmlPieces(page) : format === 'markdown' ? markdownPieces(page) : textPieces(page);
  const result = fillTemplate(template, { ...pieces });
  if (!result.ok) throw new UsageError(result.why);
  return result.text;
}
