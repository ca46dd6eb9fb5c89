import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { open } from '../support/harness.ts';
import { Client } from '../support/in-process.ts';

/** A text of so many parts, which takes several slices to work out. */
const long = (parts: number, grams = 10): string =>
  `recipe Long\n${Array.from(
    { length: parts },
    (_, i) =>
      `part mix${i}\n  ${grams} g     plain flour\n  5 g      caster sugar\n  do Stir the sugar into the flour and chill for ${1 + (i % 9)} h.\n`,
  ).join('')}  12 g     xyzzy\n`;

const LONG = 'file:///k/long.quern';
const SHORT = 'file:///k/short.quern';
const PULLING = { textDocument: { diagnostic: {} } };

describe('while a long text is worked out', () => {
  let client: Client;
  beforeEach(async () => {
    client = await Client.connect({ capabilities: PULLING });
    await client.open(SHORT, 'recipe Short\n  200 g     plain flour\n  do Sift the flour.\n');
    await client.settled();
  });
  afterEach(() => client.close());

  const diagnostic = (uri: string) => ['textDocument/diagnostic', { textDocument: { uri } }] as const;

  test('other questions are answered', async () => {
    await client.open(LONG, long(1900));
    let isDone = false;
    const asked = client.request(...diagnostic(LONG)).finally(() => {
      isDone = true;
    });
    let answered = 0;
    for (; !isDone; answered++)
      await client.request('textDocument/hover', {
        textDocument: { uri: SHORT },
        position: { line: 1, character: 15 },
      });
    await asked;
    // One or two are read before the work begins; how many slices there are hangs on the machine.
    expect(answered).toBeGreaterThan(3);
  });

  test('a question that is taken back is left, and the next has its answer all the same', async () => {
    await client.open(LONG, long(400));
    const { token, cancel } = client.cancellable();
    const asked = client.request(...diagnostic(LONG), token);
    setTimeout(cancel, 0);
    await expect(asked).rejects.toMatchObject({ code: -32800 });
    const again = await client.request<{ items: { code: string }[] }>(...diagnostic(LONG));
    expect(again.items.map(({ code }) => code)).toContain('unknown-food');
  });

  test('what is typed meanwhile is what is answered', async () => {
    await client.open(LONG, long(400));
    const asked = client.request<{ items: { code: string }[] }>(...diagnostic(LONG));
    setTimeout(() => void client.replace(LONG, 2, 'recipe Long\n  1 g     qwerty\n'), 0);
    const { items } = await asked;
    expect(items.filter(({ code }) => code === 'unknown-food')).toHaveLength(1);
  });
});

describe('a text that is worked out in pieces', () => {
  const said = (snapshot: Snapshot): string[] =>
    snapshot.findings.open.map((f) => `${f.at.line} ${f.code} ${f.said.message}`);

  test('comes to what it comes to at once', () => {
    const [once, pieces] = [open(long(40)), open(long(40))];
    const work = Snapshot.open(pieces.uri, 1, pieces.text, pieces.house);
    for (const _ of work.workingOut()) expect(work.isWorkedOut).toBe(false);
    expect(work.isWorkedOut).toBe(true);
    expect(said(work)).toEqual(said(once));
  });

  test('may be asked at once between two of them, and edited', () => {
    const { house } = open('');
    const text = long(40);
    for (const after of [1, 10, 45, 90, 130, 200]) {
      const snapshot = Snapshot.open('a.quern', 1, text, house);
      const work = snapshot.workingOut();
      for (let i = 0; i < after; i++) work.next();
      const range = { start: { line: 2, character: 2 }, end: { line: 2, character: 4 } };
      const edited = snapshot.edited(2, [{ range, text: '999' }]);
      expect(said(edited)).toEqual(said(Snapshot.open('a.quern', 2, edited.text, house)));
      expect(said(snapshot)).toEqual(said(Snapshot.open('a.quern', 1, text, house)));
      while (work.next().done !== true);
      expect(said(snapshot)).toEqual(said(Snapshot.open('a.quern', 1, text, house)));
    }
  });
});
