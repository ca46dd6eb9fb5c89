import { createTwoFilesPatch } from 'diff';
import { wrongPlaces } from '../../checks/finding.ts';
import { CONVERSIONS, type ConvertWish } from '../../edits/conversion.ts';
import { convertRecipe } from '../../edits/convert.ts';
import { massIn } from '../../edits/scale-target.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import type { Recipe } from '../../recipe/model.ts';
import type { Command } from '../command.ts';
import type { ConvertedJson } from '../formats/shapes.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, refuseToWriteStdin, save, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';

export const convert: Command = {
  name: 'convert',
  usage: `FILE --to ${CONVERSIONS.join('|')} [--both] [--part NAME] [--lines 4-9] [--flour "1 kg"] [--write] [--dry-run] [--format text|json] [--stdin --stdin-name NAME]`,
  summary: 'the amounts in other measures, or the temperatures on another scale',
  options: {
    ...INPUT_OPTIONS,
    to: 'value',
    both: 'flag',
    part: 'value',
    lines: 'value',
    flour: 'value',
    write: 'flag',
    'dry-run': 'flag',
    format: 'value',
  },
  examples: [
    'quern convert loaf.quern --to weight',
    'quern convert scones.quern --to us --both --write',
    'quern convert loaf.quern --to percent --dry-run',
    'quern convert formula.quern --to weight --flour "1 kg"',
    'quern convert tart.quern --to fan',
  ],
  async run(options, io): Promise<Exit> {
    const to = CONVERSIONS.find((c) => c === options.values.to);
    if (to === undefined) throw new UsageError(`--to is one of ${CONVERSIONS.join(', ')}`);
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    refuseToWriteStdin(options.flags, 'write');
    const input = await readOne(options, io);
    const { document, recipe, findings } = snapshotOf(input, housesFor(io));
    const lines = linesOf(options, recipe);
    const flourG = flourOf(options);
    const wish: ConvertWish = {
      to,
      both: options.flags.has('both'),
      marked: wrongPlaces(findings),
      ...(lines && { lines }),
      ...(flourG !== undefined && { flourG }),
    };
    const { edits, changes, said } = convertRecipe(document, recipe, wish);
    const text = printDocument(applyEdits(document, edits));
    if (options.flags.has('write') && !options.flags.has('dry-run'))
      save([{ path: input.path, before: input.text, text }], io);
    if (format === 'json') {
      const converted: ConvertedJson = { version: 1, changes, said, text };
      io.out(`${JSON.stringify(converted, null, 2)}\n`);
      return 0;
    }
    if (edits.length === 0 && said.length === 0) io.err('note: Nothing is to be converted: all stands so already.\n');
    if (options.flags.has('dry-run') && edits.length > 0)
      io.document(createTwoFilesPatch(input.shown, input.shown, input.text, text, 'as written', 'converted'));
    else if (!options.flags.has('write') && !options.flags.has('dry-run')) io.document(input.mark + text);
    for (const words of said) io.err(`note: ${words}\n`);
    return 0;
  },
};

function linesOf(options: Options, recipe: Recipe): ConvertWish['lines'] {
  const { lines, part: named } = options.values;
  if (lines !== undefined) {
    const match = /^(\d+)(?:-(\d+))?$/.exec(lines.trim());
    if (match === null) throw new UsageError(`--lines wants line numbers such as 4-9, not \`${lines}\``);
    return { first: Number(match[1]) - 1, last: Number(match[2] ?? match[1]) - 1 };
  }
  if (named === undefined) return undefined;
  const part = recipe.parts.find((p) => p.head.name.toLowerCase() === named.trim().toLowerCase());
  if (part === undefined) {
    const names = recipe.parts.map((p) => p.head.name).filter((n) => n !== '');
    throw new UsageError(`there is no part \`${named}\`; the parts are ${names.join(', ') || 'nameless'}`);
  }
  const first = recipe.partsAt[part.index] ?? 0;
  return { first, last: first + part.head.source.lines.length - 1 };
}

function flourOf({ values: { flour } }: Options): number | undefined {
  if (flour === undefined) return undefined;
  const grams = massIn(flour);
  if (grams === undefined || !(grams > 0))
    throw new UsageError(`--flour wants a weight such as "1 kg", not \`${flour}\``);
  return grams;
}
