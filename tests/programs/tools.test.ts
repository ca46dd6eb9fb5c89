/** The tools of the Model Context Protocol, asked through its own kit: what they answer, what they refuse, and that no argument leads out. */
import { Client } from '@modelcontextprotocol/sdk/client/index.js';
import { InMemoryTransport } from '@modelcontextprotocol/sdk/inMemory.js';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { inMemory } from '../../server/src/programs/in-memory.ts';
import { serveTools } from '../../server/src/programs/serve.ts';

const LOAF =
  'recipe Almond loaf as lean bread\n  500 g     bread flour\n  340 g     water\n  10 g      salt\n  3 g       instant yeast\n  50 g      almonds\n  do Mix the flour, water, salt, yeast and almonds.\n  do Bake at 230 C for 35 min.\n';
const FILES = {
  'loaf.quern': LOAF,
  'pastry/tart.quern': 'recipe Tart\n  100 g ground almonds\n',
  '/etc/secret.quern': LOAF,
  'notes.txt': 'x',
};

const client = new Client({ name: 'test', version: '1' });
beforeAll(async () => {
  const [near, far] = InMemoryTransport.createLinkedPair();
  await serveTools(
    far,
    {
      machine: (printed) => inMemory({ files: FILES, today: '2026-11-29' }, printed),
      reference: () => '# The notation\n\n## pan\n\nA tin.\n\n## trial\n\nA day.\n',
    },
    '0.0.0',
  );
  await client.connect(near);
});

async function tell(name: string, given: Record<string, unknown> = {}): Promise<{ text: string; failed: boolean }> {
  const answer = await client.callTool({ name, arguments: given });
  const [content] = answer.content as { text: string }[];
  return { text: content?.text ?? '', failed: answer.isError === true };
}

describe('tools', () => {
  test('each is listed, with what it takes, and says that it only reads', async () => {
    const { tools } = await client.listTools();
    expect(tools.map(({ name }) => name)).toEqual([
      'check',
      'report',
      'scale',
      'convert',
      'weigh',
      'explain',
      'search',
      'reference',
    ]);
    for (const { annotations, inputSchema } of tools) {
      expect(annotations).toMatchObject({ readOnlyHint: true, openWorldHint: false });
      expect(inputSchema.additionalProperties).toBe(false);
    }
  });

  test.each<[string, Record<string, unknown>, RegExp]>([
    ['check', { path: 'loaf.quern' }, /loaf\.quern/],
    ['check', {}, /loaf\.quern/],
    ['report', { path: 'loaf.quern' }, /Almond loaf/],
    ['report', { text: LOAF, format: 'json' }, /"mass_g": 903/],
    ['scale', { path: 'loaf.quern', by: 2 }, /1000 g/],
    ['scale', { path: 'loaf.quern', to_mass: '500 g' }, /bread flour/],
    ['convert', { text: LOAF, to: 'us' }, /cup/],
    ['weigh', { amount: '1 cup honey' }, /honey/],
    ['explain', { code: 'dough-too-wet' }, /dough-too-wet/],
    ['search', { words: 'almond' }, /loaf\.quern[\s\S]*pastry\/tart\.quern/],
    ['search', { words: 'unicorn' }, /Nothing/],
    ['reference', { about: 'trial' }, /A day/],
    ['reference', {}, /## pan/],
  ])('%s %j answers', async (name, given, words) => {
    const { text, failed } = await tell(name, given);
    expect(text).toMatch(words);
    expect(failed).toBe(false);
  });

  test.each<[string, Record<string, unknown>, RegExp]>([
    ['report', { path: '../etc/secret.quern' }, /lies outside/],
    ['report', { path: '/etc/secret.quern' }, /lies outside/],
    ['check', { path: '/' }, /lies outside/],
    ['report', { path: 'notes.txt' }, /is no recipe/],
    ['report', { path: '--write' }, /no file/],
    ['scale', {}, /give the `path`/],
    ['report', { path: 'loaf.quern', text: LOAF }, /not both/],
    ['scale', { path: 'loaf.quern', write: true }, /takes no `write`/],
    ['scale', { path: 'loaf.quern', by: { evil: 1 } }, /`by` is a text/],
    ['convert', { path: 'loaf.quern' }, /`to` is a text/],
    ['weigh', { amount: 5 }, /no amount of a food/],
    ['bake', {}, /there is no tool/],
  ])('%s %j is refused in words', async (name, given, words) => {
    const { text, failed } = await tell(name, given);
    expect(text).toMatch(words);
    expect(failed).toBe(true);
  });

  test('whatever is given, an answer comes, and nothing of what lies outside is in it', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('check', 'report', 'scale', 'convert', 'weigh', 'explain', 'search', 'reference'),
        fc.dictionary(
          fc.constantFrom('path', 'text', 'by', 'to', 'words', 'amount', 'format', 'code', 'part'),
          fc.oneof(fc.string(), fc.jsonValue({ maxDepth: 1 })),
          { maxKeys: 3 },
        ),
        async (name, given) => {
          expect((await tell(name, given)).text).not.toContain('secret');
        },
      ),
      { numRuns: 100 },
    );
  });
});
