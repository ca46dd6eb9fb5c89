/**
 * Knows the table of measures: each part's against what is usual for its kind, what would mend one, and the one that is being turned.
 * Refuses to work anything out.
 */
import { capital } from '../../../recipe/words.ts';
import { escapeHtml } from '../../escape-html.ts';
import type { ReportMeasure, ReportPart } from '../../report-shape.ts';
import type { Turned, ViewFacts } from '../facts.ts';
import { namesIn } from '../figures.ts';
import type { ViewFinding } from '../finding.ts';
import { mark } from '../marks.ts';
import { bandShown, measureWords, spanText, valueText } from './figures.ts';
import { emptyStrip, hatchedStrip, type Scale, scaleOf, strip } from './strip.ts';
import { slider, turnCell, turnStart } from './turn.ts';

export function measuresTable(facts: ViewFacts): string {
  const held = facts.report.parts.filter((part) => part.measures.length > 0);
  if (held.length === 0) return noKind(facts);
  const turned = facts.mode === 'live' ? facts.turned() : undefined;
  return `<table class="measures stack">
<caption class="unseen">Governing measures against what is usual</caption>
<thead><tr><th scope="col">What governs it</th><th scope="col" class="n">now, %</th><th scope="col" class="strip"><span class="thirds"><span>less</span><span>usual</span><span>more</span></span></th><th scope="col" class="n">usual, %</th><th scope="col" class="wide mend">${facts.mode === 'live' ? 'what would mend it' : ''}</th></tr></thead>
${held.map((part) => partRows(facts, part, turned)).join('\n')}
</table>
${key(facts)}
${withoutKind(facts.report.parts)}`;
}

function noKind({ report }: ViewFacts): string {
  const listed = report.parts.some((part) => part.ingredients.length > 0);
  return listed
    ? '<p class="empty"><b>No part says what kind it is</b>, so nothing is held against what is usual. Write <b>as shortcrust</b>, or another kind, behind the part’s name.</p>'
    : '<p class="empty"><b>No ingredient is listed</b>, so there is nothing to hold against what is usual.</p>';
}

function withoutKind(parts: readonly ReportPart[]): string {
  const names = parts.filter((p) => p.kind === null && p.ingredients.length > 0).map((p) => p.name || 'the list');
  if (names.length === 0) return '';
  const last = names.pop() ?? '';
  const [said, verb] = names.length === 0 ? [last, 'says'] : [`${names.join(', ')} and ${last}`, 'say'];
  return `<p class="soft measure">${escapeHtml(capital(said))} ${verb} no kind, so nothing is held against ${verb === 'say' ? 'them' : 'it'}.</p>`;
}

/** What the shapes mean, once; only of those that are drawn. */
function key({ mode }: ViewFacts): string {
  const sign = (drawn: string, words: string): string =>
    `<span><svg class="draw" aria-hidden="true">${drawn}</svg>${words}</span>`;
  const signs = [
    sign(
      '<rect class="band" width="22" height="10"/><line class="edge" x1="1" x2="1" y2="10"/><line class="edge" x1="21" x2="21" y2="10"/>',
      'usual for the kind',
    ),
    sign('<circle class="ink" cx="11" cy="5" r="4.5"/>', 'now'),
    sign('<line class="span" x1="2" x2="20" y1="5" y2="5"/>', 'as far as its weight is known'),
  ];
  if (mode === 'live') signs.push(sign('<circle class="after" cx="11" cy="5" r="4.2"/>', 'after the fix'));
  return `<p class="key">${signs.join('')}</p>`;
}

function partRows(facts: ViewFacts, part: ReportPart, turned: Turned | undefined): string {
  const kind = part.kind === null ? '' : ` <small>as ${escapeHtml(part.kind)}</small>`;
  const name = part.name === '' ? 'The list' : capital(part.name);
  const rows = part.measures.map((measure) => measureRow(facts, part, measure, turned));
  return `<tbody class="part"><tr><th scope="rowgroup" colspan="2">${escapeHtml(name)}${kind}</th><td class="strip">${emptyStrip()}</td><td></td><td class="wide"></td></tr>
${rows.join('\n')}
</tbody>`;
}

function measureRow(facts: ViewFacts, part: ReportPart, measure: ReportMeasure, turned: Turned | undefined): string {
  const { name, band } = measure;
  const finding = facts.findings.find(
    (f) => f.measure?.part === part.name && f.measure.name === name && f.accepted === undefined,
  );
  const row: Row = {
    facts,
    part,
    measure,
    finding,
    scale: scaleOf(band),
    turned: turned?.part === part.name && turned.measure === name ? turned : undefined,
    after: finding?.fixes[0]?.after?.(),
  };
  const words = escapeHtml(measureWords(name));
  const level = outside(measure) ? (finding?.level ?? 'note') : undefined;
  const head = level === undefined ? words : `${mark(level, true)} <b>${words}</b>`;
  const cells = `${nowCell(measure)}<td class="strip">${drawing(row, level)}</td><td class="n">${bandShown(name, band)}</td>`;
  const key = escapeHtml(`measure-${part.name}-${name}`);
  const mend = (place: string): string =>
    row.turned === undefined ? mendCell(row) : turnCell(row.turned, measure, facts, place);
  const isSaid = row.turned !== undefined || finding !== undefined || cannotTurn(measure);
  const wide = mend('');
  const narrow =
    wide === '' || !isSaid
      ? ''
      : `\n<tr class="narrow fix"><td colspan="2">${mend('-narrow')}</td><td class="strip">${emptyStrip()}</td><td></td></tr>`;
  return `<tr data-key="${key}"><th scope="row">${head}</th>${cells}<td class="wide mend">${wide}</td></tr>${narrow}`;
}

/** One row of the table, with all that it draws. */
interface Row {
  readonly facts: ViewFacts;
  readonly part: ReportPart;
  readonly measure: ReportMeasure;
  readonly finding: ViewFinding | undefined;
  readonly scale: Scale;
  readonly turned: Turned | undefined;
  readonly after: number | undefined;
}

const outside = ({ verdict }: ReportMeasure): boolean => verdict !== null && verdict !== 'ok';

function nowCell(measure: ReportMeasure): string {
  const { name, value_low: low, value_high: high } = measure;
  if (low === null || high === null) return '<td class="n unknown">not known</td>';
  const text = spanText(name, low, high);
  return `<td class="n">${outside(measure) ? `<b>${text}</b>` : text}</td>`;
}

function drawing(
  { facts, part, finding, scale, measure, turned, after }: Row,
  level: ViewFinding['level'] | undefined,
): string {
  const { value_low: low, value_high: high } = measure;
  if (low === null || high === null) return hatchedStrip(scale);
  const isOpen = measure.hangs_on.length > 0;
  const drawn = strip(scale, { low, high, level, isOpen, after: turned?.to ?? after, turned: turned !== undefined });
  if (turned !== undefined) return `${drawn}${slider(turned, measure, scale)}`;
  // Narrow there is no room for the words: the drawing itself is pressed.
  const isTurned = mayTurn(facts) && !cannotTurn(measure) && finding === undefined;
  return isTurned ? `${drawn}${turnStart(part.name, measure, undefined)('narrow')}` : drawn;
}

const mayTurn = ({ mode, readOnly }: ViewFacts): boolean => mode === 'live' && readOnly === undefined;

/** What is not known, or hangs on what nobody knows, is not turned: it is said why. */
const cannotTurn = ({ value, hangs_on: open }: ReportMeasure): boolean => value === null || open.length > 0;

/** The grams of the first fix, what it brings, and the buttons; why a value is not known; or the way to turn it. */
function mendCell(row: Row): string {
  const { facts, part, measure, finding, after } = row;
  if (measure.value === null) return measure.why === null ? '' : `<small>${escapeHtml(capital(measure.why))}.</small>`;
  if (measure.hangs_on.length > 0)
    return `<small>whatever ${namesIn(measure.hangs_on)} ${measure.hangs_on.length > 1 ? 'bring' : 'brings'}</small>`;
  if (!mayTurn(facts)) return '';
  const turn = turnStart(part.name, measure, after);
  const [fix] = finding?.fixes ?? [];
  if (finding === undefined || fix === undefined)
    return finding === undefined ? turn('plain') : `<span class="fixes">${turn('')}</span>`;
  const [, what = fix.title, by = ''] = /^Write (.+?)(?:, (.*))?$/.exec(fix.title) ?? [];
  const brings =
    after === undefined
      ? ''
      : `, brings <span class="looked">${valueText(measure.name, after)}${measureWords(measure.name).includes(',') ? '' : ' %'}</span>`;
  const arg = escapeHtml(
    JSON.stringify({ code: finding.code, line: finding.line, start: finding.start, title: fix.title }),
  );
  return `<b>${escapeHtml(what)}</b>${by === '' ? '' : `, ${escapeHtml(by)}`}${brings}<span class="fixes"><button data-do="fix" data-arg="${arg}" title="${escapeHtml(fix.title)}">Write it</button> ${turn('')}</span>`;
}
