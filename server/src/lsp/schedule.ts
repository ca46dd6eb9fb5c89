/**
 * Knows when findings are worked out: once the messages that wait have been read, without any delay; and what can wait: once nobody types.
 * The only place where time enters; the turn of the event loop and the pause are handed in, so that tests turn them by hand.
 */
import type { Uri } from '../workspace/store.ts';

/** Runs something once the event loop has turned. */
export type Turn = (run: () => void) => void;

/** Runs what it was last given once nothing new has been given for a while. */
export type WhenIdle = (run: () => void) => void;

/** Longer than between two keys, shorter than a look at the status bar. */
export const PAUSE_MS = 150;
/** Longer than it takes to think of the next word. */
export const STILL_MS = 1500;

/** The pauses after the last change, handed in. */
export interface Pauses {
  /** Longer than between two keys. */
  readonly whenIdle: WhenIdle;
  /** Longer than it takes to think of the next word. */
  readonly whenStill: WhenIdle;
}

/** What is to be done with documents whose text, house or bases have changed. */
export interface Duties {
  /** As soon as no message waits. */
  readonly soon: (uri: Uri) => void;
  /** Once nobody types. */
  readonly later: (uri: Uri) => void;
  /** After that, whatever changed. */
  readonly last: () => void;
  /** Once nobody is about to type on. */
  readonly still: (uri: Uri) => void;
}

export class Schedule {
  private readonly turn: Turn;
  private readonly pauses: Pauses;
  private readonly duties: Duties;
  private readonly dirty = new Set<Uri>();
  private readonly unsaid = new Set<Uri>();
  private readonly moving = new Set<Uri>();
  private waiting: (() => void)[] = [];
  private marks = 0;
  private armed = false;
  /** Something can wait, and does. */
  private pausing = false;

  constructor(turn: Turn, pauses: Pauses, duties: Duties) {
    this.turn = turn;
    this.pauses = pauses;
    this.duties = duties;
  }

  mark(uris: readonly Uri[]): void {
    if (uris.length === 0) return;
    for (const uri of uris) {
      this.dirty.add(uri);
      this.unsaid.add(uri);
      this.moving.add(uri);
    }
    this.marks++;
    this.arm();
    this.rests();
    this.pauses.whenStill(() => {
      for (const uri of taken(this.moving)) this.duties.still(uri);
    });
  }

  /** What can wait is done once nobody types, though nothing has changed. */
  rests(): void {
    this.pausing = true;
    this.pauses.whenIdle(() => this.rest());
  }

  /** A pause begins anew where there was work in it: what took longer than a pause is sent before what can wait is done. */
  worked(): void {
    if (this.pausing) this.rests();
  }

  forget(uri: Uri): void {
    this.dirty.delete(uri);
    this.unsaid.delete(uri);
    this.moving.delete(uri);
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
    for (const uri of taken(this.dirty)) this.duties.soon(uri);
    this.worked();
  }

  private rest(): void {
    this.pausing = false;
    for (const uri of taken(this.unsaid)) this.duties.later(uri);
    this.duties.last();
  }
}

function taken<T>(set: Set<T>): readonly T[] {
  const all = [...set];
  set.clear();
  return all;
}
