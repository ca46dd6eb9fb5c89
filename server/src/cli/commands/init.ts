import { MEASURES_CHOICES } from '../../measure/systems.ts';
import { type Beginning, beginningsOf } from '../../workspace/beginnings.ts';
import type { GitAnswer, Repository } from '../../workspace/git.ts';
import { DEFAULTS } from '../../workspace/settings.ts';
import type { Command } from '../command.ts';
import { type Exit, type FileChange, type Io, save, UsageError } from '../io.ts';
import { choiceOf } from '../options.ts';

export const init: Command = {
  name: 'init',
  usage: '[FOLDER] [--measures us|metric|british|australian|canadian|imperial] [--dry-run]',
  summary: 'the files a folder of recipes begins with; what is there stays as it is',
  options: { measures: 'value', 'dry-run': 'flag' },
  examples: ['quern init', 'quern init recipes --measures metric', 'quern init --dry-run'],
  run(options, io): Exit {
    const [path = '.', ...more] = options.rest;
    if (more.length > 0) throw new UsageError(`name one folder; \`${more.join(' ')}\` is left over`);
    const house = io.resolve(path);
    if (io.kind(house) !== 'folder') throw new UsageError(`there is no folder \`${path}\``);
    const measures = choiceOf(options, 'measures', MEASURES_CHOICES, DEFAULTS.measures);
    const repository = io.git.repositoryAt(house);
    const inside = repository.known ? repository.value.inside : '';
    const changes: FileChange[] = [];
    const said: string[] = [];
    for (const beginning of beginningsOf(measures, inside)) {
      const place = placeOf(beginning, house, repository, io);
      if ('why' in place) said.push(`not written: ${beginning.name}, as ${place.why}`);
      else {
        const shown = io.shown(place.path);
        const there = io.kind(place.path) === undefined ? undefined : (io.files.read(place.path) ?? '');
        if (there === undefined) {
          const { text, executable } = beginning;
          changes.push({ path: place.path, before: undefined, text, ...(executable && { executable }) });
          said.push(`${options.flags.has('dry-run') ? 'would write' : 'wrote'}: ${shown}`);
        } else said.push(leftWords(shown, there === beginning.text ? undefined : beginning.lacking(there)));
      }
    }
    if (!options.flags.has('dry-run')) save(changes, io);
    io.out(`${said.join('\n')}\n`);
    return 0;
  },
};

const leftWords = (shown: string, lacking: string | undefined): string =>
  `left as it is: ${shown}${lacking === undefined ? '' : `; ${lacking}`}`;

function placeOf(
  { at, name }: Beginning,
  house: string,
  repository: GitAnswer<Repository>,
  io: Io,
): { readonly path: string } | { readonly why: string } {
  if (at === 'house') return { path: io.files.join(house, name) };
  if (!repository.known) return { why: 'no git repository is there: `git init` makes one' };
  const { root, hooks } = repository.value;
  if (at === 'root') return { path: io.files.join(root, name) };
  if (hooks === undefined)
    return { why: 'git is set to look for hooks outside this repository: `npx --no -- quern check` is the line' };
  return { path: io.files.join(hooks, name) };
}
