/** Generated files are fresh; a stale one is written anew, and the test fails so that it is read and committed. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { endingsOf, keyLinesOf, keysOf, longestOf } from '../../server/src/food/name-index.ts';
import { generatedTable, readFoods } from '../../server/src/food/tables.ts';
import { formsText } from '../../server/src/prose/forms-table.ts';
import { between, checksTable, settingsSchema, shownTable, withShownSettings } from '../../server/tools/documents.ts';
import { checksIndex } from '../../server/tools/generate.ts';
import { emacsWords } from '../../syntaxes/editors/emacs.ts';
import { kateSyntax } from '../../syntaxes/editors/kate.ts';
import { vimSyntax } from '../../syntaxes/editors/vim.ts';
import { importTable } from './import-rules.ts';

const textOf = (path: string): string => (existsSync(path) ? readFileSync(path, 'utf8') : '');

test.each<[string, () => string]>([
  ['server/src/checks/index.ts', checksIndex],
  [
    'server/data/foods/keys.tsv',
    () => {
      const foods = readFoods();
      return generatedTable(
        'the words in the longest key, and by line, in the order of the foods, the key of each name where it is more than its small letters, - for none',
        [String(longestOf(keysOf(foods))), ...keyLinesOf(foods)],
      );
    },
  ],
  [
    'server/data/foods/endings.tsv',
    () => generatedTable('the keys of what the names of the foods end with', endingsOf(readFoods()).toSorted()),
  ],
  ['server/data/prose/forms.tsv', () => formsText()],
  ['syntaxes/editors/vim/syntax/quern.vim', vimSyntax],
  ['syntaxes/editors/emacs/quern-words.el', emacsWords],
  ['syntaxes/editors/kate/quern.xml', kateSyntax],
  ['syntaxes/quern.schema.json', () => settingsSchema(CHECKS)],
  ['package.json', () => withShownSettings(textOf('package.json'))],
  ['server/docs/findings.md', () => between(textOf('server/docs/findings.md'), 'checks', checksTable(CHECKS))],
  ['server/docs/settings.md', () => between(textOf('server/docs/settings.md'), 'shown', shownTable())],
  ['DEVELOPERS.md', () => between(textOf('DEVELOPERS.md'), 'imports', importTable())],
])('%s is fresh', (path, make) => {
  const fresh = make();
  const stale = textOf(path) !== fresh;
  if (stale) writeFileSync(path, fresh);
  expect(stale, `${path} was stale and has been written anew: read it and commit it`).toBe(false);
});
