// Knows how the tools for other programs are offered to the editor: one server a folder, started when something asks for it.

import * as vscode from 'vscode';

/** Started as `quern mcp` is, in the folder; it writes nothing and sends nothing anywhere. */
export function offerTools({ extensionUri, extension }: vscode.ExtensionContext): vscode.Disposable {
  const changed = new vscode.EventEmitter<void>();
  const program = vscode.Uri.joinPath(extensionUri, 'dist', 'mcp.js').fsPath;
  const { version } = extension.packageJSON as { readonly version: string };
  const provider: vscode.McpServerDefinitionProvider<vscode.McpStdioServerDefinition> = {
    onDidChangeMcpServerDefinitions: changed.event,
    provideMcpServerDefinitions: () =>
      (vscode.workspace.workspaceFolders ?? [])
        .filter(({ uri }) => uri.scheme === 'file')
        .map(({ name, uri }) => {
          const started = new vscode.McpStdioServerDefinition(
            `Quern: ${name}`,
            process.execPath,
            [program],
            // The editor's own program is Node when it is told so.
            { ELECTRON_RUN_AS_NODE: '1' },
            version,
          );
          started.cwd = uri;
          return started;
        }),
  };
  return vscode.Disposable.from(
    changed,
    vscode.workspace.onDidChangeWorkspaceFolders(() => changed.fire()),
    vscode.lm.registerMcpServerDefinitionProvider('quern.recipes', provider),
  );
}
