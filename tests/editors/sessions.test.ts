/** The built server in Neovim and in Emacs: a recipe opened, its findings, a hover, another size by a command, undone. Each runs without a screen. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { ROOT } from '../support/fake-editor.ts';
import { isInstalled } from './installed.ts';

const WET =
  'recipe Löaf as lean bread\n  500 g     bread flour\n  600 g     water\n  10 g      salt\n  3 g       instant yeast\n  do Mix the flour, water, salt and yeast.\n  do Bake at 230 C for 35 min.\n';
const folder = mkdtempSync(join(tmpdir(), 'quern-editors-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function seenBy(program: string, args: readonly string[]): unknown {
  const recipe = join(folder, `${program}.quern`);
  const out = join(folder, `${program}.json`);
  writeFileSync(recipe, WET);
  writeFileSync(join(folder, 'quern.json'), '{}\n');
  const { stderr, stdout } = spawnSync(program, args, {
    cwd: folder,
    encoding: 'utf8',
    timeout: 90_000,
    env: {
      ...process.env,
      OUT: out,
      RECIPE: recipe,
      NODE: process.execPath,
      SERVER: `${ROOT}dist/server.js`,
      HOME: folder,
      XDG_STATE_HOME: folder,
      XDG_DATA_HOME: folder,
      XDG_CONFIG_HOME: folder,
    },
  });
  if (!existsSync(out)) throw new Error(`${program} wrote nothing: ${stdout}${stderr}`);
  return JSON.parse(readFileSync(out, 'utf8'));
}

const hasNeovim = isInstalled('nvim');
test.skipIf(!hasNeovim)(
  'Neovim',
  () => {
    const runtime = ['vim', 'neovim'].flatMap((each) => ['--cmd', `set rtp^=${ROOT}syntaxes/editors/${each}`]);
    const seen = seenBy('nvim', [
      '-u',
      'NONE',
      '--headless',
      ...runtime,
      '-c',
      `luafile ${ROOT}tests/editors/neovim.lua`,
    ]);
    expect(seen).toMatchObject({
      attached: true,
      found: true,
      scaled: true,
      mended: true,
      undone: '  500 g     bread flour',
    });
    const { findings, hover } = seen as { findings: { code: string; line: number }[]; hover: string };
    expect(findings.some(({ code }) => code === 'dough-too-wet')).toBe(true);
    expect(hover).toContain('bread flour');
  },
  120_000,
);

const hasEglot =
  isInstalled('emacs') &&
  spawnSync('emacs', ['-q', '--batch', '--eval', "(progn (package-initialize) (require 'eglot))"], { stdio: 'ignore' })
    .status === 0;
test.skipIf(!hasEglot)(
  'Emacs',
  () => {
    const seen = seenBy('emacs', [
      '-q',
      '--batch',
      '-L',
      `${ROOT}syntaxes/editors/emacs`,
      '-l',
      `${ROOT}tests/editors/emacs.el`,
    ]);
    expect(seen).toMatchObject({ mode: 'quern-mode', scaled: true });
    const { found, hover } = seen as { found: string[]; hover: string };
    expect(found.join('\n')).toMatch(/water/);
    expect(hover).toContain('bread flour');
  },
  120_000,
);
