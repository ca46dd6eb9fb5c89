/** What the built server makes of bytes that are no messages. */
import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FakeEditor, NODE, RICH, SERVER } from '../support/fake-editor.ts';

const frame = (body: string) => `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
const message = (body: object) => frame(JSON.stringify({ jsonrpc: '2.0', ...body }));
const HELLO = message({
  id: 1,
  method: 'initialize',
  params: { processId: null, rootUri: null, capabilities: {} },
});

/** What the server says, and how it ends, of bytes after which its input stays open, or is closed once it has said something. */
async function serverGiven(bytes: string, closeAfter?: string) {
  const child = spawn(NODE, [SERVER, '--stdio']);
  let out = '';
  let err = '';
  child.stdout.on('data', (data) => {
    out += data;
    if (closeAfter !== undefined && out.includes(closeAfter)) child.stdin.end();
  });
  child.stderr.on('data', (data) => {
    err += data;
  });
  const exit = new Promise<number | null>((resolve) => child.on('close', resolve));
  child.stdin.on('error', () => undefined);
  child.stdin.write(bytes);
  return { exit: await exit, out, err };
}

describe('what is no message', () => {
  it.each([
    ['lines of JSON', '{"jsonrpc":"2.0","id":2,"method":"shutdown"}\n'],
    ['a header without a length', 'Content-Type: text\r\n\r\n{}'],
    ['a length that is no number', 'Content-Length: many\r\n\r\n{}'],
  ])('ends the server with a word: %s', async (_, bytes) => {
    const { exit, out, err } = await serverGiven(HELLO + bytes);
    expect(exit).toBe(1);
    expect(err).toMatch(/^quern stops: what the editor sends is no message of the protocol \(.+\)\n$/);
    expect(out).toContain('window/logMessage');
    expect(out).toContain('no message of the protocol');
  });

  it('but is framed as one is answered as JSON-RPC says, and the next is read', async () => {
    const { exit, out } = await serverGiven(
      HELLO + frame('{"jsonrpc": ') + message({ id: 2, method: 'shutdown' }) + message({ method: 'exit' }),
    );
    expect(out).toContain('"id":null,"error":{"code":-32700');
    expect(out).toContain('{"jsonrpc":"2.0","id":2,"result":null}');
    expect(exit).toBe(0);
  });

  it('the end of the input ends the server, as a failure where nobody said goodbye', async () => {
    expect((await serverGiven(HELLO, '"id":1')).exit).toBe(1);
    expect((await serverGiven(HELLO + message({ id: 2, method: 'shutdown' }), '"id":2')).exit).toBe(0);
  });
});

describe('the page of a finding', () => {
  it('is a file, for a client that has no place of its own for it', async () => {
    const editor = await FakeEditor.start({ capabilities: RICH, initializationOptions: {} });
    await editor.open('untitled:slab', 'recipe Slab\n  5 g       honey\n  10 g      butter\n  do Melt the butter.\n');
    const found = await editor.findings('untitled:slab');
    const href = found.find(({ code }) => code === 'unused-ingredient')?.codeDescription?.href ?? '';
    expect(href).toMatch(/^file:.*\/dist\/pages\/unused-ingredient\.md$/);
    expect(existsSync(fileURLToPath(href))).toBe(true);
    expect(readFileSync(fileURLToPath(href), 'utf8')).toMatch(/^# unused-ingredient\n/);
    expect(await editor.stop()).toBe(0);
  });
});
