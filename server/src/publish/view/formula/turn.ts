/**
 * Knows how a measure is turned on the page: a slider that is its own drawing, a field with the same value, what moves, and what writes it.
 * Refuses to work out what moves.
 */
import { trimmed } from '../../../measure/number-text.ts';
import { MEASURES } from '../../../recipe/measures/definitions.ts';
import { capital } from '../../../recipe/words.ts';
import { escapeHtml } from '../../escape-html.ts';
import type { ReportMeasure } from '../../report-shape.ts';
import type { Turned, ViewFacts } from '../facts.ts';
import { shown, stepOf } from './figures.ts';
import type { Scale } from './strip.ts';

const argOf = (arg: Readonly<Record<string, unknown>>): string => escapeHtml(JSON.stringify(arg));

const nameOf = ({ part, measure }: Turned): string => escapeHtml(`${part}-${measure}`);

/** The button that begins it, at the value after the fix, or as it stands. */
export const turnStart =
  (part: string, { name, value }: ReportMeasure, after: number | undefined) =>
  (style: 'plain' | 'narrow' | ''): string => {
    const arg = argOf({ part, measure: name, to: after ?? value });
    const label = escapeHtml(`Turn it: ${MEASURES[name].words}${part === '' ? '' : ` of ${part}`}`);
    return `<button${style === '' ? '' : ` class="${style}"`} data-do="turn" data-look data-arg="${arg}" aria-label="${label}">${style === 'narrow' ? '' : 'Turn it'}</button>`;
  };

/** Over the strip, with its own scale: its thumb is the value to come. */
export function slider(turned: Turned, { name, band }: ReportMeasure, { ends }: Scale): string {
  const [least, most] = ends.map((end) => trimmed(shown(name, end), 4));
  const [home, end] = [band[0] ?? 0, band[1] ?? ends[1]].map((edge) => trimmed(shown(name, edge), 4));
  const step = stepOf(name, band);
  return `<input type="range" data-key="turn-range-${nameOf(turned)}" data-do="turn" data-look data-arg="${argOf({ part: turned.part, measure: name })}" min="${least}" max="${most}" step="${step}" data-home="${home}" data-end="${end}" data-page="${trimmed(step * 5, 2)}" value="${heldText(turned)}" aria-label="bring ${escapeHtml(MEASURES[name].words)} to${unitWords(turned)}" aria-valuetext="${heldText(turned)}${unitWords(turned)}">`;
}

const UNITS = { percent: '%', times: 'times', celsius: '°C' } as const;
const unitWords = ({ measure }: Turned): string =>
  ({ percent: ', per cent', times: ', times', celsius: ', degrees Celsius' })[MEASURES[measure].unit];

const heldText = ({ measure, to }: Turned): string => trimmed(shown(measure, to), 2);

/** The field, what moves in grams, what stays, and the two ways out; once for each width, so that each has its own `place`. */
export function turnCell(turned: Turned, { name }: ReportMeasure, { readOnly }: ViewFacts, place: string): string {
  const { part, to, moved, said, refused } = turned;
  const arg = argOf({ part, measure: name });
  const field = `<label>to <input data-key="turn-field-${nameOf(turned)}${place}" data-do="turn" data-look data-arg="${arg}" value="${heldText(turned)}" inputmode="decimal" size="4"> ${UNITS[MEASURES[name].unit]}</label>`;
  const leave = `<button data-do="leave" data-look>Leave it</button>`;
  if (refused !== undefined)
    return `${field}<br><small>${escapeHtml(capital(refused))}${refused.endsWith('.') ? '' : '.'}</small><span class="fixes">${leave}</span>`;
  const moves = moved.map(
    ({ name: line, before, after }) =>
      `<b>${escapeHtml(line)} ${escapeHtml(before)} → <span class="looked">${escapeHtml(after)}</span></b>`,
  );
  const what = moves.length === 0 ? ': it is there already' : `: ${moves.join('; ')}`;
  const write =
    moves.length === 0 || readOnly !== undefined
      ? ''
      : `<button class="first" data-do="adjust" data-arg="${argOf({ part, measure: name, to })}">Write this</button> `;
  return `${field}${what}<br><small>${escapeHtml(said.join(' '))}</small><span class="fixes">${write}${leave}</span>`;
}
