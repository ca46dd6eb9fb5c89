import { parseFragment } from 'parse5';
import { expect, it } from 'vitest';
import { picturesIn } from '../../server/src/publish/pictures.ts';
import { pictureHtml } from '../../server/src/publish/view/picture.ts';
import { open } from '../support/harness.ts';

const pictures = (text: string) => picturesIn(open(text).outline);

it('are listed with what they show', () => {
  const found = pictures(
    'recipe Tart\n  picture my tart.jpg\n  2 large   eggs\n  do Boil the eggs.\n  picture eggs.png, Both eggs\n\ntrial 2026-09-14\n  picture cut.png\n',
  );
  expect(found.map(({ src, alt, shows, line, of_line }) => [src, alt, shows, line, of_line])).toEqual([
    ['my%20tart.jpg', 'Tart', 'dish', 2, null],
    ['eggs.png', 'Both eggs', 'step', 5, 4],
    ['cut.png', 'Trial of 2026-09-14', 'trial', 8, 7],
  ]);
});

// HTML Living Standard, 13.2.5: what a quoted attribute can end at; RFC 3986, 4.2: a first segment with a colon would be a scheme.
it.each([
  ['"><script>alert(1)</script>.png', '"><script>'],
  ['javascript:alert(1).png', 'javascript:'],
  ['a?b#c.png', '?'],
])('%s is no more than a name', (file) => {
  const [picture] = pictures(`recipe Tart\n  picture ${file}, " onload="x\n  2 eggs\n  do Boil the eggs.\n`);
  if (picture === undefined) return;
  const [image] = parseFragment(pictureHtml(picture)).childNodes;
  const attrs = image !== undefined && 'attrs' in image ? image.attrs : [];
  expect(attrs.map(({ name }) => name)).toEqual(['class', 'src', 'alt', 'loading', 'data-key']);
  expect(decodeURIComponent(attrs.find(({ name }) => name === 'src')?.value ?? '')).toBe(file);
  expect(new URL(picture.src, 'file:///k/').href.startsWith('file:///k/')).toBe(true);
});
