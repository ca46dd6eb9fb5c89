import { createTwoFilesPatch } from 'diff';
import { readTarget, type ScaleTarget, scaleRecipe } from '../../edits/scale.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, UsageError } from '../io.ts';
import type { Options } from '../options.ts';

export const scale: Command = {
  name: 'scale',
  usage:
    'FILE (--by 1.5 | --to "12 slices" | --to-mass "900 g" | --to-pan "round 28 x 3 cm" | --have "230 g plums") [--part NAME] [--write] [--dry-run]',
  summary: 'the whole file at another size',
  options: {
    ...INPUT_OPTIONS,
    by: 'value',
    to: 'value',
    'to-mass': 'value',
    'to-pan': 'value',
    have: 'value',
    part: 'value',
    write: 'flag',
    'dry-run': 'flag',
  },
  examples: [
    'quern scale tart.quern --by 2',
    'quern scale tart.quern --to "12 slices" --write',
    'quern scale loaf.quern --to-mass "900 g" --dry-run',
  ],
  async run(options, io): Promise<Exit> {
    const target = targetOf(options);
    const input = await readOne(options, io);
    const snapshot = snapshotOf(input, housesFor(io));
    const result = scaleRecipe(snapshot.document, snapshot.recipe, target, options.values.part);
    if (!result.ok) throw new UsageError(result.why);
    const text = printDocument(applyEdits(snapshot.document, result.scaling.edits));
    if (options.flags.has('dry-run'))
      io.out(createTwoFilesPatch(input.shown, input.shown, input.text, text, 'as written', 'scaled'));
    else if (options.flags.has('write')) io.write(input.path, text);
    else io.out(text);
    for (const said of result.scaling.said) io.err(`note: ${said}\n`);
    return 0;
  },
};

const KINDS: readonly (readonly [string, (words: string) => ScaleTarget | undefined])[] = [
  ['by', (words) => byFactor(words)],
  ['to', (words) => ({ kind: 'yield', words })],
  ['to-mass', (words) => ({ kind: 'mass', words })],
  ['to-pan', (words) => ({ kind: 'pan', words })],
  ['have', (words) => ({ kind: 'have', words })],
];

function targetOf(options: Options): ScaleTarget {
  const given = KINDS.filter(([name]) => options.values[name] !== undefined);
  const [first] = given;
  if (first === undefined || given.length > 1)
    throw new UsageError('give one of --by, --to, --to-mass, --to-pan and --have');
  const words = options.values[first[0]] ?? '';
  const target = first[1](words);
  if (target === undefined)
    throw new UsageError(`--${first[0]} wants a number such as 2, 0.5 or 1/2, not \`${words}\``);
  return target;
}

function byFactor(words: string): ScaleTarget | undefined {
  const target = readTarget(words);
  return target?.kind === 'by' ? target : undefined;
}
