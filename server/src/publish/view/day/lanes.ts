/**
 * Knows who is busy when: a lane for each pair of hands, the hob, each oven, the cold, drawn over the hours.
 * Refuses to be read alone: the table of the steps says the same.
 */
import { escapeHtml } from '../../escape-html.ts';
import type { PlanFacts, PlanStep } from '../../plan-facts.ts';
import { heatText } from '../../plan-words.ts';
import type { Axis } from './axis.ts';
import {
  type Bar,
  type BarKind,
  barOf,
  type ClashLevel,
  clashOf,
  cutsOf,
  gridOf,
  hoursText,
  isUnknown,
  percent,
  pointAt,
} from './drawn.ts';

interface Lettered extends Bar {
  readonly label: string;
  readonly clash: ClashLevel | undefined;
}

interface Lane {
  readonly name: string;
  readonly bars: readonly Lettered[];
}

export function lanesOf(facts: PlanFacts, axis: Axis): string {
  const head = `<div class="lane"><span></span>${hoursText(axis, facts.serve, facts.start.at)}</div>`;
  const rows = lanes(facts, axis).flatMap(({ name, bars }) =>
    tiersOf(bars).map((tier, i) => laneRow(i === 0 ? name : '', tier, axis)),
  );
  return `<figure class="lanes" role="img" aria-label="${escapeHtml(saidOf(facts))}">\n${[head, ...rows].join('\n')}\n</figure>`;
}

function lanes(facts: PlanFacts, axis: Axis): readonly Lane[] {
  const { steps, ovens, recipes } = facts;
  const bar = (step: PlanStep, label: string): Lettered => ({
    ...barOf(step, axis),
    label,
    clash: clashOf(facts, steps.indexOf(step)),
  });
  const called = ({ part, recipe }: PlanStep): string => (recipes.length > 1 ? (recipes[recipe] ?? '') : part);
  const pairs = Math.max(0, ...steps.map(({ pair }) => pair ?? 0)) + 1;
  const hands = Array.from({ length: pairs }, (_, pair) => ({
    name: pairs === 1 ? 'Hands' : `Hands ${pair + 1}`,
    bars: steps
      .filter((step) => step.hands && !isUnknown(step) && (step.pair ?? 0) === pair)
      .map((step) => ({ ...bar(step, ''), kind: 'ink' as BarKind })),
  }));
  const on = (place: PlanStep['on'], name: string, label: (step: PlanStep) => string): Lane => ({
    name,
    bars: steps.filter((step) => step.on === place).map((step) => bar(step, label(step))),
  });
  const inOvens = ovens.map((name, oven) => ({
    name: ovens.length === 1 ? 'Oven' : capitalOf(name),
    bars: [
      ...facts.preheats
        .filter((each) => each.oven === oven)
        .map(({ from, to }): Lettered => {
          const x = axis.at(from.min);
          return { x, width: axis.at(to.min) - x, kind: 'wait', label: '', clash: undefined };
        }),
      ...steps.filter((step) => step.oven === oven).flatMap((step) => ovenBars(step, bar(step, ''), axis)),
    ].sort((a, b) => a.x - b.x),
  }));
  return [
    ...hands,
    on('hob', 'Hob', () => ''),
    on('smoker', 'Smoker', () => ''),
    ...inOvens,
    on('cold', 'Cold', called),
  ].filter(({ bars }) => bars.length > 0);
}

const capitalOf = (name: string): string => `${name.slice(0, 1).toUpperCase()}${name.slice(1)}`;

/** One for each heat that it is turned to. */
function ovenBars({ oven_turns: turns, to }: PlanStep, whole: Lettered, axis: Axis): readonly Lettered[] {
  if (whole.kind === 'notknown') return [{ ...whole, label: turns[0] === undefined ? '' : heatText(turns[0]) }];
  return turns.map((turn, i) => {
    const x = axis.at(turn.min);
    return { ...whole, x, width: axis.at(turns[i + 1]?.min ?? to.min) - x, label: heatText(turn) };
  });
}

/** What lies there at one time stands one under the other; what has no length is in nobody's way. */
function tiersOf(bars: readonly Lettered[]): readonly (readonly Lettered[])[] {
  const tiers: Lettered[][] = [bars.filter(({ kind }) => kind === 'notknown')];
  for (const bar of bars.filter(({ kind }) => kind !== 'notknown')) {
    const free = tiers.find((tier) =>
      tier.every(({ x, width, kind }) => kind === 'notknown' || x + width <= bar.x + 0.05),
    );
    if (free === undefined) tiers.push([bar]);
    else free.push(bar);
  }
  return tiers;
}

const HEIGHT = 30;
/** A letter is so wide at most, in per cent of a wide drawing, and of a narrow one. */
const LETTER = { wide: 1, narrow: 2.4 };

function laneRow(name: string, bars: readonly Lettered[], axis: Axis): string {
  const y = bars.some(({ label }) => label !== '') ? 16 : 13;
  const drawn = bars.map(({ x, width, kind, label, clash }, i) => {
    const room = (bars[i + 1]?.x ?? 100) - x;
    const needs = (letter: number) => label.length * letter;
    const shown = label === '' || needs(LETTER.wide) > room ? undefined : needs(LETTER.narrow) > room ? ' w' : '';
    return [
      `<rect class="${kind}" x="${percent(x)}" width="${percent(width)}" y="${y}" height="9"/>`,
      shown === undefined ? '' : `<text class="halo${shown}" x="${percent(x)}" y="12">${escapeHtml(label)}</text>`,
      clash === undefined ? '' : pointAt(clash, x + width / 2, `${y + 15}`),
    ].join('');
  });
  return `<div class="lane"><span>${escapeHtml(name)}</span><svg class="draw" height="${HEIGHT}" aria-hidden="true">${gridOf(axis)}${drawn.join('')}${cutsOf(axis)}</svg></div>`;
}

/** `Hands are busy from 15:00 to 17:43, with gaps. The oven is at 180 °C from 16:50 to 17:13. The table below says every step.` */
function saidOf(facts: PlanFacts): string {
  const work = facts.steps.filter(({ hands, minutes }) => hands && minutes > 0);
  const [first, last] = [work[0], work.reduce<PlanStep | undefined>(latest, undefined)];
  const hands =
    first === undefined || last === undefined
      ? []
      : [`Hands are busy from ${first.from.at} to ${last.to.at}, with gaps.`];
  const ovens = facts.steps.flatMap(({ oven, oven_turns: [turn], from, to }) =>
    oven === null || turn === undefined
      ? []
      : [
          `${facts.ovens.length === 1 ? 'The oven' : capitalOf(facts.ovens[oven] ?? 'An oven')} is at ${heatText(turn)} from ${from.at} to ${to.at}.`,
        ],
  );
  return [...hands, ...ovens, 'The table below says every step.'].join(' ');
}

const latest = (so: PlanStep | undefined, step: PlanStep): PlanStep =>
  so === undefined || step.to.min > so.to.min ? step : so;

const KEYS: readonly (readonly [BarKind, string])[] = [
  ['ink', 'at work'],
  ['bar', 'on the hob'],
  ['heat', 'in the oven'],
  ['wait', 'waiting, or an oven that warms up'],
  ['notknown', 'not known how long'],
];

/** What the bars mean, of those that there are. */
export function keyOf(facts: PlanFacts, axis: Axis): string {
  const kinds = new Set([
    ...facts.steps.map((step) => barOf(step, axis).kind),
    ...(facts.preheats.length > 0 ? (['wait'] as const) : []),
  ]);
  const ranged = facts.steps.some((step) => endsOf(step) !== undefined);
  return `<p class="key">${KEYS.filter(([kind]) => kinds.has(kind))
    .map(
      ([kind, words]) =>
        `<span><svg class="draw" aria-hidden="true"><rect class="${kind}" width="22" height="10"/></svg>${words}</span>`,
    )
    .join('')}${
    ranged
      ? '<span><svg class="draw" aria-hidden="true"><line class="thin" x1="1" x2="21" y1="5" y2="5"/><line class="thin" x1="1" x2="1" y1="1" y2="9"/><line class="thin" x1="21" x2="21" y1="1" y2="9"/></svg>when it may end</span>'
      : ''
  }<span>an hour in <b>bold</b>: late there is late at the table</span></p>`;
}

/** Minutes after its beginning within which it may end: of an estimate, or as the step says; undefined where that is one. */
export function endsOf({ estimate_min: estimate, said_min: said }: PlanStep): readonly [number, number] | undefined {
  const range = estimate ?? said;
  if (range === null) return undefined;
  const [low, high] = range;
  return high === null || high <= low ? undefined : [low, high];
}
