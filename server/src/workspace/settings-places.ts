/**
 * Knows where in the text of a `quern.json` each of its mistakes stands.
 * Refuses to know what makes one: `settings.ts` reads the values, and says it.
 */
import {
  findNodeAtLocation,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from 'jsonc-parser/lib/esm/main.js';
import type { Position } from '../notation/document.ts';
import { parseSettings } from './settings.ts';

export interface PlacedFault {
  readonly words: string;
  readonly start: Position;
  readonly end: Position;
}

/** Every mistake; of a text that is no JSON, where it stops being any. */
export function placedFaults(text: string): PlacedFault[] {
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { disallowComments: true, allowTrailingComma: false });
  const [error] = errors;
  if (error !== undefined) return [placed(text, sayError(error), error.offset, error.length)];
  return parseSettings(text).faults.map(({ words, path, on }) => {
    const value = tree === undefined ? undefined : findNodeAtLocation(tree, [...path]);
    const node = on === 'key' ? (keyOf(value) ?? value) : value;
    // A mistake of the whole is drawn on its first line alone.
    const length = path.length === 0 ? lineLength(text, node?.offset ?? 0) : (node?.length ?? 0);
    return placed(text, words, node?.offset ?? 0, length);
  });
}

const keyOf = (value: Node | undefined): Node | undefined =>
  value?.parent?.type === 'property' ? value.parent.children?.[0] : undefined;

/** `ColonExpected` as `colon expected`. */
function sayError({ error }: ParseError): string {
  const words = printParseErrorCode(error)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
  return `quern.json is no JSON here: ${words}`;
}

function lineLength(text: string, from: number): number {
  const end = text.slice(from).search(/[\r\n]/);
  return end < 0 ? text.length - from : end;
}

function placed(text: string, words: string, offset: number, length: number): PlacedFault {
  return { words, start: positionAt(text, offset), end: positionAt(text, offset + Math.max(length, 1)) };
}

function positionAt(text: string, offset: number): Position {
  const before = text.slice(0, offset).split(/\r\n|\n|\r/);
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}
