/** The built programs as others use them: imported by name, and asked over the Model Context Protocol, by its own kit. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from '@modelcontextprotocol/sdk/client/index.js';
import { StdioClientTransport } from '@modelcontextprotocol/sdk/client/stdio.js';
import { afterAll, expect, test } from 'vitest';
import { ROOT } from '../support/fake-editor.ts';

const folder = mkdtempSync(join(tmpdir(), 'quern-programs-'));
const LOAF =
  'recipe Loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  do Mix the flour with the water.\n';
writeFileSync(join(folder, 'loaf.quern'), LOAF);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('a program imports the functions', async () => {
  const { report, scale } = (await import(`${ROOT}dist/api.mjs`)) as typeof import('../../server/src/api.ts');
  expect((await report({ path: join(folder, 'loaf.quern') })).mass_g).toBe(840);
  expect((await scale({ text: LOAF }, { by: 2 })).text).toContain('1000 g');
});

test('`quern mcp` answers for the folder that it was started in, and ends with who asks', async () => {
  const transport = new StdioClientTransport({
    command: process.execPath,
    args: [`${ROOT}dist/cli.js`, 'mcp'],
    cwd: folder,
    stderr: 'pipe',
  });
  const client = new Client({ name: 'test', version: '1' });
  await client.connect(transport);
  const told = async (name: string, given: Record<string, unknown>) =>
    JSON.stringify((await client.callTool({ name, arguments: given })).content);
  expect((await client.listTools()).tools.length).toBe(8);
  expect(await told('report', { path: 'loaf.quern' })).toContain('Loaf');
  expect(await told('reference', { about: 'trial' })).toContain('trial');
  expect(await told('report', { path: '/etc/passwd' })).toContain('lies outside');
  await client.close();
});
