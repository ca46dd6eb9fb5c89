import { CHECKS } from '../../checks/index.ts';
import { explainList, explainPage } from '../../publish/page.ts';
import type { Command } from '../command.ts';
import { UsageError } from '../io.ts';

export const explain: Command = {
  name: 'explain',
  usage: '[CODE]',
  summary: "a finding's page, or the list of all",
  options: {},
  examples: ['quern explain', 'quern explain dough-too-wet'],
  run(options, io) {
    const [code] = options.rest;
    if (code === undefined) {
      io.out(explainList(CHECKS));
      return 0;
    }
    const check = CHECKS.find((c) => c.code === code);
    if (check === undefined) throw new UsageError(`there is no finding \`${code}\`; \`quern explain\` lists them`);
    io.out(explainPage(check));
    return 0;
  },
};
