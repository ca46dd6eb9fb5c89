/** The built command over more files than one thread checks: what the workers find is what one thread finds, in the order of the paths. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { NODE } from '../support/fake-editor.ts';

const CLI = fileURLToPath(new URL('../../dist/cli.js', import.meta.url));
/** More than `check-many.ts` leaves to one thread, in two folders of fewer. */
const FILES_EACH = 160;

const root = mkdtempSync(join(tmpdir(), 'quern-large-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Crusts that get wetter from file to file. */
beforeAll(() => {
  for (const folder of ['a', 'b']) {
    mkdirSync(join(root, folder));
    for (let i = 0; i < FILES_EACH; i++)
      writeFileSync(
        join(root, folder, `crust-${i}.quern`),
        `recipe Crust ${i}\n  200 g     plain flour\n  100 g     butter\n  ${20 + i} g      water\n  do Rub the butter into the flour and bind with the water.\n`,
      );
  }
});

interface Report {
  readonly files: readonly { readonly path: string }[];
  readonly summary: { readonly files: number; readonly hint: number };
}

function check(...folders: readonly string[]): Report {
  const { stdout, stderr } = spawnSync(NODE, [CLI, 'check', ...folders, '--format', 'json'], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 2 ** 26,
  });
  expect(stderr).toBe('');
  return JSON.parse(stdout) as Report;
}

it('finds the same on all cores as on one', () => {
  const together = check('a', 'b');
  const apart = [check('a'), check('b')];
  expect(together.summary.files).toBe(2 * FILES_EACH);
  expect(together.summary.hint).toBeGreaterThan(0);
  expect(together.files).toEqual(apart.flatMap(({ files }) => files));
});
