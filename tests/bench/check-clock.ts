/** Times single checks. Loaded before the engine, which takes the checks' functions once and keeps them. */
import { CHECKS } from '../../server/src/checks/index.ts';

type Find = (...args: readonly unknown[]) => Iterable<unknown>;

const spent = new Map<string, number>();
let running = false;

for (const check of CHECKS) {
  wrap(check, 'find');
  wrap(check, 'findInFile');
}

/** The milliseconds that each check takes in one run, on average, slowest first. `run` says how often it ran. */
export function timeChecks(run: () => number): [code: string, ms: number][] {
  spent.clear();
  running = true;
  const ran = run();
  running = false;
  return [...spent].map(([code, ms]): [string, number] => [code, ms / ran]).sort((a, b) => b[1] - a[1]);
}

function wrap(check: (typeof CHECKS)[number], name: 'find' | 'findInFile'): void {
  const find = (check as unknown as Readonly<Record<string, Find | undefined>>)[name];
  if (find === undefined) return;
  const timed: Find = (...args) => {
    if (!running) return Reflect.apply(find, check, args);
    const start = performance.now();
    // To the end, as a generator does its work while it is read.
    const found = [...Reflect.apply(find, check, args)];
    spent.set(check.code, (spent.get(check.code) ?? 0) + performance.now() - start);
    return found;
  };
  Object.assign(check, { [name]: timed });
}
