/**
 * Knows view 4, the day backwards: when to begin, who is busy when, every step by the clock or by part, and what may be done before.
 * Refuses to plan: it shows what the facts of a plan say.
 */
import { escapeHtml } from '../escape-html.ts';
import type { PlanFacts, PlanStep } from '../plan-facts.ts';
import {
  aheadText,
  beginText,
  clashText,
  clockText,
  lengthOf,
  NOT_ALL_TRIED,
  putText,
  wayOutText,
} from '../plan-words.ts';
import { choice, doing } from './controls.ts';
import { axisOf } from './day/axis.ts';
import { keyOf, lanesOf } from './day/lanes.ts';
import { type StepOrder, stepsOf } from './day/steps.ts';
import type { HrefOf, ViewFacts, ViewMode } from './facts.ts';
import type { Level } from './finding.ts';
import { mark } from './marks.ts';

/** The content of `<section id="day">`. */
export function dayView(facts: ViewFacts): string {
  const plan = facts.plan();
  if (plan === undefined || plan.steps.length === 0) return NOTHING;
  return dayDrawn(plan, {
    mode: facts.mode,
    order: facts.look.order ?? 'clock',
    writes: facts.mode === 'live' && facts.readOnly === undefined,
    ...(facts.hrefOf && { hrefOf: facts.hrefOf }),
  });
}

const NOTHING =
  '<h2>Day</h2>\n<div class="empty"><p><b>No step says anything that takes time.</b> Write the method, and the day is counted back from the hour at which it is eaten.</p></div>';

export interface DayShown {
  readonly mode: ViewMode;
  readonly order: StepOrder;
  /** Minutes may be written into the text. */
  readonly writes: boolean;
  readonly hrefOf?: HrefOf;
}

/** The same of any plan, of several recipes too. */
export function dayDrawn(plan: PlanFacts, { mode, order, writes, hrefOf }: DayShown): string {
  const axis = axisOf(plan);
  return [
    headOf(plan, mode, order, hrefOf),
    sentenceOf(plan),
    lanesOf(plan, axis),
    keyOf(plan, axis),
    notesOf(plan, writes),
    stepsOf(mode === 'live' ? plan : withoutText(plan), axis, order),
    aheadOf(plan),
  ]
    .filter((piece) => piece !== '')
    .join('\n');
}

/** Where there is no text, no step leads to its line. */
const withoutText = (plan: PlanFacts): PlanFacts => ({
  ...plan,
  steps: plan.steps.map((step) => ({ ...step, line: null })),
});

function headOf({ serve }: PlanFacts, mode: ViewMode, order: StepOrder, hrefOf: HrefOf | undefined): string {
  if (hrefOf !== undefined) return browsedHead(serve, order, hrefOf);
  if (mode !== 'live') return `<h2>Counted back from ${serve}</h2>`;
  const orders = choice('order-of-steps', 'Order of the steps', order, [
    ['clock', 'By the clock'],
    ['part', 'By part'],
  ]);
  return `<div class="row"><h2>Counted back from <input value="${serve}" size="5" data-key="serve" data-do="serve-at" aria-label="on the table at"></h2>${orders}</div>`;
}

/** In a browser, without a script: a form asks for another hour, links for the other order. */
function browsedHead(serve: string, order: StepOrder, hrefOf: HrefOf): string {
  const link = (value: StepOrder, words: string) =>
    value === order ? `<b>${words}</b>` : `<a href="${escapeHtml(hrefOf('day', value))}">${words}</a>`;
  const kept = order === 'part' ? '<input type="hidden" name="order" value="part">' : '';
  return `<form class="row"><h2>Counted back from <input name="serve" value="${serve}" size="5" inputmode="numeric" pattern="([01]?[0-9]|2[0-3])[:.][0-5][0-9]" required aria-label="on the table at, such as 19:30"></h2><input type="hidden" name="view" value="day">${kept}<button>Count back</button><span class="choice">${link('clock', 'By the clock')} ${link('part', 'By part')}</span></form>`;
}

/** `Begin at 15:00; at 14:51 if all takes its longest. One pair of hands, one oven. Hands 1 h 10 min; the longest wait is the custard's, 2 h.` */
function sentenceOf(plan: PlanFacts): string {
  const [begin, longest] = beginText(plan);
  const pairs = Math.max(0, ...plan.steps.map(({ pair }) => pair ?? 0)) + 1;
  const uses = plan.steps.some(({ oven }) => oven !== null);
  const has = `${pairs === 1 ? 'One pair' : `${pairs} pairs`} of hands${uses ? `, ${plan.ovens.length === 1 ? 'one oven' : `${plan.ovens.length} ovens`}` : ''}.`;
  return `<p class="measure" role="status"><b>${escapeHtml(begin)}</b>${escapeHtml(longest)} ${has} Hands ${plan.at_least ? 'at least ' : ''}${lengthOf(plan.hands_min)}${escapeHtml(waitText(plan))}.</p>`;
}

function waitText({ steps }: PlanFacts): string {
  const longest = steps.reduce<PlanStep | undefined>(
    (so, step) => (step.spent === 'waiting' && step.minutes > (so?.minutes ?? 0) ? step : so),
    undefined,
  );
  if (longest === undefined) return '';
  const whose = longest.part === '' ? '' : `the ${longest.part}'s, `;
  return `; the longest wait is ${whose}${lengthOf(longest.minutes)}`;
}

/** What was found in the plan: clashes with their way out, what is put, what is not known. */
function notesOf(plan: PlanFacts, writes: boolean): string {
  const put = putText(plan);
  const ways = plan.ways_out.filter(({ way }) => way !== 'days before').map((way) => wayOutText(plan, way));
  const clashes = plan.clashes.map((clash) => ({
    level: clash.too_long_min > 0 ? ('warning' as const) : ('note' as const),
    words: clashText(plan, clash),
  }));
  const unknown = unknownText(plan);
  return [
    ...clashes.map(({ level, words }, i) =>
      finding(level, escapeHtml([words, ...(i === clashes.length - 1 ? ways : [])].join(' '))),
    ),
    ...(put === undefined ? [] : [finding('note', `${escapeHtml(put)}${writes ? buttonOf(plan) : ''}`)]),
    ...(unknown === undefined ? [] : [finding('note', escapeHtml(unknown))]),
    ...(plan.best ? [] : [finding('note', escapeHtml(NOT_ALL_TRIED))]),
  ].join('\n');
}

function buttonOf({ asked, steps }: PlanFacts): string {
  const own = asked.filter(({ step, put_min }) => put_min !== null && steps[step]?.line !== null);
  const [first] = own;
  if (first === undefined) return '';
  const where = own.length === 1 ? 'the step' : `${own.length} steps`;
  return ` ${doing('write-minutes', {}, `Write “about ${lengthOf(first.put_min ?? 0)}” into ${where}`)}`;
}

/** `How long one step takes is not known, and nothing is reckoned for it: begin earlier than this.` */
function unknownText({ asked }: PlanFacts): string | undefined {
  const count = asked.filter(({ put_min }) => put_min === null).length;
  if (count === 0) return undefined;
  const steps = count === 1 ? 'one step takes' : `${count} steps take`;
  return `How long ${steps} is not known, and nothing is reckoned for ${count === 1 ? 'it' : 'them'} (hatched below): all of this is the least.`;
}

const finding = (level: Level, html: string): string => `<p class="measure finding">${mark(level, true)} ${html}</p>`;

function aheadOf(plan: PlanFacts): string {
  if (plan.ahead.length === 0) return '';
  const begins = plan.ways_out
    .filter(({ way }) => way === 'days before')
    .map(({ start }) =>
      start.min === 0 ? 'Nothing is left for the day itself.' : `The day itself then begins at ${clockText(start)}.`,
    );
  const all = [...plan.ahead.map((each) => capital(aheadText(plan, each))), ...begins];
  return `<h2>May be done before</h2>\n${all.map((words) => `<p class="measure">${escapeHtml(words)}</p>`).join('\n')}`;
}

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
