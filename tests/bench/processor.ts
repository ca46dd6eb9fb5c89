/** The processor time of a command that has ended, all its threads and children together, as the shell counts it. */
import { spawnSync } from 'node:child_process';

/** Milliseconds; undefined where there is no shell that counts, or the command did not end in time. */
export function commandMs(
  args: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>> = {},
): number | undefined {
  const { stdout } = spawnSync('bash', ['-c', '"$@" >/dev/null 2>&1; times', '-', process.execPath, ...args], {
    cwd,
    env: { ...process.env, ...env },
    encoding: 'utf8',
    timeout: 300_000,
  });
  const [, children = ''] = (stdout ?? '').trim().split('\n');
  const times = [...children.matchAll(/(\d+)m([\d.]+)s/g)].map(
    ([, minutes, seconds]) => Number(minutes) * 60 + Number(seconds),
  );
  return times.length === 2 ? times.reduce((sum, each) => sum + each, 0) * 1000 : undefined;
}
