/** Kinds after `as`, and what a part may be called where nothing is typed yet: what steps speak of and no line has. */
import { KINDS } from '../../recipe/measures/kinds.ts';
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';

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

/** Findings of a name that stands for nothing yet. */
const UNLISTED: ReadonlySet<string> = new Set(['unlisted-ingredient', 'unknown-part']);

/** After a bare `part`; undefined where a name is typed. */
export function completePartName({ before, character, snapshot }: Typing): Completions | undefined {
  const [, typed] = /^\s*part\s+(\p{L}*)$/u.exec(before) ?? [];
  if (typed === undefined) return undefined;
  const { document, findings, recipe } = snapshot;
  const spoken = findings.open.flatMap(({ code, at }) => {
    const text = document.lines[at.line]?.text.slice(at.start, at.end).trim() ?? '';
    return UNLISTED.has(code) && !/\d/.test(text) && text !== '' ? [text] : [];
  });
  const here = new Set(recipe.heads.map(({ name }) => name.toLowerCase()));
  const names = [...new Set(spoken)].filter((name) => !here.has(name.toLowerCase()));
  const start = character - typed.length;
  const item = (text: string, detail: string): Completion => ({
    label: text,
    kind: 'part',
    detail,
    start,
    end: character,
    text,
    filter: text,
  });
  const usual = USUAL.filter((name) => !here.has(name) && !names.includes(name));
  return all([
    ...names.map((name) => item(name, 'a step speaks of it')),
    ...usual.map((name) => item(name, 'a usual name')),
  ]);
}

const USUAL = ['base', 'crust', 'dough', 'filling', 'sauce', 'topping', 'assembly'];
