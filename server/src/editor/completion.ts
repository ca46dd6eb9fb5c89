/**
 * Knows what may be written at a place, with the edit a cook expects: the source that fits what stands before the caret.
 * Refuses to know protocol and markdown; the food book is asked only once a letter is typed.
 */
import type { Position } from '../notation/document.ts';
import { KEYWORDS, type Keyword } from '../notation/keywords.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { completeBase, completeChanged, completeTaken } from './completion/base.ts';
import { completeCode } from './completion/code.ts';
import { completeIngredient, completeLike } from './completion/food.ts';
import { type Completions, NOTHING, type Others, type Typing } from './completion/item.ts';
import { completeKeyword } from './completion/keyword.ts';
import { completeKind, completePartName } from './completion/kind.ts';
import { completeTook, completeUsed } from './completion/measured.ts';
import { completePan } from './completion/pan.ts';
import { completePicture } from './completion/picture.ts';
import { completeSentence } from './completion/sentence.ts';
import { completeAllergen, completeOven, completeVerdict, completeYield } from './completion/value.ts';
import { cursorAt, partAt, toWhole } from './place.ts';

type Source = (typing: Typing) => Completions;

const BY_KEYWORD: Readonly<Partial<Record<Keyword, Source>>> = {
  do: (typing) => completeSentence(inWhole(typing)),
  recipe: completeKind,
  part: (typing) => completeTaken(typing) ?? completePartName(typing) ?? completeKind(typing),
  from: completeBase,
  picture: completePicture,
  swap: completeChanged,
  drop: completeChanged,
  allow: completeCode,
  contains: completeAllergen,
  like: completeLike,
  pan: completePan,
  verdict: completeVerdict,
  yield: completeYield,
  oven: completeOven,
  used: completeUsed,
  took: completeTook,
  optional: completeIngredient,
  add: completeIngredient,
};

export function completions(
  snapshot: Snapshot,
  position: Position,
  byBlank = false,
  others: () => Others | undefined = () => undefined,
): Completions {
  const cursor = cursorAt(snapshot, position);
  const { line, character } = cursor;
  if (line.comment !== undefined && character > line.comment.start) return NOTHING;
  const before = line.text.slice(0, character);
  const typing: Typing = { ...cursor, snapshot, before, byBlank, others };
  if (/^\s*\p{L}*$/u.test(before)) return byBlank ? NOTHING : completeKeyword(typing);
  const opening = /^\s*(\p{L}+)\s/u.exec(before)?.[1];
  if (opening !== undefined && isKeyword(opening)) return BY_KEYWORD[opening]?.(typing) ?? NOTHING;
  return completeIngredient(typing);
}

/** In a variant, the part as it is written out: its step may use all that the base lists. */
function inWhole(typing: Typing): Typing {
  const { snapshot, at, character } = typing;
  const there = toWhole(snapshot, { line: at, character });
  const part = there && partAt(snapshot.whole, there.line);
  return part === undefined ? typing : { ...typing, snapshot: snapshot.whole, part };
}

const isKeyword = (word: string): word is Keyword => (KEYWORDS as readonly string[]).includes(word);
