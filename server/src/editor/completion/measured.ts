/** What a trial measured: after `used AMOUNT` what the recipe lists, after its `in` the parts, after `took … to` what took a time, after its `in` the ovens. */
import { verbNamed } from '../../prose/verb-named.ts';
import { timesOf } from '../../recipe/journey/figures.ts';
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';

export function completeUsed({ before, character, snapshot }: Typing): Completions {
  const inPart = /^\s*used\s.*\sin\s+([\p{L} -]*)$/u.exec(before);
  if (inPart !== null)
    return all(
      snapshot.whole.recipe.parts
        .filter((p) => p.head.name !== '')
        .map((p) => item(p.head.name, 'part', inPart[1] ?? '', character)),
    );
  const name = /^\s*used\s+[\d½⅓⅔¼¾./ -]+(?:\s*\p{L}+)?\s+(\p{L}*)$/u.exec(before);
  if (name === null) return NOTHING;
  const names = new Set(snapshot.whole.recipe.parts.flatMap((p) => p.head.ingredients.map((i) => i.name)));
  return all([...names].map((n) => item(n, 'ingredient', name[1] ?? '', character)));
}

export function completeTook({ before, character, snapshot }: Typing): Completions {
  const inOven = /^\s*took\s.*\sin\s+(?:the\s+)?([^#]*)$/u.exec(before);
  if (inOven !== null) {
    const ovens = Object.keys(snapshot.house.world.ovens ?? {});
    return all(ovens.map((name) => item(name, 'value', inOven[1] ?? '', character)));
  }
  const verb = /^\s*took\s.*\sto\s+(\p{L}*)$/u.exec(before);
  if (verb === null) return NOTHING;
  const verbs = snapshot.whole.recipe.parts.flatMap(({ head, steps }) =>
    steps.flatMap((step) => {
      const text = head.source.lines[step.line]?.text ?? '';
      return timesOf(step).flatMap(({ event: { verb } }) =>
        verb === undefined ? [] : (verbNamed(text.slice(verb.start, verb.end))?.base ?? []),
      );
    }),
  );
  return all([...new Set(verbs)].map((v) => item(v, 'value', verb[1] ?? '', character)));
}

const item = (text: string, kind: 'part' | 'ingredient' | 'value', typed: string, end: number): Completion => ({
  label: text,
  kind,
  start: end - typed.length,
  end,
  text,
  filter: text,
});
