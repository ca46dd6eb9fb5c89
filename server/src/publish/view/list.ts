/**
 * Knows the list of a recipe on its page: by part, the amount to the right, the food and what is done to it, the other measure.
 * Refuses to work anything out.
 */
import { escapeHtml } from '../escape-html.ts';
import { isFree, nameAndRest, type PageIngredient, type PageSection } from '../reader-page.ts';
import { choice } from './controls.ts';
import type { Reading } from './facts.ts';
import type { ViewFinding } from './finding.ts';
import { gravest, type Notes } from './found.ts';
import { lookingBar } from './looking.ts';
import { lineWords, partHeading, partKey, rowMarks } from './rows.ts';

export function listSection(reading: Reading, notes: Notes): string {
  const listed = reading.page.sections.filter((s) => s.ingredients.length > 0);
  const linked = linkedIn(reading.page.sections);
  const isLong = listed.some((s) => s.ingredients.some(({ first }) => first.length > LONG));
  const key = (section: PageSection) =>
    reading.mode === 'live' ? ` data-key="list-${partKey(section, reading)}"` : '';
  const lists = listed.map((section) => {
    const heading =
      listed.length === 1 && reading.mode === 'read'
        ? ''
        : partHeading(section, reading, notes, linked.get(section.name));
    return `${heading}<ul class="list${isLong ? ' long' : ''}"${key(section)}>\n${rows(section, reading, notes, linked)}\n</ul>`;
  });
  const none = lists.length === 0 ? '<p class="empty"><b>No ingredient is written.</b> An amount opens one.</p>' : '';
  return `<section aria-labelledby="ingredients">
<div class="row"><h2 id="ingredients">Ingredients</h2>${choices(reading)}</div>
${lookingBar(reading)}${halfTyped(reading, notes)}<div class="read">
${none}${lists.join('\n')}
</div>
</section>`;
}

/** Characters that the narrow column of amounts has room for. */
const LONG = 9;

function choices({ mode, look }: Reading): string {
  if (mode !== 'live') return '';
  const measures = choice('look-measures', 'Which measure stands first', look.measures, [
    ['weight-first', 'Grams first'],
    ['measure-first', 'Measures first'],
  ]);
  const degrees = choice('look-degrees', 'Degrees', look.degrees, [
    ['C', '°C'],
    ['F', '°F'],
  ]);
  return measures + degrees;
}

/** The line that is being typed says nothing yet. */
function halfTyped(reading: Reading, notes: Notes): string {
  const line = typedLine(reading);
  if (line === undefined) return '';
  // What is wrong with half a line is no news to whoever types it.
  notes.tell(line);
  return `<p class="empty" role="status"><b>Line ${line} cannot be read yet.</b> It is left out below until it can.</p>\n`;
}

/** The line of the caret, where it is not understood. */
function typedLine({ page, line, mode }: Reading): number | undefined {
  const isTyped = page.sections.some(({ ingredients }) =>
    ingredients.some((i) => i.unread === true && i.line === line),
  );
  return mode === 'live' && isTyped ? line : undefined;
}

/** The sections that a list of another takes in, with the id of each. */
function linkedIn(sections: readonly PageSection[]): ReadonlyMap<string, string> {
  const named = new Set(sections.flatMap(({ ingredients }) => ingredients.flatMap(({ section }) => section ?? [])));
  return new Map(
    sections.flatMap(({ name, ingredients }, i): readonly [string, string][] =>
      named.has(name) && ingredients.length > 0 ? [[name, `part-${i + 1}`]] : [],
    ),
  );
}

function rows(section: PageSection, reading: Reading, notes: Notes, linked: ReadonlyMap<string, string>): string {
  const typed = typedLine(reading);
  const shown = section.ingredients.filter(({ line, unread }) => !(unread === true && line === typed));
  return shown
    .map((ingredient, i) => {
      const key = `i-${partKey(section, reading)}-${i}`;
      const cells = cellsOf(ingredient, i === 0, section, reading, notes, linked.get(ingredient.section ?? ''));
      // Of several foods on one line the last tells what was found there.
      const told = shown[i + 1]?.line === ingredient.line ? '' : notes.tell(ingredient.line);
      return `<li${rowMarks(key, ingredient.line, section, reading)}>${cells}${told}</li>`;
    })
    .join('\n');
}

function cellsOf(
  ingredient: PageIngredient,
  isStop: boolean,
  section: PageSection,
  reading: Reading,
  notes: Notes,
  leadsTo: string | undefined,
): string {
  const { line, second = '' } = ingredient;
  const found = line === section.line ? [] : notes.on(line);
  const ofAmount = found.filter((finding) => liesInAmount(finding, ingredient));
  const ofName = gravest(found.filter((finding) => !ofAmount.includes(finding)));
  const { name, rest } = nameAndRest(ingredient);
  const said = escapeHtml(name);
  const isLink = reading.mode !== 'live' && leadsTo !== undefined;
  const called = isLink ? `<a href="#${leadsTo}">${said}</a>` : lineWords(said, line, reading, isStop, ofName);
  const isAsked = ingredient.unread === true && found.some(({ code }) => code === 'missing-amount');
  const looked = reading.differs.amounts.has(ingredient) ? ' looked' : '';
  return [
    `<span class="amount${looked}">${amountOf(ingredient, isAsked, gravest(ofAmount))}</span>`,
    `<span class="name">${called}${rest === '' ? '' : `<span class="prep">${escapeHtml(rest)}</span>`}</span>`,
    `<span class="also">${escapeHtml(second)}</span>`,
  ].join(' ');
}

const liesInAmount = ({ start, end }: ViewFinding, { amountAt }: PageIngredient): boolean =>
  amountAt !== undefined && start >= amountAt.start && end <= amountAt.end;

function amountOf(ingredient: PageIngredient, isAsked: boolean, level: string | undefined): string {
  if (ingredient.howMuch || isAsked) return '<span class="unknown">how much?</span>';
  if (isFree(ingredient)) return '';
  const said = escapeHtml(ingredient.first);
  return level === undefined || said === '' ? said : `<span class="at ${level}">${said}</span>`;
}
