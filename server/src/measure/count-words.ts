/**
 * Knows the words that count pieces or packages of a food, one row a word: how its plural is written, what it is called elsewhere.
 * Refuses to know what one of them weighs.
 */

interface CountRow<W extends string> {
  /** In the singular. */
  readonly word: W;
  /** Other forms, lower case; `WORDs` goes without saying. */
  readonly forms?: readonly string[];
  /** It holds as much as its maker likes. */
  readonly packs?: true;
  /** Words for one thing, of which a book may have either, the nearest first; `whole` is one without a word. */
  readonly alike?: readonly (NoInfer<W> | 'whole')[];
}

const rows = <const W extends string>(list: readonly CountRow<W>[]): readonly CountRow<W>[] => list;

const ROWS = rows([
  { word: 'bag', packs: true },
  { word: 'ball', alike: ['whole'] },
  { word: 'bar', packs: true },
  { word: 'blade' },
  { word: 'block', packs: true },
  { word: 'bottle', packs: true },
  { word: 'box', forms: ['boxes'], packs: true },
  { word: 'bucket', packs: true, alike: ['pail'] },
  { word: 'bulb', alike: ['head', 'whole'] },
  { word: 'bunch', forms: ['bunches'] },
  { word: 'cake' },
  { word: 'can', forms: ['cn', 'cns'], packs: true, alike: ['tin'] },
  { word: 'carton', forms: ['ctn', 'ctns'], packs: true },
  { word: 'chunk', alike: ['piece'] },
  { word: 'clove', alike: ['whole'] },
  { word: 'container', packs: true, alike: ['tub', 'pot'] },
  { word: 'crown', alike: ['head', 'whole'] },
  { word: 'cube', alike: ['whole'] },
  { word: 'ear', alike: ['whole'] },
  { word: 'envelope', forms: ['env', 'envs'], packs: true, alike: ['packet', 'sachet'] },
  { word: 'fillet', alike: ['whole'] },
  { word: 'floret' },
  { word: 'glass', forms: ['glasses'], packs: true },
  { word: 'handful', forms: ['handsful', 'fistful', 'fistfuls'] },
  { word: 'head', alike: ['bulb', 'whole'] },
  { word: 'jar', packs: true },
  { word: 'joint' },
  { word: 'knob' },
  { word: 'leaf', forms: ['leaves'], alike: ['sheet'] },
  { word: 'link', alike: ['whole'] },
  { word: 'loaf', forms: ['loaves'], alike: ['whole'] },
  { word: 'log' },
  { word: 'lump', alike: ['knob'] },
  { word: 'nest' },
  { word: 'pack', forms: ['pk', 'pks'], packs: true, alike: ['package', 'packet'] },
  { word: 'package', forms: ['pkg', 'pkgs'], packs: true, alike: ['pack', 'packet', 'envelope'] },
  { word: 'packet', forms: ['pkt', 'pkts'], packs: true, alike: ['sachet', 'envelope', 'package'] },
  { word: 'pail', packs: true, alike: ['bucket'] },
  { word: 'pat' },
  { word: 'piece', forms: ['pc', 'pcs', 'nos'], alike: ['whole'] },
  { word: 'pod', alike: ['whole'] },
  { word: 'pot', packs: true, alike: ['tub', 'container'] },
  { word: 'pouch', forms: ['pouches'], packs: true, alike: ['sachet', 'packet'] },
  { word: 'punnet', packs: true },
  { word: 'rack' },
  { word: 'rasher', alike: ['slice', 'strip'] },
  { word: 'rib', alike: ['stalk', 'stick'] },
  { word: 'round', alike: ['whole'] },
  { word: 'sachet', packs: true, alike: ['packet', 'envelope'] },
  { word: 'scoop' },
  { word: 'segment' },
  { word: 'sheet', alike: ['leaf'] },
  { word: 'side' },
  { word: 'slice', forms: ['sl'], alike: ['rasher', 'strip'] },
  { word: 'spear', alike: ['whole'] },
  { word: 'sprig', alike: ['stem'] },
  { word: 'square', forms: ['sq', 'sqs'] },
  { word: 'stalk', alike: ['stick', 'rib', 'stem'] },
  { word: 'stem', alike: ['sprig', 'stalk'] },
  { word: 'stick', alike: ['stalk', 'rib'] },
  { word: 'strip', alike: ['slice', 'rasher'] },
  { word: 'thumb', forms: ['thumb-sized', 'thumb-size'] },
  { word: 'tin', packs: true, alike: ['can'] },
  { word: 'tray', packs: true },
  { word: 'tub', packs: true, alike: ['container', 'pot'] },
  { word: 'tube', packs: true },
  { word: 'wedge' },
  { word: 'wheel' },
]);

/** A word that counts pieces or packages, in the singular. */
export type CountWord = (typeof ROWS)[number]['word'];

export const COUNT_WORDS: readonly CountWord[] = ROWS.map((row) => row.word);

const BY_FORM: ReadonlyMap<string, CountWord> = new Map(
  ROWS.flatMap(({ word, forms }) => [word, `${word}s`, ...(forms ?? [])].map((form) => [form, word] as const)),
);

/** Every way to write one of them, lower case. */
export const COUNT_FORMS: readonly string[] = [...BY_FORM.keys()];

/** The count word a written word is, singular or plural, any case. */
export function countWord(word: string): CountWord | undefined {
  return BY_FORM.get(word.toLowerCase());
}

const PACKAGES: ReadonlySet<CountWord> = new Set(ROWS.filter((row) => row.packs === true).map((row) => row.word));

/** Whether one of it holds as much as its maker likes. */
export const isPackage = (word: CountWord): boolean => PACKAGES.has(word);

const ALIKE: ReadonlyMap<CountWord, readonly (CountWord | undefined)[]> = new Map(
  ROWS.map(({ word, alike = [] }) => [word, alike.map((other) => (other === 'whole' ? undefined : other))]),
);

/** What may stand for it where a book has no weight of its own, the nearest first; undefined is a piece that no word counts. */
export const countedAlike = (word: CountWord): readonly (CountWord | undefined)[] => ALIKE.get(word) ?? [];
