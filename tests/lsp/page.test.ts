import { describe, expect, it } from 'vitest';
import { actNames } from '../../server/src/editor/page/acts.ts';
import type { MessageEdit, PageActAnswer, PageAnswer, PageLook } from '../../server/src/lsp/messages.ts';
import { RICH } from '../support/fake-editor.ts';
import { Client } from '../support/in-process.ts';

const URI = 'file:///k/slab.quern';
const SLAB = `recipe Oat slab
  yield   12 squares

part base
  200 g     rolled oats
  100 g     butter
  do Melt the butter and stir in the oats.
  do Bake at 375 C for 25 min until golden.
`;

async function opened(text = SLAB): Promise<Client> {
  const client = await Client.connect({ capabilities: RICH, files: new Map([['/k/quern.json', '{}']]) });
  await client.open(URI, text);
  return client;
}

const page = (client: Client, view = 'recipe', look: PageLook = {}, more: object = {}): Promise<PageAnswer> =>
  client.request<PageAnswer>('quern/page', { version: 1, uri: URI, view, look, ...more });

const act = (client: Client, name: string, arg: unknown, value: unknown = null, look: PageLook = {}) =>
  client.request<PageActAnswer>('quern/page/act', { version: 1, uri: URI, look, act: name, arg, value });

const VIEWS = ['recipe', 'formula', 'made-of', 'day', 'label', 'trials'];

describe('the page', () => {
  it.each(VIEWS)('has the view %s of an open recipe, with its frame', async (view) => {
    const answer = await page(await opened(), view);
    expect(answer).toMatchObject({ title: 'Oat slab', documentVersion: 1 });
    expect(answer?.html).toContain(`<section id="${view}"`);
    expect(answer?.html).toContain('<h1');
    expect(answer?.style).toBeUndefined();
  });

  it('counts the day back from the hour that is looked at, and writes the minutes that it puts', async () => {
    const client = await opened();
    expect((await page(client, 'day'))?.html).toContain('value="19:30"');
    const hour = await act(client, 'serve-at', null, '12.15');
    expect(hour).toMatchObject({ ok: true, look: { serve: '12:15' } });
    // Melting takes nobody knows how long, stirring the 5 min that are put for it, baking 25: begun before 11:45.
    const html = (await page(client, 'day', { serve: '12:15' }))?.html ?? '';
    expect(html).toContain('<b>Begin before 11:');
    expect(html).toContain('data-line="7"');
    const written = await act(client, 'write-minutes', null);
    expect(written).toMatchObject({
      ok: true,
      edits: [{ range: { start: { line: 6, character: 41 } }, newText: ', about 5 min' }],
    });
  });

  it('brings its sheet where it is asked for, and is of the newest text', async () => {
    const client = await opened();
    expect((await page(client, 'recipe', {}, { style: true }))?.style).toContain('--paper');
    await client.replace(URI, 2, SLAB.replace('Oat slab', 'Oat bars'));
    expect(await page(client)).toMatchObject({ title: 'Oat bars', documentVersion: 2 });
  });

  it('shows the first view of one it does not know, and nothing of a look it does not understand', async () => {
    const client = await opened();
    const plain = await page(client);
    const odd = await page(client, 'kitchen sink', {
      makes: 'many',
      measures: 7,
      turn: [],
      serve: 'late',
      degrees: null,
    });
    expect(odd?.html).toBe(plain?.html);
  });

  it('is none of a text that is not open', async () => {
    const client = await opened();
    expect(await client.request('quern/page', { uri: 'file:///k/other.quern', view: 'recipe', look: {} })).toBeNull();
  });

  it('has the prices of the house in the view that shows them', async () => {
    const foods = 'food butter\n  price   10 per 1 kg\n';
    const files = new Map([
      ['/k/quern.json', '{}'],
      ['/k/foods.quern', foods],
    ]);
    const client = await Client.connect({ capabilities: RICH, files });
    await client.open(URI, SLAB);
    expect((await page(client, 'label'))?.html).toContain('At least 1.00');
  });

  it('has fixes once they were tried, and keeps them for who types elsewhere', async () => {
    const client = await opened();
    const fixes = async (more: object) => /data-do="fix"/.test((await page(client, 'recipe', {}, more))?.html ?? '');
    expect(await fixes({ hasty: true })).toBe(false);
    expect(await fixes({})).toBe(true);
    const type = (version: number, line: number, character: number, text: string) => {
      const range = { start: { line, character }, end: { line, character: character + text.length } };
      return client.notify('textDocument/didChange', {
        textDocument: { uri: URI, version },
        contentChanges: [{ range, text }],
      });
    };
    await type(2, 5, 2, '110 g');
    expect(await fixes({ hasty: true })).toBe(true);
    await type(3, 7, SLAB.split('\n')[7]?.indexOf('375') ?? 0, '376');
    expect(await fixes({ hasty: true })).toBe(false);
    expect(await fixes({})).toBe(true);
  });

  it('has no button that writes where nothing can be written', async () => {
    const answer = await page(await opened(), 'recipe', {}, { readOnly: 'This file is read-only.' });
    expect(answer?.html).not.toMatch(/data-do="fix"/);
  });
});

describe('acts', () => {
  const GARBAGE: readonly unknown[] = [
    null,
    7,
    Number.NaN,
    'fix',
    [],
    [[['x']]],
    {},
    { code: 7, line: 'two', title: {} },
    { code: 'syntax', line: -4, start: 1e300, title: 'Write it' },
    { code: '__proto__', line: 2, start: 0, title: 'constructor' },
    { part: 'nowhere', measure: 'hydration', value: Number.MAX_VALUE },
    { makes: -1, to: 'by 0', measures: 'cups', degrees: 'K' },
    { length: 1e9, toString: null },
  ];

  const cases = [...actNames(), 'toString', '__proto__', 'nothing of the kind'].flatMap((name) =>
    GARBAGE.map((arg, i): [string, number, unknown] => [name, i, arg]),
  );

  it.each(cases)('%s refuses in words what it cannot do, or stays within the text (%i)', async (name, _, arg) => {
    const client = await opened();
    for (const value of [null, 'x', -1, 1e308, {}, []]) {
      const answer = await act(client, name, arg, value, arg as PageLook);
      if (answer.ok) expect((answer.edits ?? []).every(isInText)).toBe(true);
      else expect(answer.why).toMatch(/^[A-Z].+\.$/);
    }
  });

  it('a fix is found again by its code and place, in the text as it stands then', async () => {
    const client = await opened();
    const arg = { code: 'implausible-temperature', line: 8, title: 'Write 375 F' };
    const answer = await act(client, 'fix', arg);
    expect(answer).toMatchObject({ ok: true, documentVersion: 1 });
    expect(answer.ok && answer.edits?.map((e) => e.newText).join('')).toContain('F');
    await client.replace(URI, 2, `# noted\n${SLAB}`);
    expect(await act(client, 'fix', arg)).toMatchObject({ ok: false });
    expect(await act(client, 'fix', { ...arg, line: 9 })).toMatchObject({ ok: true, documentVersion: 2 });
  });
});

const LINES = SLAB.split('\n');

function isInText({ range: { start, end } }: MessageEdit): boolean {
  return [start, end].every(({ line, character }) => character <= (LINES[line]?.length ?? -1));
}
