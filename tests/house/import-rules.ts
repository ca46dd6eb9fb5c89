/** Who may import whom below server/src, by folder; packages by name. DEVELOPERS.md prints this table. */
export const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  measure: [],
  notation: ['measure', 'chevrotain'],
  heat: ['measure', 'data'],
  food: ['measure', 'data', 'fastest-levenshtein'],
  prose: ['notation', 'measure', 'data'],
  recipe: ['prose', 'notation', 'measure', 'food', 'heat', 'data', 'fastest-levenshtein'],
  edits: ['recipe', 'prose', 'notation', 'measure', 'food'],
  checks: ['edits', 'recipe', 'heat', 'prose', 'notation', 'measure', 'food', 'data', 'fastest-levenshtein'],
  workspace: [
    'checks',
    'edits',
    'recipe',
    'prose',
    'notation',
    'measure',
    'food',
    'fastest-levenshtein',
    'jsonc-parser',
    'ignore',
  ],
  publish: ['checks', 'recipe', 'prose', 'notation', 'measure', 'food', 'mustache'],
  editor: ['publish', 'workspace', 'checks', 'edits', 'recipe', 'prose', 'notation', 'measure', 'food'],
  lsp: ['editor', 'publish', 'workspace', 'checks', 'edits', 'notation', 'measure', 'recipe', 'vscode-languageserver'],
  cli: ['publish', 'workspace', 'checks', 'edits', 'recipe', 'notation', 'measure', 'food', 'diff'],
  programs: ['cli', 'edits', 'measure', 'notation', 'recipe', 'workspace', '@modelcontextprotocol'],
  host: ['workspace', 'cli', 'prose', 'node', 'ignore'],
};

/** The rules as a table in Markdown. */
export function importTable(): string {
  const rows = Object.entries(MAY_IMPORT).map(
    ([folder, others]) =>
      `| \`${folder}\` | ${others.length === 0 ? 'nothing' : others.map((o) => `\`${o}\``).join(', ')} |`,
  );
  return ['| folder | may import |', '| --- | --- |', ...rows].join('\n');
}
