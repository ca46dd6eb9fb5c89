/**
 * Knows how a program's questions are put to the command line, and its answers read: as data where there is a document, else as text.
 * Refuses to write: no command is asked to.
 */
import type { Machine } from '../cli/io.ts';
import { type Answer, ask } from './ask.ts';
import type { Asking, Recipe } from './asking.ts';
import { inMemory } from './in-memory.ts';

/** Where the recipes lie that are given by their path. */
export interface Place {
  disk(printed: Pick<Machine, 'out' | 'err'>): Machine;
  /** '2026-09-14' */
  today(): string;
}

const NAME = 'recipe.quern';

export function answersFrom({ disk, today }: Place): Asking {
  const askOf = (recipe: Recipe, name: string, flags: readonly string[]): Promise<Answer> =>
    'path' in recipe
      ? ask([name, ...flags, '--', recipe.path], disk)
      : ask([name, ...flags, '--', recipe.name ?? NAME], (printed) =>
          inMemory({ files: { ...recipe.files, [recipe.name ?? NAME]: recipe.text }, today: today() }, printed),
        );
  const textOnly = (text: string, args: readonly string[], files: Readonly<Record<string, string>> = {}) =>
    ask(args, (printed) => inMemory({ files, input: text, today: today() }, printed));
  return {
    check: async (recipe) => data(await askOf(recipe, 'check', JSON_OUT)),
    report: async (recipe) => data(await askOf(recipe, 'report', JSON_OUT)),
    scale: async (recipe, { by, to, toMass, toPan, have, wholeEggs, part }) =>
      data(
        await askOf(recipe, 'scale', [
          ...JSON_OUT,
          ...said({ by, to, 'to-mass': toMass, 'to-pan': toPan, have, part }),
          ...(wholeEggs === true ? ['--whole-eggs'] : []),
        ]),
      ),
    convert: async (recipe, to) => data(await askOf(recipe, 'convert', [...JSON_OUT, ...said({ to })])),
    weigh: async (words, measures) =>
      data(await textOnly('', ['weigh', ...JSON_OUT, ...said({ measures }), '--', words])),
    diff: async (before, after) =>
      data(
        await textOnly('', ['diff', ...JSON_OUT, 'before.quern', 'after.quern'], {
          'before.quern': before,
          'after.quern': after,
        }),
      ),
    plan: async (recipe, { serve, date, ovens, cooks }) =>
      data(await askOf(recipe, 'plan', [...JSON_OUT, ...said({ serve, date, ovens, cooks })])),
    format: async (text) => printed(await textOnly(text, ['format', '--stdin'])),
    publish: async (recipe, format) => printed(await askOf(recipe, 'publish', said({ format }))),
    explain: async (code) => printed(await textOnly('', ['explain', ...(code === undefined ? [] : ['--', code])])),
  };
}

const JSON_OUT = ['--format=json'];

/** `--to=12 slices`, of what is given. */
const said = (values: Readonly<Record<string, string | number | undefined>>): string[] =>
  Object.entries(values).flatMap(([name, value]) => (value === undefined ? [] : [`--${name}=${value}`]));

/** The document that was printed; what could not be done is told in it too. */
function data<T>({ out, err }: Answer): T {
  if (out === '') throw new Error(plain(err));
  const document = JSON.parse(out) as T & { readonly error?: string };
  if (document.error !== undefined) throw new Error(document.error);
  return document;
}

function printed({ exit, out, err }: Answer): string {
  if (exit === 2) throw new Error(plain(err));
  return out;
}

/** `quern scale: there is no file` without who says it. */
const plain = (err: string): string => err.trim().replace(/^quern(?: \w+)?: /, '');
