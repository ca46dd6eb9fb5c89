/**
 * Knows how what was found in files is kept from one run to the next: one text, a line a file, by the sum of all that it was worked out from.
 * Refuses to know what is in a result.
 */
import type { CheckedFile } from '../checked-file.ts';
import type { Asked } from './asked-bases.ts';

/** A result, and what it hangs on beside what its key is of. */
export interface KeptResult {
  readonly asked: readonly Asked[];
  readonly file: CheckedFile;
}

/** Lines of files that no run asked for lately; the oldest go first. */
const MOST_LINES = 30_000;
/** A text of more is begun anew. Characters. */
const MOST_LETTERS = 200_000_000;

export class KeptResults {
  /** By key, as they stand in the text: the oldest first. */
  private readonly lines = new Map<string, string>();
  private readonly begins: string;
  private isOther = false;

  /** What is not of this build, or not whole, is as if it were not there. */
  constructor(text: string | undefined, build: string) {
    this.begins = `quern results 1 ${build}`;
    if (text === undefined) return;
    const lines = text.split('\n');
    if (lines[0] !== this.begins || lines.at(-1) !== END(lines.length - 2)) return;
    for (const line of lines.slice(1, -1)) {
      const at = line.indexOf(' ');
      this.lines.set(line.slice(0, at), line.slice(at + 1));
    }
  }

  find(key: string): KeptResult | undefined {
    const line = this.lines.get(key);
    if (line === undefined) return undefined;
    try {
      const [asked, file] = JSON.parse(line) as readonly [readonly Asked[], CheckedFile];
      return { asked, file };
    } catch {
      return undefined;
    }
  }

  /** Of a run that failed nowhere. */
  keep(key: string, { asked, file }: KeptResult): void {
    this.isOther = true;
    this.lines.delete(key);
    this.lines.set(key, JSON.stringify([asked, file]));
  }

  /** What is to be kept now; undefined where that is what is kept already. */
  text(): string | undefined {
    if (!this.isOther) return undefined;
    const all = [...this.lines].slice(-MOST_LINES);
    const letters = all.reduce((sum, [, line]) => sum + line.length, 0);
    if (letters > MOST_LETTERS) return undefined;
    return [this.begins, ...all.map(([key, line]) => `${key} ${line}`), END(all.length)].join('\n');
  }
}

const END = (count: number): string => `end ${count}`;
