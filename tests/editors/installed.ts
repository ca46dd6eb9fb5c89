/** Knows which editors are on this machine; what is not is left out, with a word. */
import { spawnSync } from 'node:child_process';

export const isInstalled = (program: string): boolean => {
  const is = spawnSync(program, ['--version'], { stdio: 'ignore' }).error === undefined;
  if (!is) process.stderr.write(`${program} is not installed: what it shows is not tested\n`);
  return is;
};
