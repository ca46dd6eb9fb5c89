/**
 * Knows how what can be pressed is written: an act, what it is given, and its words.
 * Refuses to know what an act does.
 */
import { escapeHtml } from '../escape-html.ts';

/** What an act is given, besides the value of a field. */
export type ActArg = Readonly<Record<string, string | number | boolean>>;

const act = (name: string, arg: ActArg): string =>
  `data-do="${name}"${Object.keys(arg).length === 0 ? '' : ` data-arg="${escapeHtml(JSON.stringify(arg))}"`}`;

/** A button; `label` is said where its words are a sign. */
export const doing = (
  name: string,
  arg: ActArg,
  words: string,
  looks: '' | 'first' | 'plain' = '',
  label = '',
): string =>
  `<button type="button"${looks === '' ? '' : ` class="${looks}"`} ${act(name, arg)}${label === '' ? '' : ` aria-label="${escapeHtml(label)}"`}>${escapeHtml(words)}</button>`;

/** A field for a number. */
export const fieldDoing = (name: string, arg: ActArg, value: number, label: string): string =>
  `<input ${act(name, arg)} data-key="${name}" aria-label="${escapeHtml(label)}" value="${value}" inputmode="decimal" size="3">`;

/** One of a few words, as radios that look like words. */
export const choice = (
  name: string,
  legend: string,
  chosen: string | undefined,
  words: readonly (readonly [value: string, words: string])[],
): string =>
  `<fieldset class="choice" data-key="${name}"><legend class="unseen">${escapeHtml(legend)}</legend>${words
    .map(
      ([value, said]) =>
        `<label><input type="radio" name="${name}" ${act(name, { to: value })} value="${value}"${value === chosen ? ' checked' : ''}> ${escapeHtml(said)}</label>`,
    )
    .join('')}</fieldset>`;
