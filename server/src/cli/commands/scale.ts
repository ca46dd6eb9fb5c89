import { createTwoFilesPatch } from 'diff';
import { scaleRecipe } from '../../edits/scale.ts';
import { readTarget, type ScaleTarget } from '../../edits/scale-target.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import { type Scaled, scaledInFull, WRITTEN_IN_FULL } from '../../workspace/scale-in-full.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import type { Command } from '../command.ts';
import type { ScaledJson } from '../formats/shapes.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, refuseToWriteStdin, save, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';

export const scale: Command = {
  name: 'scale',
  usage:
    'FILE (--by 1.5 | --to "12 slices" | --to-mass "900 g" | --to-pan "round 28 x 3 cm" [--from-pan "round 24 x 3 cm"] [--whole-eggs] | --have "230 g plums" | --whole-eggs) [--part NAME] [--exact] [--write] [--dry-run] [--format text|json] [--stdin --stdin-name NAME]',
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
    'quern scale cake.quern --to-pan "square 23 x 5 cm" --whole-eggs',
    'quern scale crumble.quern --have "230 g plums"',
  ],
  async run(options, io): Promise<Exit> {
    const target = targetOf(options);
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    refuseToWriteStdin(options.flags, 'write');
    const input = await readOne(options, io);
    const opened = snapshotOf(input, housesFor(io));
    const wish = { ...target, exact: options.flags.has('exact') };
    const { snapshot, result, inFull } = scaled(opened, wish, options);
    if (!result.ok) throw new UsageError(result.why);
    const { by, edits, changes } = result.scaling;
    const said = [...(inFull ? [WRITTEN_IN_FULL] : []), ...result.scaling.said];
    const text = printDocument(applyEdits(snapshot.document, edits));
    if (options.flags.has('write') && !options.flags.has('dry-run'))
      save([{ path: input.path, before: input.text, text }], io);
    if (format === 'json') {
      const document: ScaledJson = { version: 1, by, changes, said, text };
      io.out(`${JSON.stringify(document, null, 2)}\n`);
      return 0;
    }
    if (options.flags.has('dry-run')) {
      io.document(createTwoFilesPatch(input.shown, input.shown, input.text, text, 'as written', 'scaled'));
      for (const change of changes.filter((c) => / %/.test(c))) io.err(`rounded: ${change}\n`);
    } else if (!options.flags.has('write')) io.document(input.mark + text);
    for (const words of said) io.err(`note: ${words}\n`);
    return 0;
  },
};

/** The file at another size; what builds on another is printed written out in full, and never written so. */
function scaled(snapshot: Snapshot, wish: ScaleTarget, { flags, values }: Options): Scaled {
  if (!flags.has('write') && !flags.has('dry-run')) return scaledInFull(snapshot, wish, values.part);
  const result = scaleRecipe(snapshot.document, snapshot.recipe, wish, values.part);
  if (result.ok || !result.inherits) return { snapshot, result, inFull: false };
  const why = `${result.why}; without --write and --dry-run it is printed written out in full`;
  return { snapshot, result: { ...result, why }, inFull: false };
}

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
  const isPan = first?.[0] === 'to-pan';
  if (given.length > 1 || (given.length === 1 && wholeEggs && !isPan) || (given.length === 0 && !wholeEggs))
    throw new UsageError(
      'give one of --by, --to, --to-mass, --to-pan, --have and --whole-eggs; --whole-eggs goes with --to-pan too',
    );
  if (first === undefined) return { kind: 'whole eggs' };
  const words = options.values[first[0]] ?? '';
  const target = first[1](words, options);
  if (target === undefined)
    throw new UsageError(`--${first[0]} wants a number such as 2, 0.5 or 1/2, not \`${words}\``);
  return { ...target, ...(wholeEggs && { wholeEggs }) };
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
