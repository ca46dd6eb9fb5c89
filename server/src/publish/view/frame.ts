/**
 * Knows what stands around every view: the recipe's name and state, what was found, its facts, the six links, and the caution at the foot.
 * Refuses to know what a view shows.
 */
import { gramsText } from '../../measure/number-text.ts';
import { litresText } from '../../recipe/measures/pan-size.ts';
import { escapeHtml } from '../escape-html.ts';
import { minutesText } from '../reader-page.ts';
import { doing, fieldDoing } from './controls.ts';
import type { HrefOf, ViewFacts } from './facts.ts';
import type { Level, ViewFinding } from './finding.ts';
import { VIEWS, type ViewName } from './look.ts';
import type { Layout } from './margin.ts';
import { DEFS, mark } from './marks.ts';
import { missingBases, nothingYet } from './nothing.ts';

const TITLES: Readonly<Record<ViewName, string>> = {
  recipe: 'Recipe',
  formula: 'Formula',
  'made-of': 'Made of',
  day: 'Day',
  label: 'Cost and label',
  trials: 'Trials',
};

/** The page around its sections: what stands in `<body>`. */
export function framed(facts: ViewFacts, view: ViewName, sections: string, layout?: Layout): string {
  if (facts.nothing !== undefined) return `${DEFS}\n<main>\n${nothingYet(facts.nothing, facts)}\n</main>`;
  return `${DEFS}
<header>
<h1>${escapeHtml(facts.page.title)}</h1>
${stateLine(facts, view)}
${missingBases(facts)}${factList(facts)}${readOnly(facts)}
</header>
${facts.mode === 'print' ? '' : viewLinks(view, facts.hrefOf)}
<main${layout === undefined ? '' : ` class="${layout}"`}>
${sections}
</main>
<footer>Estimates come with a range; a thermometer decides. Read every label: foods of one name differ by maker.</footer>`;
}

function stateLine(facts: ViewFacts, view: ViewName): string {
  const { mark: of, strong, rest } = facts.state;
  const said = `${mark(of)} <b>${escapeHtml(strong)}</b>${rest === '' ? '' : ` ${escapeHtml(rest)}`}`;
  return `<p class="state"><span>${said}</span>${facts.mode === 'read' ? '' : counts(facts, view)}</p>`;
}

const LEVELS: readonly Level[] = ['error', 'warning', 'note'];
/** With fewer the page itself is the list. */
const WORTH_A_LIST = 4;

function counts(facts: ViewFacts, view: ViewName): string {
  const open = facts.findings.filter(({ accepted }) => accepted === undefined);
  if (open.length === 0) return '';
  const each = LEVELS.flatMap((level) => {
    const of = open.filter((finding) => finding.level === level);
    const [first] = of;
    return first === undefined ? [] : [countOf(level, of.length, first, facts, view)];
  });
  const all =
    facts.mode === 'live' && open.length >= WORTH_A_LIST ? ` ${doing('problems', {}, 'All in a list', 'plain')}` : '';
  return ` <span class="counts">${each.join(' ')}${all}</span>`;
}

/** The number of one level, as a link to the first of it. */
function countOf(level: Level, count: number, first: ViewFinding, facts: ViewFacts, view: ViewName): string {
  const words = `${count} ${level}${count === 1 ? '' : 's'}`;
  if (facts.mode !== 'live' || facts.looking !== undefined) return `<span>${mark(level)} ${words}</span>`;
  return `<span>${mark(level)} <a href="#${first.key}"${view === 'recipe' ? '' : ' data-view="recipe"'}>${words}</a></span>`;
}

interface Fact {
  readonly name: string;
  /** HTML. */
  readonly value: string;
  readonly small?: string;
}

function factList(facts: ViewFacts): string {
  const rows = [makes(facts), weighs(facts), ...pan(facts), ...takes(facts)].map(
    ({ name, value, small }) =>
      `<div><dt>${name}</dt><dd>${value}${small === undefined ? '' : `<small>${escapeHtml(small)}</small>`}</dd></div>`,
  );
  return `<dl class="facts">\n${rows.join('\n')}\n</dl>`;
}

const unknown = (words: string): string => `<span class="unknown">${escapeHtml(words)}</span>`;
const figure = (text: string, differs: boolean): string =>
  differs ? `<span class="looked">${escapeHtml(text)}</span>` : escapeHtml(text);

function makes({ mode, makes, page, differs, report }: ViewFacts): Fact {
  const each = report.yield?.each_g ?? null;
  const small = each === null ? {} : { small: `${gramsText(each)} g each` };
  if (page.makes === undefined) return { name: 'Makes', value: unknown('not said') };
  if (makes === undefined || mode !== 'live')
    return { name: 'Makes', value: figure(page.makes, differs.makes), ...small };
  const { amount, noun, counted } = makes;
  const field = fieldDoing('look-makes', {}, amount, `how many ${noun}`);
  const step = (by: 1 | -1) =>
    doing('look-makes', { to: amount + by }, by === 1 ? '+' : '−', '', by === 1 ? 'one more' : 'one fewer');
  // One gram more is no other size.
  const [fewer, more] = [counted && amount > 1 ? step(-1) : '', counted ? step(1) : ''];
  return {
    name: 'Makes',
    value: `<span class="stepper">${fewer}${field}${more}</span> ${escapeHtml(noun)}`,
    ...small,
  };
}

/** Names that are said before the rest is counted. */
const MOST_NAMES = 2;

function weighs(facts: ViewFacts): Fact {
  const { report, differs } = facts;
  const { mass_g: mass, out_of_oven_g: left } = report;
  if (mass !== null) {
    const small =
      left === null
        ? {}
        : left.high === null
          ? { small: `at least ${left.low} g out of the oven` }
          : { small: `${left.low}–${left.high} g out of the oven` };
    return { name: 'Weighs', value: figure(`${gramsText(mass)} g`, differs.makes), ...small };
  }
  const lacking = report.parts.flatMap(({ ingredients }) =>
    ingredients.flatMap(({ name, grams, optional }) => (grams === null && !optional ? [name] : [])),
  );
  const unread = report.parts.flatMap(({ not_understood: lines }) => lines.map(({ where }) => where));
  const bases = facts.missing.map(({ name }) => `what ${name} brings`);
  const names = [...new Set([...bases, ...lacking, ...unread])];
  const more = names.length - MOST_NAMES;
  const said = more > 0 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : names.join(' and ');
  return { name: 'Weighs', value: unknown('not known'), ...(said !== '' && { small: `for ${said}` }) };
}

function pan({ page, differs, fill, findings, looking }: ViewFacts): Fact[] {
  if (page.pan === undefined) return [];
  const fact = { name: 'Pan', value: figure(page.pan, differs.pan) };
  if (fill === undefined) return [fact];
  const judged =
    looking !== undefined || findings.some(({ code, accepted }) => code.startsWith('pan-') && accepted === undefined);
  const held = `${litresText(fill)} of ${litresText({ low: fill.panMl, high: fill.panMl })}`.replace(/ l of/, ' of');
  return [{ ...fact, small: judged || fill.high > fill.panMl ? held : `${held}, as usual` }];
}

function takes({ report: { times_min: times }, page }: ViewFacts): Fact[] {
  if (!page.sections.some(({ steps }) => steps.length > 0)) return [];
  if (times.total === null) return [{ name: 'Takes', value: unknown('not said') }];
  const work =
    times.hands_on === null || times.hands_on === 0 ? 'at work: not said' : `${minutesText(times.hands_on)} at work`;
  return [{ name: 'Takes', value: minutesText(times.total), small: work }];
}

const readOnly = ({ mode, readOnly: why }: ViewFacts): string =>
  mode === 'live' && why !== undefined ? `\n<p class="soft small">${escapeHtml(why)}</p>` : '';

function viewLinks(view: ViewName, hrefOf: HrefOf = (name) => `#${name}`): string {
  const links = VIEWS.map(
    (name) =>
      `<a href="${escapeHtml(hrefOf(name))}" data-view="${name}"${name === view ? ' aria-current="page"' : ''}>${TITLES[name]}</a>`,
  );
  return `<nav class="views" aria-label="Views of the recipe">\n${links.join('\n')}\n</nav>`;
}
