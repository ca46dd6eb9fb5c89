/**
 * Knows what to say of the thing under the cursor: the first of the sources below that has something to say.
 * Needs the bound recipe. Refuses to know markdown: a hover is a title and facts.
 */
import type { Position } from '../notation/document.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { hoverAmount } from './hover/amount.ts';
import { besideBase, hoverBase } from './hover/base.ts';
import { hoverCode } from './hover/code.ts';
import { hoverEvent, hoverSign } from './hover/event.ts';
import type { Hover, HoverSource } from './hover/fact.ts';
import { hoverIngredient } from './hover/ingredient.ts';
import { hoverKind } from './hover/kind.ts';
import { hoverMention } from './hover/mention.ts';
import { hoverPan } from './hover/pan.ts';
import { hoverPart } from './hover/part.ts';
import { hoverPicture } from './hover/picture.ts';
import { hoverRecipe } from './hover/recipe.ts';
import { hoverTemperature } from './hover/temperature.ts';
import { hoverTested } from './hover/tested.ts';
import { hoverTime } from './hover/time.ts';
import { hoverTrial } from './hover/trials.ts';
import { hoverUnit } from './hover/unit.ts';
import { cursorAt, fromWhole, holds, toWhole } from './place.ts';

const SOURCES: readonly HoverSource[] = [
  hoverCode,
  hoverKind,
  hoverRecipe,
  hoverPart,
  hoverPan,
  hoverPicture,
  hoverTemperature,
  hoverTime,
  hoverTrial,
  hoverTested,
  hoverUnit,
  hoverMention,
  hoverIngredient,
  hoverAmount,
  hoverEvent,
  hoverSign,
];

export function hover(snapshot: Snapshot, position: Position): Hover | undefined {
  const cursor = cursorAt(snapshot, position);
  const base = hoverBase(snapshot, cursor);
  if (base !== undefined) return base;
  const there = toWhole(snapshot, position);
  const found = there === undefined ? undefined : hoverIn(snapshot.whole, there);
  const place = found === undefined ? undefined : fromWhole(snapshot, found.at);
  // A variant is weighed as a cook cooks it; a line that is another in the whole recipe has its own words elsewhere.
  const isHere = place?.path === undefined && place?.at.line === cursor.at && holds(place.at, cursor.character);
  if (found !== undefined && place !== undefined && isHere)
    return besideBase(snapshot, place.at.line, { ...found, at: place.at });
  return hoverIn(snapshot, position);
}

function hoverIn(snapshot: Snapshot, position: Position): Hover | undefined {
  const cursor = cursorAt(snapshot, position);
  for (const source of SOURCES) {
    const found = source(snapshot, cursor);
    if (found !== undefined) return found;
  }
  return undefined;
}
