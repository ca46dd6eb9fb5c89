/** Knows where the user's own cache lies. */
import { homedir } from 'node:os';
import { isAbsolute, join } from 'node:path';

/** The folder of that name in Quern's; undefined where the user has none. */
export function cacheFolder(name: string): string | undefined {
  const { env, platform } = process;
  try {
    const own =
      platform === 'win32'
        ? env.LOCALAPPDATA || homedir()
        : platform === 'darwin'
          ? join(homedir(), 'Library', 'Caches')
          : env.XDG_CACHE_HOME || join(homedir(), '.cache');
    return isAbsolute(own) ? join(own, 'quern', name) : undefined;
  } catch {
    return undefined;
  }
}
