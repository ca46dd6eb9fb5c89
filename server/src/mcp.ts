/** `quern mcp`: answers programs over standard input and output, of the folder that it was started in. Nothing goes out, and nothing is written. */
import { StdioServerTransport } from '@modelcontextprotocol/sdk/server/stdio.js';
import reference from '../../syntaxes/README.md';
import { nodeIo } from './host/node.ts';
import { serveTools } from './programs/serve.ts';

declare const QUERN_VERSION: string;

void serveTools(
  new StdioServerTransport(),
  {
    machine: (printed) => ({ ...nodeIo(), ...printed }),
    reference: () => reference,
  },
  QUERN_VERSION,
);
