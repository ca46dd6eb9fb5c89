import type { Severity } from '../../checks/severity.ts';
import type { Houses } from '../../workspace/houses.ts';
import { baselineText, readBaseline, SetApart, Updated } from '../baseline.ts';
import { checkMany } from '../check-many.ts';
import type { CheckedFile, CheckWish } from '../checked-file.ts';
import type { Command } from '../command.ts';
import { compact } from '../formats/compact.ts';
import { github } from '../formats/github.ts';
import { json } from '../formats/json.ts';
import { plural } from '../formats/plural.ts';
import { pretty } from '../formats/pretty.ts';
import type { Counts } from '../formats/printing.ts';
import { inLines, type Printing } from '../formats/printing.ts';
import { sarif } from '../formats/sarif.ts';
import { housesFor, INPUT_OPTIONS, type Input, readMany } from '../inputs.ts';
import { type FileChange, type Io, type KeptTexts, refuseToWriteStdin, save, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { touchedSince } from '../since.ts';

const LEVELS = ['error', 'warning', 'info', 'hint'] as const satisfies readonly Severity[];
const FORMATS = ['pretty', 'compact', 'json', 'sarif', 'github'] as const;

/** What a format says of fixes. */
const FIXES: { readonly [format in (typeof FORMATS)[number]]?: CheckWish['fixes'] } = {
  json: 'titles',
  sarif: 'whole',
};

export const check: Command = {
  name: 'check',
  usage:
    '[PATH…] [--format pretty|compact|json|sarif|github] [--fail-on error|warning|info|hint] [--max-warnings N] [--fix] [--since REV] [--baseline FILE [--update-baseline]] [--shard 3/8] [--cache FOLDER | --no-cache] [--stdin --stdin-name NAME]',
  summary: 'findings for files and folders',
  options: {
    ...INPUT_OPTIONS,
    format: 'value',
    'fail-on': 'value',
    'max-warnings': 'value',
    fix: 'flag',
    since: 'value',
    baseline: 'value',
    'update-baseline': 'flag',
    cache: 'value',
    'no-cache': 'flag',
    shard: 'value',
  },
  examples: [
    'quern check',
    'quern check pastry/ --fail-on warning',
    'quern check tart.quern --format json',
    'quern check --since origin/main --format github',
    'quern check --baseline quern-baseline.json --update-baseline',
    'quern check --format sarif > quern.sarif',
    'quern check --shard 3/8',
  ],
  async run(options, io, version) {
    const format = choiceOf(options, 'format', FORMATS, 'pretty');
    const failOn = choiceOf(options, 'fail-on', LEVELS, 'error');
    const most = maxWarnings(options);
    const stdin = options.flags.has('stdin');
    refuseToWriteStdin(options.flags, 'fix');
    const inputs = await inputsOf(options, io, housesFor(io));
    const { cache } = options.values;
    const wish: CheckWish = {
      fixes: FIXES[format] ?? 'none',
      mend: options.flags.has('fix'),
      ...(cache !== undefined && { keepsIn: cache }),
    };
    const apart = apartOf(options, io);
    const printing = printingOf(format, io, version);
    const counts = { files: 0, error: 0, warning: 0, info: 0, hint: 0, accepted: 0, baselined: 0 };
    const changes: FileChange[] = [];
    const problems = new Set<string>();
    const bugs: string[] = [];
    const each = (checked: CheckedFile): void => {
      if (checked.mended !== undefined) changes.push({ path: checked.path, ...checked.mended });
      for (const problem of checked.problems) problems.add(problem);
      bugs.push(...checked.bugs);
      const file = apart.of(checked);
      countIn(counts, file);
      printing.add(file);
    };
    // A text from standard input lies in no file that a worker could read, or that is checked again.
    const ways = stdin ? { ...io, workers: undefined } : io;
    await checkMany(inputs, wish, ways, stdin ? undefined : keptFor(options, io), each);
    io.progress('');
    apart.end(changes);
    for (const problem of problems) io.trouble(problem);
    for (const bug of bugs) io.trouble(`the check ${bug}, which is a bug of Quern`);
    const text = printing.text(counts, [...problems]);
    if (format === 'pretty') io.painted(text);
    else io.out(text);
    if (most !== undefined && counts.warning > most) {
      io.err(
        `quern: ${plural(counts.warning, 'warning')} ${counts.warning === 1 ? 'is' : 'are'} more than --max-warnings ${most}\n`,
      );
      return 1;
    }
    return LEVELS.slice(0, LEVELS.indexOf(failOn) + 1).some((level) => counts[level] > 0) ? 1 : 0;
  },
};

function printingOf(format: (typeof FORMATS)[number], io: Io, version: string): Printing {
  switch (format) {
    case 'pretty':
      return pretty(io);
    case 'compact':
      return inLines((file) => compact(file, io.shown));
    case 'json':
      return json(io.shown);
    case 'sarif':
      return sarif(version, io.shown);
    case 'github':
      return inLines((file) => github(file, io.shown));
  }
}

async function inputsOf(options: Options, io: Io, houses: Houses): Promise<readonly Input[]> {
  const { since } = options.values;
  if (since !== undefined && options.flags.has('stdin'))
    throw new UsageError('--since looks at files, and --stdin gives a text: give one of them');
  const all = await readMany(options, io, houses);
  const inputs = options.values.shard === undefined ? all : shareOf(all, options.values.shard);
  return since === undefined ? inputs : touchedSince(inputs, since, houses, io);
}

/** What earlier runs left, unless nobody wants it. */
function keptFor({ values: { cache }, flags }: Options, io: Io): KeptTexts | undefined {
  if (!flags.has('no-cache')) return io.keptTexts?.(cache === undefined ? undefined : io.resolve(cache));
  if (cache !== undefined)
    throw new UsageError('--cache says where results are kept, and --no-cache that none are: give one of them');
  return undefined;
}

/** One of so many shares of the files, `3/8`, by their names: a file that comes or goes moves no other. */
function shareOf(inputs: readonly Input[], shard: string): readonly Input[] {
  const [, at, of] = /^(\d{1,4})\/(\d{1,4})$/.exec(shard) ?? [];
  const [number, count] = [Number(at), Number(of)];
  if (!(number >= 1 && number <= count))
    throw new UsageError(`--shard wants which share of how many, such as 3/8, not \`${shard}\``);
  return inputs.filter(({ shown }) => nameSum(shown) % count === number - 1);
}

/** FNV-1a of 32 bits over the name's letters (Fowler, Noll and Vo; IETF draft-eastlake-fnv). */
function nameSum(name: string): number {
  let sum = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) sum = Math.imul(sum ^ name.charCodeAt(i), 0x01000193) >>> 0;
  return sum;
}

/** What the baseline does to each file, and at the end: files that were mended are written together with it. */
interface Apart {
  of(file: CheckedFile): CheckedFile;
  end(mended: readonly FileChange[]): void;
}

function apartOf(options: Options, io: Io): Apart {
  const path = options.values.baseline;
  const update = options.flags.has('update-baseline');
  if (path === undefined) {
    if (update) throw new UsageError('--update-baseline wants the file as well: --baseline quern-baseline.json');
    return { of: (file) => file, end: (mended) => save(mended, io) };
  }
  const before = readBaseline(path, io, update);
  if (!update) {
    const apart = new SetApart(before);
    return {
      of: (file) => apart.of(file),
      end: (mended) => {
        save(mended, io);
        const gone = apart.gone();
        if (gone > 0)
          io.err(`quern: ${gone} of the baseline's findings are no more; --update-baseline takes them out\n`);
      },
    };
  }
  const updated = new Updated(before);
  return {
    of: (file) => updated.of(file),
    end: (mended) => {
      const baseline = updated.baseline();
      const written = { path: io.resolve(path), before: before.text, text: baselineText(baseline) };
      save(written.text === written.before ? mended : [...mended, written], io);
      const count = baseline.entries.reduce((sum, e) => sum + e.count, 0);
      io.err(`quern: ${path} now holds ${plural(count, 'finding')}\n`);
    },
  };
}

function maxWarnings(options: Options): number | undefined {
  const text = options.values['max-warnings'];
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text)) throw new UsageError(`--max-warnings wants a whole number, not \`${text}\``);
  return Number(text);
}

function countIn(counts: { -readonly [name in keyof Counts]: number }, { open, accepted, known }: CheckedFile): void {
  counts.files++;
  for (const { severity } of open) counts[severity]++;
  counts.accepted += accepted.length;
  counts.baselined += known.length;
}
