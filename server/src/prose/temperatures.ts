/**
 * Knows of what a temperature is: points for each word that tells, the highest by two; and what no thing of the kind can be.
 * Refuses to know what the body it is said of may be: those points are added where bodies are known (`judged`), and every word: the points
 * stand in the rows of verbs, things, joints and evidence.
 */
import type { Range } from '../measure/quantity.ts';
import { celsiusOf } from '../notation/celsius.ts';
import type { SentenceItem, TemperatureNode } from '../notation/tree.ts';
import { besideFigure, isBeforeThing, MOST_APART } from './beside-figure.ts';
import type { Clause } from './clauses.ts';
import type { Event, Points, TemperatureSaid } from './event.ts';
import { againFrom, changeOf, isLog, nodeWithEnds, writtenFrom } from './figures.ts';
import { evidenceOf, jointOf, senseOf, signOf, thingOf, UNKNOWN, verbOf } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { adds, judged, KINDS, type Kind, kindOf, most, NO_POINTS, zero } from './points.ts';
import { isIn, NO_SLIP, possibleOf, slipIn, TELLING_C, usualOf } from './possible.ts';
import type { JointRow, PlaceRow, ThingRow, VerbRow, Weights } from './rows.ts';

/** The temperatures that the clause says, of the event that is its own or that it is a sign of; one for figures that say it again. */
export function temperaturesIn(
  pieces: readonly Piece[],
  items: readonly SentenceItem[],
  clause: Clause,
  event: Event,
): readonly TemperatureSaid[] {
  let said: TemperatureSaid[] | undefined;
  for (let at = clause.from; at < clause.to; at++) {
    if ((pieces[at] as Piece).sort !== 'temperature' || againFrom(pieces, items, at) !== undefined) continue;
    const weigher = new Weigher(pieces, items, clause, event, at);
    said ??= [];
    said.push(weigher.said());
    at = weigher.to - 1;
  }
  if (said !== undefined && said.length > 1 && event.act !== 'heat' && isLog(pieces, said))
    return said.map((each) => ({ ...each, of: 'food', sure: 'said' }));
  return said ?? NONE;
}

const NONE: readonly TemperatureSaid[] = [];

/** A thing beyond so many words away tells less. */
const NEAR = 5;
const FAR_LESS = 2;
/** Behind `to` and `until` stands what the food is brought to, wherever it lies. */
const BROUGHT_LESS = 5;
/** A sentence is looked through so far on either side of a bracket. */
const BEYOND = 6;

class Weigher {
  private readonly pieces: readonly Piece[];
  private readonly items: readonly SentenceItem[];
  private readonly clause: Clause;
  /** The piece of the figure, and of its other end: `between 78 F and 82 F`. */
  private readonly at: number;
  private readonly last: number;
  private readonly node: TemperatureNode;
  /** Of verbs, things and other words: the most of each. */
  private readonly verb = zero();
  private readonly thing = zero();
  private inside = 0;
  private sign = 0;
  private place: PlaceRow | undefined;
  private object: Kind | undefined;
  private verbRow: VerbRow | undefined;
  /** What is made ready or set by its verb. */
  private readies: Weights = [];
  private joint: JointRow | undefined;
  private bound: TemperatureSaid['bound'] = 'is';
  /** It comes to so much by itself; what is named right before is so warm. */
  private moves = false;
  private isOfName = false;
  private isStage = false;
  private isWater = false;
  /** Of what the event does; of a clause that says until when. */
  private readonly isHeated: boolean;
  private readonly isAwaited: boolean;
  /** In a liquid, which may be a syrup. */
  private readonly boils: boolean;

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

  /** The piece after the figure and all that says it again. */
  get to(): number {
    return this.last + 1;
  }

  said(): TemperatureSaid {
    const { pieces, node, bound } = this;
    const { start } = pieces[this.at] as Piece;
    const { written, end } = writtenFrom(pieces, this.items, this.last, node);
    const isChange = bound === 'change' || (bound === 'is' && this.isChange());
    const all = celsiusOf(node);
    const celsius = isChange ? changeOf(node) : node.unit === 'unsaid' ? this.likely(all) : all;
    const points = this.points(isChange ? undefined : celsius);
    // Nothing but an oven has a fan, or gas marks.
    const of = node.fan || node.unit === 'gas' ? 'oven' : judged(points);
    const slip = isChange || of === 'nothing' ? NO_SLIP : slipIn(node, of, celsius, this.possible(of));
    return {
      start,
      end: (pieces[end] as Piece).end,
      celsius,
      of,
      sure: of === 'nothing' ? 'unread' : 'said',
      bound: isChange ? 'change' : bound,
      inside: of === 'food' && this.inside > 0,
      points,
      written,
      ...slip,
    };
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
    // What stands before a bracket is what the bracket is about.
    if (pieces[from - 1]?.word === '(')
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
  private thingAt({ sense, sort, to }: Piece): ThingRow | undefined {
    const thing = thingOf(sense);
    if (thing !== undefined || sort !== 'name') return thing;
    const last = this.items[to - 1];
    const head = last?.kind === 'word' ? thingOf(senseOf(last.word)) : undefined;
    return head?.sort === 'medium' ? head : undefined;
  }

  private takeThing(row: ThingRow, at: number, away: number): void {
    // Water that is far away is another's.
    if (row.sort === 'medium') {
      if (away > NEAR) return;
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

  /** `increase by 25 F`, `25 F higher`: no setting. */
  private isChange(): boolean {
    const act = this.verbRow?.act;
    const before = this.pieces[this.at - 1];
    // `add 20 C for a conventional oven`
    if (act === 'combine') return before?.part === 'verb';
    // `Drop to 160 C`
    const last = before?.part === 'verb' ? this.items[before.to - 1] : undefined;
    if (last?.kind === 'word' && jointOf(senseOf(last.word))?.is === 'to') return false;
    // `the temperature will rise 10 degrees`
    if (act === 'rise') return before?.part === 'verb' && this.node.highDegrees <= MOST_APART;
    const way = this.joint?.way;
    return act === 'adjust' && way !== 'to' && way !== 'at' && this.node.highDegrees <= MOST_CHANGED;
  }

  /** Of a figure without a scale: what is possible for what it is of. */
  private likely(all: Range): Range {
    const c = celsiusOf({ ...this.node, unit: 'C' });
    const f = celsiusOf({ ...this.node, unit: 'F' });
    const fits = (range: Range): boolean => {
      const of = judged(this.points(range));
      return of !== 'nothing' && isIn(range, this.possible(of)) && isIn(range, this.usual(of));
    };
    const [asC, asF] = [fits(c), fits(f)];
    return asC === asF ? all : asC ? c : f;
  }

  private points(celsius: Range | undefined): Points {
    const { verb, thing, inside, sign, object } = this;
    const joint = zero();
    most(joint, this.joint?.adds ?? []);
    // `180 C fan`
    if (this.node.fan || this.node.unit === 'gas') thing.oven = Math.max(thing.oven, FAN);
    const isTo = joint.food > 1;
    // What is brought to so much, or waited for until it reads so, tells by its verb nothing of where it lies.
    const isRead = inside > 0 || Math.max(verb.food, thing.food) >= READ;
    // `the thermometer must stand above 63 C`
    const isShown = thing.food >= READ && thing.oven + thing.around + thing.medium === 0;
    const placed = isTo || isShown || this.moves || (this.isAwaited && isRead) ? NO_POINTS : verb;
    const named = Math.max(thing.oven, thing.around, thing.medium, placed.oven, placed.around, placed.medium);
    // `the temperature` is the food's only where nothing else is named; `the oven should read 180 C`.
    const own = thing.food < READ && named > 0 ? 0 : thing.food;
    const read = this.verbRow?.act === 'read' && named >= READ && inside === 0 ? 0 : verb.food;
    // `until tender and 90 C`, `let it rise above 21 C`
    const awaited = (this.isAwaited || this.moves || this.isNamed()) && named === 0 ? AWAITED : 0;
    const points = {
      food: Math.max(read, own) + inside + Math.max(joint.food, sign, awaited),
      oven: Math.max(placed.oven, thing.oven) + joint.oven,
      around: Math.max(placed.around, thing.around) + joint.around,
      medium: Math.max(placed.medium, thing.medium) + joint.medium,
    };
    const described = kindOf(this.thingBehind()?.figure ?? []);
    if (described !== undefined) points[described] += DESCRIBED;
    if (this.isPressed()) points.medium += DESCRIBED;
    if (isTo && object !== undefined && object !== 'food') {
      points[object] += joint.food + verb.food;
      points.food -= joint.food + verb.food;
    }
    if (celsius === undefined) return points;
    const { low, high } = celsius;
    if (isTo && object === undefined && high <= TELLING_C.hottestFood)
      for (const kind of KINDS) if (kind !== 'food' && points[kind] > 0) points[kind] -= BROUGHT_LESS;
    // A smoker is an oven from where its smoke is hot.
    if (this.place?.is === 'smoker' && low >= TELLING_C.coolestHotSmoke) points.oven += SMOKED;
    if (low > TELLING_C.chilled && points.around > 6) points.around -= 2;
    if (high < TELLING_C.coldestMedium) points.medium -= 3;
    // A shelf of the fridge is no oven's.
    if (high < TELLING_C.coldestOven && this.place !== undefined && this.place.is !== 'oven') points.oven -= 6;
    // An oven so cool is one where it is said at what: `in the oven at 60 C`, `a 60 C oven`.
    if (
      high < TELLING_C.coolestOven &&
      this.thingBehind()?.is !== 'oven' &&
      (joint.oven === 0 || verb.around > 0 || this.place?.is === 'smoker')
    )
      points.oven -= 6;
    if (low > TELLING_C.hottestWater && this.isWater) points.medium = 0;
    // Nothing but a place is set so cold.
    if (high <= TELLING_C.chilled && joint.oven > 0 && named === 0 && this.verbRow?.act !== 'eat') points.around += 2;
    // `cook at 165 C`: in nothing but an oven, where no fat is named.
    if (
      low > TELLING_C.hottestFood &&
      named === 0 &&
      joint.oven > 0 &&
      this.isHeated &&
      this.verbRow?.where === undefined
    )
      points.oven += 2;
    const isKept = this.verbRow?.act === 'stay' || this.verbRow?.act === 'rise' || this.place?.is === 'hot';
    if (low > (isKept ? TELLING_C.hottestHeld : TELLING_C.hottestPlace)) points.around -= 6;
    if (low > TELLING_C.hottestFood && !this.mayBeSyrup(isTo) && inside === 0 && Math.max(verb.food, thing.food) < READ)
      points.food -= 6;
    // `Put the pan in the oven and heat to 425 F.`
    if (low > TELLING_C.hottestSyrup && points.food > 0 && inside === 0 && this.node.unit !== 'unsaid') {
      if (points.medium <= 0) points.oven += points.food;
      points.food = -6;
    }
    return points;
  }

  /** `at 10 pounds (240 F)`: the bracket says how hot so much pressure is. */
  private isPressed(): boolean {
    const [pounds, mark] = [this.pieces[this.at - 2], this.pieces[this.at - 1]];
    const item = mark?.word === '(' && pounds?.sort === 'amount' ? this.items[pounds.from] : undefined;
    const isAt = jointOf(this.pieces[this.at - 3]?.sense ?? UNKNOWN)?.way === 'at';
    return isAt && item?.kind === 'measured' && item.unit?.symbol === 'lb';
  }

  /** `a 60 C oven`, `in 180 C oil`: the thing that it stands before. */
  private thingBehind(): ThingRow | undefined {
    let next = this.last + 1;
    while (jointOf(this.pieces[next]?.sense ?? UNKNOWN)?.is === 'adjective') next++;
    const thing = this.pieces[next];
    const row = thing && this.thingAt(thing);
    return row !== undefined && isBeforeThing(this.pieces, this.at) ? row : undefined;
  }

  /** `whip the cream at 14 C`: nothing that goes on at so much is done to what is named. */
  private isNamed(): boolean {
    const { isOfName, verbRow } = this;
    return isOfName && (verbRow === undefined || (verbRow.lasts !== 'waits' && verbRow.act !== 'heat'));
  }

  /** Sugar boils to so much, and nothing else does. */
  private mayBeSyrup(isTo: boolean): boolean {
    return (
      this.isStage ||
      (isTo &&
        this.thing.oven === 0 &&
        this.verbRow?.act === 'heat' &&
        this.verbRow.figure.some(({ of }) => of === 'food'))
    );
  }

  private possible(of: Kind): Range {
    const { place, verbRow, inside, isHeated, isStage } = this;
    return possibleOf(of, { place, verb: verbRow, isRead: inside > 0 && isHeated && !isStage });
  }

  /** What it is as a rule, where no scale is said. */
  private usual(of: Kind): Range {
    return usualOf(of, { place: this.place, verb: this.verbRow, isRead: !this.isStage && !this.boils });
  }
}

/** No heat is turned up or down by more, on either scale (judgement). */
const MOST_CHANGED = 100;
/** A smoker that cooks. */
const SMOKED = 4;
/** Nothing but an oven has one. */
const FAN = 5;
/** A stage of sugar beside it. */
const STAGE = 3;
/** What is waited for, of the food. */
const AWAITED = 3;
/** The thing that it stands before. */
const DESCRIBED = 3;
/** From so much on something is read in the food. */
const READ = 4;
