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

/** Takes off each file what a baseline knows, one file after the other. */
export class SetApart {
  private readonly left = new Map<string, number>();
  private readonly recipes = new Set<string>();
  private readonly entries: Baseline['entries'];

  constructor({ entries }: Baseline) {
    this.entries = entries;
    for (const entry of entries) {
      const key = fingerprintText(entry);
      this.left.set(key, (this.left.get(key) ?? 0) + entry.count);
    }
  }

  /** The file with what the baseline knows of it set apart. */
  of(file: CheckedFile): CheckedFile {
    this.recipes.add(file.recipe);
    const known: CheckedFinding[] = [];
    const open = file.open.filter((finding) => {
      const key = fingerprintText(finding.fingerprint);
      const more = this.left.get(key) ?? 0;
      if (more === 0 || !mayStand(finding)) return true;
      this.left.set(key, more - 1);
      known.push(finding);
      return false;
    });
    return { ...file, open, known };
  }

  /** How many of its findings are no more, once all files were here. */
  gone(): number {
    const left = new Map(this.left);
    return this.entries
      .filter((e) => this.recipes.has(e.recipe))
      .reduce((sum, e) => sum + takeLeft(left, fingerprintText(e), e.count), 0);
  }
}

/** A baseline made anew of what is found now, one file after the other; recipes that were not checked keep what they had. */
export class Updated {
  private readonly recipes = new Set<string>();
  private readonly entries = new Map<string, Entry>();
  private readonly before: Baseline;

  constructor(before: Baseline) {
    this.before = before;
  }

  /** The file with all that the new baseline knows of it set apart. */
  of(file: CheckedFile): CheckedFile {
    this.recipes.add(file.recipe);
    const known = file.open.filter(mayStand);
    for (const { fingerprint } of known) {
      const key = fingerprintText(fingerprint);
      const { count = 0 } = this.entries.get(key) ?? {};
      this.entries.set(key, { ...fingerprint, file: file.shown, count: count + 1 });
    }
    return { ...file, open: file.open.filter((finding) => !mayStand(finding)), known };
  }

  baseline(): Baseline {
    const { entries, text } = this.before;
    const kept = entries.filter((entry) => !this.recipes.has(entry.recipe));
    const all = new Map(kept.map((entry) => [fingerprintText(entry), entry]));
    for (const [key, entry] of this.entries) {
      const { count = 0 } = all.get(key) ?? {};
      all.set(key, { ...entry, count: count + entry.count });
    }
    return { entries: [...all].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, entry]) => entry), text };
  }
}

/** One finding a line, so that it merges well. */
export function baselineText({ entries }: Pick<Baseline, 'entries'>): string {
  const rows = entries.map((e) => `    ${JSON.stringify(e)}`);
  return `{\n  "version": 1,\n  "findings": [${rows.length === 0 ? '' : `\n${rows.join(',\n')}\n  `}]\n}\n`;
}

const mayStand = (finding: CheckedFinding): boolean => !isAlwaysTold(finding);

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
