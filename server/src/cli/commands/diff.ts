import { diffJson, diffText } from '../../publish/diff/words.ts';
import { diffRecipes } from '../../publish/diff.ts';
import { factsText } from '../../publish/facts-text.ts';
import { visibleLine } from '../../publish/visible.ts';
import type { Houses } from '../../workspace/houses.ts';
import type { Bases } from '../../workspace/ports.ts';
import { Snapshot } from '../../workspace/snapshot.ts';
import type { Command } from '../command.ts';
import { housesFor, inputAt } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';

/** One side of a comparison. */
interface Side {
  readonly shown: string;
  /** Where it lies, or lay: its house is found from there. */
  readonly path: string;
  readonly text: string;
  /** What it builds on is read as it was then. */
  readonly revision?: string;
}

/** What git hands to an external diff: path, then file, object and mode of each side; two more where it was renamed. */
const FROM_GIT = [7, 8, 9];

export const diff: Command = {
  name: 'diff',
  usage: 'A B [--format text|json] [--exit-code] | --textconv FILE',
  summary: 'what changed, as a cook would say it',
  options: { format: 'value', 'exit-code': 'flag', textconv: 'flag' },
  examples: [
    'quern diff tart.quern tart-2.quern',
    'quern diff HEAD:tart.quern tart.quern',
    'quern diff v1.0:tart.quern v1.1:tart.quern --format json',
    'git config diff.quern.command "quern diff"       # with `*.quern diff=quern` in .gitattributes',
    'git config diff.quern.textconv "quern diff --textconv"',
  ],
  run(options, io): Exit {
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const textconv = options.flags.has('textconv');
    const byGit = FROM_GIT.includes(options.rest.length);
    // Git would stop at the first file if it were told that a house cannot be used.
    const houses = textconv || byGit ? housesFor(io, (words) => io.err(`quern: ${words}\n`)) : housesFor(io);
    if (textconv) {
      io.out(factsText(sideSnapshot(onlyFile(options, io), houses, io).whole.recipe));
      return 0;
    }
    const [before, after] = byGit ? sidesOfGit(options.rest, io) : sidesOf(options.rest, io);
    const found = diffRecipes(
      sideSnapshot(before, houses, io).whole.recipe,
      sideSnapshot(after, houses, io).whole.recipe,
    );
    const same = found.changes.length === 0 && found.batch === 1;
    if (byGit) io.out(`${visibleLine(after.shown)}\n`);
    if (format === 'json') io.out(diffJson(found, { from: before.shown, to: after.shown }));
    else if (same && before.text === after.text) io.out('the same text\n');
    else if (byGit && after.text === '') io.out('the file is no more\n');
    else io.out(diffText(found));
    return options.flags.has('exit-code') && !same ? 1 : 0;
  },
};

function sidesOf(rest: readonly string[], io: Io): [Side, Side] {
  const [a, b, ...more] = rest;
  if (a === undefined || b === undefined || more.length > 0)
    throw new UsageError('name two: files, or REV:FILE for what a file was, such as HEAD:tart.quern');
  const [hasA, hasB] = [a, b].map((written) => io.kind(io.resolve(written)) === 'file');
  if (!hasA && hasB && !a.includes(':'))
    throw new UsageError(`there is no file \`${a}\`; for what one was at a revision write \`${a}:${b}\``);
  return [readSide(a, io), readSide(b, io)];
}

/** A file, or what one was at a revision of git. */
function readSide(written: string, io: Io): Side {
  const path = io.resolve(written);
  if (io.kind(path) === 'file') return { shown: written, path, text: textOf(path, written, io) };
  const at = written.indexOf(':');
  if (at <= 0) throw new UsageError(`there is no file \`${written}\``);
  const file = io.resolve(written.slice(at + 1));
  const revision = written.slice(0, at);
  const answer = io.git.textAt(file, revision);
  if (!answer.known) throw new UsageError(`\`${written}\`: ${answer.why}`);
  return { shown: written, path: file, text: answer.value, revision };
}

/** Git names the file it speaks of, and hands over what it held in files of its own. */
function sidesOfGit(rest: readonly string[], io: Io): [Side, Side] {
  const [path = '', before = '', , , after = '', , , renamed] = rest;
  const name = renamed ?? path;
  const side = (file: string, shown: string): Side => ({
    shown,
    path: io.resolve(shown),
    text: file === '/dev/null' || file === 'nul' ? '' : textOf(io.resolve(file), file, io),
  });
  return [side(before, path), side(after, name)];
}

/** A file of git's own lies in no house: the house is the one the command runs in. */
function onlyFile(options: Options, io: Io): Side {
  const [file, ...more] = options.rest;
  if (file === undefined || more.length > 0) throw new UsageError('--textconv wants one file');
  const path = io.resolve(file);
  const text = textOf(path, file, io);
  return { shown: file, path: io.files.houseAbove(path) === undefined ? io.resolve('textconv.quern') : path, text };
}

function textOf(path: string, written: string, io: Io): string {
  return inputAt(path, written, io).text;
}

function sideSnapshot({ path, text, revision }: Side, houses: Houses, io: Io): Snapshot {
  const bases = revision === undefined ? houses.bases : basesAt(revision, io);
  return Snapshot.open(path, 0, text, houses.of(path).house, bases);
}

function basesAt(revision: string, { files, git }: Io): Bases {
  return {
    load: (from, name) => {
      const path = files.beside(from, name);
      const answer = git.textAt(path, revision);
      return answer.known ? { path, text: answer.value } : undefined;
    },
  };
}
