/**
 * Knows the plan of a day as a drawing: a row a step, recipe by recipe, over the hours.
 * Refuses to be read alone: the table beside it says the same in words, and its numbers are those of the rows there.
 */
import { escapeHtml } from './html.ts';
import type { PlanFacts, PlanStep } from './plan-facts.ts';
import { lengthOf, namedStep } from './plan-words.ts';

const WIDTH = 1000;
const ROW = 22;
const HEAD = 30;
const BAR = 14;
/** Room for a number behind the last bar. */
const RIGHT = 60;

export const DRAWING_STYLE = `
.plan { --hand: #7a3b1e; --oven: #d9822b; --heat: #e9b872; --wait: #d8d2c3; --grid: #e6dfd0; --late: #a3161b; }
.plan svg { width: 100%; height: auto; font: 13px/1 Georgia, 'Times New Roman', serif; }
.plan text { fill: var(--soft); }
.plan text.name { fill: var(--ink); font-weight: bold; }
.plan line { stroke: var(--grid); }
.plan line.waits { stroke: var(--soft); stroke-dasharray: 2 4; }
.plan line.late { stroke: var(--late); stroke-width: 2; }
.plan .hands { fill: var(--hand); }
.plan .oven { fill: var(--oven); }
.plan .heat { fill: var(--heat); }
.plan .waiting { fill: var(--wait); }
.plan .critical { stroke: var(--ink); stroke-width: 2; }
.key { display: flex; flex-wrap: wrap; gap: .25rem 1.25rem; color: var(--soft); padding: 0; list-style: none; }
.key svg { width: 1.5rem; height: .8rem; vertical-align: baseline; margin-right: .4rem; }
@media (prefers-color-scheme: dark) {
  .plan { --hand: #e0a37f; --oven: #e07f1f; --heat: #9a6a2a; --wait: #4a463d; --grid: #37332b; --late: #ff8f8f; }
}
@media print { .plan svg { break-inside: avoid; } }
`.trim();

type Kind = 'hands' | 'oven' | 'heat' | 'waiting';

const KEYS: readonly (readonly [Kind | 'waiting critical', string])[] = [
  ['hands', 'by hand'],
  ['oven', 'in the oven'],
  ['heat', 'on the heat, by itself'],
  ['waiting', 'waiting, or an oven that warms up'],
  ['waiting critical', 'on the longest way'],
];

export function planDrawing(facts: PlanFacts): string {
  const span = Math.max(1, -facts.start.min);
  const scale = (WIDTH - RIGHT) / span;
  const x = (min: number): number => round((min - facts.start.min) * scale);
  const rows: string[] = [];
  let y = HEAD;
  const open = facts.preheats.map(
    ({ from, to }) =>
      `<rect class="waiting" x="${x(from.min)}" y="${y + 4}" width="${round(x(to.min) - x(from.min))}" height="${BAR}"/>`,
  );
  if (open.length > 0) {
    rows.push(name('Oven', y), ...open);
    y += ROW;
  }
  facts.recipes.forEach((recipe, index) => {
    rows.push(name(recipe, y));
    y += ROW;
    facts.steps.forEach((step, i) => {
      if (step.recipe !== index) return;
      rows.push(bar(facts, step, i, x, y));
      y += ROW;
    });
  });
  return `<div class="plan">
<svg viewBox="0 0 ${WIDTH} ${y + 8}" role="img" aria-label="The steps over the hours; the table below says the same.">
${hours(facts, x, y).join('\n')}
${rows.join('\n')}
</svg>
<ul class="key">
${KEYS.map(([kind, words]) => `<li><svg viewBox="0 0 24 12" aria-hidden="true"><rect class="${kind}" x="1" y="1" width="22" height="10"/></svg>${words}</li>`).join('\n')}
</ul>
</div>`;
}

const round = (value: number): number => Math.round(value * 10) / 10;

const name = (words: string, y: number): string => `<text class="name" x="0" y="${y + 15}">${escapeHtml(words)}</text>`;

function bar(facts: PlanFacts, step: PlanStep, i: number, x: (min: number) => number, y: number): string {
  const [from, to] = [x(step.from.min), x(step.to.min)];
  const critical = step.critical ? ' critical' : '';
  const middle = y + 4 + BAR / 2;
  const says = `${step.from.at} ${namedStep(facts, step)}${step.minutes === 0 ? '' : ` (${lengthOf(step.minutes)})`}`;
  // What takes no time that anybody says is a point.
  const mark =
    step.minutes === 0
      ? `<circle class="${kindOf(step)}${critical}" cx="${from}" cy="${middle}" r="5">${title(says)}</circle>`
      : `<rect class="${kindOf(step)}${critical}" x="${from}" y="${y + 4}" width="${round(Math.max(2, to - from))}" height="${BAR}">${title(says)}</rect>`;
  const isLate = step.may_wait_min !== null && step.waits_min > step.may_wait_min;
  const wait =
    step.waits_min === 0
      ? ''
      : `<line class="${isLate ? 'late' : 'waits'}" x1="${to}" y1="${middle}" x2="${x(step.to.min + step.waits_min)}" y2="${middle}"/>`;
  const end = Math.max(to, x(step.to.min + step.waits_min));
  return `${wait}${mark}<text x="${round(end + 8)}" y="${y + 16}">${i + 1}</text>`;
}

const title = (words: string): string => `<title>${escapeHtml(words)}</title>`;

function kindOf({ oven_turns: turns, hands, spent }: PlanStep): Kind {
  if (turns.length > 0) return 'oven';
  return hands ? 'hands' : spent === 'cooking' ? 'heat' : 'waiting';
}

/** Minutes from one line to the next, so that there are no more than a dozen. */
const STEPS_MIN = [15, 30, 60, 120, 240, 360, 720, 1440, 2880, 10_080];
const MOST_LINES = 12;

function hours(facts: PlanFacts, x: (min: number) => number, bottom: number): readonly string[] {
  const [h = 0, m = 0] = facts.serve.split(':').map(Number);
  const serve = h * 60 + m;
  const span = -facts.start.min;
  const each = STEPS_MIN.find((step) => span / step <= MOST_LINES) ?? span;
  const lines: string[] = [];
  // On the full hours of the clock.
  for (let at = Math.ceil((serve + facts.start.min) / each) * each; at <= serve; at += each) {
    const ofDay = ((at % 1440) + 1440) % 1440;
    const label = `${String(Math.floor(ofDay / 60)).padStart(2, '0')}:${String(ofDay % 60).padStart(2, '0')}`;
    const left = x(at - serve);
    lines.push(
      `<line x1="${left}" y1="${HEAD - 8}" x2="${left}" y2="${bottom}"/><text x="${left}" y="14">${label}</text>`,
    );
  }
  return lines;
}
