/**
 * Knows which characters change how the text around them is shown, and how they are shown themselves.
 * It imports nothing, so that every side can read it.
 */

/**
 * C0 but the tab and the line feed, DEL, C1, ends of lines that only some know, and what turns the direction of writing. A carriage return
 * before a line feed is the end of a line.
 */
const HIDDEN = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]|\r(?!\n)/g;

/** A text of several lines in which every character shows: `\u001b` for an escape, as in JSON. */
export const visible = (text: string): string => text.replace(HIDDEN, escapeUnit);

/** The same in one line: a name or a message, with its line ends and tabs as they are written in JSON. */
export const visibleLine = (text: string): string => visible(text.replace(/[\n\r\t]/g, (end) => NAMED[end] ?? ''));

const NAMED: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };

const escapeUnit = (unit: string): string => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`;
