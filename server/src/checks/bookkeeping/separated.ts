/**
 * Knows when a line is used as several things apart, yolks and whites, or the onion that is sliced and the one that is chopped, so that a
 * portion of one is none of the other.
 */
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { TextNode } from '../../notation/tree.ts';

import { nameSpeaksOf, speaksOf } from '../../recipe/journey/deeds.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { tellsApart } from '../../recipe/names/portions.ts';

/** Whole eggs of which the steps, or the line itself, speak as yolks and whites; and a line that tells its own pieces apart. */
export function isSeparated({ food, name, node }: Ingredient, part: Part): boolean {
  if (node.preparation !== undefined && isToldApart(node.preparation)) return true;
  if (food?.class !== 'egg' || nameSpeaksOf(name, 'egg half')) return false;
  if (nameSpeaksOf(node.preparation?.text ?? '', 'egg half')) return true;
  return part.steps.some((step) => speaksOf(step, 'egg half'));
}

const APART = keptOn<TextNode, boolean>();

/** `1 chopped and 1 sliced` */
function isToldApart(preparation: TextNode): boolean {
  let apart = APART.get(preparation);
  if (apart === undefined) {
    apart = tellsApart(sentenceIn(preparation.text).items);
    APART.set(preparation, apart);
  }
  return apart;
}
