/**
 * Knows what a line of the list says was done with its food before the first step: `500 g rice, cooked, left out overnight`.
 * Refuses to know the steps.
 */
import { keptOn } from '../../notation/kept.ts';
import { sentenceIn } from '../../notation/sentence.ts';
import type { SentenceItem, Span, TextNode } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import { sensesOf, verbOf } from '../../prose/lexicon.ts';
import type { NameRun } from '../../prose/pieces.ts';
import { read } from '../../prose/read.ts';
import { timesIn } from '../../prose/times.ts';
import type { Ingredient, IngredientRef, Part } from '../model.ts';
import { bodyOf, isSameRef, RAW, type Stay } from './bodies.ts';
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

interface Kept {
  readonly of: IngredientRef;
  readonly was: number;
  readonly stays: readonly Stay[];
}

const OF_LINE = keptOn<Ingredient, Kept>();

function staysOf(part: Part, listed: Ingredient, ingredient: number): readonly Stay[] {
  const said = [listed.node.preparation, listed.node.note].filter((text) => text !== undefined);
  if (said.length === 0) return NONE;
  const was = larderOf(part).was[ingredient] ?? 0;
  const of = { part: part.index, ingredient };
  const kept = OF_LINE.get(listed);
  if (kept?.was === was && isSameRef(kept.of, of)) return kept.stays;
  const stays = saidIn(said, of, was, listed.line);
  OF_LINE.set(listed, { of, was, stays });
  return stays;
}

function saidIn(texts: readonly TextNode[], of: IngredientRef, was: number, line: number): readonly Stay[] {
  const said = texts.map((text) => ({ text, items: sentenceIn(text.text).items }));
  // Most of what is said is how it is cut.
  if (said.every(({ items }) => timesIn(items, NO_RUNS).length === 0)) return NONE;
  const stays: Stay[] = [];
  const share = { low: 1, high: 1 };
  let body = bodyOf(0, [{ of, share, state: { ...RAW, was } }]);
  for (const { text, items } of said)
    for (const event of eventsIn(text, items)) {
      if (event.said !== 'yes' || event.act === 'heat') continue;
      const by = { event, names: [], unnamed: undefined, into: undefined };
      const lain = lie(body, by, settleTemperatures(event, body), { part: of.part, line, branch: false });
      body = lain.body;
      // Where it is to lie is for the steps to say.
      if (lain.stay?.timed && lain.stay.lies.sure === 'said') stays.push(lain.stay);
    }
  return stays.length === 0 ? NONE : stays;
}

const NONE: readonly Stay[] = [];
const NO_RUNS: readonly NameRun[] = [];

const CUT = keptOn<Ingredient, boolean>();

/** `melon, seeded and diced` */
export function isListedCut(ingredient: Ingredient): boolean {
  let isCut = CUT.get(ingredient);
  if (isCut === undefined) {
    const { preparation } = ingredient.node;
    isCut =
      preparation !== undefined &&
      sensesOf(sentenceIn(preparation.text).items).some((sense) => verbOf(sense)?.act === 'cut');
    CUT.set(ingredient, isCut);
  }
  return isCut;
}

/** What a text on a line tells, with its places on that line; its objects are nobody's to name. */
export function eventsIn({ start }: TextNode, items: readonly SentenceItem[]): readonly Event[] {
  const placed = <T extends Span>(span: T): T => ({ ...span, start: span.start + start, end: span.end + start });
  return read(items, NO_RUNS).map((event) => ({
    ...placed(event),
    times: event.times.map(placed),
    temperatures: event.temperatures.map(placed),
    where: event.where.map(placed),
  }));
}
