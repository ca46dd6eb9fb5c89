/**
 * Knows how git is started so that it runs nothing but itself: found on the PATH and never in the repository, with nothing of the
 * repository's settings that names a program, without locks and without the network.
 */
import { accessSync, constants, existsSync, realpathSync, statSync } from 'node:fs';
import { delimiter, dirname, isAbsolute, join, relative, sep } from 'node:path';
import type { GitAnswer } from '../workspace/git.ts';
import { childProcess } from './later.ts';

/** More than any recipe, and any list of changed files. */
const MOST_BYTES = 256 * 1024 * 1024;
/** Longer than any repository takes. */
const PATIENCE_MS = 60_000;

/** What git answers, as text. */
export function said(folder: string, args: readonly string[], input = ''): GitAnswer<string> {
  const ran = run(folder, args, input);
  return ran.known ? { known: true, value: ran.value.toString('utf8') } : ran;
}

/** The same as bytes; `input` is what it reads. */
export function run(folder: string, args: readonly string[], input = ''): GitAnswer<Buffer> {
  const git = programFor(folder);
  if (git === undefined) return { known: false, why: 'git is not on the PATH' };
  // What filters there are is told by git itself, which runs none for that.
  const filters = start(git, folder, ['config', '-z', '--name-only', '--get-regexp', '^filter\\.'], SETTINGS);
  const names = filters.known ? filters.value.toString('utf8').split('\0') : [];
  return start(git, folder, args, [...SETTINGS, ...names.flatMap(withoutFilter)], input);
}

type Setting = readonly [key: string, value: string];

/** Each would have git run a program that the repository names, or write into it. */
const SETTINGS: readonly Setting[] = [
  ['core.fsmonitor', 'false'],
  ['core.hooksPath', process.platform === 'win32' ? 'NUL' : '/dev/null'],
  ['core.pager', ''],
  ['protocol.allow', 'never'],
  ['submodule.recurse', 'false'],
  ['diff.external', ''],
  ['diff.autoRefreshIndex', 'false'],
];

/** `filter.NAME.clean`, with whatever NAME has in it. An empty one is none. */
function withoutFilter(key: string): readonly Setting[] {
  const name = /^filter\.(.*)\.[^.]*$/is.exec(key)?.[1];
  return name === undefined
    ? []
    : [
        ...['clean', 'smudge', 'process'].map((what): Setting => [`filter.${name}.${what}`, '']),
        [`filter.${name}.required`, 'false'],
      ];
}

function start(
  git: string,
  folder: string,
  args: readonly string[],
  settings: readonly Setting[],
  input = '',
): GitAnswer<Buffer> {
  const ran = childProcess().spawnSync(git, ['--no-optional-locks', '--no-pager', ...args], {
    cwd: folder,
    input,
    env: { ...process.env, ...QUIET, ...asVariables(settings) },
    maxBuffer: MOST_BYTES,
    timeout: PATIENCE_MS,
    windowsHide: true,
  });
  if (ran.error !== undefined) {
    const why =
      'code' in ran.error && ran.error.code === 'ETIMEDOUT' ? 'it took longer than a minute' : ran.error.message;
    return { known: false, why: `git could not be asked: ${why}` };
  }
  if (ran.status === 0) return { known: true, value: ran.stdout };
  const [first = ''] = ran.stderr.toString('utf8').split('\n');
  return { known: false, why: first === '' ? `git ${args[0] ?? ''} failed` : first.replace(/^fatal: /, 'git says: ') };
}

/** Nothing is fetched, nothing asked of whoever sits there, and no other command compares. */
const QUIET: Readonly<Record<string, string>> = {
  GIT_NO_LAZY_FETCH: '1',
  GIT_ALLOW_PROTOCOL: 'none',
  GIT_TERMINAL_PROMPT: '0',
  GIT_EXTERNAL_DIFF: '',
};

/** Settings that go before those of any file. As variables: on the command line a name could have no `=` in it. */
function asVariables(settings: readonly Setting[]): Record<string, string> {
  const before = Number(process.env.GIT_CONFIG_COUNT ?? 0) || 0;
  const variables: Record<string, string> = { GIT_CONFIG_COUNT: String(before + settings.length) };
  for (const [i, [key, value]] of settings.entries()) {
    variables[`GIT_CONFIG_KEY_${before + i}`] = key;
    variables[`GIT_CONFIG_VALUE_${before + i}`] = value;
  }
  return variables;
}

const NAME = process.platform === 'win32' ? 'git.exe' : 'git';

/** The first git of the PATH, of its whole paths alone, that does not lie in the repository. */
function programFor(folder: string): string | undefined {
  const own = realOf(repositoryAround(folder));
  for (const entry of (process.env.PATH ?? '').split(delimiter)) {
    if (!isAbsolute(entry)) continue;
    const path = join(entry, NAME);
    if (isProgram(path) && !liesIn(realOf(path), own) && !liesIn(realOf(entry), own)) return path;
  }
  return undefined;
}

function repositoryAround(folder: string): string {
  for (let at = folder; dirname(at) !== at; at = dirname(at)) if (existsSync(join(at, '.git'))) return at;
  return folder;
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

function realOf(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
}

function liesIn(path: string, folder: string): boolean {
  const below = relative(folder, path);
  return below === '' || (!isAbsolute(below) && below.split(sep)[0] !== '..');
}
