import { recordTrial } from '../../edits/record-trial.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { isDay } from '../../measure/calendar.ts';
import { gramsText } from '../../measure/number-text.ts';
import { printDocument } from '../../notation/document.ts';
import { outOfOven } from '../../recipe/trials/out-of-oven.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, refuseToWriteStdin, save, UsageError } from '../io.ts';

export const trial: Command = {
  name: 'trial',
  usage: 'FILE [--date 2026-09-14] [--by NAME] [--write] [--stdin --stdin-name NAME]',
  summary:
    'the file with a trial of today begun: a blank for each figure worth measuring, and the mark of what it tests',
  options: { ...INPUT_OPTIONS, date: 'value', by: 'value', write: 'flag' },
  examples: ['quern trial tart.quern --by Ines --write', 'quern trial tart.quern --date 2026-09-14'],
  async run(options, io): Promise<Exit> {
    const { values, flags } = options;
    const date = values.date ?? io.today();
    if (!isDay(date)) throw new UsageError(`--date wants a day such as 2026-09-14, not \`${date}\``);
    refuseToWriteStdin(options.flags, 'write');
    const input = await readOne(options, io);
    const { document, outline, whole, isWhole } = snapshotOf(input, housesFor(io));
    const cooked = whole.recipe.parts.some((p) => p.head.ingredients.length > 0 || p.steps.length > 0);
    if (outline.recipe === undefined || !cooked) throw new UsageError('there is no recipe in this file to try');
    if (!isWhole)
      throw new UsageError(
        'the recipe builds on what is not there, so it could not be cooked so: `quern check` says what is missing',
      );
    const text = printDocument(applyEdits(document, recordTrial(document, whole.recipe, date, values.by).edits));
    if (flags.has('write')) save([{ path: input.path, before: input.text, text }], io);
    else io.document(input.mark + text);
    const usual = outOfOven(whole.recipe)?.left;
    if (usual !== undefined && Number.isFinite(usual.high))
      io.err(
        `note: ${gramsText(usual.low)} to ${gramsText(usual.high)} g usually comes out of the oven: weigh it, and add the line \`weighed … g out of the oven\`\n`,
      );
    return 0;
  },
};
