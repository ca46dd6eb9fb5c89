/**
 * Knows the file of findings that a house lives with for now: they are taken off what is reported, and what is new stands out.
 * Refuses to hold a safety finding: that is accepted in the recipe, with a reason, or mended.
 */
import { isAlwaysTold } from '../checks/always-told.ts';
import { type Fingerprint, fingerprintText } from '../publish/fingerprint.ts';
import { faultWords } from '../workspace/read-fault.ts';
import type { CheckedFile, CheckedFinding } from './checked-file.ts';
import { type Io, UsageError } from './io.ts';

interface Entry extends Fingerprint {
  /** As the file was called when it was written down; for people. */
  readonly file: string;
  readonly count: number;
}

export interface Baseline {
  readonly entries: readonly Entry[];
  /** Of the file it was read from; undefined where there is none yet. */
  readonly text: string | undefined;
}

/** The baseline of a path. One that is not there is empty only where it is about to be written. */
export function readBaseline(path: string, io: Io, mayBeMissing: boolean): Baseline {
  const text = io.files.read(io.resolve(path));
  if (text === undefined) {
    if (mayBeMissing && io.kind(io.resolve(path)) === undefined) return { entries: [], text };
    const fault = io.files.faultOf?.(io.resolve(path));
    throw new UsageError(
      fault === undefined
        ? `there is no baseline \`${path}\`; --update-baseline writes it`
        : `\`${path}\` ${faultWords(fault)}`,
    );
  }
  const entries = entriesOf(text);
  if (entries === undefined)
    throw new UsageError(`\`${path}\` is no baseline; delete it, and --update-baseline writes it anew`);
  return { entries, text };
}

/** The files with what the baseline knows set apart, and how many of its findings are no more. */
export function setApart(
  files: readonly CheckedFile[],
  baseline: Baseline,
): { readonly files: readonly CheckedFile[]; readonly gone: number } {
  const left = new Map<string, number>();
  for (const entry of baseline.entries) {
    const key = fingerprintText(entry);
    left.set(key, (left.get(key) ?? 0) + entry.count);
  }
  const sorted = files.map((file) => {
    const known: CheckedFinding[] = [];
    const open = file.open.filter((finding) => {
      const key = fingerprintText(finding.fingerprint);
      const more = left.get(key) ?? 0;
      if (more === 0 || !mayStand(finding)) return true;
      left.set(key, more - 1);
      known.push(finding);
      return false;
    });
    return { ...file, open, known };
  });
  const recipes = recipesOf(files);
  const gone = baseline.entries
    .filter((e) => recipes.has(e.recipe))
    .reduce((sum, e) => sum + takeLeft(left, fingerprintText(e), e.count), 0);
  return { files: sorted, gone };
}

/** The baseline with what is found now; recipes that were not checked keep what they had. */
export function updated(baseline: Baseline, files: readonly CheckedFile[]): Baseline {
  const recipes = recipesOf(files);
  const entries = new Map<string, Entry>();
  for (const entry of baseline.entries) if (!recipes.has(entry.recipe)) entries.set(fingerprintText(entry), entry);
  for (const file of files) {
    for (const finding of file.open.filter(mayStand)) {
      const { fingerprint } = finding;
      const key = fingerprintText(fingerprint);
      const { count = 0 } = entries.get(key) ?? {};
      entries.set(key, { ...fingerprint, file: file.shown, count: count + 1 });
    }
  }
  const sorted = [...entries].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry);
  return { entries: sorted, text: baseline.text };
}

/** One finding a line, so that it merges well. */
export function baselineText({ entries }: Pick<Baseline, 'entries'>): string {
  const rows = entries.map((e) => `    ${JSON.stringify(e)}`);
  return `{\n  "version": 1,\n  "findings": [${rows.length === 0 ? '' : `\n${rows.join(',\n')}\n  `}]\n}\n`;
}

const mayStand = (finding: CheckedFinding): boolean => !isAlwaysTold(finding);

const recipesOf = (files: readonly CheckedFile[]): ReadonlySet<string> => new Set(files.map((f) => f.recipe));

/** How many of an entry's findings are left over, each counted once. */
function takeLeft(left: Map<string, number>, key: string, count: number): number {
  const taken = Math.min(left.get(key) ?? 0, count);
  left.set(key, (left.get(key) ?? 0) - taken);
  return taken;
}

function entriesOf(text: string): readonly Entry[] | undefined {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (typeof json !== 'object' || json === null || !('findings' in json) || !Array.isArray(json.findings))
    return undefined;
  const entries = json.findings.map(readEntry);
  return entries.every((e) => e !== undefined) ? entries : undefined;
}

function readEntry(json: unknown): Entry | undefined {
  if (typeof json !== 'object' || json === null) return undefined;
  const field = (name: string): unknown => (json as Readonly<Record<string, unknown>>)[name];
  const [code, recipe, part, subject, file, count] = ['code', 'recipe', 'part', 'subject', 'file', 'count'].map(field);
  if (typeof code !== 'string' || typeof recipe !== 'string' || typeof part !== 'string' || typeof subject !== 'string')
    return undefined;
  const many = typeof count === 'number' && Number.isInteger(count) && count > 0 ? count : 1;
  return { code, recipe, part, subject, file: typeof file === 'string' ? file : '', count: many };
}
