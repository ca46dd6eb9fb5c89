/** Knows how a text becomes another one that is nearly as likely to be read. Refuses to know what is read of it. */
import type { Random } from './random.ts';

/** What upsets readers. */
const ODD = [
  '\r',
  '\r\n',
  '\t',
  '\0',
  '\u00a0',
  '\u2028',
  '\u202e',
  '\ufeff',
  '\ud83c',
  '🍞',
  'e\u0301',
  'ß',
  'İ',
  '½',
  '⅓',
  '°',
  '–',
  '--',
  '#',
  '"',
  '`',
  '[',
  '](',
  '<b>',
  '&',
  '%',
  '=',
  ':',
  ';',
  '/',
  '\\',
  '1e999',
  '0',
  '-1',
  '00',
  '1/0',
  '99999999999999999999',
  'constructor',
  '__proto__',
  'from a.quern',
  'part ',
  'recipe ',
  'food ',
  'trial ',
  'allow ',
  'drop ',
  'swap ',
  'add ',
  '  do ',
] as const;

type Mutation = (lines: string[], random: Random, other: readonly string[]) => void;

const at = (lines: readonly string[], random: Random): number => random.below(lines.length);

function inLine(lines: string[], random: Random, change: (line: string, from: number) => string): void {
  const row = at(lines, random);
  const line = lines[row] ?? '';
  lines[row] = change(line, random.below(line.length + 1));
}

const MUTATIONS: readonly [Mutation, ...Mutation[]] = [
  (lines, random) => void lines.splice(at(lines, random), 1 + random.below(3)),
  (lines, random) => void lines.splice(at(lines, random), 0, lines[at(lines, random)] ?? ''),
  (lines, random, other) => {
    const from = at(other, random);
    lines.splice(at(lines, random), random.below(2), ...other.slice(from, from + 1 + random.below(6)));
  },
  (lines, random) => {
    const row = at(lines, random);
    lines.splice(row, 0, ...Array<string>(2 + random.below(40)).fill(lines[row] ?? ''));
  },
  (lines, random) => {
    const row = at(lines, random);
    lines.splice(row, 2, (lines[row] ?? '') + (lines[row + 1] ?? ''));
  },
  (lines, random) => inLine(lines, random, (line, from) => line.slice(0, from) + random.one(ODD) + line.slice(from)),
  (lines, random) =>
    inLine(lines, random, (line, from) => line.slice(0, from) + line.slice(from + 1 + random.below(4))),
  (lines, random) => inLine(lines, random, (line, from) => line.slice(0, from)),
  (lines, random) => inLine(lines, random, (line) => `${' '.repeat(random.below(9))}${line.trimStart()}`),
  (lines, random) => inLine(lines, random, (line) => line.replace(/\d+/, String(random.one([0, 1, 7, 400, 1e7, 0.5])))),
  // A word of one line in another.
  (lines, random, other) => {
    const words = (random.one(other) ?? '').split(' ');
    inLine(lines, random, (line) => {
      const own = line.split(' ');
      own.splice(random.below(own.length), random.below(2), random.one(words) ?? '');
      return own.join(' ');
    });
  },
  (lines, random) => inLine(lines, random, (line) => line.repeat(1 + random.below(20))),
];

/** The text changed a few times, with pieces of another one. */
export function mutated(text: string, other: string, random: Random): string {
  const lines = text.split('\n');
  const others = other.split('\n');
  for (let times = 1 + random.below(4); times > 0; times--) random.one(MUTATIONS)(lines, random, others);
  return lines.join('\n');
}

/** An edit of a text as an editor sends it. */
export interface Edit {
  readonly range: {
    readonly start: { readonly line: number; readonly character: number };
    readonly end: { readonly line: number; readonly character: number };
  };
  readonly text: string;
}

/** Anywhere in the text, with pieces of it. */
export function edited(text: string, random: Random): Edit {
  const lines = text.split('\n');
  const place = (from: number) => {
    const line = Math.min(from + random.below(3), lines.length - 1);
    return { line, character: random.below(2) === 0 ? 0 : random.below((lines[line]?.length ?? 0) + 1) };
  };
  const [a, b] = [place(at(lines, random)), place(at(lines, random))];
  const isOrdered = a.line < b.line || (a.line === b.line && a.character <= b.character);
  const far = Math.abs(a.line - b.line) > 3;
  const [start, end] = far ? [a, a] : isOrdered ? [a, b] : [b, a];
  const put = [
    `${lines[at(lines, random)]}\n`,
    random.one(ODD),
    '',
    '\n',
    random.one((random.one(lines) ?? '').split(' ')),
  ];
  return { range: { start, end }, text: random.one(put) ?? '' };
}
