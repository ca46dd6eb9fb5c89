import { expect, it } from 'vitest';
import { piecesOf } from '../../client/src/markdown/colours.ts';
import { EXAMPLES } from '../support/harness.ts';

const said = (text: string): string[] =>
  piecesOf(text).flatMap(({ text, as }) => (as === undefined ? [] : [`${as} ${text}`]));

it.each([
  ['part crust as shortcrust', ['keyword part', 'type  crust as shortcrust']],
  ['  200 g     plain flour, cold # of the mill', ['number 200 g', 'comment  # of the mill']],
  ['  1 1/2 cups  milk', ['number 1 1/2 cups']],
  ['# one\n  50 g  salt # two\n', ['comment # one\n', 'number 50 g', 'comment  # two\n']],
  ['  do Bake at 180 C fan for 35-40 min.', ['keyword do', 'number 180 C fan', 'number 35-40 min']],
  ['  dough is not a keyword', []],
  ['  note No. 5\\# of it', ['keyword note', 'number 5']],
  ['food quay flour\n  water 12 %', ['keyword food', 'type  quay flour\n', 'keyword water', 'number 12 %']],
])('%j', (text, pieces) => {
  expect(said(text)).toEqual(pieces);
});

it.each<readonly [string, string]>([
  ...EXAMPLES,
  ['markup', '<script>alert(1)</script> & <b>\r\n# "x"\n'],
  ['nothing', ''],
])('loses no character of %s', (_name, text) => {
  expect(
    piecesOf(text)
      .map((piece) => piece.text)
      .join(''),
  ).toBe(text);
});
