/**
 * Knows of what a temperature is: points for each word that tells, the highest by two; and what no thing of the kind can be.
 * Refuses to know what the body it is said of may be: those points are added where bodies are known (`judged`), and every word: the points
 * stand in the rows of verbs, things, joints and evidence.
 */
import type { Range } from '../measure/quantity.ts';
import { celsiusOf } from '../notation/celsius.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { isBeforeThing, MOST_APART } from './beside-figure.ts';
import type { Clause } from './clauses.ts';
import type { Event, Points, TemperatureSaid } from './event.ts';
import { againFrom, changeOf, isLog, writtenFrom } from './figures.ts';
import { jointOf, senseOf, UNKNOWN } from './lexicon.ts';
import type { Piece } from './pieces.ts';
import { judged, KINDS, type Kind, kindOf, most, NO_POINTS, zero } from './points.ts';
import { isIn, NO_SLIP, possibleOf, slipIn, TELLING_C, usualOf } from './possible.ts';
import type { ThingRow } from './rows.ts';
import { FigureTold } from './told-of-figure.ts';

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

/** No food is warmer in the middle. */
const BOILS = 100;

/** Behind `to` and `until` stands what the food is brought to, wherever it lies. */
const BROUGHT_LESS = 5;

class Weigher extends FigureTold {
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

  /** The kind of the thing that a clause with `that` tells of, where nothing else stands between. */
  private toldOf(): Kind | undefined {
    for (let at = this.at - 1; at >= Math.max(1, this.clause.from); at--) {
      const { sort, sense, part } = this.pieces[at] as Piece;
      if (sort !== 'word' || part === 'thing') return undefined;
      if (jointOf(sense)?.is !== 'which') continue;
      const row = this.thingAt(this.pieces[at - 1] as Piece);
      const kind = row && kindOf(row.figure);
      return kind === 'food' || row?.sort !== 'place' ? undefined : kind;
    }
    return undefined;
  }

  /** Of a figure without a scale: what is possible for what it is of. */
  private likely(all: Range): Range {
    const c = celsiusOf({ ...this.node, unit: 'C' });
    const f = celsiusOf({ ...this.node, unit: 'F' });
    const fits = (range: Range): boolean => {
      const of = judged(this.points(range));
      return of !== 'nothing' && isIn(range, this.possible(of)) && isIn(range, this.usual(of));
    };
    // `Set at 80 C; the trays to stay at 70 or over`
    if (this.node.highDegrees <= BOILS && this.hasCelsiusAlone()) {
      const of = judged(this.points(c));
      if (of !== 'nothing' && isIn(c, this.possible(of))) return c;
    }
    const [asC, asF] = [fits(c), fits(f)];
    return asC === asF ? all : asC ? c : f;
  }

  /** The sentence has figures of the one scale, and none of the other. */
  private hasCelsiusAlone(): boolean {
    const units = this.items.flatMap((item) => (item.kind === 'temperature' ? [item.unit] : []));
    return units.includes('C') && !units.includes('F');
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
    // `Raw: keep at 4 C`: nothing is done so cold, that its look tells of it.
    const seen = celsius !== undefined && celsius.high <= TELLING_C.chilled && placed.around > 0 ? 0 : sign;
    const points = {
      food: Math.max(read, own) + inside + Math.max(joint.food, seen, awaited),
      oven: Math.max(placed.oven, thing.oven) + joint.oven,
      around: Math.max(placed.around, thing.around) + joint.around,
      medium: Math.max(placed.medium, thing.medium) + joint.medium,
    };
    const described = kindOf(this.thingBehind()?.figure ?? []);
    if (described !== undefined) points[described] += DESCRIBED;
    if (this.isPressed()) points.medium += DESCRIBED;
    const told = this.toldOf();
    // `An oven that will go down to 50 C` is so warm itself.
    if (told !== undefined) return { ...NO_POINTS, [told]: TOLD };
    if (isTo && object !== undefined && object !== 'food') {
      points[object] += joint.food + verb.food;
      points.food -= joint.food + verb.food;
    }
    if (celsius === undefined) return points;
    const { low, high } = celsius;
    // `Lidded pan, 180 C 15 min, core 75 C`: what is inside reads the other.
    if (low > TELLING_C.hottestFood && inside > 0 && named === 0 && this.hasCooler()) {
      points.food = -6;
      points.oven += 2;
      return points;
    }
    if (isTo && object === undefined && high <= TELLING_C.hottestFood)
      for (const kind of KINDS) if (kind !== 'food' && points[kind] > 0) points[kind] -= BROUGHT_LESS;
    // A smoker is an oven from where its smoke is hot.
    if (this.place?.is === 'smoker' && low >= TELLING_C.coolestHotSmoke) points.oven += SMOKED;
    if (low > TELLING_C.chilled && points.around > 6) points.around -= 2;
    if (high < TELLING_C.coldestMedium) points.medium -= 3;
    // A shelf of the fridge is no oven's.
    if (high < TELLING_C.coldestOven && this.place !== undefined && this.place.is !== 'oven') points.oven -= 6;
    // `baked buns freeze at -18 C`
    if (high < 0 && points.oven > 0 && this.node.unit !== 'unsaid') {
      points.around += points.oven;
      points.oven = -6;
    }
    // An oven so cool is one where it is said at what: `in the oven at 60 C`, `a 60 C oven`, `lower the oven to 60 C`.
    if (
      high < TELLING_C.coolestOven &&
      (this.verbRow?.act !== 'adjust' || object !== 'oven') &&
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
    // `Put the pan in the oven and heat to 425 F.` Nobody waits for an oven in a syrup: `boil until it reaches 250 C`.
    const isPot = this.cooksFreely && this.isAwaited && named === 0;
    if (low > TELLING_C.hottestSyrup && points.food > 0 && inside === 0 && this.node.unit !== 'unsaid' && !isPot) {
      if (points.medium <= 0) points.oven += points.food;
      points.food = -6;
    }
    return points;
  }

  /** Another figure of its clause is one that food has. */
  private hasCooler(): boolean {
    return this.pieces.slice(this.clause.from, this.clause.to).some(({ sort, from }) => {
      const item = sort === 'temperature' ? this.items[from] : undefined;
      return item?.kind === 'temperature' && item.unit !== 'unsaid' && celsiusOf(item).high <= TELLING_C.hottestFood;
    });
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

/** What is waited for, of the food. */
const AWAITED = 3;
/** The thing that it stands before. */
const DESCRIBED = 3;
const TOLD = 8;
/** From so much on something is read in the food. */
const READ = 4;
