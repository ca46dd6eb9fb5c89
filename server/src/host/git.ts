/**
 * Knows how git is asked: which files changed, and what one held at a revision.
 * Refuses to change anything in the repository, and to run what its settings name.
 */
import { existsSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import type { Git, GitAnswer, Repository } from '../workspace/git.ts';
import { faultWords } from '../workspace/read-fault.ts';
import { decode } from './decode.ts';
import { run, said } from './run-git.ts';

export const nodeGit = (): Git => ({ changedSince, textAt, repositoryAt });

function changedSince(folder: string, revision: string): GitAnswer<readonly string[]> {
  const since = branchedAt(folder, revision);
  if (!since.known) return since;
  // The root as it is reached from here: links stay as they were followed.
  const up = said(folder, ['rev-parse', '--show-cdup']);
  if (!up.known) return up;
  const root = join(folder, up.value.trim());
  const changed = differing(root, since.value);
  if (!changed.known) return changed;
  const fresh = said(root, ['ls-files', '--others', '--exclude-standard', '-z']);
  if (!fresh.known) return fresh;
  const names = [...changed.value, ...fresh.value.split('\0').filter((n) => n !== '')];
  return { known: true, value: [...new Set(names)].sort().map((name) => join(root, name)) };
}

/** One file as `diff --raw` tells of it: modes, objects, what became of it. */
const RAW = /^:(\d+) (\d+) ([0-9a-f]+) ([0-9a-f]+) (\w)/;

/** The modes of files that are no links and no repositories. */
const ORDINARY = /^100/;

/** The names of files that differ from a commit. */
function differing(root: string, commit: string): GitAnswer<readonly string[]> {
  const options = [
    '--raw',
    '--no-abbrev',
    '-z',
    '--no-renames',
    '--no-ext-diff',
    '--no-textconv',
    '--ignore-submodules=all',
  ];
  const raw = said(root, ['diff', ...options, commit, '--']);
  if (!raw.known) return raw;
  const fields = raw.value.split('\0');
  const names: string[] = [];
  // Git has not looked into these: to it they are as old as they look, since it may not write down that they are the same.
  const toLookInto = new Map<string, string>();
  for (let i = 0; i + 1 < fields.length; i += 2) {
    const [, modeThen, modeNow, then = '', now = '', what] = RAW.exec(fields[i] ?? '') ?? [];
    const name = fields[i + 1] ?? '';
    const isOpen =
      what === 'M' && modeNow === modeThen && ORDINARY.test(modeThen ?? '') && /^0+$/.test(now) && !/[\n"]/.test(name);
    if (isOpen) toLookInto.set(name, then);
    else names.push(name);
  }
  return { known: true, value: [...names, ...trulyOther(root, toLookInto)] };
}

/** The files that hold other bytes than the object they were; all of them where that cannot be told. */
function trulyOther(root: string, files: ReadonlyMap<string, string>): readonly string[] {
  const names = [...files.keys()];
  if (names.length === 0) return names;
  const hashed = said(root, ['hash-object', '--no-filters', '--stdin-paths'], `${names.join('\n')}\n`);
  if (!hashed.known) return names;
  const now = hashed.value.split('\n');
  return names.filter((name, i) => files.get(name) !== now[i]);
}

function repositoryAt(folder: string): GitAnswer<Repository> {
  const found = said(folder, ['rev-parse', '--show-cdup', '--show-prefix', '--git-common-dir']);
  if (!found.known) return found;
  const [up = '', inside = '', common = ''] = found.value.split('\n');
  const root = resolve(folder, up);
  // Of all that are set the last is in force; behind it stands the one that keeps hooks from being run here.
  const set = said(folder, ['config', '--get-all', 'core.hooksPath']);
  const own = set.known ? set.value.trimEnd().split('\n').slice(0, -1).at(-1) : undefined;
  const hooks = own === undefined ? join(resolve(folder, common), 'hooks') : resolve(root, own);
  const isOwn = own === undefined || !relative(root, hooks).startsWith('..');
  return { known: true, value: { root, inside: inside.replace(/\/$/, ''), hooks: isOwn ? hooks : undefined } };
}

function textAt(path: string, revision: string): GitAnswer<string> {
  const folder = nearestFolder(path);
  const commit = commitOf(folder, revision);
  if (!commit.known) return commit;
  const object = `${commit.value}:./${relative(folder, path).replaceAll('\\', '/')}`;
  const type = said(folder, ['cat-file', '-t', object]);
  if (!type.known) return { known: false, why: `there is no such path in \`${revision}\`` };
  if (type.value.trim() !== 'blob') return { known: false, why: `it is a folder in \`${revision}\`, and no file` };
  const bytes = run(folder, ['cat-file', 'blob', object]);
  if (!bytes.known) return bytes;
  const { text, other } = decode(bytes.value);
  if (text !== undefined) return { known: true, value: text };
  const why = other === undefined ? 'cannot be read' : faultWords({ kind: 'encoding', encoding: other });
  return { known: false, why: `it ${why}` };
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
  const base = said(folder, ['merge-base', commit.value, 'HEAD']);
  return base.known ? { known: true, value: base.value.trim() } : commit;
}

/** A revision is never handed on as it is written: one that begins with a dash would be an option. */
function commitOf(folder: string, revision: string): GitAnswer<string> {
  const found = said(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`]);
  if (found.known) return { known: true, value: found.value.trim() };
  const inside = said(folder, ['rev-parse', '--git-dir']);
  return { known: false, why: inside.known ? `git knows no revision \`${revision}\`` : inside.why };
}
