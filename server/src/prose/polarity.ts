/**
 * The pass that settles how each event is said: for sure, not, as a choice, on a condition, as advice to others, as a question; and what
 * becomes of the food.
 * Refuses to know which of it matters.
 */

import { isDoing } from './ahead.ts';
import type { Clause, EventDraft } from './clauses.ts';
import type { TimeSaid } from './event.ts';
import { isThermometer, jointOf, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';

export function settleSaying(pieces: readonly Piece[], clauses: readonly Clause[]): void {
  let condition = false;
  let advice = false;
  let before: EventDraft | undefined;
  let choices = 0;
  const told: EventDraft[] = [];
  let earlier: readonly EventDraft[] = [];
  for (const [i, clause] of clauses.entries()) {
    if (clause.first) {
      denyGone(told);
      earlier = told.splice(0);
      condition = false;
      advice = false;
      before = undefined;
    }
    if (clause.frame === 'if') {
      // `until sour (below pH 4 if you have strips)`: of the bracket alone.
      if (isBracketed(pieces, clause)) continue;
      // `Cook longer if it is thin`: of what stands before.
      if (before !== undefined && !opensThought(pieces, clause)) {
        if (before.said === 'yes' && !isOfReading(pieces, clause)) before.said = 'if';
      } else condition = true;
      continue;
    }
    const { event } = clause;
    if (event === undefined) {
      // `It went in the airing cupboard. Never again.`
      if (denies(pieces, clause) && clause.first && (clauses[i + 1]?.first ?? true))
        for (const each of earlier) if (each.as === 'told') each.said = 'not';
      // `Leaving it out` … `is dangerous`
      if (before?.as === 'beside' && deniesBefore(pieces, clause)) before.said = 'not';
      // `(see table)`
      if (before !== undefined && saysElsewhere(pieces, clause)) before.elsewhere = true;
      continue;
    }
    let or = clause.orElse;
    let not = false;
    let letting = false;
    let optional = false;
    for (let at = clause.from; at < clause.to; at++) {
      const piece = pieces[at] as Piece;
      const is = piece.part === 'joint' ? jointOf(piece.sense)?.is : undefined;
      if (is === undefined) continue;
      const ahead = clause.verb < 0 || at < clause.verb;
      if (is === 'or' && ahead && at === clause.from) or = true;
      // `Leaving it out is dangerous.`
      const isBehind = jointOf(piece.sense)?.way === 'beside';
      if ((is === 'not' || is === 'aux not') && (ahead || isBehind)) not = true;
      // `No letting it stand`, `instead of leaving it out`
      if (is === 'preposition' && ahead && jointOf(piece.sense)?.way === 'without') {
        const before = pieces.slice(at, clause.verb);
        const next = pieces[at + 1];
        // `Without washing the pan, fry the onions`: they are fried.
        if (before.some(isComma)) continue;
        if (next !== undefined && isDoing(next)) not = true;
        // `No stew should stand`
        if (at === clause.from) not ||= before.some(({ sense }) => jointOf(sense)?.is === 'modal');
      }
      // `nobody is to touch them`
      if (is === 'person' && ahead && jointOf(piece.sense)?.way === 'without') not = true;
      if (is === 'let' && ahead) letting = true;
      if (is === 'advice') advice = true;
      if (is === 'optional') optional = true;
      if (is === 'elsewhere') event.elsewhere = true;
      if (is === 'now' || is === 'later') event.fate = is;
    }
    if (event.act === 'eat') event.fate ??= 'now';
    if (advice) event.said = 'advice';
    // `Do not leave it in the pot, lid ajar, on the shelf`
    else if (clause.frame === 'verbless' && before?.said === 'not') event.said = 'not';
    // `Throw out what has stood on the bench`
    else if (before?.act === 'discard' && before.said === 'yes' && event.as === 'before') event.said = 'not';
    else if (not && event.until.some(({ from }) => from === 'until')) {
      // `Don't put it in until it boils`: once it does.
      event.until = event.until.map((sign) => ({ ...sign, from: 'when' as const }));
    } else if (not && event.act === 'stay' && event.times.some(isOpen)) {
      // `Do not leave it out for more than 2 h`: so long it may.
      event.times = event.times.map((time) =>
        isOpen(time) ? { ...time, kind: 'life', minutes: { low: time.minutes.low, high: time.minutes.low } } : time,
      );
    } else if (not) event.said = letting && event.act === 'heat' ? 'at most' : 'not';
    else if (pieces[clause.to]?.word === '?') event.said = 'asked';
    else if (condition) event.said = 'if';
    else if (optional) event.said = 'optional';
    if (or && before?.said === 'not' && event.said === 'yes') {
      // `Do not cut it or add salt.`
      event.said = 'not';
    } else if (or && before !== undefined) {
      if (before.either === 0) before.either = ++choices;
      event.either = before.either;
    }
    if (event.said === 'not' && clause.frame === 'verbless') denyPlace(event, earlier);
    before = event;
    told.push(event);
  }
  denyGone(told);
}

/** `More than 2 h`, and not `as long as you like`. */
const isOpen = ({ minutes: { low, high } }: TimeSaid): boolean => low > 0 && low < MONTH_MIN && high === Infinity;
const MONTH_MIN = 43_200;

/** `It looks well on a shelf. It isn't for the shelf.`: no such place, where no time was said. */
function denyPlace({ act, where }: EventDraft, earlier: readonly EventDraft[]): void {
  if (act !== 'stay') return;
  for (const each of earlier)
    if (
      each.act === 'stay' &&
      each.said === 'yes' &&
      each.times.length === 0 &&
      each.where.length > 0 &&
      each.where.every(({ is }) => where.some((place) => place.is === is))
    )
      each.said = 'not';
}

/** `Should it have stood overnight, throw it out`: of what is thrown away nothing else happens. */
function denyGone(events: readonly EventDraft[]): void {
  if (!events.some(({ act, said, as }) => act === 'discard' && said === 'yes' && as === 'ordered')) return;
  for (const event of events)
    if (event.act !== 'discard' && (event.said === 'if' || event.as !== 'ordered')) event.said = 'not';
}

/** A bracket holds it, and what it is of. */
function isBracketed(pieces: readonly Piece[], { from, to }: Clause): boolean {
  if (!pieces.slice(from, to + 1).some(({ word }) => word === ')')) return false;
  for (let at = from - 1; at >= 0; at--) {
    const { sort, word } = pieces[at] as Piece;
    if (sort === 'mark' && word !== ',') return word === '(';
  }
  return false;
}

/** `Or 80 C if you probe one`, `if you own a thermometer`: whoever looks, it is cooked. */
const isOfReading = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces
    .slice(from, to)
    .some(({ sense, part }) => isThermometer(sense) || (part === 'framed' && verbOf(sense)?.act === 'read'));

/** It stands at the start, or behind a mark or conjunction. */
function opensThought(pieces: readonly Piece[], clause: Clause): boolean {
  const before = pieces[clause.from - 1];
  return clause.first || before?.sort === 'mark' || jointOf((pieces[clause.from] as Piece).sense)?.is !== 'if';
}

const isComma = ({ sort, word }: Piece): boolean => sort === 'mark' && word === ',';

const denies = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces.slice(from, to).some(({ part, sense }) => part === 'joint' && jointOf(sense)?.is === 'not');

const deniesBefore = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces
    .slice(from, to)
    .some(({ part, sense }) => part === 'joint' && jointOf(sense)?.is === 'not' && jointOf(sense)?.way === 'beside');

const saysElsewhere = (pieces: readonly Piece[], { from, to }: Clause): boolean =>
  pieces.slice(from, to).some(({ part, sense }) => part === 'joint' && jointOf(sense)?.is === 'elsewhere');
