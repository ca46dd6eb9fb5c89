/**
 * What Vim, Neovim, Emacs and Kate colour, sign by sign, against what the editor's own grammar does, over the example kitchen.
 * Those grammars are simpler: what opens a line, comments and names are to be the same; numbers and units nearly so.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../support/fake-editor.ts';
import { loadTokenizer } from '../syntaxes/tokenize.ts';
import { isInstalled } from './installed.ts';

type Class = 'opens' | 'comment' | 'name' | 'number' | 'unit' | '';
/** A line as its signs that are no blank, each with its class. */
type Line = readonly (readonly [sign: string, is: Class])[];
type Run = readonly [name: string, text: string];

const below = (folder: string): string[] =>
  (readdirSync(join(ROOT, folder), { recursive: true }) as string[])
    .filter((name) => name.endsWith('.quern'))
    .map((name) => join(ROOT, folder, name))
    .sort();
const FILES = below('examples');
const folder = mkdtempSync(join(tmpdir(), 'quern-colours-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const signs = (runs: readonly Run[], classOf: (name: string) => Class): Line =>
  runs.flatMap(([name, text]) =>
    [...text].filter((sign) => sign.trim() !== '').map((sign) => [sign, classOf(name)] as const),
  );

const expected: Line[] = [];
beforeAll(async () => {
  const tokenize = await loadTokenizer();
  for (const file of FILES) {
    const lines = tokenize(readFileSync(file, 'utf8').replace(/\n$/, ''));
    expected.push(
      ...lines.map((tokens) =>
        signs(
          tokens.map(([text, scope]) => [scope, text]),
          scopeClass,
        ),
      ),
    );
  }
});

function scopeClass(scope: string): Class {
  if (/^(?:comment|punctuation\.definition\.comment)/.test(scope)) return 'comment';
  if (/^keyword\.(?:control|other\.(?:field|trial|food))|^storage\.modifier\.optional/.test(scope)) return 'opens';
  if (/^(?:markup\.heading|entity\.name\.(?:section|type))/.test(scope)) return 'name';
  if (/^constant\.numeric/.test(scope)) return 'number';
  return /^keyword\.other\.unit/.test(scope) ? 'unit' : '';
}

const VIM: Readonly<Record<string, Class>> = {
  quernComment: 'comment',
  quernHeader: 'opens',
  quernTrial: 'opens',
  quernStep: 'opens',
  quernChange: 'opens',
  quernField: 'opens',
  quernAllow: 'opens',
  quernName: 'name',
  quernNumber: 'number',
  quernDate: 'number',
  quernUnit: 'unit',
  quernDegree: 'unit',
};
const EMACS: Readonly<Record<string, Class>> = {
  'font-lock-comment-face': 'comment',
  'font-lock-keyword-face': 'opens',
  'font-lock-variable-name-face': 'opens',
  'font-lock-function-name-face': 'name',
  'font-lock-constant-face': 'number',
  'font-lock-builtin-face': 'unit',
};
/** Of the theme that it is printed in. */
const KATE: Readonly<Record<string, Class>> = {
  'color:#898887;': 'comment',
  'font-weight:bold;': 'opens',
  'color:#0057ae;': 'opens',
  'color:#644a9b;': 'name',
  'color:#b08000;': 'number',
  'color:#644a9b;font-weight:bold;': 'unit',
};

const EDITORS: Readonly<Record<string, { readonly program: string; readonly lines: () => readonly Line[] }>> = {
  Vim: { program: 'vim', lines: () => dumped('vim', ['-u', 'NONE', '-es', ...vimArgs()], VIM) },
  Neovim: { program: 'nvim', lines: () => dumped('nvim', ['-u', 'NONE', '--headless', ...vimArgs()], VIM) },
  Emacs: {
    program: 'emacs',
    lines: () =>
      dumped(
        'emacs',
        ['-Q', '--batch', '-L', `${ROOT}syntaxes/editors/emacs`, '-l', `${ROOT}tests/editors/dump.el`, ...FILES],
        EMACS,
      ),
  },
  Kate: { program: 'kate-syntax-highlighter', lines: ofKate },
};
const vimArgs = () => ['-c', `set rtp^=${ROOT}syntaxes/editors/vim`, '-S', `${ROOT}tests/editors/dump.vim`, ...FILES];

function dumped(program: string, args: readonly string[], classes: Readonly<Record<string, Class>>): readonly Line[] {
  const out = join(folder, program);
  spawnSync(program, args, { env: { ...process.env, OUT: out }, encoding: 'utf8', timeout: 120_000 });
  return readFileSync(out, 'utf8')
    .replace(/\n$/, '')
    .split('\n')
    .map((line) => signs(JSON.parse(line) as Run[], (name) => classes[name] ?? ''));
}

function ofKate(): readonly Line[] {
  const home = join(folder, 'kate');
  const place = join(home, 'org.kde.syntax-highlighting');
  spawnSync('mkdir', ['-p', place]);
  spawnSync('cp', ['-r', `${ROOT}syntaxes/editors/kate`, join(place, 'syntax')]);
  return FILES.flatMap((file) => {
    const { stdout } = spawnSync('kate-syntax-highlighter', ['-s', 'Quern', '-t', 'Breeze Light', file], {
      env: { ...process.env, XDG_DATA_HOME: home, QT_QPA_PLATFORM: 'offscreen' },
      encoding: 'utf8',
    });
    const body = /<pre>\n([\s\S]*?)\n?<\/pre>/.exec(stdout)?.[1] ?? '';
    return body.split('\n').map((line) => signs(runsIn(line), (style) => KATE[style] ?? ''));
  });
}

const runsIn = (line: string): Run[] =>
  [...line.matchAll(/<span style="([^"]*)">([^<]*)<\/span>|([^<]+)/g)].map(([, style = '', styled, plain]) => [
    style,
    (styled ?? plain ?? '')
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&'),
  ]);

describe.each(Object.entries(EDITORS))('%s', (_, { program, lines }) => {
  const there = isInstalled(program);

  test.skipIf(!there)(
    'shows the same signs, and colours them as the editor does',
    () => {
      const shown = lines();
      expect(shown.map((line) => line.map(([sign]) => sign).join(''))).toEqual(
        expected.map((line) => line.map(([sign]) => sign).join('')),
      );
      for (const [is, share] of [
        ['opens', 0.995],
        ['comment', 1],
        ['name', 0.97],
        ['number', 0.9],
        ['unit', 0.92],
      ] as const)
        expect(agreement(is, shown), is).toBeGreaterThanOrEqual(share);
    },
    240_000,
  );
});

/** Of the signs that either holds for one of a class, the share that both do. */
function agreement(is: Class, shown: readonly Line[]): number {
  let [both, either] = [0, 0];
  for (const [at, line] of expected.entries()) {
    const own = shown[at] ?? [];
    for (const [i, [, want]] of line.entries()) {
      const has = own[i]?.[1];
      if (want !== is && has !== is) continue;
      either++;
      if (want === has) both++;
    }
  }
  return either === 0 ? 1 : both / either;
}
