/** Knows which pieces of the running program have run, as the engine counts them. */
import { type Profiler, Session } from 'node:inspector';

export class Coverage {
  private readonly session = new Session();
  private readonly url: string;
  private readonly ran = new Set<number>();

  /** Of the one file at a URL, from now on. */
  constructor(url: string) {
    this.url = url;
    this.session.connect();
    this.session.post('Profiler.enable');
    this.session.post('Profiler.startPreciseCoverage', { callCount: false, detailed: true });
  }

  /** How many pieces ran since it was last asked that never ran before. */
  fresh(): number {
    const before = this.ran.size;
    this.session.post('Profiler.takePreciseCoverage', (_error, taken) => this.note(taken?.result ?? []));
    return this.ran.size - before;
  }

  get pieces(): number {
    return this.ran.size;
  }

  private note(scripts: readonly Profiler.ScriptCoverage[]): void {
    for (const { functions } of scripts.filter(({ url }) => url === this.url))
      for (const { ranges } of functions)
        for (const { startOffset, endOffset, count } of ranges) {
          if (count > 0) this.ran.add(startOffset * 2 ** 26 + (endOffset - startOffset));
        }
  }
}
