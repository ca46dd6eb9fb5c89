/** `quern mcp`: answers programs over standard input and output, of the folder that it was started in. Nothing goes out, and nothing is written. */
import { StdioServerTransport } from '@modelcontextprotocol/sdk/server/stdio.js';
import { textBeside } from './host/beside.ts';
import { nodeIo } from './host/node.ts';
import { serveTools } from './programs/serve.ts';

declare const QUERN_VERSION: string;

void serveTools(
  new StdioServerTransport(),
  {
    machine: (printed) => ({ ...nodeIo(), ...printed }),
    reference: () => textBeside(__filename, '../../syntaxes/README.md'),
  },
  QUERN_VERSION,
);
