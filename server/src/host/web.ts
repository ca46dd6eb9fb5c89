/**
 * Knows the turns and pauses of a worker in a browser.
 * Refuses to know recipes.
 */

/** Runs something once the messages that wait have been read: a timer waits for some ms in a browser. */
export function turns(): (run: () => void) => void {
  const waiting: (() => void)[] = [];
  const { port1, port2 } = new MessageChannel();
  port1.addEventListener('message', () => waiting.shift()?.());
  port1.start();
  return (run) => {
    waiting.push(run);
    port2.postMessage(null);
  };
}

/** Runs what it was last given once nothing new has been given for so many milliseconds. */
export function whenIdle(pauseMs: number): (run: () => void) => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (run) => {
    clearTimeout(timer);
    timer = setTimeout(run, pauseMs);
  };
}
