/**
 * Knows how an adjustment is said to a cook: why these lines move, what stays, what else it does, and what stands in the way of one.
 * Refuses to work any of it out.
 */
import { gramsText, trimmed } from '../../measure/number-text.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { KindMeasure, MeasureName } from '../../recipe/measures/kind.ts';
import { verdictOn } from '../../recipe/measures/kinds.ts';
import { bandText, measureText } from '../../recipe/measures/measure-text.ts';
import { workOut } from '../../recipe/measures/measures.ts';
import type { Ingredient, Part } from '../../recipe/model.ts';
import { capital } from '../../recipe/words.ts';
import type { Wish } from './landing.ts';
import type { Solution, Solved } from './solve.ts';
import type { Moved } from './write.ts';

/** `the base`; of a recipe without parts `the recipe`. */
export const partWords = ({ head }: Part): string => (head.name === '' ? 'the recipe' : `the ${head.name}`);

const valueText = (measure: MeasureName, value: number): string => measureText(measure, value, value);

/** What stands above the line of a measure, in a word: `water`, `egg yolk`. */
function substanceOf(measure: MeasureName): string {
  const words = MEASURES[measure].words.replace(/^share of /, '');
  const [first = ''] = words.split(/,| (?:per|in|to|of|on) /);
  return measure === 'freezing point' ? 'sugar' : first;
}

const listOf = (lines: readonly Ingredient[]): string => {
  const names = [...new Set(lines.map(({ name }) => name))];
  const last = names.pop() ?? '';
  return names.length === 0 ? last : `${names.join(', ')} and ${last}`;
};

/** `42 g less`; of a change that no scale shows nothing more than that. */
export function changeText({ gramsBefore, gramsAfter }: Moved): string {
  const by = gramsAfter - gramsBefore;
  return `${gramsText(Math.abs(by))} g ${by < 0 ? 'less' : 'more'}`;
}

interface Change {
  readonly moved: readonly Moved[];
  readonly now: readonly Ingredient[];
  readonly then: readonly Ingredient[];
}

export function sayMoved(part: Part, wish: Wish, solution: Solution, change: Change): string[] {
  const moving = new Set(change.moved.map(({ ingredient }) => ingredient));
  return [
    ...turnedWords(solution, moving),
    ...stayWords(part, wish, solution, change),
    ...othersWords(part, wish, change),
  ];
}

/** Why these lines, and no others: one sentence a target. */
function turnedWords({ turned }: Solution, moving: ReadonlySet<Ingredient>): string[] {
  const said = turned.flatMap(({ target: { measure }, steps }) => {
    const substance = substanceOf(measure);
    return steps.flatMap(({ lines, side }, i) => {
      const here = lines.filter((line) => moving.has(line));
      if (here.length === 0) return [];
      const names = listOf(here);
      if (side === 'below') return [`What moves: ${names}, as nothing that brings ${substance} may.`];
      return i === 0
        ? [`What moves: ${names}, of all on the list the purest in ${substance}.`]
        : [`What moves besides: ${names}, as what is purer in ${substance} cannot do it alone.`];
    });
  });
  return [...new Set(said)];
}

function stayWords(part: Part, { hold }: Wish, { rest, factors }: Solution, { moved }: Change): string[] {
  const { head } = part;
  const percents = head.ingredients.some((i) => i.percent !== undefined);
  const grams = moved.reduce((sum, m) => sum + m.gramsAfter - m.gramsBefore, head.massG.likely);
  const weighs = `${partWords(part)} then weighs ${gramsText(grams)} g`;
  if (hold.has('mass')) {
    const [first] = rest;
    const by = first === undefined ? 1 : (factors.get(first) ?? 1);
    const follows =
      Math.abs(by - 1) < 5e-4
        ? ''
        : `; the rest goes ${by > 1 ? 'up' : 'down'} by ${trimmed(Math.abs(by - 1) * 100, 1)} %, each in proportion`;
    return [`The whole stays at ${gramsText(head.massG.likely)} g${follows}.`];
  }
  return percents || !head.massG.complete || head.nominal ? ['The rest stays.'] : [`The rest stays; ${weighs}.`];
}

/** The kind's other measures that leave their bands by it, or come back into them. */
function othersWords(part: Part, wish: Wish, change: Pick<Change, 'now' | 'then'>): string[] {
  return elsewhere(part, wish, change).flatMap(({ held, before, after }) => {
    const { words } = MEASURES[held.measure];
    const value = measureText(held.measure, after.value.low, after.value.high);
    return after.verdict === 'ok'
      ? [`${capital(words)} comes back into what is usual: ${value}.`]
      : before.verdict === 'ok'
        ? [`${capital(words)} then is ${value}; ${bandText(held.measure, held.usual)} is usual.`]
        : [];
  });
}

/** Measures that nobody asked for, and that lie outside their bands by it. */
export const leaving = (part: Part, wish: Wish, change: Pick<Change, 'now' | 'then'>): readonly MeasureName[] =>
  elsewhere(part, wish, change).flatMap(({ held, after }) => (after.verdict === 'ok' ? [] : [held.measure]));

/** The kind's other measures that lie elsewhere then. */
function elsewhere(part: Part, { targets }: Wish, { now, then }: Pick<Change, 'now' | 'then'>) {
  const asked = new Set(targets.map(({ measure }) => measure));
  return (part.head.kind?.measures ?? []).flatMap((held) => {
    const [before, after] = [placed(held, now), placed(held, then)];
    const isOther = !asked.has(held.measure) && before !== undefined && before.verdict !== after?.verdict;
    return isOther && after !== undefined ? [{ held, before, after }] : [];
  });
}

function placed(held: KindMeasure, list: readonly Ingredient[]) {
  const worked = workOut(held.measure, list);
  if (!worked.known) return undefined;
  return { value: worked.value, verdict: verdictOn(worked, held) };
}

/** Why the targets cannot be had, by what each could come to by itself. */
export function sayUnreached(part: Part, wish: Wish, { reach, pieces }: Extract<Solved, { ok: false }>): string {
  for (const { target, range, stays } of reach) {
    const { measure, to } = target;
    const { words } = MEASURES[measure];
    if (range === undefined || range.high === 0)
      return `${nothingTurns(part, wish, measure)}, so ${words} stays as it is`;
    if (to >= range.low - 1e-9 && to <= range.high + 1e-9) continue;
    const [way, edge] = to < range.low ? ['lower', range.low] : ['higher', range.high];
    const why =
      to < range.low && stays.length > 0
        ? `${listOf(stays)} ${stays.length > 1 ? 'bring' : 'has'} the rest of it`
        : 'what may move does no more, even at fifty times as much or as little';
    return `${words} of ${partWords(part)} can come no ${way} than ${valueText(measure, edge)}, so not to ${valueText(measure, to)}: ${why}`;
  }
  const [first] = wish.targets;
  if (pieces.length > 0 && first !== undefined && wish.targets.length === 1) {
    const each = pieces.map(({ counts, value }) => {
      const said = counts.map(([{ name }, count]) => `${trimmed(count, 2)} ${name}`);
      return `${said.join(' and ')} ${counts.length > 1 || counts[0]?.[1] !== 1 ? 'make' : 'makes'} it ${valueText(first.measure, value)}`;
    });
    return `${namesOf(wish)} cannot be had with whole pieces: ${each.join(', ')}`;
  }
  if (wish.hold.size > 0)
    return `${namesOf(wish)} cannot be had while ${wish.hold.size > 1 ? 'mass and flour hold' : `the ${[...wish.hold].join()} holds`}: nothing else on the list may give way`;
  return wish.targets.length > 1
    ? `${namesOf(wish)} can each be had, and not together: they want the same lines to move both ways`
    : `${namesOf(wish)} cannot be had by what may move`;
}

const namesOf = ({ targets }: Wish): string =>
  targets.map(({ measure, to }) => `${MEASURES[measure].words} at ${valueText(measure, to)}`).join(' and ');

function nothingTurns(part: Part, { keep, whole }: Wish, measure: MeasureName): string {
  const kept = keep.size === 0 ? '' : ` but ${listOf([...keep])}, which ${keep.size > 1 ? 'are' : 'is'} to be kept`;
  const pieces = whole && kept === '' ? ' but whole pieces' : '';
  return `nothing on the list of ${partWords(part)} that may move brings ${substanceOf(measure)}${kept}${pieces}`;
}
