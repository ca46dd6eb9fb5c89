// Knows how a cook is asked for other measures, for the lines that are selected or all of them.
// It refuses to convert: the server says which edits to make.

import * as vscode from 'vscode';
import { recipeInFront } from '../in-front.ts';
import type { Proposals } from '../proposal.ts';

type To = vscode.QuickPickItem & { readonly to: string; readonly both?: boolean };

const offered: readonly (To | vscode.QuickPickItem)[] = [
  { label: 'Amounts', kind: vscode.QuickPickItemKind.Separator },
  { label: 'Weights', description: 'grams', to: 'weight' },
  { label: 'Measures and weights', description: '1 cup = 120 g', to: 'us', both: true },
  { label: 'US measures', description: 'cups, ounces, °F', to: 'us' },
  { label: 'Metric measures', description: 'millilitres, grams, °C', to: 'metric' },
  { label: "Baker's percentages", description: 'of the flour', to: 'percent' },
  { label: 'Temperatures', kind: vscode.QuickPickItemKind.Separator },
  { label: 'Celsius', to: 'celsius' },
  { label: 'Fahrenheit', to: 'fahrenheit' },
  { label: 'Gas marks', to: 'gas' },
  { label: 'For an oven with a fan', to: 'fan' },
  { label: 'For an oven without a fan', to: 'still' },
];

/** What a key binding may give. */
type ConvertArguments = { readonly to?: string; readonly both?: boolean; readonly apply?: boolean };

export function registerConvert(proposals: Proposals): vscode.Disposable {
  return vscode.commands.registerCommand('quern.convert', async (given: ConvertArguments = {}) => {
    const document = recipeInFront();
    if (document === undefined) return;
    const lines = selectedLines();
    const where = lines === undefined ? 'the recipe' : `lines ${lines.first + 1} to ${lines.last + 1}`;
    const wish =
      given.to === undefined
        ? await vscode.window.showQuickPick(offered, { title: `Convert ${where}`, matchOnDescription: true })
        : { label: given.to, to: given.to, ...(given.both !== undefined && { both: given.both }) };
    if (wish === undefined || !('to' in wish)) return;
    const { to, both } = wish;
    const arg = { to, ...(both !== undefined && { both }), ...(lines !== undefined && { lines }) };
    await proposals.propose(document, { verb: 'convert', arg }, `converted: ${wish.label}`, given.apply === true);
  });
}

/** The lines of a selection that reaches over several. */
function selectedLines(): { readonly first: number; readonly last: number } | undefined {
  const selection = vscode.window.activeTextEditor?.selection;
  if (selection === undefined || selection.isSingleLine) return undefined;
  const { start, end } = selection;
  return { first: start.line, last: end.character === 0 ? end.line - 1 : end.line };
}
