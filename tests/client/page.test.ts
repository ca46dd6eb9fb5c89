import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contrastOf } from '../../client/src/page/contrast-ratio.ts';
import { type FromPage, readFromPage, readState, readToPage, type ToPage } from '../../client/src/page/messages.ts';
import { oneAtATime } from '../../client/src/page/one-at-a-time.ts';

const state = { uri: 'file:///k/slab.quern', view: 'recipe', look: { makes: 12 } };

const TO_PAGE: readonly ToPage[] = [
  { kind: 'show', state, html: '<main></main>', documentVersion: 3 },
  { kind: 'show', state, html: '', style: ':root {}', documentVersion: 0 },
  { kind: 'caret', line: 0 },
  { kind: 'caret', line: 12 },
  { kind: 'said', words: 'Written.', refused: false },
  { kind: 'busy' },
  { kind: 'trouble', trouble: null },
  { kind: 'trouble', trouble: { heading: 'Stopped', words: 'So.', remedies: [{ does: 'restart', label: 'Start' }] } },
];

const FROM_PAGE: readonly FromPage[] = [
  { kind: 'ready' },
  { kind: 'undo' },
  { kind: 'view', view: 'formula' },
  { kind: 'go', line: 7, focus: true },
  { kind: 'act', act: 'fix', arg: { line: 3 }, value: null },
  { kind: 'remedy', does: 'log' },
];

describe('messages of the page', () => {
  it.each(TO_PAGE)('to it are let in: $kind', (message) => {
    expect(readToPage(JSON.parse(JSON.stringify(message)))).toMatchObject({ kind: message.kind });
  });

  it.each(FROM_PAGE)('from it are let in as they were sent: $kind', (message) => {
    expect(readFromPage(JSON.parse(JSON.stringify(message)))).toEqual(message);
  });

  it.each([
    { kind: 'go', line: 0, focus: true },
    { kind: 'go', line: 2.5, focus: true },
    { kind: 'go', line: '2', focus: true },
    { kind: 'act', act: 7 },
    { kind: 'remedy', does: 'workbench.action.terminal.new' },
    { kind: 'view' },
    { kind: 'command', command: 'x' },
    [],
    'ready',
    null,
  ])('are left alone where they are none of the page: %j', (message) => {
    expect(readFromPage(message)).toBeUndefined();
  });

  it.each([
    { kind: 'show', state, html: 7, documentVersion: 1 },
    { kind: 'show', state: { uri: 1 }, html: '', documentVersion: 1 },
    { kind: 'caret', line: -1 },
    { kind: 'said', words: 'x' },
    { kind: 'trouble', trouble: { heading: 'x' } },
  ])('are left alone where they are none for the page: %j', (message) => {
    expect(readToPage(message)).toBeUndefined();
  });

  it('may be anything, and nothing is thrown', () => {
    fc.assert(
      fc.property(fc.anything(), (anything) => {
        readFromPage(anything);
        readToPage(anything);
        readState(anything);
      }),
    );
  });

  it('leave of what an older page kept only what is understood', () => {
    const kept = { ...state, look: null, scroll: { recipe: 120, day: 'far', label: Number.NaN }, more: 1 };
    expect(readState(kept)).toEqual({ uri: state.uri, view: 'recipe', look: {}, scroll: { recipe: 120 } });
  });
});

/** WCAG 2.2, 1.4.3, and its technique G18: black on white is 21; #767676 is the lightest grey with 4.5 on white. */
it.each([
  [[0, 0, 0], [255, 255, 255], 21],
  [[255, 255, 255], [255, 255, 255], 1],
  [[118, 118, 118], [255, 255, 255], 4.54],
  [[119, 119, 119], [255, 255, 255], 4.48],
] as const)('%j on %j have a contrast of %d', (ink, paper, ratio) => {
  expect(contrastOf(ink, paper)).toBeCloseTo(ratio, 2);
  expect(contrastOf(paper, ink)).toBe(contrastOf(ink, paper));
});

it('what is wanted again and again is done one at a time, and once more at the end', async () => {
  const ends: (() => void)[] = [];
  const start = oneAtATime(() => new Promise<void>((resolve) => ends.push(resolve)));
  for (let n = 0; n < 5; n++) start();
  expect(ends).toHaveLength(1);
  ends[0]?.();
  await new Promise((resolve) => setImmediate(resolve));
  expect(ends).toHaveLength(2);
  ends[1]?.();
  await new Promise((resolve) => setImmediate(resolve));
  expect(ends).toHaveLength(2);
});

it('what lives in the page has no editor to import, and no text of its own to make HTML of', () => {
  const folder = 'client/src/page/script';
  for (const file of readdirSync(folder).filter((name) => name.endsWith('.ts'))) {
    const text = readFileSync(`${folder}/${file}`, 'utf8');
    const imports = [...text.matchAll(/ from '([^']+)'/g)].map((match) => match[1] ?? '');
    expect(
      imports.filter((from) => !/^\.\/|^\.\.\/(?:messages|contrast-ratio)\.ts$|^morphdom$/.test(from)),
      file,
    ).toEqual([]);
    // The one place that reads HTML reads the server's.
    if (file !== 'morph.ts') expect(text, file).not.toMatch(/innerHTML|insertAdjacentHTML|document\.write/);
  }
});
