/**
 * Knows how what was found is printed while it is found: of a file nothing is held but what is printed of it.
 * Refuses to know any format.
 */
import type { Severity } from '../../checks/severity.ts';
import type { CheckedFile } from '../checked-file.ts';

/** Of what a run found. */
export interface Counts extends Readonly<Record<Severity, number>> {
  readonly files: number;
  readonly accepted: number;
  readonly baselined: number;
}

/** One run as it is printed. */
export interface Printing {
  /** The next file. */
  add(file: CheckedFile): void;
  /** All of it, once there are no more; `problems` are mistakes in the houses' settings. */
  text(counts: Counts, problems: readonly string[]): string;
}

/** What is printed of each file by itself. */
export function inLines(linesOf: (file: CheckedFile) => string): Printing {
  const texts: string[] = [];
  return {
    add: (file) => {
      const text = linesOf(file);
      if (text !== '') texts.push(text);
    },
    text: () => texts.join(''),
  };
}

/** As JSON stands in a document, so many levels down. */
export const jsonItem = (item: object, depth: number): string =>
  JSON.stringify(item, null, 2).replaceAll('\n', `\n${'  '.repeat(depth)}`);

/** The document as JSON with these in the last list of this name, which is empty in it and lies above what is so many levels down. */
export function jsonWith(document: object, name: string, items: readonly string[], depth: number): string {
  const text = `${JSON.stringify(document, null, 2)}\n`;
  if (items.length === 0) return text;
  const list = `"${name}": [`;
  const at = text.lastIndexOf(`${list}]`) + list.length;
  const indent = `\n${'  '.repeat(depth)}`;
  return `${text.slice(0, at)}${indent}${items.join(`,${indent}`)}${indent.slice(0, -2)}${text.slice(at)}`;
}
