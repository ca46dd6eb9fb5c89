import { describe, expect, it } from 'vitest';
import { readAbilities } from '../../server/src/lsp/capabilities.ts';
import { hoverMarkdown, pathOfUri, uriOfPath } from '../../server/src/lsp/convert.ts';

describe('paths of URIs', () => {
  it.each([
    ['file:///home/ines/a%20b.quern', '/home/ines/a b.quern'],
    ['file:///c%3A/Users/Bao/tart%231.quern', 'c:\\Users\\Bao\\tart#1.quern'],
    ['file://server/share/cr%C3%A8me.quern', '\\\\server\\share\\crème.quern'],
    ['untitled:Untitled-1', undefined],
    ['git:/a.quern?ref=HEAD', undefined],
    ['file:///%E0%A4%A', undefined],
    ['no uri', undefined],
  ])('%s', (uri, path) => {
    expect(pathOfUri(uri)).toBe(path);
  });

  it.each(['/home/ines/a b.quern', '/k/tart#1.quern', '/k/crème 50%.quern'])('%s goes there and back', (path) => {
    expect(pathOfUri(uriOfPath(path))).toBe(path);
  });
});

describe('markdown of facts', () => {
  const abilities = readAbilities(
    { capabilities: {}, processId: null, rootUri: null, workspaceFolders: null },
    (code) => `file:///pages/${code}.md`,
  );
  it('escapes what a recipe wrote, and names each source once', () => {
    const markdown = hoverMarkdown(
      {
        title: '*[x](command:evil)* <b>',
        facts: [
          { kind: 'figure', label: 'A', value: '1', source: 'NIST' },
          { kind: 'figure', label: 'B', value: '2', source: 'NIST' },
        ],
      },
      abilities,
    );
    expect(markdown).toContain('**\\*\\[x\\](command:evil)\\* \\<b\\>**');
    expect(markdown.match(/NIST/g)).toHaveLength(1);
    expect(markdown).toContain('- A: 1 ¹\n- B: 2 ¹');
  });
});
