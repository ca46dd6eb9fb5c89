/** After `used AMOUNT`: what the recipe lists; after `in`: its parts. */
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';

export function completeUsed({ before, character, snapshot }: Typing): Completions {
  const inPart = /^\s*used\s.*\sin\s+([\p{L} -]*)$/u.exec(before);
  if (inPart !== null)
    return all(
      snapshot.recipe.parts
        .filter((p) => p.head.name !== '')
        .map((p) => item(p.head.name, 'part', inPart[1] ?? '', character)),
    );
  const name = /^\s*used\s+[\d½⅓⅔¼¾./ -]+(?:\s*\p{L}+)?\s+(\p{L}*)$/u.exec(before);
  if (name === null) return NOTHING;
  const names = new Set(snapshot.recipe.parts.flatMap((p) => p.head.ingredients.map((i) => i.name)));
  return all([...names].map((n) => item(n, 'ingredient', name[1] ?? '', character)));
}

const item = (text: string, kind: 'part' | 'ingredient', typed: string, end: number): Completion => ({
  label: text,
  kind,
  start: end - typed.length,
  end,
  text,
  filter: text,
});
