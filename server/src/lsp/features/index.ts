/** Every feature of the server. */
import type { Feature } from '../feature.ts';
import { aliveFeature } from './alive.ts';
import { askedForFeature } from './asked-for.ts';
import { beginFeature } from './begin.ts';
import { callHierarchyFeature } from './call-hierarchy.ts';
import { checkFolderFeature } from './check-folder.ts';
import { codeActionsFeature } from './code-actions.ts';
import { codeLensesFeature } from './code-lenses.ts';
import { completionFeature } from './completion.ts';
import { diagnosticsFeature } from './diagnostics.ts';
import { diffFeature } from './diff.ts';
import { documentSymbolsFeature } from './document-symbols.ts';
import { executeCommandFeature } from './execute-command.ts';
import { explainFeature } from './explain.ts';
import { foldingFeature } from './folding.ts';
import { formattingFeature } from './formatting.ts';
import { hoverFeature } from './hover.ts';
import { inlayHintsFeature } from './inlay-hints.ts';
import { kitchenFeature } from './kitchen.ts';
import { navigationFeature } from './navigation.ts';
import { pageFeature } from './page.ts';
import { planFeature } from './plan.ts';
import { readFeature } from './read.ts';
import { renameFeature } from './rename.ts';
import { scaleFeature } from './scale.ts';
import { selectionFeature } from './selection.ts';
import { semanticTokensFeature } from './semantic-tokens.ts';
import { signatureHelpFeature } from './signature-help.ts';
import { trialsFeature } from './trials.ts';
import { workspaceSymbolsFeature } from './workspace-symbols.ts';

export const FEATURES: readonly Feature[] = [
  aliveFeature,
  askedForFeature,
  callHierarchyFeature,
  beginFeature,
  checkFolderFeature,
  codeActionsFeature,
  codeLensesFeature,
  completionFeature,
  diagnosticsFeature,
  diffFeature,
  documentSymbolsFeature,
  executeCommandFeature,
  explainFeature,
  foldingFeature,
  formattingFeature,
  hoverFeature,
  inlayHintsFeature,
  kitchenFeature,
  navigationFeature,
  pageFeature,
  planFeature,
  readFeature,
  renameFeature,
  scaleFeature,
  selectionFeature,
  semanticTokensFeature,
  signatureHelpFeature,
  trialsFeature,
  workspaceSymbolsFeature,
];
