/** The server ends with the process that started it, whatever it computes just then. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { afterAll, afterEach, expect, test } from 'vitest';
import { NODE, SERVER } from '../support/fake-editor.ts';

const folder = mkdtempSync(join(tmpdir(), 'quern-parent-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** What makes a server compute for ever once it has answered. */
const ENDLESS = join(folder, 'endless.cjs');
writeFileSync(
  ENDLESS,
  `if (require('node:worker_threads').isMainThread) {
  const { write } = process.stdout;
  process.stdout.write = (...args) => {
    setTimeout(() => { process.stderr.write('computing\\n'); for (;;); }, 300);
    process.stdout.write = write;
    return write.apply(process.stdout, args);
  };
}\n`,
);

/** A client that starts a server, asks it to initialize, and says its number once it computes. */
const CLIENT = join(folder, 'client.cjs');
writeFileSync(
  CLIENT,
  `const [node, server, preload, told] = process.argv.slice(2);
const child = require('node:child_process').spawn(node, ['--require', preload, server, '--stdio'], { stdio: ['pipe', 'pipe', 'pipe'] });
const processId = told === 'told' ? process.pid : null;
const body = JSON.stringify({ jsonrpc: '2.0', id: 1, method: 'initialize', params: { processId, rootUri: null, capabilities: {} } });
child.stdin.write('Content-Length: ' + body.length + '\\r\\n\\r\\n' + body);
console.log(child.pid);
child.stdout.resume();
child.stderr.on('data', (data) => String(data).includes('computing') && console.log('computing'));
setInterval(() => undefined, 1000);\n`,
);

const isThere = (pid: number): boolean => {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
};

const started: number[] = [];
afterEach(() => {
  for (const pid of started.splice(0)) if (isThere(pid)) process.kill(pid, 'SIGKILL');
});

/** A client whose server computes by now, with the number of that. */
async function clientOf(told: string): Promise<{ readonly client: ChildProcess; readonly server: number }> {
  const client = spawn(NODE, [CLIENT, NODE, SERVER, ENDLESS, told], { stdio: ['ignore', 'pipe', 'inherit'] });
  if (client.stdout === null || client.pid === undefined) throw new Error('no client');
  started.push(client.pid);
  const lines = createInterface(client.stdout)[Symbol.asyncIterator]();
  const server = Number((await lines.next()).value);
  started.push(server);
  expect((await lines.next()).value).toBe('computing');
  return { client, server };
}

test.each(['told', 'not told'])(
  'a server that computes without end, whose client has %s who it is',
  async (told) => {
    const { client, server } = await clientOf(told);
    client.kill('SIGKILL');
    await once(client, 'exit');
    // The test fails by its own patience where the server stays.
    while (isThere(server)) await new Promise((resolve) => setTimeout(resolve, 50));
  },
  20_000,
);

test('one whose client lives on goes on', async () => {
  const { server } = await clientOf('told');
  await new Promise((resolve) => setTimeout(resolve, 1500));
  expect(isThere(server)).toBe(true);
}, 20_000);
