/**
 * Knows which place a text names that is no sentence: `out of the oven`, `the walk-in`.
 * Refuses to know what is done there.
 */
import { sentenceIn } from '../notation/sentence.ts';
import type { PlaceKind } from './event.ts';
import { thingOf } from './lexicon.ts';
import { tag } from './tag.ts';

/** The first place that a text names; undefined where it names none. */
export function placeNamed(text: string): PlaceKind | undefined {
  for (const { sense } of tag(sentenceIn(text).items, [], [])) {
    const thing = thingOf(sense);
    if (thing?.sort === 'place') return thing.is;
  }
  return undefined;
}
