/** The word after `as`: what the kind is judged by, and where this part stands. */
import { KINDS } from '../../recipe/measures/kinds.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { bandFacts } from '../facts.ts';
import { holds, placeOf } from '../place.ts';
import type { HoverSource } from './fact.ts';

export const hoverKind: HoverSource = (snapshot, { line, part, at, character }) => {
  const { statement } = line;
  const { as } = titleOf(statement);
  if (as === undefined || !holds(as, character)) return undefined;
  const of = statement.kind === 'recipe' ? snapshot.recipe.parts[0] : part;
  const kind = of?.head.kind;
  if (of === undefined || kind === undefined) {
    const names = KINDS.map((k) => k.name).join(', ');
    return {
      at: placeOf(at, as),
      title: as.text,
      subtitle: 'not a kind',
      facts: [{ kind: 'text', text: `The kinds are ${names}.` }],
    };
  }
  return { at: placeOf(at, as), title: kind.name, subtitle: kind.group, facts: bandFacts(of) };
};
