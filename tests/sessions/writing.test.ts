import { afterEach, describe, expect, it } from 'vitest';
import { FakeEditor, POOR, PULLING } from '../support/fake-editor.ts';

const URI = 'file:///kitchen/slab.quern';
const SLAB = `recipe Oat slab
  yield   12 squares

part base
  200 g     rolled oats
  80 g      butter
  60 g      honey

  do Melt the butter with the honey.
  do Stir in the oats and press into a tin.
`;

let editor: FakeEditor | undefined;
afterEach(() => editor?.kill());

async function start(...options: Parameters<typeof FakeEditor.start>): Promise<FakeEditor> {
  editor = await FakeEditor.start(...options);
  return editor;
}

describe('a recipe that is written', () => {
  it('shows a slip while it is typed, mends it, takes it back and closes clean', async () => {
    const e = await start();
    await e.open(URI, SLAB);
    expect(await e.codes(URI)).toEqual([]);

    await e.type(URI, '60 g      honey', '2 blobs   honey');
    const [slip, ...others] = await e.findings(URI);
    expect(slip).toMatchObject({ code: 'unknown-unit', source: 'quern' });
    expect(others.map((d) => d.code)).not.toContain('unknown-unit');

    await e.type(URI, '2 blobs   honey', '60 g      honey\n  10 g      walnuts');
    const unused = (await e.findings(URI)).find((d) => d.code === 'unused-ingredient');
    expect(unused?.tags).toEqual([1]);
    if (unused === undefined) return;
    const before = e.text(URI);
    const actions = await e.codeActions(URI, unused.range, ['quickfix'], [unused]);
    const fix = actions.find((a) => a.isPreferred);
    if (fix?.edit) await e.apply(fix.edit);
    expect(await e.codes(URI)).toEqual([]);
    await e.change(URI, [{ text: before }]);
    expect(await e.codes(URI)).toContain('unused-ingredient');

    await e.close(URI);
    const last = await e.until('an empty list', () =>
      e.published.findLast((p) => p.uri === URI && p.version === undefined),
    );
    expect(last.diagnostics).toEqual([]);
    expect(await e.stop()).toBe(0);
  });

  it('accepts a finding with the reason the cook writes', async () => {
    const e = await start();
    await e.open(URI, SLAB.replace('60 g      honey', '60 g      honey\n  10 g      walnuts'));
    const [unused] = await e.findings(URI);
    if (unused === undefined) throw new Error('nothing found');
    const actions = await e.codeActions(URI, unused.range, ['quickfix'], [unused]);
    const allow = actions.find((a) => a.title.startsWith('Allow'));
    if (allow?.edit) await e.apply(allow.edit);
    await e.type(URI, 'because reason', 'because they are strewn on at the table');
    expect(await e.codes(URI)).toEqual([]);
    expect(e.text(URI)).toContain(
      '  allow unused-ingredient because they are strewn on at the table\n  10 g      walnuts',
    );
  });

  it('is formatted and scaled, each to be taken back in one step', async () => {
    const e = await start();
    const uneven = SLAB.replace('  200 g     rolled', ' 200g rolled');
    await e.open(URI, uneven);
    const options = { tabSize: 4, insertSpaces: true };
    const edits = await e.request<Parameters<FakeEditor['applyEdits']>[1]>('textDocument/formatting', {
      textDocument: { uri: URI },
      options,
    });
    await e.applyEdits(URI, edits);
    expect(e.text(URI)).toBe(SLAB);
    expect(await e.request('textDocument/formatting', { textDocument: { uri: URI }, options })).toEqual([]);

    const nowhere = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const actions = await e.codeActions(URI, nowhere, ['refactor.rewrite']);
    const double = actions.find((a) => a.title === 'Scale the recipe by two');
    expect(double?.edit).toBeUndefined();
    if (double === undefined) return;
    const { edit } = await e.resolve(double);
    if (edit) await e.apply(edit);
    expect(e.text(URI)).toContain('  400 g     rolled oats');
    expect(e.text(URI)).toContain('24 squares');
    expect(await e.codes(URI)).toEqual([]);
  });
});

describe('answers', () => {
  it('are never of an older text than the one before, and end with the newest', async () => {
    const e = await start();
    await e.open(URI, SLAB);
    const sent: Promise<void>[] = [];
    for (let i = 0; i < 40; i++)
      sent.push(e.change(URI, [{ text: SLAB.replace('60 g', `${i % 2 === 0 ? '60 g' : '2 blobs'}`) }]));
    await Promise.all(sent);
    expect(await e.codes(URI)).toContain('unknown-unit');
    const versions = e.published.filter((p) => p.uri === URI).map((p) => p.version ?? 0);
    expect(versions).toEqual(versions.toSorted((a, b) => a - b));
    expect(new Set(versions).size).toBe(versions.length);
    expect(versions.at(-1)).toBe(41);
  });

  it('of requests are from the newest text', async () => {
    const e = await start();
    await e.open(URI, SLAB);
    await e.type(URI, '80 g      butter', '90 g      butter');
    const hover = await e.hover(URI, '90 g      butter');
    expect(JSON.stringify(hover)).toContain('Weight: 90 g');
  });

  it('an edit made for an older text is not taken', async () => {
    const e = await start();
    await e.open(URI, SLAB.replace('60 g      honey', '60 g      honey\n  10 g      walnuts'));
    const [unused] = await e.findings(URI);
    if (unused === undefined) throw new Error('nothing found');
    const [fix] = await e.codeActions(URI, unused.range, ['quickfix']);
    await e.type(URI, 'Oat slab', 'Oat and walnut slab');
    await expect(e.apply(fix?.edit ?? {})).rejects.toThrow(/another version/);
  });

  it('findings are pulled by a client that pulls, and then never pushed', async () => {
    const e = await start({ capabilities: PULLING });
    await e.open(URI, SLAB.replace('60 g ', '2 blobs '));
    const first = await e.pull(URI);
    expect(first).toMatchObject({ kind: 'full', items: [{ code: 'unknown-unit' }] });
    await e.change(URI, [{ text: SLAB }]);
    expect(await e.pull(URI, first.resultId)).toMatchObject({ kind: 'full', items: [] });
    await e.close(URI);
    expect(await e.stop()).toBe(0);
    expect(e.published).toEqual([]);
  });
});

describe('a client that can next to nothing', () => {
  it('opens, types, hovers, completes, formats and leaves', async () => {
    const e = await start({ capabilities: POOR });
    await e.open(URI, SLAB);
    await e.type(URI, '60 g      honey', '60 g      ho');
    expect(await e.codes(URI)).not.toEqual([]);
    const { end } = e.rangeOf(URI, '60 g      ho');
    const items = await e.completion(URI, end);
    expect(items[0]).toMatchObject({ textEdit: { range: { end } } });
    expect(items.map((i) => i.label)).toContain('honey');
    expect(await e.hover(URI, 'rolled oats')).toMatchObject({ contents: { kind: 'plaintext' } });
    expect(e.asked).toEqual([]);
    expect(await e.stop()).toBe(0);
  });
});
