import { CHECKS } from '../../checks/index.ts';
import { explainList, explainOn, explainPage } from '../../publish/page.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, UsageError } from '../io.ts';

export const explain: Command = {
  name: 'explain',
  usage: '[CODE [FILE]] [--stdin --stdin-name NAME]',
  summary: "a finding's page, with the arithmetic on a recipe; or the list of all",
  options: INPUT_OPTIONS,
  examples: ['quern explain', 'quern explain dough-too-wet', 'quern explain dough-too-wet tart.quern'],
  async run(options, io): Promise<Exit> {
    const [code, ...file] = options.rest;
    if (code === undefined) {
      io.out(explainList(CHECKS));
      return 0;
    }
    const check = CHECKS.find((c) => c.code === code);
    if (check === undefined) throw new UsageError(`there is no finding \`${code}\`; \`quern explain\` lists them`);
    if (file.length === 0 && !options.flags.has('stdin')) {
      io.out(explainPage(check));
      return 0;
    }
    const input = await readOne({ ...options, rest: file }, io);
    const snapshot = snapshotOf(input, housesFor(io));
    const { open, accepted } = snapshot.findings;
    io.out(explainOn(check, [...open, ...accepted], snapshot, input.shown));
    return 0;
  },
};
