// Holds the patterns that Quern's server registers against the library of all patterns.

import { Minimatch as Library } from 'minimatch';
import { describe, expect, it } from 'vitest';
import { Minimatch } from '../../client/src/globs.ts';
import { PICTURES_GLOB } from '../../server/src/lsp/capabilities.ts';

const PATHS = [
  '/kitchen/pie.quern',
  'pie.quern',
  '/kitchen/pie.quern.bak',
  '/kitchen/piequern',
  '/kitchen/quern.json',
  '/kitchen/deep/down/tart (1) [new].quern',
  '/kitchen/photo.jpg',
  '/kitchen/photo.JPEG',
  '/kitchen/photo.gif',
  '/kitchen/pies',
  '/kitchen/pies/apple.quern',
];

describe.each(['**/*.quern', '**/quern.json', PICTURES_GLOB, '**', '**/p?es', '/kitchen/*', '**/tart (1) *.quern'])(
  '%s',
  (glob) => {
    it.each(PATHS)('and %s', (path) => {
      expect(new Minimatch(glob).match(path)).toBe(new Library(glob, { noext: true }).match(path));
    });
  },
);

it('lets letters be large or small where it is told to', () => {
  expect(new Minimatch('**/*.quern', { nocase: true }).match('/k/PIE.QUERN')).toBe(true);
  expect(new Minimatch('**/*.quern').match('/k/PIE.QUERN')).toBe(false);
});
