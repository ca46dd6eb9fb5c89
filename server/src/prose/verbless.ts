/**
 * Knows what a clause without a verb orders by the places, times, figures and names that it says.
 * Refuses to know what else its event takes.
 */

import type { SentenceItem } from '../notation/tree.ts';
import { type Clause, EventDraft } from './clauses.ts';
import type { Act, Cooks, Where } from './event.ts';
import { isLong } from './filler.ts';
import { evidenceOf, isStrange, jointOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import type { JointKind, ThingRow, Way } from './rows.ts';
import { offUntil } from './switched.ts';

/** A clause that says where, or in what, and no verb. */
export function verblessEvent(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clause: Clause,
): EventDraft | undefined {
  for (let at = clause.from; at < clause.to; at++) {
    const piece = pieces[at] as Piece;
    const thing = thingOf(piece.sense);
    if (piece.sort === 'mark' || thing === undefined) continue;
    const way = wayTo(pieces, clause.from, at);
    if (thing.sort === 'vessel' && thing.is === 'jar' && (way === 'to' || isReady(pieces, clause, at)))
      return putIn(pieces, clause);
    // `Into the hot smoke, an hour`
    if (thing.sort === 'medium' && thing.is === 'smoke' && way === 'to') return smokes(pieces, clause);
    if (thing.sort !== 'place' || (way === undefined && !thing.bare)) continue;
    // `The heat pulls them down.`
    const isTold =
      way === undefined && thing.is === 'stove' && jointOf(pieces[at - 1]?.sense ?? UNKNOWN)?.is === 'article';
    // `It looks lovely on a shelf`
    if (isTold || seems(pieces, clause.from, at)) continue;
    const start = (pieces[clause.from] as Piece).start;
    const event = new EventDraft(start, (pieces[clause.to - 1] as Piece).end, undefined, undefined, 'ordered');
    if (way === undefined && thing.is === 'oven' && isSet(pieces, clause)) {
      event.act = 'adjust';
      return event;
    }
    // Beside the stove, or in an oven that is off, nothing is heated.
    const isIn = way !== 'by' && !(way === 'over' && (thing.is === 'cold' || thing.is === 'frozen'));
    const heats = isIn && offUntil(pieces, items, at, at) === undefined;
    event.act = isLit(pieces, clause, at) ? 'ready' : heats ? ACT_AT[thing.is] : 'stay';
    if (event.act === 'heat') event.cooks = 'as read';
    event.lasts = 'waits';
    return event;
  }
  return (
    heatedOn(pieces, clause) ??
    keptAt(pieces, clause) ??
    timedOnHeat(pieces, clause) ??
    timedSomewhere(pieces, clause) ??
    namesInVessel(pieces, clause)
  );
}

/** How it looks there is said, and not that it is there. */
const seems = (pieces: readonly Piece[], from: number, to: number): boolean =>
  pieces.slice(from, to).some(({ sense }) => jointOf(sense)?.is === 'aux' && SEEMS.has(verbOf(sense)?.words[0] ?? ''));
const SEEMS: ReadonlySet<string> = new Set(['look', 'feel']);

/** `Oven 150 C. Whisk the whites`: with nothing in hand yet it is only set. */
function isSet(pieces: readonly Piece[], { from, to, first }: Clause): boolean {
  const own = pieces.slice(from, to);
  if (!first && from > 0) return false;
  if (!own.some(({ sort }) => sort === 'temperature') || own.some(({ sort }) => sort === 'time' || sort === 'name'))
    return false;
  if (pieces.slice(0, from).some(({ part, sense }) => part === 'verb' && verbOf(sense)?.act !== 'ready')) return false;
  const next = pieces[to + 1];
  return pieces[to]?.word === '.' && next?.part === 'verb' && BEGINS.has(verbOf(next.sense)?.act ?? 'unknown');
}
const BEGINS: ReadonlySet<Act> = new Set(['combine', 'cut', 'shape', 'ready', 'divide']);

/** `Oven to 220 C`: it is lit, where no time follows in which it bakes. */
function isLit(pieces: readonly Piece[], { from, to }: Clause, at: number): boolean {
  if (thingOf((pieces[at] as Piece).sense)?.is !== 'oven' || jointOf(pieces[at + 1]?.sense ?? UNKNOWN)?.is !== 'to')
    return false;
  const own = pieces.slice(from, to);
  const next = pieces[to]?.sort === 'mark' ? pieces[to + 1] : pieces[to];
  return (
    pieces[at + 2]?.sort === 'temperature' &&
    next?.sort !== 'time' &&
    own.every(({ sort, time }) => time === undefined && sort !== 'name')
  );
}

function smokes(pieces: readonly Piece[], { from, to }: Clause): EventDraft {
  const [first, last] = [pieces[from] as Piece, pieces[to - 1] as Piece];
  const event = new EventDraft(first.start, last.end, undefined, undefined, 'ordered');
  event.act = 'smoke';
  event.lasts = 'waits';
  return event;
}

/** `Nine hours beside the loom`, `overnight in the bothy`: a place that nobody knows, and a long time. */
function timedSomewhere(pieces: readonly Piece[], { from, to }: Clause): EventDraft | undefined {
  const own = pieces.slice(from, to);
  if (!own.some(({ time }) => time !== undefined && isLong(time))) return undefined;
  const isThere = own.some(({ sort, sense }, at) => {
    const way = sort === 'word' && isStrange(sense) ? wayTo(pieces, from, from + at) : undefined;
    return way === 'at' || way === 'by';
  });
  if (!isThere) return undefined;
  const event = new EventDraft((own[0] as Piece).start, (own.at(-1) as Piece).end, undefined, undefined, 'ordered');
  event.act = 'stay';
  event.lasts = 'waits';
  return event;
}

/** `Roast at 220 C for 20 min, then at 170 C for an hour`: the same order goes on at another heat. */
function heatedOn(pieces: readonly Piece[], { from, to, first }: Clause): EventDraft | undefined {
  const own = pieces.slice(from, to);
  if (first || !own.some(({ sort }) => sort === 'temperature') || !own.some(({ time }) => time?.kind === 'spent'))
    return undefined;
  for (let at = from - 1; at >= 0 && pieces[at]?.word !== '.'; at--) {
    const { part, sense } = pieces[at] as Piece;
    if (part !== 'verb') continue;
    const row = verbOf(sense);
    if (row?.act !== 'heat' || row.where !== 'oven') return undefined;
    return new EventDraft((own[0] as Piece).start, (own.at(-1) as Piece).end, undefined, row, 'ordered');
  }
  return undefined;
}

/** `or 3 months at -18 C` */
function keptAt(pieces: readonly Piece[], { from, to, orElse }: Clause): EventDraft | undefined {
  const own = pieces.slice(from, to);
  if (!orElse || !own.some(({ sort }) => sort === 'temperature') || !own.some(({ time }) => time !== undefined))
    return undefined;
  const event = new EventDraft((own[0] as Piece).start, (own.at(-1) as Piece).end, undefined, undefined, 'ordered');
  event.act = 'stay';
  event.lasts = 'waits';
  return event;
}

/** `Five minutes a side in a hot pan`, `ten minutes in boiling water`: what stands on the stove, and for how long. */
function timedOnHeat(pieces: readonly Piece[], { from, to }: Clause): EventDraft | undefined {
  let time: Piece['time'];
  let cooks: Cooks | undefined;
  let way: string | undefined;
  let isBeside = false;
  let isInPot = false;
  for (let at = from; at < to; at++) {
    const piece = pieces[at] as Piece;
    time ??= piece.time;
    if (piece.sort === 'mark') way = undefined;
    way = jointOf(piece.sense)?.way ?? way;
    // `4 hours at a bare simmer`, `up to a simmer, 25 minutes`
    if ((way === 'at' || way === 'to') && piece.part === 'thing') cooks ??= verbOf(piece.sense)?.cooks;
    const thing = way === undefined ? undefined : thingOf(piece.sense);
    if (thing === undefined) continue;
    isBeside ||= way === 'by';
    isInPot ||= thing.sort === 'vessel';
    cooks ??= cooksIn(thing);
  }
  // `Nine hours beside the kettle`, `all night in the pot`
  const stays = isBeside || (isInPot && time?.per === undefined && (time?.minutes.high ?? 0) > LONGEST_IN_POT_MIN);
  if (time?.kind !== 'spent' || (time.per !== 'side' && cooks === undefined)) return undefined;
  const event = ordered(pieces, from, to);
  event.act = stays ? 'stay' : 'heat';
  if (!stays) event.cooks = cooks ?? 'as read';
  event.lasts = 'waits';
  return event;
}

/** So long nobody cooks without saying so (judgement). */
export const LONGEST_IN_POT_MIN = 240;

function cooksIn(thing: ThingRow): Cooks | undefined {
  if (thing.sort === 'vessel') return thing.on === undefined || thing.is === 'tool' ? undefined : 'as read';
  if (thing.sort !== 'medium') return undefined;
  const isBoiling =
    thing.is === 'steam' || thing.is === 'pressure' || (thing.is === 'water' && (thing.celsius?.low ?? 0) >= BOILING_C);
  return isBoiling ? 'through' : thing.is === 'metal' ? 'as read' : undefined;
}

/** Water that simmers or boils. */
const BOILING_C = 80;

/** `Eggs, mustard, salt in the tall tub`, `Everything in the pot`: what is named goes in. */
function namesInVessel(pieces: readonly Piece[], { from, to }: Clause): EventDraft | undefined {
  const named = pieces.slice(from, to).findIndex(({ sort, sense }) => sort === 'name' || jointOf(sense)?.is === 'all');
  if (named < 0) return undefined;
  for (let at = from + named + 1; at < to; at++) {
    const thing = thingOf((pieces[at] as Piece).sense);
    const way = thing?.sort === 'vessel' && thing.is !== 'tool' ? wayTo(pieces, from, at) : undefined;
    if (way !== 'at' && way !== 'to') continue;
    const event = ordered(pieces, from, to);
    event.act = 'combine';
    return event;
  }
  return undefined;
}

/** `Dough temperature 26 C`: a figure is all that is said. */
export function figureAlone(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  const run = pieces.slice(clause.from, clause.to);
  if (!run.some(({ sort }) => sort === 'temperature')) return undefined;
  const event = new EventDraft((run[0] as Piece).start, (run.at(-1) as Piece).end, undefined, undefined, 'told');
  event.act = 'read';
  return event;
}

/** `Tomatoes, stock and bay.`, `Then the rice.`: a sentence of nothing but names puts them in. */
export function namesPutIn(pieces: readonly Piece[], { from, to, first, label }: Clause): EventDraft | undefined {
  const isWhole = first && !label && (to === pieces.length || pieces[to]?.word === '.');
  if (!isWhole) return undefined;
  let names = 0;
  let others = 0;
  let isNext = false;
  let isParted = false;
  for (const { sort, part, sense, word } of pieces.slice(from, to)) {
    if (sort === 'name') names++;
    else if (sort === 'word' && part !== 'joint') others++;
    else if (sort !== 'word' && sort !== 'amount' && word !== ',') return undefined;
    isParted ||= word === ',';
    const joint = part === 'joint' ? jointOf(sense) : undefined;
    isNext ||= joint?.is === 'then';
    if (joint !== undefined && (!BETWEEN_NAMES.has(joint.is) || joint.way === 'without' || joint.way === 'for'))
      return undefined;
  }
  // `Rice.` is a heading; `and a bay leaf that nobody lists` is one thing more.
  if (names === 0 || (names < 2 && !isNext && !isParted)) return undefined;
  // `Yolks, sugar, beaten pale.` `Whites, stiff, in three goes.`
  if (others * 2 > names && !(isParted && others <= names * MOST_OTHERS)) return undefined;
  const event = ordered(pieces, from, to);
  event.act = 'combine';
  return event;
}

/** Words that say how it is, beside each name. */
const MOST_OTHERS = 2;

const BETWEEN_NAMES: ReadonlySet<JointKind> = new Set<JointKind>([
  'article',
  'conjunction',
  'then',
  'quantity',
  'number',
  'rest',
  'all',
  'adjective',
  'adverb',
  'preposition',
]);

/** `It is still lukewarm in the middle`: warmth that is felt is all that is said. */
export function warmthTold(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  const run = pieces.slice(clause.from, clause.to);
  const is = run.findIndex(({ sense }) => jointOf(sense)?.is === 'aux');
  const sign = is < 0 ? undefined : warmBehind(run, is);
  const row = sign && signOf(sign.sense);
  if (sign === undefined || row === undefined) return undefined;
  const event = new EventDraft((run[0] as Piece).start, (run.at(-1) as Piece).end, undefined, undefined, 'told');
  event.act = 'read';
  const { start, end } = sign;
  event.until = [{ start, end, is: 'warm', sure: 'said', from: 'until', ...(row.celsius && { celsius: row.celsius }) }];
  return event;
}

/** The word behind `is` that says warm, of the subject and of no noun; a denied one says nothing. */
function warmBehind(run: readonly Piece[], is: number): Piece | undefined {
  for (let at = is + 1; at < run.length; at++) {
    const piece = run[at] as Piece;
    if (signOf(piece.sense)?.tells === 'warm') {
      const next = run[at + 1];
      const isOfNoun = next?.sort === 'name' || (next?.part === 'thing' && evidenceOf(next.sense)?.inside !== true);
      return isOfNoun ? undefined : piece;
    }
    const joint = jointOf(piece.sense)?.is;
    if (joint !== 'adverb' && joint !== 'quantity' && joint !== 'article') return undefined;
  }
  return undefined;
}

/** `Trout fillet, 3 min a side`: something happens to it for so long, or until so warm. */
export function nameAlone(pieces: readonly Piece[], clause: Clause): EventDraft | undefined {
  const run = pieces.slice(clause.from, clause.to);
  if (!run.some(({ sort }) => sort === 'name') || !run.some(({ sort }) => sort === 'time' || sort === 'temperature'))
    return undefined;
  const event = new EventDraft((run[0] as Piece).start, (run.at(-1) as Piece).end, undefined, undefined, 'ordered');
  event.lasts = 'waits';
  return event;
}

/** What the preposition before a noun and its article says. */
function wayTo(pieces: readonly Piece[], from: number, at: number): Way | undefined {
  for (let i = at - 1; i >= from; i--) {
    const joint = jointOf((pieces[i] as Piece).sense);
    if (joint?.is !== 'article' && joint?.is !== 'adjective') return joint?.way;
  }
  return undefined;
}

/** What a place by itself says is done there. */
export const ACT_AT: Readonly<Record<Where['is'] & string, Act>> = {
  frozen: 'freeze',
  cold: 'stay',
  cool: 'stay',
  room: 'stay',
  outdoors: 'stay',
  warm: 'stay',
  hot: 'stay',
  oven: 'heat',
  stove: 'heat',
  level: 'heat',
  bath: 'heat',
  smoker: 'smoke',
};

/** `Into hot jars while it spits` */
function putIn(pieces: readonly Piece[], { from, to }: Clause): EventDraft {
  const { start } = pieces[from] as Piece;
  const event = new EventDraft(start, (pieces[to - 1] as Piece).end, undefined, undefined, 'ordered');
  event.act = 'put';
  return event;
}

/** `Hot jars, hot lids`: what is hot goes in. */
function isReady(pieces: readonly Piece[], { from }: Clause, at: number): boolean {
  const next = pieces[at + 1];
  return at === from + 1 && HOT.has(pieces[from]?.word ?? '') && (next === undefined || next.sort === 'mark');
}
const HOT: ReadonlySet<string> = new Set(['hot', 'warm', 'sterile', 'scalded']);

/** What nobody has a verb for, from one piece to before another. */
export const ordered = (pieces: readonly Piece[], from: number, to: number): EventDraft =>
  new EventDraft((pieces[from] as Piece).start, (pieces[to - 1] as Piece).end, undefined, undefined, 'ordered');
