// Knows how a cook is asked for a size. It refuses to scale: the server says which edits to make and what does not scale by itself.

import * as vscode from 'vscode';
import { messageVersion, scaleRequest } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { recipeInFront } from '../in-front.ts';
import { type Proposal, type Proposals, settle } from '../proposal.ts';
import { warn } from '../say.ts';

/** What a key binding may give: the wish, and whether to make the change without showing it first. */
type ScaleArguments = { readonly to?: string; readonly apply?: boolean };

export function registerScale(connection: Connection, proposals: Proposals): vscode.Disposable {
  return vscode.commands.registerCommand('quern.scale', async (given: ScaleArguments = {}) => {
    const document = recipeInFront();
    if (document === undefined) return;
    const proposal = await choose(connection, document, given.to);
    if (proposal === undefined) return;
    await (given.apply === true ? proposals.makeAtOnce(proposal) : proposals.offer(proposal));
  });
}

/** Asks until there is a size that can be worked out, or the cook leaves it. A size that is given is not asked for. */
async function choose(
  connection: Connection,
  document: vscode.TextDocument,
  given: string | undefined,
): Promise<Proposal | undefined> {
  let why: string | undefined;
  while (true) {
    const to = given ?? (await askForSize(why));
    if (to === undefined) return undefined;
    const answer = await propose(connection, document, to);
    if ('change' in answer) return answer;
    if (given !== undefined) {
      void warn(answer.why);
      return undefined;
    }
    why = answer.why;
  }
}

const usualSizes: readonly vscode.QuickPickItem[] = [{ label: 'double' }, { label: 'half' }, { label: 'triple' }];

/** What the cook typed, or one of the usual sizes; says why the last wish could not be met. */
function askForSize(why = 'Scale the recipe'): Promise<string | undefined> {
  const pick = vscode.window.createQuickPick();
  pick.title = why;
  pick.placeholder = 'by 1.5, to 12 slices, to 24 rolls of 60 g, to round 28 x 3 cm, for 230 g plums';
  pick.items = usualSizes;
  const typing = pick.onDidChangeValue((value) => {
    const typed = value.trim();
    const usual = usualSizes.filter((size) => size.label.startsWith(typed));
    pick.items = usual.length > 0 ? usual : [{ label: typed, alwaysShow: true }];
  });
  return settle(pick, () => pick.selectedItems[0]?.label).finally(() => typing.dispose());
}

async function propose(
  connection: Connection,
  document: vscode.TextDocument,
  to: string,
): Promise<Proposal | { readonly why: string }> {
  const documentVersion = document.version;
  try {
    const uri = connection.uriOf(document);
    const answer = await connection.ask(scaleRequest, { version: messageVersion, uri, to });
    return answer.ok ? { document, documentVersion, title: `scaled: ${to}`, change: answer } : answer;
  } catch (error) {
    connection.log.error('Scaling failed.', error);
    return { why: 'Quern could not scale this recipe. Its log says why.' };
  }
}
