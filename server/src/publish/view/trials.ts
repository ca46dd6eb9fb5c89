/**
 * Knows view 6: what the trials measured against what is written, and the trials themselves, newest first.
 * Refuses to work anything out: it shows what the facts say.
 */
import { capital } from '../../recipe/words.ts';
import { shortDate } from '../date-text.ts';
import { escapeHtml } from '../escape-html.ts';
import type { Report, ReportMeasured, ReportTextChange, ReportTrial } from '../report-shape.ts';
import { doing } from './controls.ts';
import type { ViewFacts } from './facts.ts';
import { lineLink } from './figures.ts';
import { mark } from './marks.ts';
import { chartOf } from './trial-chart.ts';
import { type MeasuredUnit, rangeText, unitOf } from './trial-units.ts';

/** The content of `<section id="trials">`. */
export function trialsView(facts: ViewFacts): string {
  const { report } = facts;
  const begin = canWrite(facts) ? doing('trial', {}, 'Begin a trial of today') : '';
  if (report.trials.length === 0)
    return `<h2>Trials</h2>\n<p class="empty"><b>None yet.</b> Whoever cooks it writes down the day, the name and what was measured. ${begin}</p>`;
  const sections = [
    report.measured.length === 0 ? '' : chartSection(facts),
    '<h2>The trials</h2>',
    trialTable(facts),
    report.measured.some(({ values }) => values.some(({ outside }) => outside))
      ? '<p class="small soft">Bold: outside what is written now, or of a weight what is usual.</p>'
      : '',
    begin === '' ? '' : `<p>${begin}</p>`,
  ];
  return sections.filter((section) => section !== '').join('\n');
}

const canWrite = ({ mode, readOnly }: ViewFacts): boolean => mode === 'live' && readOnly === undefined;

function chartSection({ report, look }: ViewFacts): string {
  const { trials, measured } = report;
  const charts = measured.map((of) => {
    const unit = unitOf(of, look.degrees ?? 'C');
    const said = captionOf(of, unit);
    return `<figure><figcaption><b>${escapeHtml(titleOf(of, unit))}</b> <span class="soft">${escapeHtml(said)}</span></figcaption>
${chartOf(trials, of, unit, `${titleOf(of, unit)}, ${said}`)}</figure>`;
  });
  return `<h2>Measured against what is written</h2>
<div class="small-multiples">
${charts.join('\n')}
</div>
${keyOf(report)}`;
}

const titleOf = ({ what, said }: ReportMeasured, { sign }: MeasuredUnit): string =>
  what === 'took'
    ? `Took ${said}, ${sign}`
    : `${capital(what)}, ${sign}${said === '' ? '' : ` ${what === 'used' ? `of ${said}` : said}`}`;

/** What is written of it now, what is usual where nothing is, and what is estimated. */
function captionOf({ written, usual, estimate }: ReportMeasured, unit: MeasuredUnit): string {
  const text = (range: { readonly low: number; readonly high: number }): string => rangeText(range, unit);
  const now =
    written !== null
      ? `written ${text(written)}`
      : usual !== null
        ? `not written; ${text(usual)} is usual`
        : 'not written';
  if (estimate === null) return now;
  const rests =
    estimate.trials === 0
      ? 'with no trial'
      : estimate.trials === 1
        ? 'with one trial'
        : `with ${estimate.trials} trials`;
  const likely = rangeText({ low: estimate.likely, high: estimate.likely }, unit);
  return `${now}; likely ${likely}, ${text(estimate).replace('–', ' to ')}, ${rests}`;
}

function keyOf({ trials, measured }: Report): string {
  const seen = (stands: boolean): boolean =>
    measured.some(({ values }) => values.some(({ trial }) => (trials[trial]?.as_it_stands === true) === stands));
  const unmarked = trials.some(({ as_it_stands: stands }) => stands === null);
  const changes = trials.flatMap(({ changed_after: change }) => change ?? []);
  const [only, ...others] = changes;
  const changed =
    only === undefined ? '' : others.length === 0 ? `changed${changeWords(only)}` : 'the text was changed';
  const items: readonly (readonly [boolean, string, string])[] = [
    [seen(true), '<circle class="ink" cx="11" cy="5" r="3.6"/>', 'as the text stands now'],
    [
      seen(false),
      '<circle class="hollow" cx="11" cy="5" r="3.6"/>',
      unmarked ? 'of an earlier text, or of one that the trial does not mark' : 'of an earlier text',
    ],
    [only !== undefined, '<line class="serve" x1="11" x2="11" y2="10"/>', changed],
    [
      measured.some(({ written }) => written !== null),
      measured.some(({ written }) => written !== null && written.low < written.high)
        ? '<rect class="band" width="22" height="10"/>'
        : '<line class="edge" x1="0" x2="22" y1="5" y2="5"/>',
      'written',
    ],
  ];
  const shown = items.flatMap(([isSeen, drawn, words]) =>
    isSeen ? [`<span><svg class="draw" aria-hidden="true">${drawn}</svg>${escapeHtml(words)}</span>`] : [],
  );
  return `<p class="key">${shown.join('')}</p>`;
}

/** At most this many lines are told; the comparison has them all. */
const MOST_TOLD = 4;

/** `: 70 % water; Bake at 230 C`, as far as what was written then still stands; else ` in one place`. */
function changeWords({ places, now }: ReportTextChange): string {
  const told = now.slice(0, MOST_TOLD).map(({ words }) => words);
  const rest = places - told.length;
  const number = rest === 1 ? 'one' : String(rest);
  const noun = rest === 1 ? 'place' : 'places';
  if (told.length === 0) return ` in ${number} ${noun}`;
  return `: ${told.join('; ')}${rest > 0 ? `, and in ${number} more ${noun}` : ''}`;
}

function trialTable(facts: ViewFacts): string {
  const { trials, measured } = facts.report;
  const units = measured.map((of) => unitOf(of, facts.look.degrees ?? 'C'));
  const isSeen = trials.some(({ saw }) => saw.length > 0);
  const columns = measured.length + (isSeen ? 4 : 3);
  const heads = measured.map(
    (of, i) =>
      `<th scope="col" class="n">${escapeHtml(headOf(of, measured))},<br>${escapeHtml(units[i]?.sign ?? '')}</th>`,
  );
  const years = new Set(trials.map(({ date }) => date.slice(0, 4)));
  const rows = trials.map((trial, i) => {
    const values = measured.map((of, at) => valueCell(of, i, units[at] as MeasuredUnit));
    const saw = trial.saw.join(' ');
    const narrow =
      saw === ''
        ? ''
        : `\n<tr class="narrow"><td></td><td colspan="${columns - 2}" class="soft">${escapeHtml(saw)}</td></tr>`;
    const said = (words: string | null): string =>
      words === null ? '<td class="unknown">not said</td>' : `<td>${escapeHtml(words)}</td>`;
    return `<tbody data-key="trial-${trial.line}">
${changeRow(facts, trial, i === trials.length - 1, columns)}<tr><th scope="row">${lineLink(facts.mode === 'live' ? trial.line : undefined, shortDate(trial.date, years.size > 1))}</th>${said(trial.by)}${values.join('')}${isSeen ? `<td class="wide">${escapeHtml(saw)}</td>` : ''}${said(trial.verdict)}</tr>${narrow}
</tbody>`;
  });
  return `<div class="scroll"><table class="stack trials"><caption class="unseen">Trials, newest first</caption>
<thead><tr><th scope="col">Day</th><th scope="col">by</th>${heads.join('')}${isSeen ? '<th scope="col" class="wide">saw</th>' : ''}<th scope="col">verdict</th></tr></thead>
${rows.toReversed().join('\n')}
</table></div>`;
}

/** The thing by itself, where several of a kind were measured. */
const headOf = ({ what, said }: ReportMeasured, all: readonly ReportMeasured[]): string =>
  said === '' || all.filter((of) => of.what === what).length === 1 ? what : `${what} ${said}`;

/** Where the text was changed after a trial, with what opens the two beside each other. */
function changeRow(facts: ViewFacts, trial: ReportTrial, isLast: boolean, columns: number): string {
  const { changed_after: change, date } = trial;
  if (change === null) return '';
  const compare = facts.mode === 'live' ? ` ${doing('compare', { day: date }, 'Compare', 'plain')}` : '';
  const words = `${isLast ? 'Changed since' : 'Changed here'}${changeWords(change)}`;
  return `<tr><td colspan="${columns}" class="soft divide">${mark('changed')} ${escapeHtml(words)}.${compare}</td></tr>\n`;
}

function valueCell({ values }: ReportMeasured, trial: number, unit: MeasuredUnit): string {
  const own = values.filter((value) => value.trial === trial);
  if (own.length === 0) return '<td class="n unknown">not measured</td>';
  const texts = own.map((value) => {
    const text = escapeHtml(rangeText(value, unit));
    return value.outside ? `<b>${text}</b>` : text;
  });
  return `<td class="n">${texts.join(', ')}</td>`;
}
