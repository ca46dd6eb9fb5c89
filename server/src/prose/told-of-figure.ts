/**
 * Knows which words around a temperature tell of what it is: verbs, things and evidence before and after it, what stands right before it.
 * Refuses to weigh them against each other (`temperatures.ts`).
 */
import type { SentenceItem, TemperatureNode } from '../notation/tree.ts';
import { besideFigure } from './beside-figure.ts';
import type { Clause } from './clauses.ts';
import type { Event, TemperatureSaid } from './event.ts';
import { againFrom, nodeWithEnds } from './figures.ts';
import { evidenceOf, jointOf, senseOf, signOf, thingOf, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { adds, type Kind, kindOf, most, zero } from './points.ts';
import type { JointRow, PlaceRow, ThingRow, VerbRow, Weights } from './rows.ts';

/** A thing beyond so many words away tells less. */
const NEAR = 5;
const FAR_LESS = 2;

/** A sentence is looked through so far on either side of a bracket. */
const BEYOND = 6;

/** What is told around a figure, as points and as rows. */
export class FigureTold {
  protected readonly pieces: readonly Piece[];
  protected readonly items: readonly SentenceItem[];
  protected readonly clause: Clause;
  /** The piece of the figure, and of its other end: `between 78 F and 82 F`. */
  protected readonly at: number;
  protected readonly last: number;
  protected readonly node: TemperatureNode;
  /** Of verbs, things and other words: the most of each. */
  protected readonly verb = zero();
  protected readonly thing = zero();
  protected inside = 0;
  protected sign = 0;
  protected place: PlaceRow | undefined;
  protected object: Kind | undefined;
  protected verbRow: VerbRow | undefined;
  /** What is made ready or set by its verb. */
  private readies: Weights = [];
  protected joint: JointRow | undefined;
  protected bound: TemperatureSaid['bound'] = 'is';
  /** It comes to so much by itself; what is named right before is so warm. */
  protected moves = false;
  protected isOfName = false;
  protected isStage = false;
  protected isWater = false;
  /** Of what the event does; of a clause that says until when. */
  protected readonly isHeated: boolean;
  protected readonly isAwaited: boolean;
  /** In a liquid, which may be a syrup. */
  protected readonly boils: boolean;
  /** Or in nothing that is named, and in no oven. */
  protected readonly cooksFreely: boolean;

  constructor(pieces: readonly Piece[], items: readonly SentenceItem[], clause: Clause, event: Event, at: number) {
    this.pieces = pieces;
    this.items = items;
    this.clause = clause;
    this.at = at;
    const { node, last } = nodeWithEnds(pieces, items, at);
    this.node = node;
    this.last = last;
    this.isHeated = event.act === 'heat' || event.act === 'unknown';
    this.boils = event.act === 'heat' && event.medium?.is === 'water';
    this.cooksFreely =
      this.boils ||
      (event.act === 'heat' &&
        event.cooks === 'as read' &&
        event.medium === undefined &&
        !event.where.some(({ is }) => is === 'oven'));
    this.isAwaited = clause.opener === 'until' || clause.opener === 'while';
    this.verbOfEvent(event);
    this.wordsBefore();
    this.wordsAfter();
    this.rightBefore();
    // An oven made ready is what the figure is of, and a griddle where one is named.
    if (this.object === undefined || this.object === 'food' || this.object === kindOf(this.readies)) {
      most(this.thing, this.readies);
      this.object = kindOf(this.readies) ?? this.object;
    }
  }

  /** A clause without a verb goes on from the one before. */
  private verbOfEvent({ verb }: Event): void {
    if (this.clause.verb >= 0 || this.clause.frame === 'sign' || verb === undefined) return;
    const piece = this.pieces.find(({ start }) => start === verb.start);
    const row = piece && verbOf(piece.sense);
    if (row !== undefined) this.takeVerb(row);
  }

  private takeVerb(row: VerbRow): void {
    // `until it has dropped to 60 C`: it is waited for, and nobody sets it.
    if (row.act === 'adjust' && this.clause.frame === 'sign') return;
    this.verbRow = row;
    if (row.act === 'ready' || row.act === 'adjust') this.readies = row.figure;
    else most(this.verb, row.figure);
  }

  private wordsBefore(): void {
    const { pieces, clause, at } = this;
    let from = clause.from;
    // What stands before a bracket or a colon is what is told there.
    if (pieces[from - 1]?.word === '(' || pieces[from - 1]?.word === ':')
      for (let i = from - 2; i >= 0 && i > from - BEYOND; i--) {
        const { word } = pieces[i] as Piece;
        if (word === '.' || word === ';') break;
        from = i;
      }
    for (let i = at - 1; i >= clause.from; i--)
      if ((pieces[i] as Piece).sort === 'temperature' && againFrom(pieces, this.items, i) === undefined) {
        // Of a figure before it is what stands there; the verb is of both.
        for (let j = i - 1; j >= clause.from; j--) this.verbAt(j);
        from = i + 1;
        break;
      }
    for (let i = from; i < at; i++) this.take(i, at - i, 'before');
  }

  private wordsAfter(): void {
    const { pieces, clause, last: at } = this;
    let { to } = clause;
    // What a bracket says of it, and what goes on behind one: `350 F (moderate oven)`, `a 350 F (moderate) oven`.
    if (pieces[to]?.word === '(' || pieces[to]?.word === ')')
      for (let i = to + 1; i < pieces.length && i < clause.to + BEYOND; i++) {
        const { word } = pieces[i] as Piece;
        if (word === '.' || word === ';') break;
        to = i + 1;
      }
    for (let i = at + 1; i < to; i++) {
      // `to the desired internal temperature`: behind `to` stands something else.
      if (jointOf((pieces[i] as Piece).sense)?.is === 'to') {
        to = i;
        break;
      }
      if ((pieces[i] as Piece).sort !== 'temperature' || againFrom(pieces, this.items, i) !== undefined) continue;
      // What leads to the next figure is said of that one.
      to = i;
      for (let j = i - 1; j > at; j--) if (jointOf((pieces[j] as Piece).sense) !== undefined) to = j;
      break;
    }
    // What a sentence orders behind a bracket is not done at its figure.
    for (let i = at + 1; i < to; i++) this.take(i, i - at, 'after', i < clause.to);
  }

  private verbAt(at: number): void {
    const { part, sense } = this.pieces[at] as Piece;
    if (part === 'joint') return;
    const row = verbOf(sense);
    if (row === undefined) return;
    if (part !== 'thing') this.takeVerb(row);
    // `when they clock 79 C`: it tells so much whether it is a verb or not.
    else if (row.act === 'read') most(this.verb, row.figure);
  }

  private take(at: number, away: number, side: 'before' | 'after', isOwn = true): void {
    const piece = this.pieces[at] as Piece;
    if (piece.sort !== 'word' && piece.sort !== 'name') return;
    if (isOwn) this.verbAt(at);
    const { sense } = piece;
    const evidence = evidenceOf(sense);
    if (evidence !== undefined && (side === 'before' || evidence.side === 'either')) {
      // `roast the thighs at 200 C`: they are what is roasted.
      if (evidence.inside)
        this.inside = this.isObject(at) ? this.inside : Math.max(this.inside, adds(evidence.adds, 'food'));
      else {
        most(this.thing, evidence.adds);
        if (this.isObject(at)) this.object ??= kindOf(evidence.adds);
      }
    }
    const sign = signOf(sense);
    // `blood heat, 37 C`, `the soft ball, 115 C`, `medium-rare, 54 C`
    if (sign?.celsius !== undefined || sign?.tells === 'rare') this.sign = STAGE;
    this.isStage ||= sign?.tells === 'stage';
    const thing = this.thingAt(piece);
    if (thing?.sort === 'place') this.place ??= thing;
    if (thing !== undefined && thing.figure.length > 0) this.takeThing(thing, at, away);
  }

  /** A name is of its last word's kind: `sunflower oil`. */
  protected thingAt({ sense, sort, to }: Piece): ThingRow | undefined {
    const thing = thingOf(sense);
    if (thing !== undefined || sort !== 'name') return thing;
    const last = this.items[to - 1];
    const head = last?.kind === 'word' ? thingOf(senseOf(last.word)) : undefined;
    return head?.sort === 'medium' ? head : undefined;
  }

  private takeThing(row: ThingRow, at: number, away: number): void {
    // Water that is far away is another's.
    if (row.sort === 'medium') {
      if (away > NEAR && !this.isObject(at)) return;
      this.isWater ||= row.is === 'water';
      this.isStage ||= row.is === 'syrup';
    }
    const less = away > NEAR ? FAR_LESS : 0;
    for (const { of, adds } of row.figure) if (of !== 'nothing') this.thing[of] = Math.max(this.thing[of], adds - less);
    if (this.isObject(at)) this.object ??= kindOf(row.figure);
  }

  /** Whether nothing but what belongs to its name stands between a verb and a thing: `heat the oil`. */
  private isObject(at: number): boolean {
    for (let i = at - 1; i >= this.clause.from; i--) {
      const { part, sense, sort } = this.pieces[i] as Piece;
      if (sort === 'temperature') return false;
      if (part !== 'thing' && part !== 'joint' && part !== 'describes') return true;
      const is = jointOf(sense)?.is;
      if (is !== undefined && is !== 'article' && is !== 'adjective' && is !== 'quantity' && is !== 'number')
        return false;
    }
    return false;
  }

  /** What stands right before it tells. */
  private rightBefore(): void {
    const beside = besideFigure(this.pieces, this.clause, this.at, this.last, this.node);
    this.joint = beside.joint;
    this.bound = beside.bound;
    this.moves = beside.moves;
    this.isOfName = beside.isOfName;
    const brought = this.pieces[beside.brought];
    const row = brought && this.thingAt(brought);
    const kind = row && kindOf(row.figure);
    if (kind !== undefined && kind !== 'food') this.object = kind;
  }
}

/** A stage of sugar beside it. */
const STAGE = 3;
