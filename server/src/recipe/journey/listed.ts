/**
 * Knows what a line of the list says was done with its food before the first step: `500 g rice, cooked, left out overnight`.
 * Refuses to know the steps.
 */
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { Span, TextNode } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { read } from '../../prose/read.ts';
import type { Ingredient } from '../ingredient.ts';
import type { Part } from '../recipe.ts';
import { bodyOf, RAW, type Stay } from './bodies.ts';
import { larderOf } from './larder.ts';
import { lie } from './stays.ts';
import { settleTemperatures } from './temperatures.ts';

const STAYS = keptOn<Part, readonly Stay[]>();

/** Where the foods of a part lay before it begins, as their lines say. */
export function listedStays(part: Part): readonly Stay[] {
  let stays = STAYS.get(part);
  if (stays === undefined) {
    stays = part.head.ingredients.flatMap((ingredient, at) => staysOf(part, ingredient, at));
    STAYS.set(part, stays);
  }
  return stays;
}

function staysOf(part: Part, { node, line }: Ingredient, ingredient: number): readonly Stay[] {
  const said = [node.preparation, node.note].filter((text) => text !== undefined);
  if (said.length === 0) return NONE;
  const stays: Stay[] = [];
  const was = larderOf(part).was[ingredient] ?? 0;
  const share = { low: 1, high: 1 };
  let body = bodyOf(0, [{ of: { part: part.index, ingredient }, share, state: { ...RAW, was } }]);
  for (const text of said)
    for (const event of eventsIn(text)) {
      if (event.said !== 'yes' || event.act === 'heat') continue;
      const by = { event, names: [], unnamed: undefined, into: undefined };
      const lain = lie(body, by, settleTemperatures(event, body), { part: part.index, line, branch: false });
      body = lain.body;
      // Where it is to lie is for the steps to say.
      if (lain.stay?.timed && lain.stay.lies.sure === 'said') stays.push(lain.stay);
    }
  return stays.length === 0 ? NONE : stays;
}

const NONE: readonly Stay[] = [];

/** What a text on a line tells, with its places on that line. */
function eventsIn({ text, start }: TextNode): readonly Event[] {
  const placed = <T extends Span>(span: T): T => ({ ...span, start: span.start + start, end: span.end + start });
  return read(sentenceIn(text).items, []).map((event) => ({
    ...placed(event),
    times: event.times.map(placed),
    temperatures: event.temperatures.map(placed),
    where: event.where.map(placed),
  }));
}
