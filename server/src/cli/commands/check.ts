import type { Severity } from '../../checks/check.ts';
import { type Findings, fixesOf } from '../../checks/run.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import { type Snapshot, takeBugs } from '../../workspace/snapshot.ts';
import type { Command } from '../command.ts';
import { json } from '../formats/json.ts';
import { pretty } from '../formats/pretty.ts';
import { housesFor, INPUT_OPTIONS, readMany, snapshotOf } from '../inputs.ts';
import { UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';

export interface CheckedFile {
  readonly shown: string;
  readonly snapshot: Snapshot;
  readonly findings: Findings;
}

export interface Counts extends Readonly<Record<Severity, number>> {
  readonly files: number;
  readonly accepted: number;
}

const LEVELS = ['error', 'warning', 'info', 'hint'] as const satisfies readonly Severity[];

export const check: Command = {
  name: 'check',
  usage:
    '[PATH…] [--format pretty|json] [--fail-on error|warning|info|hint] [--max-warnings N] [--fix] [--stdin --stdin-name NAME]',
  summary: 'findings for files and folders',
  options: { ...INPUT_OPTIONS, format: 'value', 'fail-on': 'value', 'max-warnings': 'value', fix: 'flag' },
  examples: ['quern check', 'quern check pastry/ --fail-on warning', 'quern check tart.quern --format json'],
  async run(options, io) {
    const format = choiceOf(options, 'format', ['pretty', 'json'], 'pretty');
    const failOn = choiceOf(options, 'fail-on', LEVELS, 'error');
    const most = maxWarnings(options);
    const houses = housesFor(io);
    const files = (await readMany(options, io, houses)).map((input): CheckedFile => {
      const read = snapshotOf(input, houses);
      const snapshot = options.flags.has('fix') ? mended(read) : read;
      if (snapshot !== read && !options.flags.has('stdin')) io.write(input.path, printDocument(snapshot.document));
      return { shown: input.shown, snapshot, findings: snapshot.findings };
    });
    for (const problem of new Set(files.flatMap((f) => houses.of(f.snapshot.uri).problems)))
      io.err(`quern: ${problem}\n`);
    for (const { check: code, error } of takeBugs())
      io.err(`quern: the check ${code} failed, which is a bug of Quern: ${String(error)}\n`);
    const counts = count(files);
    io.out(format === 'json' ? json(files, counts) : pretty(files, counts, io));
    if (most !== undefined && counts.warning > most) {
      io.err(`quern: ${counts.warning} warnings are more than --max-warnings ${most}\n`);
      return 1;
    }
    return LEVELS.slice(0, LEVELS.indexOf(failOn) + 1).some((level) => counts[level] > 0) ? 1 : 0;
  },
};

function maxWarnings(options: Options): number | undefined {
  const text = options.values['max-warnings'];
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text)) throw new UsageError(`--max-warnings wants a whole number, not \`${text}\``);
  return Number(text);
}

function count(files: readonly CheckedFile[]): Counts {
  const counts = { files: files.length, error: 0, warning: 0, info: 0, hint: 0, accepted: 0 };
  for (const { findings } of files) {
    for (const { severity } of findings.open) counts[severity]++;
    counts.accepted += findings.accepted.length;
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
