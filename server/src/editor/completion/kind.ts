/** Kinds after `as`. */
import { KINDS } from '../../recipe/measures/kinds.ts';
import { all, type Completions, NOTHING, type Typing } from './item.ts';

export function completeKind({ before, character }: Typing): Completions {
  const match = /^\s*(?:part|recipe)\s+\S.*\sas\s+([\p{L} -]*)$/u.exec(before);
  if (match === null) return NOTHING;
  const start = character - (match[1] ?? '').length;
  return all(
    KINDS.map(({ name, group, also = [] }) => ({
      label: name,
      kind: 'kind',
      detail: [group, ...also].join(', '),
      start,
      end: character,
      text: name,
      filter: [name, ...also].join(' '),
    })),
  );
}
