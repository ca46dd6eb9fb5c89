/** What is installed with the extension is all that it needs, and small. */
import { readdirSync, readFileSync } from 'node:fs';
import { deflateRawSync } from 'node:zlib';
import { listFiles, PackageManager } from '@vscode/vsce';
import { expect, test } from 'vitest';
import { ROOT } from '../support/fake-editor.ts';

/** What it must stay below. */
const BUDGET_BYTES = 1_000_000;
/** Two headers of the archive and what they name, beside what is packed. */
const HEADERS_BYTES = 200;

const packaged = await listFiles({ cwd: ROOT, packageManager: PackageManager.None });

test('the package holds all that was built', () => {
  const built = readdirSync(`${ROOT}dist`).filter((name) => /\.(?:js|br)$/.test(name));
  expect(packaged.filter((file) => file.startsWith('dist/')).sort()).toEqual(
    built.map((name) => `dist/${name}`).sort(),
  );
});

test('the package is below its budget', () => {
  const bytes = packaged.map((file) => deflateRawSync(readFileSync(ROOT + file)).length + HEADERS_BYTES);
  expect(bytes.reduce((sum, each) => sum + each, 0)).toBeLessThan(BUDGET_BYTES);
});
