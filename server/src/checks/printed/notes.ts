/**
 * Knows the texts of a head that print figures: the title, notes and how it is served, cut once for as long as their line stands.
 * Refuses to know what they say.
 */
import { sentenceIn } from '../../notation/sentence.ts';
import type { Line, SentenceItem, Span, TextField, TextNode } from '../../notation/tree.ts';
import type { Recipe } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import type { Place } from '../check.ts';
import { onceFor } from '../once.ts';

/** A text and where it stands: a span of its items is one of the line, `by` further on. */
export interface Note {
  readonly items: readonly SentenceItem[];
  readonly line: number;
  readonly by: number;
}

const PRINTS: ReadonlySet<TextField> = new Set<TextField>(['note', 'serve', 'source']);

const cut = onceFor((line: Line): Omit<Note, 'line'> | undefined => {
  const text = textOf(line);
  // Without a figure or its word it prints none.
  return text === undefined ? undefined : { items: sentenceIn(text.text).items, by: text.start };
});

function textOf({ statement }: Line): TextNode | undefined {
  if (statement.kind === 'recipe') return titleOf(statement).name;
  return statement.kind === 'text' && PRINTS.has(statement.field) ? statement.value : undefined;
}

export const notesOf = onceFor(({ outline }: Recipe): readonly Note[] =>
  [...(outline.recipe === undefined ? [] : [outline.recipe]), ...outline.head].flatMap(({ at, line }) => {
    const note = cut(line);
    return note === undefined ? [] : [{ ...note, line: at }];
  }),
);

/** Where something that a note says stands. */
export const placeIn = ({ line, by }: Note, { start, end }: Span): Place => ({
  line,
  start: start + by,
  end: end + by,
});
