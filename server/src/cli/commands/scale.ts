import { createTwoFilesPatch } from 'diff';
import { readTarget, type ScaleTarget, scaleRecipe } from '../../edits/scale.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';

export const scale: Command = {
  name: 'scale',
  usage:
    'FILE (--by 1.5 | --to "12 slices" | --to-mass "900 g" | --to-pan "round 28 x 3 cm" [--from-pan "round 24 x 3 cm"] | --have "230 g plums" | --whole-eggs) [--part NAME] [--exact] [--write] [--dry-run] [--format text|json]',
  summary: 'the whole file at another size',
  options: {
    ...INPUT_OPTIONS,
    by: 'value',
    to: 'value',
    'to-mass': 'value',
    'to-pan': 'value',
    'from-pan': 'value',
    have: 'value',
    'whole-eggs': 'flag',
    part: 'value',
    exact: 'flag',
    write: 'flag',
    'dry-run': 'flag',
    format: 'value',
  },
  examples: [
    'quern scale tart.quern --by 2',
    'quern scale tart.quern --to "12 slices" --write',
    'quern scale rolls.quern --to "24 rolls of 60 g"',
    'quern scale loaf.quern --to-mass "900 g" --dry-run',
    'quern scale tart.quern --to-pan "2 x round 20 x 3 cm"',
    'quern scale crumble.quern --have "230 g plums"',
  ],
  async run(options, io): Promise<Exit> {
    const target = targetOf(options);
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const input = await readOne(options, io);
    const snapshot = snapshotOf(input, housesFor(io));
    const wish = { ...target, exact: options.flags.has('exact') };
    const result = scaleRecipe(snapshot.document, snapshot.recipe, wish, options.values.part);
    if (!result.ok) throw new UsageError(result.why);
    const { by, edits, changes, said } = result.scaling;
    const text = printDocument(applyEdits(snapshot.document, edits));
    if (options.flags.has('write') && !options.flags.has('dry-run')) io.write(input.path, text);
    if (format === 'json') {
      io.out(`${JSON.stringify({ version: 1, by, changes, said, text }, null, 2)}\n`);
      return 0;
    }
    if (options.flags.has('dry-run')) {
      io.out(createTwoFilesPatch(input.shown, input.shown, input.text, text, 'as written', 'scaled'));
      for (const change of changes.filter((c) => / %/.test(c))) io.err(`rounded: ${change}\n`);
    } else if (!options.flags.has('write')) io.out(text);
    for (const words of said) io.err(`note: ${words}\n`);
    return 0;
  },
};

type Given = readonly [name: string, read: (words: string, options: Options) => ScaleTarget | undefined];

const KINDS: readonly Given[] = [
  ['by', (words) => byFactor(words)],
  ['to', (words) => sizeNamed(words)],
  ['to-mass', (words) => ({ kind: 'mass', words })],
  ['to-pan', (words, { values }) => ({ kind: 'pan', words, ...(values['from-pan'] && { from: values['from-pan'] }) })],
  ['have', (words) => ({ kind: 'have', words })],
];

function targetOf(options: Options): ScaleTarget {
  const given = KINDS.filter(([name]) => options.values[name] !== undefined);
  const [first] = given;
  const wholeEggs = options.flags.has('whole-eggs');
  if (given.length + (wholeEggs ? 1 : 0) !== 1)
    throw new UsageError('give one of --by, --to, --to-mass, --to-pan, --have and --whole-eggs');
  if (first === undefined) return { kind: 'whole eggs' };
  const words = options.values[first[0]] ?? '';
  const target = first[1](words, options);
  if (target === undefined)
    throw new UsageError(`--${first[0]} wants a number such as 2, 0.5 or 1/2, not \`${words}\``);
  return target;
}

function byFactor(words: string): ScaleTarget | undefined {
  const target = readTarget(words);
  return target?.kind === 'by' ? target : undefined;
}

/** `--to "12 slices"`, and a pan too, as a cook would say it. */
function sizeNamed(words: string): ScaleTarget {
  const target = readTarget(`to ${words}`);
  return target === undefined || target.kind === 'by' ? { kind: 'yield', words } : target;
}
