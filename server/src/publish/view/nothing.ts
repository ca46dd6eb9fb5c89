/**
 * Knows what the page says where there is no recipe to show, or not the whole of one.
 * Refuses to fill a page: a heading that says what is, a sentence, a button or two.
 */
import { escapeHtml } from '../escape-html.ts';
import { doing } from './controls.ts';
import type { Nothing, ViewFacts } from './facts.ts';
import { mark } from './marks.ts';

/** A file in which no recipe is written. */
export function nothingYet(nothing: Nothing, { mode, readOnly }: ViewFacts): string {
  if (nothing.kind === 'empty') {
    const button =
      mode === 'live' && readOnly === undefined
        ? `<p>${doing('write-skeleton', {}, 'Write a skeleton', 'first')}</p>`
        : '';
    return `<section class="empty"><h1>Nothing is written yet</h1><p>A recipe begins with <b>recipe</b> and its name. Then an amount opens an ingredient, and <b>do</b> a step.</p>${button}</section>`;
  }
  const { foods, priced, usedBy } = nothing;
  const used =
    usedBy === undefined ? '' : ` ${counted(usedBy, 'recipe')} of the folder ${usedBy === 1 ? 'uses' : 'use'} them.`;
  return `<section class="empty"><h1>This file holds foods, not a recipe</h1><p>${counted(foods, 'food')} of the house, ${priced} with a price.${used}</p></section>`;
}

/** Each file that is built on and not there; what is written here is shown all the same. */
export const missingBases = ({ missing, page, mode, findings }: ViewFacts): string =>
  missing
    .map(({ name, line }) => {
      const key = findings.find((finding) => finding.code === 'missing-file' && finding.line === line)?.key;
      const id = key === undefined ? '' : ` id="${key}" data-key="${key}"`;
      const way = mode === 'live' ? `<p><a href="#line-${line}" data-line="${line}">Go to line ${line}</a></p>` : '';
      return `<section class="empty"${id}><h2>${mark('error', true)} The base is not there</h2><p><b>${escapeHtml(page.title)}</b> builds on <b>${escapeHtml(name)}</b>, which is not in this folder. What is written here is shown; what comes from the base is not known.</p>${way}</section>\n`;
    })
    .join('');

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
