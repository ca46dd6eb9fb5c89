/**
 * Knows how git is asked: which files changed, and what one held at a revision.
 * Refuses to change anything in the repository.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import type { Git, GitAnswer } from '../workspace/git.ts';

/** More than any recipe, and any list of changed files. */
const MOST_BYTES = 256 * 1024 * 1024;

export function nodeGit(): Git {
  return {
    changedSince: (folder, revision) => {
      const since = branchedAt(folder, revision);
      if (!since.known) return since;
      // The root as it is reached from here: links stay as they were followed.
      const up = run(folder, ['rev-parse', '--show-cdup']);
      if (!up.known) return up;
      const root = join(folder, up.value.trim());
      const changed = run(root, ['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', since.value, '--']);
      const fresh = run(root, ['ls-files', '--others', '--exclude-standard', '-z']);
      if (!changed.known) return changed;
      if (!fresh.known) return fresh;
      const names = `${changed.value}\0${fresh.value}`.split('\0').filter((n) => n !== '');
      return { known: true, value: [...new Set(names)].sort().map((name) => join(root, name)) };
    },
    textAt: (path, revision) => {
      const folder = nearestFolder(path);
      const commit = commitOf(folder, revision);
      if (!commit.known) return commit;
      const object = `${commit.value}:./${relative(folder, path).replaceAll('\\', '/')}`;
      const type = run(folder, ['cat-file', '-t', object]);
      if (!type.known) return { known: false, why: `there is no such path in \`${revision}\`` };
      return type.value.trim() === 'blob'
        ? run(folder, ['cat-file', 'blob', object])
        : { known: false, why: `it is a folder in \`${revision}\`, and no file` };
    },
  };
}

/** The nearest folder above a path that is there now: what was there once may be gone with its folder. */
function nearestFolder(path: string): string {
  let folder = dirname(path);
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}

/** Where the present branch left the revision; the revision itself where the history is cut short. */
function branchedAt(folder: string, revision: string): GitAnswer<string> {
  const commit = commitOf(folder, revision);
  if (!commit.known) return commit;
  const base = run(folder, ['merge-base', commit.value, 'HEAD']);
  return base.known ? { known: true, value: base.value.trim() } : commit;
}

/** A revision is never handed on as it is written: one that begins with a dash would be an option. */
function commitOf(folder: string, revision: string): GitAnswer<string> {
  const found = run(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
  if (found.known) return { known: true, value: found.value.trim() };
  const inside = run(folder, ['rev-parse', '--git-dir']);
  return { known: false, why: inside.known ? `git knows no revision \`${revision}\`` : inside.why };
}

function run(folder: string, args: readonly string[]): GitAnswer<string> {
  const ran = spawnSync('git', args, { cwd: folder, encoding: 'utf8', maxBuffer: MOST_BYTES, windowsHide: true });
  if (ran.error !== undefined) return { known: false, why: `git could not be started: ${ran.error.message}` };
  if (ran.status === 0) return { known: true, value: ran.stdout };
  const [said = ''] = ran.stderr.split('\n');
  return { known: false, why: said === '' ? `git ${args[0] ?? ''} failed` : said.replace(/^fatal: /, 'git says: ') };
}
