/**
 * Every message of the protocol, as the library of its makers lists them (vscode-languageserver-protocol 3.18), and how the server answers it.
 * What is said to be answered is asked of a session; the table for people is written anew where it is stale.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as protocol from 'vscode-languageserver/node';
import { PROTOCOL_WORDS } from '../../server/tools/protocol-words.ts';
import { Client } from '../support/in-process.ts';

type Message = { readonly method: string; readonly isRequest: boolean; readonly toServer: boolean };

const MESSAGES: readonly Message[] = Object.values(protocol as Record<string, unknown>)
  .flatMap((value): Message[] => {
    if (typeof value !== 'object' || value === null || !('method' in value) || !('messageDirection' in value))
      return [];
    const { method, messageDirection } = value;
    const type = 'type' in value && typeof value.type === 'object' ? value.type?.constructor.name : '';
    return typeof method === 'string'
      ? [{ method, isRequest: /Request/.test(type ?? ''), toServer: messageDirection !== 'serverToClient' }]
      : [];
  })
  .sort((a, b) => (a.method < b.method ? -1 : 1));

const SRC = 'server/src/lsp';
const source = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('shapes.ts'))
  .map((file) => readFileSync(join(SRC, file), 'utf8'))
  .join('\n');
/** What the library does for every server. */
const OF_LIBRARY: ReadonlySet<string> = new Set([
  'initialize',
  'initialized',
  'shutdown',
  'exit',
  'window/workDoneProgress/cancel',
  'window/logMessage',
]);

const isAnswered = (method: string): boolean => !/^No\b/.test(PROTOCOL_WORDS[method] ?? 'No');

let client: Client;
beforeAll(async () => {
  client = await Client.connect({ initializationOptions: {}, rethrow: false });
});
afterAll(() => client.close());

describe('the table of the protocol', () => {
  it('has each message once, and no other', () => {
    expect(MESSAGES.length).toBeGreaterThan(80);
    expect(Object.keys(PROTOCOL_WORDS).toSorted()).toEqual([...new Set(MESSAGES.map(({ method }) => method))]);
  });

  it.each(MESSAGES.filter(({ isRequest, toServer, method }) => isRequest && toServer && !OF_LIBRARY.has(method)))(
    '$method is answered as it says',
    async ({ method }) => {
      const code = await client.request(method, {}).then(
        () => undefined,
        (error: { readonly code?: number }) => error.code,
      );
      // JSON-RPC 2.0, section 5.1: the method does not exist.
      expect(code === -32601, PROTOCOL_WORDS[method]).toBe(!isAnswered(method));
    },
  );

  it.each(MESSAGES.filter(({ isRequest, toServer, method }) => !(isRequest && toServer) && !OF_LIBRARY.has(method)))(
    '$method is heard or sent as it says',
    ({ method }) => {
      expect(source.includes(`'${method}'`), PROTOCOL_WORDS[method]).toBe(isAnswered(method));
    },
  );

  it('stands in server/docs/protocol.md', () => {
    const path = 'server/docs/protocol.md';
    const row = ({ method }: Message) => `| \`${method}\` | ${isAnswered(method) ? 'yes' : ''} | ${said(method)} |`;
    const rows = (toServer: boolean) => [
      '| message | | |',
      '| --- | --- | --- |',
      ...MESSAGES.filter((m) => m.toServer === toServer).map(row),
    ];
    const fresh = `${HEAD}\n## From the client\n\n${rows(true).join('\n')}\n\n## From the server\n\n${rows(false).join('\n')}\n`;
    const stale = !existsSync(path) || readFileSync(path, 'utf8') !== fresh;
    if (stale) writeFileSync(path, fresh);
    expect(stale, `${path} was stale and has been written anew: read it and commit it`).toBe(false);
  });
});

const said = (method: string): string => {
  const words = (PROTOCOL_WORDS[method] ?? '').replace(/^No: /, '');
  return words.charAt(0).toUpperCase() + words.slice(1);
};

const HEAD = `# The protocol

How the server answers each message of the Language Server Protocol, 3.17 and 3.18, or why it does not. Held against a session by
\`tests/lsp/protocol.test.ts\`, which writes this page; the words stand in \`server/tools/protocol-words.ts\`.

Positions count UTF-16 units. Nothing is answered before \`initialize\`, and parameters that are wrong are refused in words. A request that its
sender takes back is left, and one that fails answers with nothing and says why in the log. What is private to Quern's own client begins with
\`quern/\`: \`server/src/lsp/messages.ts\` has all of it, and every such request has a code action, a command or a verb for other editors.
`;
