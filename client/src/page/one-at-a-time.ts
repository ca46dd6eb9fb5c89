// Knows how something that is wanted again and again is done one at a time, and once more at the end where it was wanted meanwhile.

/** `run` again once it has ended, however often it was asked for meanwhile. */
export function oneAtATime(run: () => Promise<void>): () => void {
  let running = false;
  let again = false;
  const start = (): void => {
    if (running) {
      again = true;
      return;
    }
    running = true;
    void run().finally(() => {
      running = false;
      if (!again) return;
      again = false;
      start();
    });
  };
  return start;
}
