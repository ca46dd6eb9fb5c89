/**
 * Knows when findings are worked out: once the messages that wait have been read, without any delay.
 * The only place where time enters; the turn of the event loop is handed in, so that tests turn it by hand.
 */
import type { Uri } from '../workspace/store.ts';

/** Runs something once the event loop has turned. */
export type Turn = (run: () => void) => void;

export class Schedule {
  private readonly turn: Turn;
  private readonly compute: (uri: Uri) => void;
  private readonly dirty = new Set<Uri>();
  private waiting: (() => void)[] = [];
  private marks = 0;
  private armed = false;

  constructor(turn: Turn, compute: (uri: Uri) => void) {
    this.turn = turn;
    this.compute = compute;
  }

  mark(uris: readonly Uri[]): void {
    if (uris.length === 0) return;
    for (const uri of uris) this.dirty.add(uri);
    this.marks++;
    this.arm();
  }

  forget(uri: Uri): void {
    this.dirty.delete(uri);
  }

  /** Resolves when no message that waits is a change. */
  quiet(): Promise<void> {
    return new Promise((resolve) => {
      this.waiting.push(resolve);
      this.arm();
    });
  }

  /** Messages are read one a turn: only a turn without a change says that none waits. */
  private arm(): void {
    if (this.armed) return;
    this.armed = true;
    this.turn(() => {
      const before = this.marks;
      this.turn(() => {
        this.armed = false;
        if (this.marks === before) this.settle();
        else this.arm();
      });
    });
  }

  /** Whoever waits for an answer has it before the notifications go out. */
  private settle(): void {
    const { waiting } = this;
    this.waiting = [];
    for (const resolve of waiting) resolve();
    if (waiting.length > 0) this.turn(() => this.computeAll());
    else this.computeAll();
  }

  private computeAll(): void {
    const dirty = [...this.dirty];
    this.dirty.clear();
    for (const uri of dirty) this.compute(uri);
  }
}
