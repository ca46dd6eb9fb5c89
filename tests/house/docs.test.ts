/** The pages for people: what they link to is there, what they show can be read, and what they run is a command with such options. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../server/src/cli/main.ts';
import { ANY } from '../../server/src/cli/options.ts';
import { parseDocument } from '../../server/src/notation/document.ts';
import { outline } from '../../server/src/notation/outline.ts';

const PAGES = [
  'README.md',
  'CHANGELOG.md',
  'DEVELOPERS.md',
  'syntaxes/README.md',
  'syntaxes/sheet.md',
  'examples/README.md',
  ...readdirSync('server/docs')
    .filter((file) => file.endsWith('.md'))
    .map((file) => `server/docs/${file}`),
];
const textOf = (path: string): string => readFileSync(path, 'utf8');

/** As a forge makes it of a heading. */
const anchorOf = (heading: string): string =>
  heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');
const anchorsIn = (path: string): readonly string[] =>
  [...textOf(path).matchAll(/^#+ (.+)$/gm)].map(([, heading = '']) => anchorOf(heading));

describe.each(PAGES)('%s', (path) => {
  const text = textOf(path).replace(/```[\s\S]*?```/g, '');

  test('links to what is there', () => {
    const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link = '']) => link);
    for (const link of links.filter((of) => !/^[a-z]+:/.test(of))) {
      const [file = '', anchor] = link.split('#');
      // The store's page stands at the root of what is installed.
      const folder = path.endsWith('store.md') ? '.' : dirname(path);
      const target = file === '' ? path : join(folder, file);
      expect(existsSync(target), link).toBe(true);
      if (anchor !== undefined) expect(anchorsIn(target), link).toContain(anchor);
    }
  });

  test('shows recipes that can be read', () => {
    for (const [, recipe = ''] of textOf(path).matchAll(/```quern\n([\s\S]*?)```/g)) {
      const document = parseDocument(recipe);
      const { misplaced } = outline(document);
      expect(
        [...document.lines.flatMap(({ faults }) => faults), ...misplaced.map(({ fault }) => fault)].map(
          (f) => f.detail,
        ),
        recipe,
      ).toEqual([]);
    }
  });

  test('runs commands that there are', () => {
    const lines = [...textOf(path).matchAll(/(?:^ {4,}|`)(quern [a-z]+[^`\n]*)/gm)].map(([, line = '']) => line);
    for (const line of lines) {
      const [, name = '', ...rest] = line.split(' ');
      const command = COMMANDS.find((of) => of.name === name);
      if (['lsp', 'mcp', 'explain'].includes(name) || name.toUpperCase() === name) continue;
      expect(command?.name, line).toBe(name);
      if (command === undefined || ANY in command.options) continue;
      for (const option of rest.filter((word) => /^--[a-z]/.test(word)))
        expect(Object.keys(command.options), line).toContain(option.slice(2).replace(/[=,.].*$/, ''));
    }
  });
});

test('every page of server/docs is listed, and so are the how-tos in the README', () => {
  const index = textOf('server/docs/README.md');
  const listed = readdirSync('server/docs').filter(
    (file) => file.endsWith('.md') && !['README.md', 'store.md'].includes(file),
  );
  expect(listed.filter((file) => !index.includes(`](${file})`))).toEqual([]);
});

test('the README stays short', () => {
  expect(textOf('README.md').split('\n').length).toBeLessThan(140);
});
