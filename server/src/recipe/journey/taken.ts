/**
 * Knows what an event takes: bodies that are there, and of the lists what is left, by what it names and by what it leaves unsaid.
 * Refuses to know what it does with them.
 */
import type { Act } from '../../prose/event.ts';
import type { IngredientRef, Mention } from '../model.ts';
import type { BoundEvent, BoundName } from './bind.ts';
import {
  type Body,
  hasFlesh,
  holdsRef,
  isAnimal,
  isFlesh,
  isSameRef,
  type Member,
  RAW,
  WAS,
  withStates,
} from './bodies.ts';
import { fleshApart, hotBefore, rawBefore, rawHere, readOf, seenIn } from './meant.ts';
import { isReadInside } from './readings.ts';
import { leftOf, madeBy, withLeft } from './state.ts';
import { TRANSITIONS } from './transitions.ts';
import type { Worktop } from './worktop.ts';

/** Less than this of an ingredient is nothing. */
const NOTHING_LEFT = 0.02;

/** What events take by themselves. */
export interface Taken {
  readonly bodies: readonly Body[];
  /** Of the list, one body for each. */
  readonly fresh: readonly Member[];
  /** Some stand beside, or go in. */
  readonly beside: boolean;
}

const NOTHING: Taken = { bodies: [], fresh: [], beside: false };

/** `They boiled it to rope`, before anything was taken in hand: a story of other food. */
const isOfOthers = ({ event: { act, as }, names, unnamed }: BoundEvent): boolean =>
  act === 'heat' && as === 'told' && names.length === 0 && unnamed === 'it';

/** Takes it: what is left of the lists is less by it. */
export const takenBy = (by: BoundEvent, top: Worktop): Taken => new Taker(top).taken(by);

class Taker {
  private readonly bodies: Body[] = [];
  private readonly fresh: Member[] = [];
  private readonly top: Worktop;
  private adds = false;

  constructor(top: Worktop) {
    this.top = top;
  }

  taken(by: BoundEvent): Taken {
    if (isOfOthers(by) && this.top.state.bodies.length === 0) return NOTHING;
    let beside = false;
    const { names, into } = by;
    this.adds = TRANSITIONS[by.event.act].adds;
    let named = false;
    for (const name of names) {
      // What was never put in is not taken out.
      const isNew = name.mention.ingredients.some((ref) => leftOf(this.top.state, ref) > NOTHING_LEFT);
      if (name.role === 'from' && (!isNew || by.unnamed === 'all')) continue;
      if (name.role === 'with' || name.role === 'into') beside = true;
      else named = true;
      this.takeName(name);
    }
    // `Boil the wine down to a glaze`: what it becomes is nothing that it goes into.
    if (into !== undefined && !(by.event.act === 'heat' && into === 'name')) this.addFocus(by);
    // `Mix with the sage and crumbs`: what is mixed with them is not said.
    if (!named || isAllWith(by)) this.takeUnnamed(by);
    // `Oil, wrap in foil and bake`, `salt, fennel, roast`: what nobody names is baked.
    else if (
      by.event.act === 'heat' &&
      this.bodies.length === 0 &&
      (isBeforeVerb(by) || this.fresh.every(({ state }) => (state.was & WAS.fat) !== 0))
    ) {
      if (names.every(({ apart }) => apart) && this.goesIn(by)) this.addAtHand(by);
      this.takeSilent();
    }
    // `Smoke over juniper berries`: they are no food that is smoked.
    else if (by.event.act === 'smoke' && this.bodies.length === 0 && !this.fresh.some(isFlesh)) this.takeUnnamed(by);
    else if (this.goesIn(by)) this.addAtHand(by);
    // `Butter, salt and roast`: meat that no step names is what is roasted.
    if (
      (by.event.act === 'heat' || by.event.act === 'smoke') &&
      !this.fresh.some(isFlesh) &&
      !this.bodies.some(hasFlesh)
    )
      for (const body of this.top.state.bodies) if (isUnnamedFlesh(body, this.top.part.index)) add(this.bodies, body);
    if (by.event.act === 'heat' && names.length === 0 && this.bodies.length === 0 && !this.fresh.some(isFlesh))
      this.addAll(rawBefore(this.top));
    if (!named) this.addAll(seenIn(this.top, by));
    const isOfFlesh = by.event.act === 'heat' || isReadInside(by.event);
    if (!named && isOfFlesh && !this.fresh.some(isFlesh) && !this.bodies.some(hasFlesh)) this.takeListedApart();
    if (isReadInside(by.event) && !this.fresh.some(isFlesh) && !this.bodies.some(hasFlesh))
      this.addAll(readOf(this.top));
    return { bodies: this.bodies, fresh: this.fresh, beside };
  }

  /** Whether what is named of the list goes to what is being worked at. */
  private goesIn(by: BoundEvent): boolean {
    const { event, names } = by;
    const current = this.atHand(event);
    if (event.as === 'beside') return current.length > 0;
    // `Season, it wants plenty of pepper`: salt and pepper of no amount go to what is there.
    if (event.craft === 'season' && this.bodies.length === 0 && this.fresh.every(({ of }) => this.isFree(of)))
      return current.length > 0;
    if (current.length === 0 || names.some(({ role }) => role === 'into' || role === 'with')) return false;
    // `Pour on the milk`; but `stir the soup`.
    if (this.bodies.length > 0)
      return (
        TRANSITIONS[event.act].adds &&
        event.where.length === 0 &&
        (event.lasts !== 'works' ||
          event.onto === true ||
          isFoldedIn(by, current) ||
          isOneMore(this.bodies, current) ||
          // `Pat the pork dry and rub the spice mix all over`
          (ON_FLESH.has(event.craft ?? '') && current.some(hasFlesh) && !this.bodies.some(hasFlesh)))
      );
    // Browned, it is in the pan yet.
    const onStove = current.some(({ lies, band }) => (band === 'hot' || band === 'between') && lies.place === 'stove');
    // `Bay, pepper, parsley. An hour at a simmer`: what no verb takes is thrown in.
    if (event.act === 'heat') return onStove && (event.cooks !== 'through' || names.every(({ apart }) => apart));
    // `Rub salt, pepper and sage all over`
    if (ON_FLESH.has(event.craft ?? '') && current.some(hasFlesh) && !this.fresh.some(isFlour)) return true;
    if (!TRANSITIONS[event.act].adds) return false;
    if (event.act === 'put') return event.vessel === undefined || onStove;
    // What is mixed already goes on: `fold in the flour and the salt`.
    const isMixed = current.some(
      ({ members, band }) =>
        band === 'unsaid' && (members.length > 1 || members.some(({ state }) => state.cut === 'whole')),
    );
    // What is folded in goes into something.
    return (
      event.lasts !== 'works' ||
      event.onto === true ||
      event.craft === 'fold' ||
      this.fresh.length < 2 ||
      onStove ||
      isMixed
    );
  }

  private isFree({ part, ingredient }: IngredientRef): boolean {
    return this.top.larder(part).free[ingredient] === true;
  }

  private takeUnnamed(by: BoundEvent): void {
    const { event, unnamed } = by;
    if (unnamed === 'all') {
      const all = this.top.state.bodies.filter(({ members }) =>
        members.some(({ of }) => of.part === this.top.part.index),
      );
      for (const body of all) add(this.bodies, body);
      // `Everything but the pork`
      const isLeftOut = (ref: IngredientRef): boolean =>
        by.names.some(({ role, mention }) => role === 'from' && mention.ingredients.some((of) => isSameRef(of, ref)));
      this.takeList((ref) => !this.isFree(ref) && !isLeftOut(ref));
      return;
    }
    if (unnamed === 'mixture') {
      const mixed = this.top.state.bodies.findLast(({ members }) => members.length > 1);
      if (mixed !== undefined) add(this.bodies, mixed);
    }
    if (this.bodies.length === 0 || unnamed !== 'mixture') this.addAtHand(by);
    if (event.act === 'heat' && event.cooks !== 'barely') this.addAll(rawHere(this.top, by, this.bodies.length > 0));
    // `Layer.`: all that was made for it.
    else if (
      TRANSITIONS[event.act].adds &&
      unnamed === 'nothing' &&
      by.names.length === 0 &&
      (event.medium === undefined || event.act !== 'combine')
    )
      for (const body of this.top.state.bodies)
        if (
          body.band !== 'cold' &&
          body.band !== 'frozen' &&
          body.members.every(({ of }) => of.part === this.top.part.index)
        )
          add(this.bodies, body);
    // What no step names lies with what is cooked: `rub with the salt and roast`.
    const isFirst = this.bodies.length === 0 && this.top.state.left.every((left) => left >= 1);
    // `Put the lot in a pan`, before anything is made: all of the list.
    if (isFirst && unnamed === 'mixture') this.takeList((ref) => !this.isFree(ref));
    if (this.bodies.length === 0 || TRANSITIONS[event.act].joins) this.takeSilent();
    // `Brine in the fridge`, before anything is named: the meat or fish that it is about.
    if (isFirst) {
      const { flesh, was } = this.top.larder(this.top.part.index);
      // `Boil 12 minutes, cool and peel`, of eggs
      const isOrdered = event.act === 'heat' && event.as === 'ordered' && unnamed === 'nothing';
      const about = flesh.length > 0 || !isOrdered ? flesh : [was.findIndex(isAnimal)];
      this.takeList(({ ingredient }) => about.includes(ingredient));
    }
    if (event.act === 'close' || isFilledIn(by)) this.addJars();
    // `Pour over the boiling brine`: what was made hot for it.
    if (event.act === 'put' && unnamed === 'name' && by.names.length === 0) this.addHot();
    // `Pack them into jars and cover with the boiling solution`
    else if (isToppedUp(by) && this.bodies.some(({ vessel, shut }) => vessel === 'jar' && shut !== 'jar'))
      this.addHot();
  }

  private addAll(bodies: readonly Body[]): void {
    for (const body of bodies) add(this.bodies, body);
  }

  private addHot(): void {
    if (!this.bodies.some(({ band }) => band === 'hot')) this.addAll(hotBefore(this.top));
  }

  /** Of lists that have no steps of their own, meat that no step names: `Loosen the skin, oven, 45 min` is about it. */
  private takeListedApart(): void {
    const known = this.fresh.length;
    for (const ref of fleshApart(this.top)) this.takeRef(ref, { kind: 'all' });
    this.fresh.push(...this.fresh.splice(known).map(asImplied).map(asPuzzling));
  }

  private takeSilent(): void {
    const { unnamed, isNameless } = this.top.larder(this.top.part.index);
    const known = this.fresh.length;
    this.takeList(({ ingredient }) => unnamed.includes(ingredient));
    // Where no step names anything, all of them are about all of it.
    if (!isNameless) this.fresh.push(...this.fresh.splice(known).map(asImplied));
  }

  /** `Fill to the neck and cork`, `fill the jars`, `boil the vinegar and pour it over`: what lies in the jars already is in them too. */
  private addJars(): void {
    if (this.bodies.length === 0 || this.bodies.some(({ vessel }) => vessel !== undefined)) return;
    for (const body of this.top.state.bodies)
      if (
        body.vessel === 'jar' &&
        body.shut !== 'jar' &&
        body.members.every(({ of }) => of.part === this.top.part.index)
      )
        add(this.bodies, body);
  }

  /** Takes of the list whatever of it is whole and fits. */
  private takeList(fits: (ref: IngredientRef) => boolean): void {
    this.top.state.left.forEach((left, ingredient) => {
      const ref = { part: this.top.part.index, ingredient };
      if (left >= 1 && fits(ref)) this.takeRef(ref, { kind: 'all' });
    });
  }

  /** What is being worked at: `rest the joint on a board, stir the flour into what is left` is of what it left in the tin. */
  private inTin(act: Act): readonly Body[] {
    const current = this.top.current();
    if (act !== 'heat' && !TRANSITIONS[act].adds) return current;
    const others = current.filter((body) => !isDoneApart(body));
    return others.length > 0 && !others.some(hasFlesh) ? others : current;
  }

  /** What is being worked at; in the pan by the stove, not what was lifted out of it: `swill the pan with the wine`. */
  private atHand({ vessel, act, where, times }: BoundEvent['event']): readonly Body[] {
    const current = this.inTin(act);
    // `Let the stockpot languish on the dresser all day`: it is full.
    const isLeft = act === 'stay' || (act === 'unknown' && where.length > 0 && times.length > 0);
    if (vessel?.stands !== 'stove' || act === 'return' || act === 'remove' || isLeft) return current;
    return current.filter(
      ({ lies, members }) => lies.place !== 'room' || members.every(({ state }) => state.cooked === 'raw'),
    );
  }

  private addAtHand({ event }: BoundEvent): void {
    for (const body of this.atHand(event)) add(this.bodies, body);
  }

  private addFocus({ event }: BoundEvent): void {
    for (const body of this.inTin(event.act)) add(this.bodies, body);
  }

  private takeName({ mention, role }: BoundName): void {
    if (mention.part !== undefined) this.takePart(mention.part);
    else
      for (const ref of this.chosenOf(mention))
        if (!this.isMoreOf(ref, role)) this.takeRef(ref, mention.portion, mention);
  }

  /** `Spray with oil`, with all of the list in a sauce that stands by in the cold: more of the kind, and not the sauce. */
  private isMoreOf(ref: IngredientRef, role: BoundName['role']): boolean {
    if (role !== 'with' || leftOf(this.top.state, ref) > NOTHING_LEFT) return false;
    const was = this.top.larder(ref.part).was[ref.ingredient];
    const lies = this.top.state.bodies.findLast((body) => holdsRef(body, ref));
    return (
      lies !== undefined &&
      !isAnimal(was) &&
      lies.members.length > 2 &&
      (lies.band === 'cold' || lies.band === 'frozen') &&
      !this.top.state.focus.includes(lies.id)
    );
  }

  /** Of several of one name the first that is left. */
  private chosenOf({ ingredients, every }: Mention): readonly IngredientRef[] {
    const [first] = ingredients;
    if (every || first === undefined || ingredients.length === 1) return ingredients;
    const { alike } = this.top.larder(first.part);
    const isAlike = (ref: IngredientRef): boolean =>
      ref.part === first.part && alike[ref.ingredient] === alike[first.ingredient];
    if (!ingredients.every(isAlike)) return ingredients;
    return [ingredients.find((ref) => leftOf(this.top.state, ref) > NOTHING_LEFT) ?? first];
  }

  private takePart(part: number): void {
    const open = this.top.state.bodies.filter(({ members }) => members.some(({ of }) => of.part === part));
    const made = open.length > 0 ? open : madeBy(this.top.state, part);
    for (const body of made) add(this.bodies, body);
    if (made.length === 0) {
      // Its list, where no step of it made anything.
      this.top.parts[part]?.head.ingredients.forEach((_, ingredient) => {
        this.takeRef({ part, ingredient }, { kind: 'all' });
      });
    }
  }

  private takeRef(ref: IngredientRef, portion: Mention['portion'], mention?: Mention): void {
    const left = leftOf(this.top.state, ref);
    if (left <= NOTHING_LEFT) {
      const lies = this.top.state.bodies.findLast((body) => holdsRef(body, ref));
      if (lies !== undefined) add(this.bodies, isDrained(lies, ref) ? this.notDrained(lies, ref) : lies);
      return;
    }
    const larder = this.top.larder(ref.part);
    const share = shareOf(portion, left);
    // `Pat the chicken dry`, then `the chicken rests`: the same one, though nobody knows whether it was all of it.
    const isWhole = portion.kind === 'plain' || portion.kind === 'all';
    if (isWhole && (larder.flesh.includes(ref.ingredient) || (!this.adds && isAnimal(larder.was[ref.ingredient])))) {
      const lies = this.top.state.bodies.findLast((body) => mayHoldAll(body, ref));
      if (lies !== undefined) {
        this.top.state = withLeft(this.top.state, ref, 0);
        add(this.bodies, lies);
        return;
      }
    }
    this.top.state = withLeft(this.top.state, ref, Math.max(0, left - share.low));
    const takesIn = larder.takesIn[ref.ingredient] ?? -1;
    if (takesIn >= 0) this.takePart(takesIn);
    const was = larder.was[ref.ingredient] ?? 0;
    const cut = larder.minced[ref.ingredient] === true ? ('minced' as const) : ('whole' as const);
    const state = was === 0 && cut === 'whole' ? RAW : { ...RAW, was, cut };
    const byAmount = mention !== undefined && portion.kind !== 'all' && portion.kind !== 'share';
    this.fresh.push({ of: ref, share, state, ...(byAmount && { taken: [mention] }) });
  }

  /** What is spoken of again was not poured off. */
  private notDrained(body: Body, ref: IngredientRef): Body {
    const kept = withStates(body, (state, of) =>
      isSameRef(of, ref) ? { ...state, was: state.was & ~WAS.drained } : state,
    );
    this.top.change((each) => (each === body ? kept : each));
    return kept;
  }
}

const isDrained = ({ members }: Body, ref: IngredientRef): boolean =>
  members.some(({ of, state }) => isSameRef(of, ref) && (state.was & WAS.drained) !== 0);

const isUnnamedFlesh = ({ members }: Body, part: number): boolean =>
  members.some(
    (member) =>
      member.of.part === part &&
      member.state.cooked === 'raw' &&
      isFlesh(member) &&
      (member.state.was & WAS.implied) !== 0,
  );

/** It is put in the jars, or over nothing that is named. */
const isFilledIn = ({ event: { act, vessel, where }, names, unnamed }: BoundEvent): boolean =>
  act === 'put' &&
  names.length === 0 &&
  where.length === 0 &&
  (vessel?.is === 'jar' ? unnamed === 'vessel' : vessel === undefined && (unnamed === 'it' || unnamed === 'mixture'));

/** With something that is no food of the list, and no lid. */
const isToppedUp = ({ event: { act, vessel, medium, objects }, names }: BoundEvent): boolean =>
  act === 'cover' &&
  names.length === 0 &&
  vessel === undefined &&
  (medium?.is === 'water' || objects.some(({ role, by }) => role === 'with' && by === 'name'));

const isBeforeVerb = ({ event: { verb, as }, names }: BoundEvent): boolean =>
  verb !== undefined && as === 'ordered' && names.every(({ mention }) => mention.end <= verb.start);

/** Meat alone, cooked and out of the heat. */
const isDoneApart = ({ lies, members }: Body): boolean =>
  lies.place === 'room' && members.every((member) => isFlesh(member) && member.state.cooked !== 'raw');

const mayHoldAll = ({ members }: Body, ref: IngredientRef): boolean =>
  members.some(({ of, share }) => isSameRef(of, ref) && share.high >= 1);

/** What lies on the outside of something, and is no mixture by itself. */
const ON_FLESH: ReadonlySet<string> = new Set(['rub', 'season', 'brush', 'dust']);

const isFlour = ({ state }: Member): boolean => (state.was & WAS.flour) !== 0;

/** The first that is named, behind the verb, is what it is mixed with. */
const isAllWith = ({ event: { verb }, names: [first] }: BoundEvent): boolean =>
  verb !== undefined && first?.role === 'with' && first.mention.start > verb.start;

const asImplied = (member: Member): Member => ({
  ...member,
  state: { ...member.state, was: member.state.was | WAS.implied },
});

const asPuzzling = (member: Member): Member => ({
  ...member,
  state: { ...member.state, was: member.state.was | WAS.puzzled },
});

/** `Fold in the eggs and the dressing`, with what was made ready at hand. */
const isFoldedIn = ({ event: { craft } }: BoundEvent, current: readonly Body[]): boolean =>
  craft === 'fold' && current.length === 1;

/** `Fold in the flour`, which was sifted before. */
const isOneMore = (named: readonly Body[], current: readonly Body[]): boolean =>
  named.every(({ members }) => members.length === 1) && current.some(({ members }) => members.length > 1);

function add(bodies: Body[], body: Body): void {
  if (!bodies.some(({ id }) => id === body.id)) bodies.push(body);
}

function shareOf(portion: Mention['portion'], left: number): { readonly low: number; readonly high: number } {
  switch (portion.kind) {
    case 'share': {
      const of = portion.remaining ? left * portion.of : Math.min(portion.of, left);
      return { low: of, high: of };
    }
    case 'amount':
    case 'some':
      return { low: 0, high: left };
    default:
      return { low: left, high: left };
  }
}
