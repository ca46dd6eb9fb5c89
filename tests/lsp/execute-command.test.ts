/** What other editors have done by name: every verb, its arguments checked, its change asked of the client. */
import { describe, expect, it } from 'vitest';
import { VERBS } from '../../server/src/editor/verbs.ts';
import { OWN_CLIENT, RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///kitchen/slab.quern';
const SLAB = `recipe Slab
  yield   12 squares
part base as shortcrust
  1 1/2 cups  plain flour
  100 g     butter
  30 g      water
  do Rub the butter into the flour, and bake at 180 C for 20 min until gold.
`;
const APPLIES = { ...RICH, workspace: { ...RICH.workspace, applyEdit: true } };

async function connected(capabilities = APPLIES): Promise<Client> {
  const client = await Client.connect({ capabilities, initializationOptions: {} });
  await client.open(URI, SLAB);
  return client;
}

interface Answer {
  readonly ok: boolean;
  readonly edit?: { readonly documentChanges?: readonly unknown[] };
  readonly applied?: boolean;
  readonly changes?: readonly string[];
  readonly text?: string;
  readonly why?: string;
}
const run = (client: Client, verb: string, arg: object = {}) =>
  client.request<Answer>('workspace/executeCommand', { command: `quern.${verb}`, arguments: [{ uri: URI, ...arg }] });

describe('commands of the server', () => {
  it('are told, but not to a client that has its own under the same names', async () => {
    const { initialized } = await connected();
    const told = initialized.capabilities.executeCommandProvider?.commands;
    expect(told).toEqual(Object.keys(VERBS).map((name) => `quern.${name}`));
    const own = await Client.connect({ initializationOptions: { ...OWN_CLIENT, runsCommandsItself: true } });
    expect(own.initialized.capabilities.executeCommandProvider).toBeUndefined();
  });

  it.each([
    ['scale', { to: '24 squares' }, '"newText":"24"'],
    ['scale', { to: 'double', part: 'base' }, '"newText":"200'],
    ['trial', { date: '2026-09-14', by: 'Ines' }, 'trial 2026-09-14 by Ines'],
    ['trial', {}, 'trial 2026-11-25'],
    ['convert', { to: 'weight' }, '188'],
    ['convert', { to: 'fahrenheit', part: 'base' }, '350 F'],
    ['adjust', { measure: 'hydration', value: '30 %' }, 'newText'],
    ['format', {}, 'newText'],
    ['move', { line: 4, by: 1 }, 'butter'],
  ])('%s %j makes its change through the client', async (verb, arg, written) => {
    const client = await connected();
    const answer = await run(client, verb, arg);
    expect(answer.ok, answer.why).toBe(true);
    expect(JSON.stringify(answer.edit)).toContain(written);
    expect(answer.edit?.documentChanges?.[0]).toMatchObject({ textDocument: { uri: URI, version: 1 } });
    // This client takes what it is asked and answers nothing.
    expect(answer.applied).toBe(false);
    expect(client.asked.filter((a) => a.method === 'workspace/applyEdit').map((a) => a.params)).toEqual([
      { label: VERBS[verb]?.title, edit: answer.edit },
    ]);
  });

  it('only answers where it is to be looked at first, or the client makes no changes', async () => {
    const looking = await connected();
    expect((await run(looking, 'scale', { to: 'half', preview: true })).ok).toBe(true);
    const poor = await connected(RICH as typeof APPLIES);
    expect(await run(poor, 'scale', { to: 'half' })).toMatchObject({ ok: true, applied: false });
    for (const client of [looking, poor])
      expect(client.asked.filter((a) => a.method === 'workspace/applyEdit')).toEqual([]);
  });

  it('reads what is sent along, and explains a finding', async () => {
    const client = await connected();
    const printed = 'Scones\n\n225 g plain flour\n55 g butter\n150 ml milk\n\nRub the butter into the flour.\n';
    expect((await run(client, 'read', { text: printed })).text).toContain('recipe Scones');
    expect((await run(client, 'explain', { code: 'dough-too-wet' })).text).toContain('dough-too-wet');
  });

  it.each([
    ['weigh', { amount: '1 cup plain flour' }, /125 g/],
    ['report', {}, /butter/],
    ['report', { format: 'json' }, /"version": ?1/],
    ['publish', {}, /# Slab/],
    ['publish', { format: 'json-ld' }, /schema\.org/],
    ['plan', { serve: '19:30' }, /19:30/],
  ])('%s %j is something to read', async (verb, arg, words) => {
    const client = await connected();
    const answer = await run(client, verb, arg);
    expect(answer.text, answer.why).toMatch(words);
    expect(client.asked.filter((a) => a.method === 'workspace/applyEdit')).toEqual([]);
  });

  it.each([
    ['scale', { to: 'a bit more of it than' }],
    ['trial', { date: 'yesterday' }],
    ['convert', { to: 'cubits' }],
    ['convert', { to: 'weight', part: 'attic' }],
    ['adjust', { measure: 'charm', value: '3' }],
    ['adjust', { measure: 'hydration', value: 'lots' }],
    ['read', {}],
    ['move', { line: 0, by: 1 }],
    ['move', { line: 4, by: 7 }],
    ['explain', { code: 'no-such' }],
    ['weigh', { amount: 'flour' }],
    ['report', { format: 'stone' }],
    ['publish', { format: 'stone' }],
    ['plan', { serve: 'late' }],
  ])('%s %j is refused in a sentence', async (verb, arg) => {
    const client = await connected();
    const answer = await run(client, verb, arg);
    expect(answer).toMatchObject({ ok: false, why: expect.stringMatching(/^[A-Z`].*\.$/s) });
  });

  it.each([
    ['quern.scale', []],
    ['quern.scale', ['file:///kitchen/slab.quern']],
    ['quern.scale', [{ uri: URI }]],
    ['quern.scale', [{ uri: 3, to: 'double' }]],
    ['quern.constructor', [{ uri: URI }]],
    ['scale', [{ uri: URI, to: 'double' }]],
  ])('%s %j has wrong parameters', async (command, given) => {
    const client = await connected();
    const asked = client.request('workspace/executeCommand', { command, arguments: given });
    await expect(asked).rejects.toMatchObject({ code: -32602 });
  });
});
