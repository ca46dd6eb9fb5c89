/**
 * Knows what the client can do, as plain answers read once from `initialize`, and what is asked of one that can.
 */
import type { InitializeParams, Registration } from 'vscode-languageserver';
import { PICTURE_ENDINGS } from '../notation/picture-endings.ts';

export interface Abilities {
  readonly pullsDiagnostics: boolean;
  readonly refreshesDiagnostics: boolean;
  readonly refreshesTokens: boolean;
  readonly refreshesHints: boolean;
  readonly refreshesLenses: boolean;
  /** Asks for what a hint writes only when that is wanted. */
  readonly resolvesHints: boolean;
  /** Makes a change that the server asks for. */
  readonly appliesEdits: boolean;
  /** Has commands of its own for what the server's would do, under the same names. */
  readonly runsCommandsItself: boolean;
  readonly relatedInformation: boolean;
  readonly codeDescription: boolean;
  readonly hoverMarkdown: boolean;
  readonly completionMarkdown: boolean;
  readonly snippets: boolean;
  readonly snippetEdits: boolean;
  readonly documentChanges: boolean;
  readonly codeActionLiterals: boolean;
  readonly resolvesCodeActionEdits: boolean;
  readonly hierarchicalSymbols: boolean;
  readonly configuration: boolean;
  readonly registersConfiguration: boolean;
  readonly registersWatchers: boolean;
  readonly preparesRename: boolean;
  /** Asks, before files are moved, what must be written anew. */
  readonly willRenameFiles: boolean;
  /** Tells of files made, moved and deleted in the editor. */
  readonly tellsFileOperations: boolean;
  /** A change may make new files. */
  readonly createsFiles: boolean;
  /** Shows what a recipe comes to, and is told of it by notifications of Quern's own. */
  readonly showsStatus: boolean;
  /** Where a finding's page is to be read: under the client's own scheme, else as a file, where there is one. */
  readonly pageOf: (code: string) => string | undefined;
  /** Where the page of a kind or a food is to be read, by its name; there is none as a file. */
  readonly typePageOf: (name: string) => string | undefined;
  /** A client's command that shows a finding's page, given its code; links in hovers run it. */
  readonly explainCommand: string | undefined;
  /** Reads how wide a picture is to be behind its address. */
  readonly sizedPictures: boolean;
  /**
   * Asks for the findings of the folder by a request of its own, only when somebody wants them, and shows what is pushed of a
   * file only while it does not pull for it.
   */
  readonly checksFolderItself: boolean;
  /** A client's command that starts a trial with its own date, and puts the caret on the first value. */
  readonly recordTrialCommand: string | undefined;
  /** Client's commands behind what stands above a recipe: they are given `{ uri }`. */
  readonly scaleCommand: string | undefined;
  readonly showPageCommand: string | undefined;
}

/** `pageFile` is where a code's page lies as a file. */
export function readAbilities(params: InitializeParams, pageFile: Abilities['pageOf']): Abilities {
  const { textDocument, workspace } = params.capabilities;
  const options = record(params.initializationOptions);
  const { pageScheme } = options;
  const command = (name: string): string | undefined => {
    const given = options[name];
    return typeof given === 'string' ? given : undefined;
  };
  return {
    pullsDiagnostics: textDocument?.diagnostic !== undefined,
    refreshesDiagnostics: workspace?.diagnostics?.refreshSupport === true,
    refreshesTokens: workspace?.semanticTokens?.refreshSupport === true,
    refreshesHints: workspace?.inlayHint?.refreshSupport === true,
    refreshesLenses: workspace?.codeLens?.refreshSupport === true,
    resolvesHints: textDocument?.inlayHint?.resolveSupport?.properties.includes('textEdits') === true,
    appliesEdits: workspace?.applyEdit === true,
    runsCommandsItself: options.runsCommandsItself === true,
    relatedInformation:
      textDocument?.publishDiagnostics?.relatedInformation === true ||
      textDocument?.diagnostic?.relatedInformation === true,
    codeDescription:
      textDocument?.publishDiagnostics?.codeDescriptionSupport === true ||
      textDocument?.diagnostic?.codeDescriptionSupport === true,
    hoverMarkdown: textDocument?.hover?.contentFormat?.includes('markdown') === true,
    completionMarkdown: textDocument?.completion?.completionItem?.documentationFormat?.includes('markdown') === true,
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    snippetEdits:
      workspace?.workspaceEdit?.snippetEditSupport === true && workspace.workspaceEdit.documentChanges === true,
    documentChanges: workspace?.workspaceEdit?.documentChanges === true,
    codeActionLiterals: textDocument?.codeAction?.codeActionLiteralSupport !== undefined,
    resolvesCodeActionEdits:
      textDocument?.codeAction?.resolveSupport?.properties.includes('edit') === true &&
      textDocument.codeAction.dataSupport === true,
    hierarchicalSymbols: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    configuration: workspace?.configuration === true,
    registersConfiguration: workspace?.didChangeConfiguration?.dynamicRegistration === true,
    registersWatchers: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    preparesRename: textDocument?.rename?.prepareSupport === true,
    willRenameFiles: workspace?.fileOperations?.willRename === true,
    tellsFileOperations: workspace?.fileOperations?.didDelete === true,
    createsFiles:
      workspace?.workspaceEdit?.documentChanges === true &&
      workspace.workspaceEdit.resourceOperations?.includes('create') === true,
    showsStatus: options.status === true,
    pageOf: typeof pageScheme === 'string' ? (code) => `${pageScheme}:/${code}.md` : pageFile,
    typePageOf: (name) => (typeof pageScheme === 'string' ? `${pageScheme}:/${name}.md` : undefined),
    explainCommand: command('explainCommand'),
    sizedPictures: options.sizedPictures === true,
    checksFolderItself: options.checksFolderItself === true,
    recordTrialCommand: command('recordTrialCommand'),
    scaleCommand: command('scaleCommand'),
    showPageCommand: command('showPageCommand'),
  };
}

/** Files that a recipe may show. */
export const PICTURES_GLOB = `**/*.{${PICTURE_ENDINGS.flatMap((e) => [e, e.toUpperCase()]).join(',')}}`;

/** The protocol's kind of watching that tells of what comes and of what goes. */
const MADE_OR_GONE = 1 + 4;

/** What is asked of the client once it listens: to be told of files and of settings. */
export function registrationsOf(abilities: Abilities): readonly Registration[] {
  const registrations: Registration[] = [];
  if (abilities.registersWatchers)
    registrations.push({
      id: 'quern-files',
      method: 'workspace/didChangeWatchedFiles',
      registerOptions: {
        watchers: [
          { globPattern: '**/*.quern' },
          { globPattern: '**/quern.json' },
          // What is in them is nothing to Quern, whether they are there is.
          { globPattern: PICTURES_GLOB, kind: MADE_OR_GONE },
        ],
      },
    });
  if (abilities.registersConfiguration)
    registrations.push({
      id: 'quern-settings',
      method: 'workspace/didChangeConfiguration',
      registerOptions: { section: 'quern' },
    });
  return registrations;
}

/** The protocol's kind of watching that tells of what goes alone. */
const DELETED = 4;

/** Folders by name: with one that goes, all that lies in it goes, and no more is told. */
export const watchedFolders = (names: readonly string[]): Registration => ({
  id: 'quern-folders',
  method: 'workspace/didChangeWatchedFiles',
  registerOptions: {
    // What would be a pattern in a name is any character.
    watchers: names.map((name) => ({ globPattern: `**/${name.replace(/[[\]{}*?,!]/g, '?')}`, kind: DELETED })),
  },
});

export const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
