/**
 * Knows the steps of a day as a table: from when, what, how long, and a bar on the axis; by the clock, or part by part.
 * Refuses to know who is busy by then.
 */
import { readLine } from '../../../notation/statements.ts';
import { escapeHtml } from '../../escape-html.ts';
import type { PlanClock, PlanFacts, PlanPreheat, PlanStep } from '../../plan-facts.ts';
import { dayText, heatText, lengthOf, ovenName } from '../../plan-words.ts';
import { mark } from '../marks.ts';
import type { Axis } from './axis.ts';
import { barOf, clashOf, cutsOf, gridOf, isUnknown, narrowHoursText, percent, rangeOf } from './drawn.ts';
import { endsOf } from './lanes.ts';

export type StepOrder = 'clock' | 'part';

interface Row {
  readonly key: string;
  readonly from: PlanClock;
  /** On the longest way. */
  readonly critical: boolean;
  readonly group: string;
  /** What stands before its words, where the group does not say it. */
  readonly runIn: string;
  readonly words: string;
  readonly line: number | null;
  readonly takes: string;
  readonly drawn: string;
}

export function stepsOf(facts: PlanFacts, axis: Axis, order: StepOrder): string {
  const rows = rowsOf(facts, axis, order);
  const groups = [...new Set(rows.map(({ group }) => group))];
  const titled = groups.length > 1 || order === 'part';
  const bodies = groups.map((group) => {
    const own = rows.filter((row) => row.group === group).map((row) => rowText(row, axis));
    const head = titled && group !== '' ? `<tr><th scope="rowgroup" colspan="4">${escapeHtml(group)}</th></tr>\n` : '';
    return `<tbody>\n${head}${own.join('\n')}\n</tbody>`;
  });
  const strip = `<th scope="col" class="strip"><span class="unseen">drawn from ${facts.start.at} to ${facts.serve}</span>${narrowHoursText(axis, facts.serve)}</th>`;
  return `<table class="day">
<caption class="unseen">The steps ${order === 'clock' ? 'by the clock' : 'by part'}; in bold what makes the day longer if it is late</caption>
<thead><tr><th scope="col">From</th><th scope="col">Step</th><th scope="col" class="n">Takes</th>${strip}</tr></thead>
${bodies.join('\n')}
<tbody><tr data-key="served"><td class="clock"><b>${facts.serve}</b></td><td><b>On the table</b></td><td></td>${stripOf('', axis)}</tr></tbody>
</table>`;
}

function rowsOf(facts: PlanFacts, axis: Axis, order: StepOrder): readonly Row[] {
  const many = new Set(facts.steps.map((step) => step.part)).size > 1;
  const whose = ({ recipe, part }: PlanStep): string =>
    [facts.recipes.length > 1 ? (facts.recipes[recipe] ?? '') : '', many ? part : '']
      .filter((w) => w !== '')
      .join(', ');
  const groupOf = (step: PlanStep) => (order === 'part' ? capital(whose(step)) : dayText(step.from.days_before));
  const rows = facts.steps.flatMap((step, i): Row[] => [
    stepRow(facts, step, i, axis, { group: groupOf(step), runIn: order === 'part' ? '' : capital(whose(step)) }),
    ...turnsOf(facts, step, axis, groupOf(step)),
  ]);
  const ovens = facts.preheats.map((each) => {
    const into = facts.steps.find(({ oven, from }) => oven === each.oven && from.min === each.to.min);
    return preheatRow(
      facts,
      each,
      axis,
      order === 'part' && into !== undefined ? groupOf(into) : dayText(each.from.days_before),
    );
  });
  return [...rows, ...ovens].sort((a, b) => a.from.min - b.from.min || b.runIn.length - a.runIn.length);
}

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

function stepRow(
  facts: PlanFacts,
  step: PlanStep,
  index: number,
  axis: Axis,
  place: Pick<Row, 'group' | 'runIn'>,
): Row {
  const bar = barOf(step, axis);
  const ends = endsOf(step);
  const late = step.may_wait_min !== null && step.waits_min > step.may_wait_min;
  const until = step.to.min + step.waits_min;
  const waits =
    step.waits_min > 0 && !isUnknown(step)
      ? `<line class="${late ? 'thin' : 'axis'}" x1="${percent(axis.at(step.to.min))}" x2="${percent(axis.at(until))}" y1="50%" y2="50%" stroke-dasharray="1 3"/>`
      : '';
  const clash = clashOf(facts, index);
  return {
    key: `${step.recipe}-${step.part}-${step.where}-${index}`,
    from: step.from,
    critical: step.critical,
    ...place,
    words: step.text,
    line: step.line,
    takes: `${clash === undefined ? '' : `${mark(clash, true)} `}${takesText(step)}`,
    drawn: [
      waits,
      `<rect class="${bar.kind}" x="${percent(bar.x)}" width="${percent(bar.width)}" y="50%" height="10" transform="translate(0 -5)"/>`,
      ends === undefined ? '' : rangeOf(step.from.min + ends[0], step.from.min + ends[1], axis),
    ].join(''),
  };
}

/** How long it is, and who says so: slanted what the text does not say. */
function takesText(step: PlanStep): string {
  const { minutes, minutes_from: from, said_min: said, estimate_min: estimate, not_estimated: why } = step;
  const waits =
    step.may_wait_min !== null && step.waits_min > step.may_wait_min
      ? `<br><small>${mark('warning', true)} then waits ${lengthOf(step.waits_min)}</small>`
      : '';
  if (from === 'unsaid') {
    const words = minutes === 0 ? 'not known' : `at least ${lengthOf(minutes)}`;
    return `<i class="unknown">${words}</i>${why === null ? '' : `<br><small class="why">${escapeHtml(why)}</small>`}${waits}`;
  }
  const long = lengthOf(minutes);
  if (from === 'put') return `<i class="soft">${long}</i>${waits}`;
  if (from === 'head') return `<i class="soft">${long}</i><br><small>by the head</small>${waits}`;
  const range = estimate ?? (said !== null && said[1] !== null && said[1] > said[0] ? [said[0], said[1]] : null);
  const more = said !== null && said[1] === null ? ' and more' : '';
  const small =
    range === null
      ? ''
      : `<br><small>${estimate === null ? '' : 'likely, '}${spanText(range[0] ?? 0, range[1] ?? 0)}</small>`;
  return `${long}${more}${small}${waits}`;
}

/** `(35–40)` in minutes, `(2 h–3 h)` from two hours on. */
const spanText = (low: number, high: number): string =>
  high <= 120
    ? `(${Math.round(low)}–${Math.round(high)})`
    : `(${lengthOf(Math.round(low))} to ${lengthOf(Math.round(high))})`;

/** `Turn the oven to 160 °C`, while something is in there. */
const turnsOf = (
  facts: PlanFacts,
  { oven, oven_turns: turns, recipe, where }: PlanStep,
  axis: Axis,
  group: string,
): readonly Row[] =>
  turns.slice(1).map((turn, i) => ({
    ...ASIDE,
    key: `turn-${recipe}-${where}-${i}`,
    from: turn,
    group,
    words: `Turn ${ovenName(facts, oven)} to ${heatText(turn)}`,
    drawn: `<svg class="point" x="${percent(axis.at(turn.min))}" y="50%"><line class="thin" y1="-5" y2="5"/></svg>`,
  }));

function preheatRow(facts: PlanFacts, { from, to, oven, ...heat }: PlanPreheat, axis: Axis, group: string): Row {
  const x = axis.at(from.min);
  return {
    ...ASIDE,
    key: `light-${oven}-${from.min}`,
    from,
    group,
    words: `Light ${ovenName(facts, oven)}: ${heatText(heat)}`,
    takes: lengthOf(to.min - from.min),
    drawn: `<rect class="wait" x="${percent(x)}" width="${percent(axis.at(to.min) - x)}" y="50%" height="10" transform="translate(0 -5)"/>`,
  };
}

const ASIDE = { critical: false, runIn: '', line: null, takes: '' } as const;

function rowText({ key, from, critical, runIn, words, line, takes, drawn }: Row, axis: Axis): string {
  const clock = critical ? `<b>${from.at}</b>` : from.at;
  const shown = boldFigures(words);
  const said = line === null ? shown : `<a class="at" href="#line-${line}" data-line="${line}">${shown}</a>`;
  const part = runIn === '' ? '' : `<span class="part">${escapeHtml(runIn)}:</span> `;
  return `<tr data-key="${escapeHtml(key)}"><td class="clock">${clock}</td><td>${part}${said}</td><td class="n takes-min">${takes}</td>${stripOf(drawn, axis)}</tr>`;
}

/** Temperatures and times in bold, as they are read in a sentence. */
function boldFigures(words: string): string {
  const before = 'do ';
  const { statement } = readLine(`${before}${words}`);
  if (statement.kind !== 'step') return escapeHtml(words);
  let html = '';
  let at = 0;
  for (const { kind, start, end } of statement.sentence.items) {
    if (kind !== 'temperature' && kind !== 'duration') continue;
    const [from, to] = [start - before.length, end - before.length];
    if (from < at) continue;
    html += `${escapeHtml(words.slice(at, from))}<b>${escapeHtml(words.slice(from, to))}</b>`;
    at = to;
  }
  return html + escapeHtml(words.slice(at));
}

const stripOf = (drawn: string, axis: Axis): string =>
  `<td class="strip"><svg class="draw" aria-hidden="true">${gridOf(axis)}${drawn}${cutsOf(axis)}</svg></td>`;
