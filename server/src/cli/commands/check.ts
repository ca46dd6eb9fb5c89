import type { Severity } from '../../checks/check.ts';
import { type Finding, type Findings, fixesOf } from '../../checks/run.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import type { Houses } from '../../workspace/houses.ts';
import { type Snapshot, takeBugs } from '../../workspace/snapshot.ts';
import { baselineText, readBaseline, setApart, updated } from '../baseline.ts';
import type { Command } from '../command.ts';
import { compact } from '../formats/compact.ts';
import { github } from '../formats/github.ts';
import { json } from '../formats/json.ts';
import { pretty } from '../formats/pretty.ts';
import { sarif } from '../formats/sarif.ts';
import { housesFor, INPUT_OPTIONS, type Input, readMany, snapshotOf } from '../inputs.ts';
import { type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { touchedSince } from '../since.ts';

export interface CheckedFile {
  readonly shown: string;
  readonly snapshot: Snapshot;
  readonly findings: Findings;
  /** Found, and known from the baseline. */
  readonly known: readonly Finding[];
}

export interface Counts extends Readonly<Record<Severity, number>> {
  readonly files: number;
  readonly accepted: number;
  readonly baselined: number;
}

const LEVELS = ['error', 'warning', 'info', 'hint'] as const satisfies readonly Severity[];
const FORMATS = ['pretty', 'compact', 'json', 'sarif', 'github'] as const;

export const check: Command = {
  name: 'check',
  usage:
    '[PATH…] [--format pretty|compact|json|sarif|github] [--fail-on error|warning|info|hint] [--max-warnings N] [--fix] [--since REV] [--baseline FILE [--update-baseline]] [--stdin --stdin-name NAME]',
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
  },
  examples: [
    'quern check',
    'quern check pastry/ --fail-on warning',
    'quern check tart.quern --format json',
    'quern check --since origin/main --format github',
    'quern check --baseline quern-baseline.json --update-baseline',
    'quern check --format sarif > quern.sarif',
  ],
  async run(options, io, version) {
    const format = choiceOf(options, 'format', FORMATS, 'pretty');
    const failOn = choiceOf(options, 'fail-on', LEVELS, 'error');
    const most = maxWarnings(options);
    const houses = housesFor(io);
    const checked = (await inputsOf(options, io, houses)).map((input): CheckedFile => {
      const read = snapshotOf(input, houses);
      const snapshot = options.flags.has('fix') ? mended(read) : read;
      if (snapshot !== read && !options.flags.has('stdin')) io.write(input.path, printDocument(snapshot.document));
      return { shown: input.shown, snapshot, findings: snapshot.findings, known: [] };
    });
    const files = withoutBaseline(checked, options, io);
    const problems = [...new Set(files.flatMap((f) => houses.of(f.snapshot.uri).problems))];
    for (const problem of problems) io.err(`quern: ${problem}\n`);
    for (const { check: code, error } of takeBugs())
      io.err(`quern: the check ${code} failed, which is a bug of Quern: ${String(error)}\n`);
    const counts = count(files);
    io.out(printed(format, files, counts, { io, version, problems }));
    if (most !== undefined && counts.warning > most) {
      io.err(`quern: ${counts.warning} warnings are more than --max-warnings ${most}\n`);
      return 1;
    }
    return LEVELS.slice(0, LEVELS.indexOf(failOn) + 1).some((level) => counts[level] > 0) ? 1 : 0;
  },
};

function printed(
  format: (typeof FORMATS)[number],
  files: readonly CheckedFile[],
  counts: Counts,
  run: { readonly io: Io; readonly version: string; readonly problems: readonly string[] },
): string {
  switch (format) {
    case 'pretty':
      return pretty(files, counts, run.io);
    case 'compact':
      return compact(files);
    case 'json':
      return json(files, counts);
    case 'sarif':
      return sarif(files, run.version, run.problems);
    case 'github':
      return github(files);
  }
}

async function inputsOf(options: Options, io: Io, houses: Houses): Promise<readonly Input[]> {
  const { since } = options.values;
  if (since !== undefined && options.flags.has('stdin'))
    throw new UsageError('--since looks at files, and --stdin gives a text: give one of them');
  const inputs = await readMany(options, io, houses);
  return since === undefined ? inputs : touchedSince(inputs, since, houses, io);
}

/** The files without what the baseline knows; the baseline is written anew where that is asked for. */
function withoutBaseline(files: readonly CheckedFile[], options: Options, io: Io): readonly CheckedFile[] {
  const path = options.values.baseline;
  const update = options.flags.has('update-baseline');
  if (path === undefined) {
    if (update) throw new UsageError('--update-baseline wants the file as well: --baseline quern-baseline.json');
    return files;
  }
  const before = readBaseline(path, io, update);
  const baseline = update ? updated(before, files) : before;
  if (update) {
    io.write(io.resolve(path), baselineText(baseline));
    io.err(`quern: ${path} now holds ${baseline.entries.reduce((sum, e) => sum + e.count, 0)} findings\n`);
  }
  const apart = setApart(files, baseline);
  if (apart.gone > 0)
    io.err(`quern: ${apart.gone} of the baseline's findings are no more; --update-baseline takes them out\n`);
  return apart.files;
}

function maxWarnings(options: Options): number | undefined {
  const text = options.values['max-warnings'];
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text)) throw new UsageError(`--max-warnings wants a whole number, not \`${text}\``);
  return Number(text);
}

function count(files: readonly CheckedFile[]): Counts {
  const counts = { files: files.length, error: 0, warning: 0, info: 0, hint: 0, accepted: 0, baselined: 0 };
  for (const { findings, known } of files) {
    for (const { severity } of findings.open) counts[severity]++;
    counts.accepted += findings.accepted.length;
    counts.baselined += known.length;
  }
  return counts;
}

/** Rounds after which a file that still changes is left as it is. */
const MOST_ROUNDS = 10;

/** The file with every fix applied that changes no quantity and is the only one of its finding. */
function mended(snapshot: Snapshot): Snapshot {
  let now = snapshot;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const scene = now;
    const fixes = scene.findings.open.flatMap((finding) => {
      const sure = fixesOf(finding, scene);
      const [only] = sure;
      return sure.length === 1 && only !== undefined && only.effect !== 'amounts' ? [only] : [];
    });
    const [first] = fixes;
    if (first === undefined) return now;
    const text = printDocument(applyEdits(scene.document, first.edits));
    now = now.edited(now.version + 1, [{ text }]);
  }
  return now;
}
