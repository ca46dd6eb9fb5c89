/**
 * Knows what is only told of how others do it, or once did, and what came of that: it moves nothing. Where the recipe goes on to do as they did
 * it is told as its own; where nothing is set against it, it may be.
 * Refuses to know what happens to food.
 */
import type { SentenceItem } from '../notation/tree.ts';
import type { Clause, EventDraft } from './clauses.ts';
import { jointOf, UNKNOWN } from './lexicon.ts';
import type { Phrase } from './phrases.ts';
import type { Piece } from './pieces.ts';
import { type Told, toldIn } from './told-words.ts';
import { ENDS, isPossessive, type Voice, voicesIn } from './voices.ts';

/** Makes `advice` of what others do, or did once, where it is not taken over; a branch where nothing is said against it. */
export function tellOfOthers(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clauses: readonly Clause[],
): void {
  if (!clauses.some(({ event }) => event !== undefined)) return;
  const phrases = toldIn(items);
  if (!phrases.some(({ is }) => TELLS.has(is)) && !pieces.some(isSomebody) && !clauses.some(isTold)) return;
  new Teller(pieces, clauses, phrases).settle();
}

/** Without one of them, and without a person, nothing is told of others. */
const TELLS: ReadonlySet<Told> = new Set(['other', 'theirs', 'his', 'house', 'no more', 'harms', 'germs', 'gone']);
const isTold = ({ event }: Clause): boolean => event?.as === 'told';
const isSomebody = (piece: Piece): boolean => jointOf(piece.sense)?.is === 'person' || isPossessive(piece);

interface Telling {
  readonly from: number;
  readonly to: number;
  readonly who: Voice['who'];
  readonly isPast: boolean;
}

/** So many pieces before it deny it: `never had botulism from it`. */
const CLOSE = 3;

class Teller {
  private readonly pieces: readonly Piece[];
  private readonly clauses: readonly Clause[];
  /** What the table says, by the item at which it begins. */
  private readonly told: ReadonlyMap<number, Told>;
  private readonly voices: readonly Voice[];

  constructor(pieces: readonly Piece[], clauses: readonly Clause[], phrases: readonly Phrase<Told>[]) {
    this.pieces = pieces;
    this.clauses = clauses;
    this.told = new Map(phrases.map(({ is, from }) => [from, is]));
    this.voices = voicesIn(pieces, {
      at: (piece) => this.told.get(piece.from),
      has: (piece, told) => this.says(piece, told),
    });
  }

  settle(): void {
    this.denyAsOthers();
    this.giveUp();
    this.warn();
    for (const telling of this.tellings()) {
      // `We had it on the lawn every summer`
      if (telling.isPast)
        for (const event of this.eventsIn(telling))
          if (event.said === 'yes' && event.verb === undefined && event.times.length === 0) event.said = 'advice';
      const said = this.saidOf(telling);
      if (said === undefined) continue;
      for (const event of this.eventsIn(telling))
        if (
          said === 'advice' ? event.said === 'yes' || event.said === 'if' : event.said === 'yes' && event.act !== 'heat'
        )
          event.said = said;
    }
  }

  /** Somebody else, or another time, with what happened to things then. */
  private tellings(): readonly Telling[] {
    const tellings: Telling[] = [];
    let open: Telling | undefined;
    for (const { from, to, who, isPast } of this.voices) {
      const goesOn = (who === 'thing' && isPast) || (who === 'other' && open?.who === 'other');
      if (open !== undefined && goesOn) open = { ...open, to, isPast: open.isPast || isPast };
      else {
        if (open !== undefined) tellings.push(open);
        open = who === 'other' || (isPast && who !== 'order') ? { from, to, who, isPast } : undefined;
      }
    }
    return open === undefined ? tellings : [...tellings, open];
  }

  /** How what is told is said; undefined where it stays as it is. */
  private saidOf(telling: Telling): 'advice' | 'if' | undefined {
    const { from, to, who, isPast } = telling;
    // What is said of it stands beside it, or in the next sentence.
    const end = this.endOf(this.endOf(to));
    if (this.isAdopted(from, end)) return undefined;
    const isHarm = this.anyIn(from, end, 'harms') || this.anyIn(from, end, 'germs');
    const isGone = this.eventsIn(telling).some(({ act, said }) => act === 'discard' && said === 'yes');
    if (isPast && (isHarm || isGone)) return 'advice';
    const isAgainst = this.isAgainst(telling, end);
    if (isPast && this.anyIn(from, to, 'no more') && (isAgainst || this.hasOwnWay(telling) || who === 'other'))
      return 'advice';
    if (who !== 'other') return undefined;
    if (isHarm || isAgainst || this.isTheirs(from, to)) return 'advice';
    if (!isPast) return undefined;
    return this.hasOwnWay(telling) ? 'advice' : 'if';
  }

  /** `and so do we`; nobody was ever ill for it. */
  private isAdopted(from: number, to: number): boolean {
    for (let at = from; at < to; at++) {
      const isDenied = (): boolean => this.isDenied(this.startOf(at), at);
      if (this.has(at, 'adopts') && !isDenied()) return true;
      if ((this.has(at, 'harms') || this.has(at, 'germs')) && isDenied()) return true;
    }
    return false;
  }

  /** The writer or the reader does not, or has a way of his own. */
  private isAgainst({ from, to }: Telling, end: number): boolean {
    if (this.anyIn(to, end, 'own')) return true;
    const start = this.startOf(from);
    return this.voices.some((voice) => {
      if (voice.to <= start || voice.from >= end || (voice.from >= from && voice.from < to)) return false;
      if (voice.who === 'self') return this.isDenied(voice.from, voice.to);
      return voice.who === 'order' && this.isBareDenial(voice);
    });
  }

  /** `Don't.`, `Do not copy her`: and nothing that could be done to food. */
  private isBareDenial({ from, to }: Voice): boolean {
    return (
      this.isDenied(from, to) &&
      !this.clauses.some(
        ({ event, from: at }) => at >= from && at < to && event?.verb !== undefined && event.act !== 'unknown',
      )
    );
  }

  /** The text orders what becomes of the food in the cold. */
  private hasOwnWay({ from, to }: Telling): boolean {
    return this.voices.some(
      (voice) =>
        (voice.to <= from || voice.from >= to) &&
        !(voice.from >= to && voice.isThen) &&
        this.eventsIn(voice).some(
          ({ said, act, where }) =>
            said === 'yes' &&
            (act === 'cool' ||
              act === 'freeze' ||
              where.some(({ is, not }) => !not && (is === 'cold' || is === 'frozen'))),
        ),
    );
  }

  /** `left hers`, `boiled his three hours`: another than this. */
  private isTheirs(from: number, to: number): boolean {
    for (let at = from; at < to; at++) {
      // `Gran's stood there`
      const piece = this.pieces[at] as Piece;
      if (this.has(at, 'theirs') || (isPossessive(piece) && !isNoun(this.pieces[at + 1]))) return true;
      if (this.has(at, 'his') && !isNoun(this.pieces[at + 1])) return true;
    }
    return false;
  }

  private eventsIn({ from, to }: { readonly from: number; readonly to: number }): readonly EventDraft[] {
    return this.clauses.flatMap(({ event, verb, from: first }) => {
      const at = verb < 0 ? first : verb;
      return event !== undefined && at >= from && at < to ? [event] : [];
    });
  }

  /** `Garlic in oil at room temperature is what botulism waits for`: told of what would come of it, and no order. */
  private warn(): void {
    for (const { event, from, to, verb } of this.clauses) {
      if (event === undefined || event.said !== 'yes' || event.times.length > 0) continue;
      // `what botulism is waiting for`: no order begins with its verb behind.
      const isOrder = event.verb !== undefined && (verb <= from || !this.anyIn(from, to, 'germs'));
      if (isOrder) continue;
      const [start, end] = [this.startOf(from), this.endOf(from)];
      for (let at = start; at < end; at++)
        if (
          this.has(at, 'germs') &&
          !this.isDenied(Math.max(start, at - CLOSE), at) &&
          !this.anyIn(start, end, 'nobody')
        )
          event.said = 'advice';
    }
  }

  /** `The shelf on the porch was abolished.` */
  private giveUp(): void {
    for (const { event, from, to } of this.clauses)
      if (event !== undefined && event.verb === undefined && this.anyIn(from, to, 'gone')) event.said = 'advice';
  }

  /** `Don't shut it and push it to the back as my friend did`: neither. */
  private denyAsOthers(): void {
    for (let at = 0; at < this.pieces.length; at++) {
      if (!this.has(at, 'as') || !this.isAsOthers(at + 1)) continue;
      const [from, to] = [this.startOf(at), this.endOf(at)];
      let before: EventDraft | undefined;
      for (const { event, from: first } of this.clauses) {
        if (first < from || first >= to) continue;
        const is = jointOf(this.pieces[first]?.sense ?? UNKNOWN)?.is;
        const isOn = first > from && (is === 'conjunction' || is === 'or') && this.pieces[first - 1]?.sort !== 'mark';
        if (event !== undefined && isOn && before?.said === 'not' && event.said === 'yes') event.said = 'not';
        before = event ?? before;
      }
    }
  }

  /** `my friend did`, `the neighbour used to` */
  private isAsOthers(from: number): boolean {
    let isOther = false;
    for (let at = from; at < Math.min(this.pieces.length, from + MOST_NAMED); at++) {
      const { sort, sense } = this.pieces[at] as Piece;
      if (sort === 'mark') return false;
      if (this.has(at, 'self')) return false;
      const is = jointOf(sense)?.is;
      if (isOther && (is === 'modal' || this.has(at, 'past') || this.has(at, 'no more'))) return true;
      isOther ||= is === 'person' || this.has(at, 'other') || is === undefined;
    }
    return false;
  }

  private has(at: number, told: Told): boolean {
    const piece = this.pieces[at];
    return piece !== undefined && this.says(piece, told);
  }

  private says({ from, to }: Piece, told: Told): boolean {
    for (let item = from; item < to; item++) if (this.told.get(item) === told) return true;
    return false;
  }

  private anyIn(from: number, to: number, told: Told): boolean {
    for (let at = from; at < to; at++) if (this.has(at, told)) return true;
    return false;
  }

  private isDenied(from: number, to: number): boolean {
    for (let at = from; at < to; at++) {
      const joint = jointOf((this.pieces[at] as Piece).sense);
      if (joint?.is === 'not' || joint?.is === 'aux not' || joint?.way === 'without' || this.has(at, 'nobody'))
        return true;
    }
    return false;
  }

  /** The first piece of its sentence, and the piece after its last. */
  private startOf(at: number): number {
    let start = at;
    while (start > 0 && !ENDS.has(this.pieces[start - 1]?.word ?? '')) start--;
    return start;
  }

  private endOf(at: number): number {
    let end = at;
    while (end < this.pieces.length && !ENDS.has(this.pieces[end]?.word ?? '')) end++;
    return Math.min(end + 1, this.pieces.length);
  }
}

/** Words of who does it: `my old friend from the yard did` (judgement). */
const MOST_NAMED = 6;

/** Something that `his` is said of. */
const isNoun = (next: Piece | undefined): boolean =>
  next !== undefined &&
  next.sort !== 'mark' &&
  next.sort !== 'time' &&
  next.part !== 'joint' &&
  next.part !== 'describes';
