/**
 * Knows view 3, where the water, the fat and the sugar sit.
 * Refuses to work anything out: it shows what the facts say.
 */
import { capital } from '../../recipe/words.ts';
import { escapeHtml } from '../escape-html.ts';
import { type Report, type ReportMadeOf, SUBSTANCES, type Substance } from '../report-shape.ts';
import type { ViewFacts } from './facts.ts';
import { bar, figure, figureCell, lineLink, namesIn } from './figures.ts';
import { mark } from './marks.ts';

const WORDS: Readonly<Record<Substance, string>> = {
  water: 'water',
  fat: 'fat',
  protein: 'protein',
  sugar: 'sugars',
  starch: 'starch',
  salt: 'salt',
  alcohol: 'alcohol',
};

/** The content of `<section id="made-of">`. */
export function madeOfView(facts: ViewFacts): string {
  const { parts, whole } = facts.report.made_of;
  if (parts.every(({ weighed_g }) => weighed_g === 0))
    return `<h2>What it is made of</h2>
<p class="empty"><b>No ingredient is weighed</b>, so what it is made of is not known.</p>`;
  const many = parts.length > 1;
  return `<h2>${many ? 'What each is made of' : 'What it is made of'}</h2>
<p class="soft">${sayScale(facts.report)}</p>
${notWeighed(parts)}
${tableOf(many ? parts : [], whole)}
${comesFrom(facts)}`;
}

function sayScale({ made_of: { parts, whole } }: Report): string {
  const relative = parts.some((part) => part.relative);
  const grams = relative
    ? whole === null
      ? '; a part written in percentages has no grams, so the whole is not known'
      : '; it is written in percentages, so there are no grams'
    : ', with grams';
  return `Per cent${parts.length > 1 ? ' of each part' : ''}${grams}. Before cooking. All bars have one scale: the full width is 100 %.`;
}

/** What stands in no figure of the view. */
function notWeighed(parts: readonly ReportMadeOf[]): string {
  const names = [...new Set(parts.flatMap((part) => part.not_weighed))];
  if (names.length === 0) return '';
  return `<p class="finding measure">${mark('note', true)} Of what is weighed: ${namesIn(names)} ${names.length === 1 ? 'is' : 'are'} in no figure here.</p>`;
}

/** More columns than these are scrolled where it is narrow. */
const MOST_ABREAST = 5;

function tableOf(parts: readonly ReportMadeOf[], whole: ReportMadeOf | null): string {
  const columns: readonly (ReportMadeOf | null)[] = [...parts, whole];
  const heads = columns.map(
    (of) =>
      `<th scope="col"><b>${escapeHtml(of?.part == null ? 'The whole' : capital(of.part || 'the list'))}</b></th>`,
  );
  const rows = SUBSTANCES.map((substance) => {
    const cells = columns.map((of) => (of === null ? UNKNOWN : holdsCell(of, substance)));
    return `<tr><th scope="row">${capital(WORDS[substance])}</th>${cells.join('')}</tr>`;
  });
  return `<div class="scroll"><table class="made${columns.length > MOST_ABREAST ? ' many' : ''}">
<caption class="unseen">What ${parts.length > 0 ? 'each part' : 'it'} is made of</caption>
<thead><tr><td></td>${heads.join('')}</tr></thead>
<tbody>
${parts.length > 0 && whole !== null ? `${shareRow(parts, whole)}\n` : ''}${rows.join('\n')}
<tr><th scope="row">Rest</th>${columns.map(restCell).join('')}</tr>
</tbody>
</table></div>`;
}

const UNKNOWN = '<td class="unknown">not known</td>';

function shareRow(parts: readonly ReportMadeOf[], whole: ReportMadeOf): string {
  const cells = [...parts, whole].map(({ weighed_g: grams }) => {
    const percent = whole.weighed_g > 0 ? (grams / whole.weighed_g) * 100 : 0;
    return `<td>${figures(`<b>${figure(percent)}</b>`, grams, whole.relative)}${bar([{ class: 'ink', width: percent }])}</td>`;
  });
  return `<tr class="share"><th scope="row">Of all</th>${cells.join('')}</tr>`;
}

/** Per cent, grams and their bar; what nobody knows is hatched as long as it could be. */
function holdsCell({ weighed_g: all, holds, relative }: ReportMadeOf, substance: Substance): string {
  const { grams, lacking_g: lacking } = holds[substance];
  if (all <= 0) return UNKNOWN;
  const [percent, unknown] = [(grams / all) * 100, (lacking / all) * 100];
  if (lacking === 0)
    return grams === 0
      ? '<td class="zero">0</td>'
      : `<td>${figures(`<b>${figure(percent)}</b>`, grams, relative)}${bar([{ class: 'bar', width: percent }])}</td>`;
  const hatched = { class: 'notknown', from: percent, width: unknown } as const;
  // A trace of what is known says nothing of the rest.
  if (percent < 0.05) return `<td><span class="unknown">not known</span>${bar([hatched])}</td>`;
  const least = figures(`at least <b>${figure(percent)}</b>`, grams, relative);
  return `<td>${least}${bar([{ class: 'bar', width: percent }, hatched])}</td>`;
}

/** What is left of it: fibre, minerals, acids; not known while anything else is not. */
function restCell(of: ReportMadeOf | null): string {
  if (of === null || of.weighed_g <= 0 || SUBSTANCES.some((substance) => of.holds[substance].lacking_g > 0))
    return UNKNOWN;
  const named = SUBSTANCES.reduce((sum, substance) => sum + of.holds[substance].grams, 0);
  const grams = Math.max(0, of.weighed_g - named);
  const percent = (grams / of.weighed_g) * 100;
  return percent < 0.05
    ? '<td class="zero">0</td>'
    : `<td>${figures(`<b>${figure(percent)}</b>`, grams, of.relative)}${bar([{ class: 'bar', width: percent }])}</td>`;
}

const figures = (percent: string, grams: number, relative: boolean): string =>
  `<span class="figs"><span>${percent}</span>${relative ? '' : ` <small>${escapeHtml(figure(grams))} g</small>`}</span>`;

/** One ingredient's share of what is asked for. */
interface Source {
  readonly line: number;
  readonly name: string;
  readonly part: string;
  readonly grams: number | null;
  /** All that it weighs: it holds no more than that. */
  readonly most: number;
}

function comesFrom(facts: ViewFacts): string {
  const { report, look, ownLine } = facts;
  const { parts, whole } = report.made_of;
  const asked = parts.findIndex(({ part }) => part === look.madeOf?.part);
  // Grams of a part in percentages cannot be held against another's.
  const at = parts.length === 1 ? 0 : asked >= 0 ? asked : whole === null ? 0 : -1;
  const substance = SUBSTANCES.find((each) => each === look.madeOf?.substance) ?? 'water';
  const of = parts[at];
  const sources = sourcesIn(report, substance, of?.part ?? null);
  const said = parts.length === 1 || of === undefined ? 'the whole' : of.part || 'the list';
  const relative = (of ?? whole)?.relative === true;
  const table =
    sources.length === 0
      ? `<p class="empty">None of it has any ${WORDS[substance]}.</p>`
      : sourceTable(sources, { substance, said, withParts: of === undefined, relative, ownLine });
  return `${heading(facts, substance, at, said)}\n${table}`;
}

function heading({ report, mode }: ViewFacts, substance: Substance, at: number, said: string): string {
  const { parts, whole } = report.made_of;
  if (mode !== 'live') return `<h2>Where the ${WORDS[substance]} of ${escapeHtml(the(said))} comes from</h2>`;
  const substances = SUBSTANCES.map((each) => option(each, WORDS[each], each === substance));
  const named = parts.map(({ part }, i) => option(`part:${part}`, part || 'list', i === at));
  const choice =
    parts.length === 1
      ? 'whole'
      : `<select aria-label="part" data-key="made-of-part" data-do="made-of" data-look data-arg='{"choose":"part"}'>${named.join('')}${whole === null ? '' : option('', 'whole', at < 0)}</select>`;
  return `<h2>Where the <select aria-label="substance" data-key="made-of-substance" data-do="made-of" data-look data-arg='{"choose":"substance"}'>${substances.join('')}</select> of the ${choice} comes from</h2>`;
}

const the = (name: string): string => (name.startsWith('the ') ? name : `the ${name}`);

const option = (value: string, words: string, chosen: boolean): string =>
  `<option value="${escapeHtml(value)}"${chosen ? ' selected' : ''}>${escapeHtml(words)}</option>`;

/** Most first; what is not known last. */
function sourcesIn(report: Report, substance: Substance, part: string | null): readonly Source[] {
  const within = part === null ? report.parts : report.parts.filter(({ name }) => name === part);
  const sources = within.flatMap(({ name: of, ingredients, not_understood: unread }): readonly Source[] => {
    const unreadLines = new Set(unread.map(({ line }) => line));
    return ingredients.flatMap(({ line, name, grams, optional, holds_g: holds }) => {
      if (optional || grams === null || unreadLines.has(line)) return [];
      const held = holds?.[substance] ?? null;
      return held === 0 ? [] : [{ line, name, part: of, grams: held, most: grams }];
    });
  });
  return sources.toSorted((a, b) => (b.grams ?? -1) - (a.grams ?? -1));
}

interface Asked {
  readonly substance: Substance;
  readonly said: string;
  readonly withParts: boolean;
  readonly ownLine: ViewFacts['ownLine'];
  /** There are no grams, only shares. */
  readonly relative: boolean;
}

function sourceTable(sources: readonly Source[], { substance, said, withParts, relative, ownLine }: Asked): string {
  const known = sources.reduce((sum, { grams }) => sum + (grams ?? 0), 0);
  const complete = sources.every(({ grams }) => grams !== null);
  const shareOf = (grams: number): number => (known > 0 ? (grams / known) * 100 : 100);
  const rows = sources.map(({ line, name, part, grams, most }) => {
    const where = withParts ? `<td class="soft wide">${escapeHtml(part)}</td>` : '';
    const [figures, drawn] =
      grams === null
        ? [
            `<td class="n unknown"${relative ? '' : ' colspan="2"'}>not known</td>`,
            bar([{ class: 'notknown', width: shareOf(most) }]),
          ]
        : [
            `${relative ? '' : figureCell(grams)}${figureCell(shareOf(grams))}`,
            bar([{ class: 'bar', width: shareOf(grams) }]),
          ];
    return `<tr data-key="from-${line}-${escapeHtml(name)}"><th scope="row">${lineLink(ownLine(line), name)}</th>${where}${figures}<td class="bars">${drawn}</td></tr>`;
  });
  const heads = [
    '<th scope="col">Ingredient</th>',
    withParts ? '<th scope="col" class="wide">part</th>' : '',
    relative ? '' : '<th scope="col" class="n">g</th>',
    `<th scope="col" class="n">${complete ? '%' : '% of what<br>is known'}</th>`,
    '<th scope="col" class="bars"><span class="unseen">drawn</span></th>',
  ];
  return `<table class="stack from"><caption class="unseen">${capital(WORDS[substance])} of ${escapeHtml(the(said))} by ingredient</caption>
<thead><tr>${heads.join('')}</tr></thead>
<tbody>
${rows.join('\n')}
</tbody></table>`;
}
