/**
 * Knows the bar over a list that is looked at in another size or in other measures: what is looked at, what the text says, what does not
 * follow, and the two ways on.
 * Refuses to know what is written.
 */
import { escapeHtml } from '../escape-html.ts';
import { doing } from './controls.ts';
import type { Reading } from './facts.ts';

/** Empty while all is as the text says. */
export function lookingBar({ looking, mode, readOnly }: Reading): string {
  if (looking === undefined || mode !== 'live') return '';
  const { at, text, said, back, refused } = looking;
  const write =
    refused === undefined && readOnly === undefined ? `${doing('look-write', {}, 'Write this', 'first')} ` : '';
  const words = [text, ...(refused === undefined ? [] : [refused])].map(escapeHtml).join(' ');
  const more =
    said.length === 0
      ? ''
      : `<details data-key="looking-more"><summary>What does not follow</summary>${said.map((each) => `<p>${escapeHtml(each)}</p>`).join('')}</details>`;
  return `<div class="looking" role="status"><span><b>Looking at ${escapeHtml(at)}.</b> ${words}</span> ${write}${doing('look-back', {}, back)}${more}</div>\n`;
}
