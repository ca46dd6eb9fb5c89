/**
 * Knows a page that stands alone in a browser: its head, its policy, its sheet, and the colours that an editor would give it.
 * Refuses to know what stands in its body.
 */
import { escapeHtml } from '../escape-html.ts';
import { STYLE } from './style.ts';

/** Within an editor these are set on the element itself, which goes before any sheet. */
const COLOURS = `
:root {
  --vscode-editor-background: #fff; --vscode-editor-foreground: #2f2f2f;
  --vscode-textLink-foreground: #005fb8; --vscode-focusBorder: #005fb8;
  --vscode-editorError-foreground: #d01000; --vscode-editorWarning-foreground: #a86f00; --vscode-editorInfo-foreground: #1a73e8;
  --vscode-charts-orange: #d18616; --vscode-list-inactiveSelectionBackground: #e8eaf2;
}
@media (prefers-color-scheme: dark) { :root {
  --vscode-editor-background: #1b1b1b; --vscode-editor-foreground: #d4d4d4;
  --vscode-textLink-foreground: #6cb6ff; --vscode-focusBorder: #6cb6ff;
  --vscode-editorError-foreground: #f4645f; --vscode-editorWarning-foreground: #d7ab2e; --vscode-editorInfo-foreground: #5aa7ff;
  --vscode-list-inactiveSelectionBackground: #33343c;
} }
@media (prefers-contrast: more) { :root {
  --vscode-editor-foreground: #1a1a1a; --vscode-contrastBorder: #0f4a85; --vscode-textLink-foreground: #0f4a85; --vscode-focusBorder: #006bbd;
} }
@media (prefers-contrast: more) and (prefers-color-scheme: dark) { :root {
  --vscode-editor-background: #000; --vscode-editor-foreground: #fff; --vscode-contrastBorder: #6fc3df; --vscode-textLink-foreground: #6cc0ff; --vscode-focusBorder: #f38518;
} }
@media print { :root { --vscode-contrastBorder: initial; } }
`.trim();

/** The sheet of a page in a browser, with what else there is to say. */
export const browserStyle = (more = ''): string => [COLOURS, STYLE, ...(more === '' ? [] : [more])].join('\n');

export interface Alone {
  readonly title: string;
  /** HTML of the body. */
  readonly body: string;
  readonly bodyClass?: string;
  /** More of the head, as HTML. */
  readonly head?: string;
  /** Over the sheet of the page. */
  readonly style?: string;
  /** What its policy allows beside the sheet in it. */
  readonly allows?: string;
  /** Where the sheet lies: then the policy is the server's, and none stands in the page. */
  readonly sheet?: string;
}

/** A whole document; without `allows` nothing is loaded or run. */
export function standingAlone({ title, body, bodyClass, head = '', style = '', allows, sheet }: Alone): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'${allows === undefined ? '' : `; ${allows}`}`;
  const looks =
    sheet === undefined
      ? `<meta http-equiv="Content-Security-Policy" content="${policy}">\n<style>\n${browserStyle(style)}\n</style>`
      : `<link rel="stylesheet" href="${sheet}">`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeHtml(title)}</title>
${looks}
${head === '' ? '' : `${head}\n`}</head>
<body${bodyClass === undefined ? '' : ` class="${bodyClass}"`}>
${body}
</body>
</html>
`;
}
