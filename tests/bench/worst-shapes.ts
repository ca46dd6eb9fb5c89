/** Knows the folders that cost most: how files lie in them and build on each other. */

export interface Shape {
  readonly name: string;
  /** Its size at the limits. */
  readonly most: number;
  /** The files by name, for so many. */
  readonly files: (count: number) => Readonly<Record<string, string>>;
}

const PLAIN = 'recipe R\npart one\n  200 g     plain flour\n  do Sift the flour.\n';

/** So many files, and a house around them. */
const files = (count: number, name: (i: number) => string, text: (i: number) => string): Record<string, string> => ({
  'quern.json': '{}',
  ...Object.fromEntries(Array.from({ length: count }, (_, i) => [name(i), text(i)])),
});

/** Layers of so many files, each of which takes a part of every file of the layer below. */
function layers(count: number, width: number, last: string): Record<string, string> {
  const depth = Math.floor(count / width);
  const at = (layer: number, i: number) => `l${layer}-${i}.quern`;
  const of = (layer: number) =>
    Array.from({ length: width }, (_, i) => `part p${i} from ${at(layer + 1, i)} : one\n`).join('');
  return files(
    depth * width,
    (i) => at(Math.floor(i / width), i % width),
    (i) => {
      const layer = Math.floor(i / width);
      return layer === depth - 1 ? last : `recipe R\npart one\n  10 g     salt\n${of(layer)}`;
    },
  );
}

export const SHAPES: readonly Shape[] = [
  {
    name: 'files in one folder',
    most: 2000,
    files: (n) =>
      files(
        n,
        (i) => `r${i}.quern`,
        () => PLAIN,
      ),
  },
  {
    name: 'a folder in a folder, and so on',
    most: 64,
    files: (n) =>
      files(
        n,
        (i) => `${'d/'.repeat(i)}r.quern`,
        () => PLAIN,
      ),
  },
  {
    name: 'folders with what to ignore in each',
    most: 400,
    files: (n) => ({
      ...files(
        n,
        (i) => `d${i}/r.quern`,
        () => PLAIN,
      ),
      ...Object.fromEntries(Array.from({ length: n }, (_, i) => [`d${i}/.gitignore`, '*.tmp\n'])),
    }),
  },
  {
    name: 'folders with foods in each',
    most: 400,
    files: (n) => ({
      ...files(
        n,
        (i) => `d${i}/r.quern`,
        () => PLAIN,
      ),
      ...Object.fromEntries(
        Array.from({ length: n }, (_, i) => [`d${i}/foods.quern`, `food mix ${i}\n  like plain flour\n`]),
      ),
    }),
  },
  {
    name: 'variants of one base',
    most: 2000,
    files: (n) => ({
      ...files(
        n,
        (i) => `v${i}.quern`,
        () => 'recipe V\n  from    base.quern\n  swap plain flour for 100 g rye flour\n',
      ),
      'base.quern': PLAIN,
    }),
  },
  {
    name: 'variants of a base that is not there',
    most: 2000,
    files: (n) =>
      files(
        n,
        (i) => `v${i}.quern`,
        () => 'recipe V\n  from    bade.quern\n',
      ),
  },
  { name: 'diamonds of bases, two files a layer', most: 40, files: (n) => layers(n, 2, PLAIN) },
  { name: 'diamonds of bases, ten files a layer', most: 100, files: (n) => layers(n, 10, PLAIN) },
  {
    name: 'diamonds whose last base is not there',
    most: 40,
    files: (n) => layers(n, 2, 'recipe R\npart one from none.quern : one\n'),
  },
  {
    name: 'files that all build on each other',
    most: 16,
    files: (n) =>
      files(
        n,
        (i) => `r${i}.quern`,
        () => `recipe R\n${Array.from({ length: n }, (_, i) => `part p${i} from r${i}.quern : p0\n`).join('')}`,
      ),
  },
];
