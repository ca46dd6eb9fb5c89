/** What is installed with the extension is all that it needs, and small. */
import { readdirSync, readFileSync } from 'node:fs';
import { brotliDecompressSync, deflateRawSync } from 'node:zlib';
import { listFiles, PackageManager } from '@vscode/vsce';
import { expect, test } from 'vitest';
import { packParts } from '../../server/tools/pack.ts';
import { shownIn } from '../../server/tools/shown-examples.ts';
import { wordsIn } from '../../server/tools/words.ts';
import { ROOT } from '../support/fake-editor.ts';

/** What it must stay below. */
const BUDGET_BYTES = 1_000_000;
/** Two headers of the archive beside what is packed, and its sums. */
const HEADERS_BYTES = 92;
/** What the archive says of itself, packed. */
const MANIFEST_BYTES = 1300;

const packaged = await listFiles({ cwd: ROOT, packageManager: PackageManager.None });

test('the package holds all that was built', () => {
  // What programs import comes with the command.
  const built = readdirSync(`${ROOT}dist`).filter((name) => /^(?!api\.).*\.(?:js|br|bin|txt|cdx\.json)$/.test(name));
  expect(packaged.filter((file) => file.startsWith('dist/')).sort()).toEqual(
    built.map((name) => `dist/${name}`).sort(),
  );
});

/** As `npm run package` packs it. */
const smallest = async (packed: Buffer): Promise<Buffer> =>
  (await packParts([brotliDecompressSync(packed)], 'small')).packed;

test('the package is below its budget', async () => {
  const pack = await smallest(readFileSync(`${ROOT}dist/quern.br`));
  const words = await wordsIn(pack, 'small');
  // The store's page stands in the place of the project's.
  const bytes = packaged
    .filter((file) => file !== 'README.md')
    .map((file) => {
      const bytes = file.endsWith('words.bin') ? words : readFileSync(ROOT + file);
      const named = 2 * `extension/${file}`.length;
      return (file.endsWith('quern.br') ? pack : deflateRawSync(bytes)).length + named + HEADERS_BYTES;
    });
  expect(bytes.reduce((sum, each) => sum + each, MANIFEST_BYTES)).toBeLessThan(BUDGET_BYTES);
});

test('of a check, what its page alone shows is made when it is asked for, of its examples the first', () => {
  const check = (good: string, bad: string): string =>
    `defineCheck({ explain: 'a', examples: { good: [${good}], bad: [${bad}] } });`;
  const shown = (good: string, bad: string): string =>
    `defineCheck({ get explain(){return 'a'}, get examples(){return { good: [${good}], bad: [${bad}] }} });`;
  expect(shownIn('a.ts', check(`'1', '2'`, `{ text: '3', after: { 'Write 4': '4' } }, '5'`))).toBe(
    shown(`'1'`, `{ text: '3' }`),
  );
  expect(shownIn('a.ts', check(`...SOME, '1'`, `'2'`))).toBe(shown(`...SOME, '1'`, `'2'`));
});

test('every editor that installs it is new enough for the library of the client, which does not ask', () => {
  const engines = (folder: string): string =>
    JSON.parse(readFileSync(`${ROOT}${folder}package.json`, 'utf8')).engines.vscode;
  const minor = (range: string): number => Number(/^\^1\.(\d+)\.0$/.exec(range)?.[1]);
  expect(minor(engines(''))).toBeGreaterThanOrEqual(minor(engines('node_modules/vscode-languageclient/')));
});
