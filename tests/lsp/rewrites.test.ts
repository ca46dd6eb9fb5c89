import { describe, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///k/bread.quern';
const BREAD = `recipe Bread
part dough as lean bread
  500 g     bread flour   # strong
  350 g     water
  20 g      fresh yeast
  10 g      fine salt
  do Mix the flour, water, yeast and salt.
  do Bake at 220 C for 35 min.
`;

async function opened(): Promise<Client> {
  const client = await Client.connect({ capabilities: RICH });
  await client.open(URI, BREAD);
  return client;
}

const ask = (client: Client, line: number, character: number, only: readonly string[]): Promise<CodeAction[]> => {
  const place = { line, character };
  return client.request<CodeAction[]>('textDocument/codeAction', {
    textDocument: { uri: URI },
    range: { start: place, end: place },
    context: { diagnostics: [], only },
  });
};

describe('rewrites over the protocol', () => {
  it.each<[number, number, RegExp, readonly string[]]>([
    [4, 0, /^Swap the fresh yeast for 6\.6 g instant yeast/, ['6.6 g', 'instant yeast', '363']],
    [7, 14, /^Write 200 C fan$/, ['200 C fan']],
    [6, 14, /^Write bread flour, as the list has it$/, ['bread flour']],
    [2, 4, /^Write this part in baker's percentages$/, ['70 %', '2 %']],
  ])('the one at line %i is worked out when it is chosen', async (line, character, title, texts) => {
    const client = await opened();
    const action = (await ask(client, line, character, ['refactor.rewrite'])).find((a) => title.test(a.title));
    expect(action?.edit).toBeUndefined();
    const resolved = await client.request<CodeAction>('codeAction/resolve', action);
    const [change] = resolved.edit?.documentChanges ?? [];
    const written =
      change !== undefined && 'edits' in change ? change.edits.map((e) => ('newText' in e ? e.newText : '')) : [];
    expect(written).toEqual(expect.arrayContaining([...texts]));
  });

  it('a measure is brought to the middle of its band beside the fix of a finding, worked out when it is chosen', async () => {
    const client = await opened();
    await client.replace(
      URI,
      2,
      'recipe Crust\npart crust as shortcrust\n  200 g     plain flour\n  100 g     butter\n  150 g     water\n  do Rub the butter into the flour and bind with the water.\n',
    );
    const action = (await ask(client, 4, 14, ['quickfix'])).find((a) => a.title.startsWith('Bring water per flour'));
    expect(action).toMatchObject({ kind: 'quickfix', diagnostics: [{ code: 'dough-too-wet' }] });
    expect(action?.edit).toBeUndefined();
    const { edit } = await client.request<CodeAction>('codeAction/resolve', action);
    expect(JSON.stringify(edit)).toMatch(/"newText":"5\d/);
  });

  it('organizing is a source action of its own kind', async () => {
    const client = await opened();
    await client.replace(URI, 2, BREAD.replace('flour, water, yeast and salt', 'salt, yeast, water and flour'));
    const actions = await ask(client, 0, 0, ['source.organizeIngredients']);
    expect(actions.map((a) => a.kind)).toEqual(['source.organizeIngredients.quern']);
    expect(JSON.stringify(actions[0]?.edit)).toContain('10 g      fine salt');
    expect(await ask(client, 0, 0, ['source.organizeImports'])).toEqual([]);
  });
});
