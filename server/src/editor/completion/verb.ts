/** The verb that begins a step: those that fit the kind of the part, what its steps do already behind them. */
import { verbNamed } from '../../prose/verb-named.ts';
import type { Part } from '../../recipe/model.ts';
import { capital } from '../../recipe/words.ts';
import { all, type Completion, type Completions } from './item.ts';

/** By the group of the kind, in the order of the work. */
const BY_GROUP: Readonly<Record<string, readonly string[]>> = {
  pastry: ['rub', 'bring together', 'rest', 'chill', 'roll out', 'line', 'bake'],
  dough: ['mix', 'knead', 'cover', 'prove', 'divide', 'shape', 'bake', 'cool'],
  cake: ['cream', 'beat', 'whisk', 'fold', 'spoon', 'bake', 'cool'],
  batter: ['whisk', 'rest', 'heat', 'pour', 'fry'],
  custard: ['warm', 'whisk', 'pour', 'strain', 'bake', 'cool', 'chill'],
  sweet: ['heat', 'whisk', 'boil', 'stir', 'pour', 'cool', 'chill'],
  ferment: ['mix', 'rub', 'pack', 'cover', 'ferment', 'keep'],
  preserve: ['chop', 'boil', 'simmer', 'stir', 'fill', 'keep'],
  seasoning: ['mix', 'rub', 'dissolve', 'cover', 'chill', 'drain'],
  sauce: ['melt', 'whisk', 'stir', 'simmer', 'season'],
  savoury: ['heat', 'brown', 'add', 'stir', 'simmer', 'roast', 'season', 'serve'],
};
const ANY = ['mix', 'stir', 'add', 'whisk', 'heat', 'cook', 'bake', 'cool', 'serve'];

export function completeVerb(part: Part, typed: string, character: number): Completions {
  const fitting = BY_GROUP[part.head.kind?.group ?? ''] ?? ANY;
  const done = new Set(part.steps.flatMap(({ line }) => firstVerb(part, line) ?? []));
  const isDone = (verb: string): boolean => done.has(verbNamed(verb)?.base ?? verb);
  const verbs = [...fitting.filter((v) => !isDone(v)), ...fitting.filter(isDone)];
  return all(
    verbs.map((verb): Completion => {
      const text = capital(verb);
      return {
        label: text,
        kind: 'value',
        ...(isDone(verb) && { detail: 'again' }),
        start: character - typed.length,
        end: character,
        text: `${text} `,
        filter: text,
      };
    }),
  );
}

function firstVerb({ head }: Part, line: number): string | undefined {
  const words = head.source.lines[line]?.text.trim().split(/\s+/) ?? [];
  return verbNamed(words[1] ?? '')?.base;
}
