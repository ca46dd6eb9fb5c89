// Knows how a cook is asked which measure of which part is to be brought to which value.
// It refuses to adjust: the server says which grams change.

import * as vscode from 'vscode';
import { type MeasuresAnswer, measuresRequest, messageVersion } from '../../../server/src/lsp/messages.ts';
import type { Connection } from '../connection.ts';
import { recipeInFront } from '../in-front.ts';
import { plainWords } from '../plain-words.ts';
import type { Proposals } from '../proposal.ts';
import { inform, warn } from '../say.ts';

/** What a key binding may give. */
type AdjustArguments = {
  readonly part?: string;
  readonly measure?: string;
  readonly value?: string;
  readonly apply?: boolean;
};

type Choice = vscode.QuickPickItem & { readonly part: string; readonly measure: string; readonly now: string };

export function registerAdjust(connection: Connection, proposals: Proposals): vscode.Disposable {
  return vscode.commands.registerCommand('quern.adjust', async (given: AdjustArguments = {}) => {
    const document = recipeInFront();
    if (document === undefined) return;
    try {
      const wish =
        given.measure === undefined
          ? await choose(connection, document)
          : { part: given.part, measure: given.measure, now: '' };
      if (wish === undefined) return;
      const { part, measure, now } = wish;
      const value =
        given.value ??
        (await vscode.window.showInputBox({
          title: `Bring the ${measure} to`,
          value: now,
          prompt: 'The grams that this takes are shown before they are written.',
        }));
      if (value === undefined) return;
      const arg = { measure, value, ...(part !== undefined && part !== '' && { part }) };
      await proposals.propose(
        document,
        { verb: 'adjust', arg },
        `${measure} brought to ${value}`,
        given.apply === true,
      );
    } catch (error) {
      connection.log.error('Adjusting failed.', error);
      void warn('Quern could not adjust this recipe. Its log says why.');
    }
  });
}

async function choose(connection: Connection, document: vscode.TextDocument): Promise<Choice | undefined> {
  const uri = connection.uriOf(document);
  const { parts } = await connection.ask(measuresRequest, { version: messageVersion, uri });
  if (parts.length === 0) {
    void inform(
      'No part of this file says what it is meant to be, as `part dough as lean bread` does, with a measure that is known.',
    );
    return undefined;
  }
  return vscode.window.showQuickPick(parts.flatMap(choicesOf), {
    title: 'Bring a measure to another value',
    matchOnDetail: true,
  });
}

function choicesOf({ part, measures }: MeasuresAnswer['parts'][number]): Choice[] {
  return measures.map(({ measure, says, now, usual, outside }) => ({
    label: part === '' ? measure : plainWords(`${measure} of ${part}`),
    description: outside ? `${now}, out of the usual ${usual}` : now,
    detail: outside ? says : `${says}, usual ${usual}`,
    part,
    measure,
    now,
  }));
}
