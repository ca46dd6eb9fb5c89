import { report as workOut } from '../../publish/report.ts';
import { reportText } from '../../publish/report-text.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import type { Exit } from '../io.ts';
import { choiceOf } from '../options.ts';

export const report: Command = {
  name: 'report',
  usage: 'FILE [--format text|json] [--stdin --stdin-name NAME]',
  summary: 'the recipe worked out: grams, percentages, composition, measures, times',
  options: { ...INPUT_OPTIONS, format: 'value' },
  examples: ['quern report tart.quern', 'quern report tart.quern --format json'],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const snapshot = snapshotOf(await readOne(options, io), housesFor(io));
    const worked = workOut(snapshot.whole.recipe, snapshot.findings);
    io.out(format === 'json' ? `${JSON.stringify(worked, null, 2)}\n` : reportText(worked));
    return 0;
  },
};
