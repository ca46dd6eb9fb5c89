/**
 * Knows what may be written at a place, with the edit a cook expects: the source that fits what stands before the caret.
 * Refuses to know protocol and markdown; the food book is asked only once a letter is typed.
 */
import type { Position } from '../notation/document.ts';
import { KEYWORDS, type Keyword } from '../notation/tokens.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { completeCode } from './completion/code.ts';
import { completeIngredient, completeLike } from './completion/food.ts';
import { type Completions, NOTHING, type Typing } from './completion/item.ts';
import { completeKeyword } from './completion/keyword.ts';
import { completeKind } from './completion/kind.ts';
import { completeSentence } from './completion/sentence.ts';
import { completeUsed } from './completion/used.ts';
import { completeAllergen, completeOven, completePan, completeVerdict, completeYield } from './completion/value.ts';
import { cursorAt } from './place.ts';

type Source = (typing: Typing) => Completions;

const BY_KEYWORD: Readonly<Partial<Record<Keyword, Source>>> = {
  do: completeSentence,
  recipe: completeKind,
  part: completeKind,
  allow: completeCode,
  contains: completeAllergen,
  like: completeLike,
  pan: completePan,
  verdict: completeVerdict,
  yield: completeYield,
  oven: completeOven,
  used: completeUsed,
  optional: completeIngredient,
  add: completeIngredient,
};

export function completions(snapshot: Snapshot, position: Position, byBlank = false): Completions {
  const cursor = cursorAt(snapshot, position);
  const { line, character } = cursor;
  if (line.comment !== undefined && character > line.comment.start) return NOTHING;
  const before = line.text.slice(0, character);
  const typing: Typing = { ...cursor, snapshot, before, byBlank };
  if (/^\s*\p{L}*$/u.test(before)) return byBlank ? NOTHING : completeKeyword(typing);
  const opening = /^\s*(\p{L}+)\s/u.exec(before)?.[1];
  if (opening !== undefined && isKeyword(opening)) return BY_KEYWORD[opening]?.(typing) ?? NOTHING;
  return completeIngredient(typing);
}

const isKeyword = (word: string): word is Keyword => (KEYWORDS as readonly string[]).includes(word);
