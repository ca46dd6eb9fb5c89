/**
 * Knows the marks of the page: circles say how it was cooked, corners say what was found, hatching is what is not known.
 * Refuses to know where they stand.
 */
import { escapeHtml } from '../escape-html.ts';
import type { Level } from './finding.ts';
import type { StateMark } from './state.ts';

/** Once a page, before all that uses them. */
export const DEFS = `<svg class="defs" width="0" height="0" aria-hidden="true"><defs>
<symbol id="error" viewBox="0 0 12 12"><rect x="1" y="1" width="10" height="10"/></symbol>
<symbol id="warning" viewBox="0 0 12 12"><path d="M6 .8 11.7 11H.3z"/></symbol>
<symbol id="note" viewBox="0 0 12 12"><path d="M6 1.2 10.8 6 6 10.8 1.2 6z" fill="none" stroke-width="1.8"/></symbol>
<symbol id="never" viewBox="0 0 12 12"><circle cx="6" cy="6" r="4.8" fill="none" stroke-width="1.5"/></symbol>
<symbol id="changed" viewBox="0 0 12 12"><circle cx="6" cy="6" r="4.8" fill="none" stroke-width="1.5"/><path d="M6 1.2a4.8 4.8 0 0 0 0 9.6z"/></symbol>
<symbol id="proved" viewBox="0 0 12 12"><circle cx="6" cy="6" r="5"/></symbol>
<pattern id="hatch" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line y2="5"/></pattern>
</defs></svg>`;

/** A mark beside words that say the same, or by itself with its name. */
export const mark = (of: Level | StateMark, alone = false): string =>
  `<svg class="mark ${of}" ${alone ? `role="img" aria-label="${of}"` : 'aria-hidden="true"'}><use href="#${of}"/></svg>`;

/** Words of a check: what stands in backticks is a name of the text. */
export const checkWords = (text: string): string =>
  text
    .split(/`([^`]*)`/)
    .map((piece, i) => (i % 2 === 0 ? escapeHtml(piece) : `<b>${escapeHtml(piece)}</b>`))
    .join('');
