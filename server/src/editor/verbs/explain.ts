/** The page of a finding's `code`, with its arithmetic where the file has that finding. */
import { CHECKS } from '../../checks/index.ts';
import { explainOn, explainPage } from '../../publish/page.ts';
import { textIn } from '../page/acts/act.ts';
import type { Verb } from './verb.ts';

export const explain: Verb = {
  takes: ['code'],
  title: 'Explain a finding',
  run: ({ snapshot, arg }) => {
    const code = textIn(arg, 'code');
    const check = CHECKS.find((each) => each.code === code);
    if (check === undefined) return { refused: `There is no finding \`${code ?? ''}\`.` };
    const here = snapshot.findings.open.filter((finding) => finding.code === code);
    return { text: here.length === 0 ? explainPage(check) : explainOn(check, here, snapshot, 'this recipe') };
  },
};
