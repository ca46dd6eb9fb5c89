/**
 * Knows the Model Context Protocol, by its own kit: which tools there are, and that none of them writes.
 * Refuses to know recipes.
 */
import { Server } from '@modelcontextprotocol/sdk/server/index.js';
import type { Transport } from '@modelcontextprotocol/sdk/shared/transport.js';
import { CallToolRequestSchema, ListToolsRequestSchema } from '@modelcontextprotocol/sdk/types.js';
import { call, inputSchema, type Opened, OTHERS } from './call.ts';
import { TOOLS } from './tools.ts';

/** Answers until the transport closes. */
export async function serveTools(transport: Transport, opened: Opened, version: string): Promise<void> {
  const server = new Server(
    { name: 'quern', title: 'Quern', version },
    {
      capabilities: { tools: {} },
      instructions:
        'Recipes kept as text (*.quern), worked out in grams and checked. Nothing here writes. Take findings of safety as they stand, and say "not known" where the answer says so.',
    },
  );
  server.setRequestHandler(ListToolsRequestSchema, () => ({
    tools: [...TOOLS, ...OTHERS].map((tool) => ({
      name: tool.name,
      title: tool.title,
      description: tool.description,
      inputSchema: inputSchema(tool),
      annotations: { readOnlyHint: true, openWorldHint: false },
    })),
  }));
  server.setRequestHandler(CallToolRequestSchema, async ({ params }) => {
    const { text, failed } = await call(params.name, params.arguments ?? {}, opened);
    return { content: [{ type: 'text' as const, text }], ...(failed && { isError: true }) };
  });
  await server.connect(transport);
}
