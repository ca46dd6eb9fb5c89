/** Says when a server that runs no longer answers. */
export type Watchdog = {
  /** Begins to ask, from the first question on. */
  readonly watch: () => void;
  readonly rest: () => void;
};

export type Watched = {
  /** Resolves, or rejects, when the server says anything at all. */
  readonly ask: () => Promise<unknown>;
  /** Nothing was heard; it is not asked again until `watch` is called. */
  readonly hung: () => void;
  readonly everyMs: number;
  /** So many questions in a row without a word: counted, so that a machine that slept is no server that hangs. */
  readonly patience: number;
};

/** Asks one question after another, and never two at once. */
export function createWatchdog({ ask, hung, everyMs, patience }: Watched): Watchdog {
  let timer: ReturnType<typeof setInterval> | undefined;
  let unanswered = 0;
  let asked = false;
  const rest = (): void => {
    clearInterval(timer);
    timer = undefined;
  };
  const look = (): void => {
    if (asked) {
      unanswered += 1;
      if (unanswered < patience) return;
      rest();
      hung();
      return;
    }
    const since = timer;
    asked = true;
    const heard = (): void => {
      // An answer of a server that is gone says nothing of the one that runs.
      if (since !== timer) return;
      asked = false;
      unanswered = 0;
    };
    ask().then(heard, heard);
  };
  return {
    watch: () => {
      rest();
      asked = false;
      unanswered = 0;
      timer = setInterval(look, everyMs);
    },
    rest,
  };
}
