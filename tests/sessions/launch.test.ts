/** The bundles start the same with what was compiled kept, with nothing kept and with what is kept spoilt. */
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { brotliCompressSync, brotliDecompressSync, constants as zlib } from 'node:zlib';
import { afterAll, expect, test } from 'vitest';
import { NODE, SERVER } from '../support/fake-editor.ts';

const CLI = SERVER.replace(/server\.js$/, 'cli.js');

const folder = mkdtempSync(join(tmpdir(), 'quern-launch-'));
afterAll(() => rmSync(folder, { recursive: true }));

const packedAnew = (bytes: Uint8Array): Buffer =>
  brotliCompressSync(bytes, { params: { [zlib.BROTLI_PARAM_QUALITY]: zlib.BROTLI_MIN_QUALITY } });

function weigh(env: Readonly<Record<string, string>>): string {
  const { status, stdout, stderr } = spawnSync(NODE, [CLI, 'weigh', '1 cup plain flour'], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return stdout;
}

test('what was compiled is kept once, and thrown away where it is spoilt', () => {
  const NODE_COMPILE_CACHE = join(folder, 'kept');
  const first = weigh({ NODE_COMPILE_CACHE });
  expect(first).toContain('125');
  // Node keeps its own in a folder of its own.
  const files = readdirSync(NODE_COMPILE_CACHE).filter((name) => name.endsWith('.bin'));
  expect(files).toEqual([expect.stringMatching(/^cli\.js-.*\.bin$/)]);
  const kept = join(NODE_COMPILE_CACHE, files[0] ?? '');
  const bytes = readFileSync(kept);
  expect(weigh({ NODE_COMPILE_CACHE })).toBe(first);
  expect(readFileSync(kept).equals(bytes)).toBe(true);

  const spoilt = Buffer.from(bytes);
  for (let at = 100; at < spoilt.length; at += 997) spoilt[at] = 0x55;
  writeFileSync(kept, spoilt);
  expect(weigh({ NODE_COMPILE_CACHE })).toBe(first);
  expect(readFileSync(kept).equals(spoilt)).toBe(false);

  truncateSync(kept, 3);
  expect(weigh({ NODE_COMPILE_CACHE })).toBe(first);
  expect(readFileSync(kept).length).toBeGreaterThan(1000);
});

test('nothing is kept where it may not be, or was not asked for', () => {
  const file = join(folder, 'a-file');
  writeFileSync(file, '');
  expect(weigh({ NODE_COMPILE_CACHE: join(file, 'below') })).toContain('125');
  const none = join(folder, 'none');
  expect(weigh({ NODE_COMPILE_CACHE: none, NODE_DISABLE_COMPILE_CACHE: '1' })).toContain('125');
  expect(readdirSync(folder)).not.toContain('none');
});

test.each<readonly [how: string, spoil: (file: string) => void]>([
  [
    'of another build',
    (file) => writeFileSync(file, packedAnew(brotliDecompressSync(readFileSync(file)).fill('0', 0, 3))),
  ],
  ['of less', (file) => writeFileSync(file, brotliCompressSync('1\0#\n'))],
  ['spoilt', (file) => truncateSync(file, 1000)],
  ['missing', (file) => rmSync(file)],
])('nothing starts where what is packed is %s', (_, spoil) => {
  const dist = mkdtempSync(join(folder, 'dist-'));
  cpSync(dirname(CLI), dist, { recursive: true });
  const shared = join(dist, 'quern.br');
  spoil(shared);
  for (const program of ['cli.js', 'server.js']) {
    const { status, stdout, stderr } = spawnSync(NODE, [join(dist, program), '--stdio'], {
      encoding: 'utf8',
      // What is kept has all that is packed.
      env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1' },
    });
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toContain(`${shared} is not of the same build`);
  }
});

test('`quern lsp` is the server that lies beside it', async () => {
  const server = spawn(NODE, [CLI, 'lsp', '--stdio'], { stdio: ['pipe', 'pipe', 'ignore'] });
  const params = { processId: null, rootUri: null, capabilities: {} };
  const text = JSON.stringify({ jsonrpc: '2.0', id: 1, method: 'initialize', params });
  server.stdin.write(`Content-Length: ${text.length}\r\n\r\n${text}`);
  const [answer] = await once(server.stdout, 'data');
  server.kill();
  expect(String(answer)).toContain('"id":1,"result":{"capabilities":');
});
