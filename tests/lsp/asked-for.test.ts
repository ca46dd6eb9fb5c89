import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DocumentAnswer, MeasuresAnswer, ScaleAnswer } from '../../server/src/lsp/messages.ts';
import { Client } from '../support/in-process.ts';

const uri = 'file:///k/slab.quern';
const variant = 'file:///k/oat.quern';
const SLAB =
  'recipe Slab\n  yield   12 squares\n  oven    350 F\n  200 g     plain flour\n  1 cup     caster sugar\n  do Stir the sugar into the flour and bake for 20 min until golden.\n';
const OAT = 'recipe Oat slab\n  from    slab.quern\n  swap plain flour for 200 g rolled oats\n';
const files = new Map([
  ['/k/quern.json', '{}'],
  ['/k/slab.quern', SLAB],
  ['/k/oat.quern', OAT],
]);

let client: Client;
beforeAll(async () => {
  client = await Client.connect({ files });
  await client.open(uri, SLAB);
  await client.open(variant, OAT);
});
afterAll(() => client.close());

const ask = <R extends { readonly ok: boolean }>(method: string, params: object) =>
  client.request<R>(method, { version: 1, uri, ...params });
const words = async (method: string, params: object): Promise<string> => {
  const answer = await ask<DocumentAnswer>(method, params);
  return answer.ok ? answer.text : `refused: ${answer.why}`;
};

describe('what the terminal prints', () => {
  it('is answered as a page for readers in each of its formats', async () => {
    expect(await words('quern/publish', { format: 'html' })).toMatch(/^<!doctype html>/i);
    expect(await words('quern/publish', { format: 'markdown' })).toContain('# Slab');
    expect(await words('quern/publish', { format: 'json-ld' })).toContain('"@type"');
    expect(await words('quern/publish', { format: 'pdf' })).toMatch(/^refused: .*html, markdown, text, json-ld/);
    expect(await words('quern/publish', { format: 'text', proved: true })).toMatch(/^refused: It is not proved/);
  });

  it('is answered as a report', async () => {
    expect(JSON.parse(await words('quern/report', { format: 'json' })).recipe).toBe('Slab');
    expect(await words('quern/report', { format: 'text' })).toContain('Slab');
  });

  it('is weighed by itself', async () => {
    // USDA FoodData Central: a cup of all-purpose flour is 125 g.
    expect(await words('quern/weigh', { words: '1 cup plain flour' })).toMatch(/^125 g .*plain flour/);
    expect(await words('quern/weigh', { words: 'flour' })).toMatch(/^refused: Write the amount first/);
  });

  it('is refused for a file that is not open', async () => {
    expect(await words('quern/report', { uri: 'file:///k/none.quern', format: 'text' })).toBe(
      'refused: The recipe is not open.',
    );
  });
});

describe('what can be adjusted', () => {
  const dough = 'file:///k/loaf.quern';
  const LOAF =
    'recipe Loaf\n  yield   1 loaf\n\npart dough as lean bread\n  500 g     bread flour\n  325 g     water\n  10 g      salt\n  5 g       instant yeast\n\n  do Knead the flour with the water, salt and yeast.\n';

  it('is each measure of a part that says what it is, with its value', async () => {
    await client.open(dough, LOAF);
    const { parts } = await client.request<MeasuresAnswer>('quern/measures', { version: 1, uri: dough });
    expect(parts.map(({ part }) => part)).toEqual(['dough']);
    // 325 g of water to 500 g of flour.
    expect(parts[0]?.measures.find(({ measure }) => measure === 'hydration')).toMatchObject({
      now: '65 %',
      outside: false,
    });
    expect((await client.request<MeasuresAnswer>('quern/measures', { version: 1, uri })).parts).toEqual([]);
  });

  it('is brought to a value by the grams that this takes', async () => {
    const arg = { measure: 'hydration', value: '70 %', part: 'dough', hold: 'flour' };
    const answer = await ask<ScaleAnswer>('quern/change', { uri: dough, verb: 'adjust', arg });
    // 70 % of 500 g.
    expect(answer.ok && answer.edits.map(({ newText }) => newText)).toEqual(['350']);
    expect(
      await ask('quern/change', { uri: dough, verb: 'adjust', arg: { measure: 'sparkle', value: '1' } }),
    ).toMatchObject({ ok: false });
    expect(await ask('quern/change', { uri: dough, verb: 'constructor', arg: {} })).toMatchObject({ ok: false });
  });
});

describe('a change', () => {
  it('to other measures is answered as edits with what they do', async () => {
    const answer = await ask<ScaleAnswer>('quern/change', { verb: 'convert', arg: { to: 'celsius' } });
    expect(answer.ok && answer.edits.map(({ newText }) => newText)).toEqual(['180 C']);
    const again = await ask<ScaleAnswer>('quern/change', { verb: 'convert', arg: { to: 'fahrenheit' } });
    expect(again).toMatchObject({ ok: false, why: expect.stringMatching(/^Nothing of the text would change/) });
    const line = await ask<ScaleAnswer>('quern/change', {
      verb: 'convert',
      arg: { to: 'weight', lines: { first: 0, last: 3 } },
    });
    expect(line).toMatchObject({ ok: false });
    expect(await ask('quern/change', { verb: 'convert', arg: { to: 'stones' } })).toMatchObject({ ok: false });
  });

  it('of the size of a variant is the whole of it, as the terminal prints it', async () => {
    const answer = await ask<ScaleAnswer>('quern/scale', { uri: variant, to: 'double' });
    if (!answer.ok) throw new Error(answer.why);
    expect(answer.edits).toEqual([]);
    expect(answer.inFull).toContain('400 g     rolled oats');
    expect(answer.inFull).not.toContain('from    slab.quern');
    expect(answer.said[0]).toContain('written out in full');
  });
});
