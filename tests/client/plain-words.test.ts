/** What of a recipe is shown in notifications, statuses and lists of choices is no link, no command and no icon. */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainWords } from '../../client/src/plain-words.ts';

/** What the editor makes a link of in a notification and a status, and an icon in a label (vscode, linkedText.ts and iconLabels.ts, from memory). */
const LINK = /\[([^\]]+)\]\(((?:https?:\/\/|command:|file:)[^)\s]+)(?: (["'])(.+?)(\3))?\)/i;
const ICON = /\$\([A-Za-z0-9-]+(?:~[A-Za-z]+)?\)/;

const piece = fc.constantFrom(
  '[',
  ']',
  '(',
  ')',
  '$',
  'x',
  'command:quern.scale',
  'https://a.b',
  '$(flame)',
  '[a](file:/b)',
  ' ',
  '\n',
  '\u202e',
  '\\',
);
const words = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(''));

describe('plain words', () => {
  it('hold no link and no icon, and stand in one line', () => {
    fc.assert(
      fc.property(words, (text) => {
        const plain = plainWords(text);
        expect(plain).not.toMatch(LINK);
        expect(plain).not.toMatch(ICON);
        expect(plain).not.toMatch(/[\n\u202e]/);
      }),
      { numRuns: 2000 },
    );
  });

  it('leave other words alone', () => {
    expect(plainWords('12 slices [of 80 g] (about $4)')).toBe('12 slices [of 80 g] (about $4)');
    expect(plainWords('[12](command:x) $(flame)')).toBe('[12] (command:x) $ (flame)');
  });

  it('are what every notification of the extension says', () => {
    const folder = new URL('../../client/src/', import.meta.url);
    const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
    const shows = texts.filter(([, text]) => /window\.show(?:Information|Warning|Error)Message/.test(text));
    expect(shows.map(([name]) => name)).toEqual(['say.ts']);
  });
});
