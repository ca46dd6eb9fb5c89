/** A clone that nobody built, packed and installed somewhere else, has a command that runs there, and what its licences ask for. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CHECKS } from '../../server/src/checks/index.ts';
import { NODE, ROOT } from '../support/fake-editor.ts';

const WINDOWS = process.platform === 'win32';
const folder = mkdtempSync(join(tmpdir(), 'quern-installed-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const LEFT_OUT: ReadonlySet<string> = new Set(['node_modules', 'dist', '.git', 'tests', 'examples']);
const installed = join(folder, 'somewhere else');
const quern = join(installed, 'node_modules/quern');

const npm = (cwd: string, ...args: string[]): string =>
  execFileSync('npm', args, { cwd, encoding: 'utf8', shell: WINDOWS, stdio: ['ignore', 'pipe', 'pipe'] });

/** The command as the installer put it on the path. */
const run = (...args: string[]) =>
  spawnSync(join(installed, 'node_modules/.bin', WINDOWS ? 'quern.cmd' : 'quern'), args, {
    cwd: folder,
    encoding: 'utf8',
    shell: WINDOWS,
  });

beforeAll(() => {
  const clone = join(folder, 'clone');
  cpSync(ROOT, clone, { recursive: true, filter: (path) => path === ROOT || !LEFT_OUT.has(basename(path)) });
  symlinkSync(join(ROOT, 'node_modules'), join(clone, 'node_modules'), 'junction');
  npm(clone, 'pack', '--silent', '--pack-destination', folder);
  const packed = readdirSync(folder).find((name) => name.endsWith('.tgz')) ?? '';
  const into = ['--prefix', `"${installed}"`].map((arg) => (WINDOWS ? arg : arg.replaceAll('"', '')));
  npm(folder, 'install', '--offline', '--no-audit', '--no-fund', ...into, packed);
  rmSync(clone, { recursive: true });
}, 240_000);

describe('installed elsewhere', () => {
  test('it tells its version', () => {
    const { version } = JSON.parse(readFileSync(`${ROOT}package.json`, 'utf8')) as { version: string };
    expect(run('--version')).toMatchObject({ status: 0, stdout: `${version}\n`, stderr: '' });
  });

  test('it checks a recipe', () => {
    writeFileSync(join(folder, 'cake.quern'), 'recipe Cake\n\nBake it.\n');
    const { status, stdout } = run('check', 'cake.quern', '--format', 'json');
    expect(status).toBe(1);
    expect(stdout).toContain('syntax');
  });

  test('it is a language server, with a page for each finding', async () => {
    const codes = CHECKS.map(({ code }) => code);
    expect(codes.length).toBeGreaterThan(50);
    for (const code of codes) expect(existsSync(join(quern, 'dist/pages', `${code}.md`)), code).toBe(true);
    const message =
      '{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"processId":null,"rootUri":null,"capabilities":{}}}';
    const server = spawn(NODE, [join(quern, 'dist/server.js'), '--stdio'], {
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    server.stdin.write(`Content-Length: ${message.length}\r\n\r\n${message}`);
    const [answer] = await once(server.stdout, 'data');
    expect(String(answer)).toContain('Content-Length');
    server.stdin.end();
    await once(server, 'exit');
  });

  test('it says whose parts it holds, for people and for machines', () => {
    const notices = readFileSync(join(quern, 'dist/NOTICES.txt'), 'utf8');
    const { components } = JSON.parse(readFileSync(join(quern, 'dist/sbom.cdx.json'), 'utf8')) as {
      components: { name: string; version: string; licenses: unknown[] }[];
    };
    const names = components.map(({ name }) => name);
    for (const name of ['chevrotain', 'vscode-languageserver', 'vscode-languageclient', 'ignore', 'diff'])
      expect(names).toContain(name);
    for (const { name, version, licenses } of components) {
      expect(notices).toContain(`${name} ${version} (`);
      expect(licenses).toHaveLength(1);
    }
    expect(notices).toContain('Permission is hereby granted, free of charge');
  });

  test('it brings nothing that it does not need', () => {
    expect(readdirSync(join(installed, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual(['quern']);
    expect(readdirSync(quern).sort()).toEqual(['LICENSE', 'README.md', 'dist', 'package.json', 'syntaxes']);
    expect(readdirSync(join(quern, 'dist'))).not.toContain('client.js');
  });
});
