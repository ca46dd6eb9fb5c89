/**
 * Knows what the protocol asks of every answer about one text: ranges that lie in it and cut no character in two, edits that do not overlap,
 * names within what they name, tokens in order.
 * Refuses to know what any answer says.
 */
export interface At {
  readonly line: number;
  readonly character: number;
}
interface Ranged {
  readonly start: At;
  readonly end: At;
}

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;
const isAt = (value: unknown): value is At =>
  isFields(value) && typeof value.line === 'number' && typeof value.character === 'number';
const isRanged = (value: unknown): value is Ranged => isFields(value) && isAt(value.start) && isAt(value.end);
const before = (a: At, b: At): boolean => a.line < b.line || (a.line === b.line && a.character <= b.character);
const holds = (outer: Ranged, inner: Ranged): boolean =>
  before(outer.start, inner.start) && before(inner.end, outer.end);
const written = ({ start, end }: Ranged): string => `${start.line}:${start.character}-${end.line}:${end.character}`;

/** The lines of a text as the protocol counts them. */
export const linesOf = (text: string): readonly string[] => text.split(/\r\n|\n|\r/);

/** What is wrong with an answer about a text, each with the way to it; of another document's places nothing is said. */
export function faultsOf(answer: unknown, lines: readonly string[], uri: string): string[] {
  const faults: string[] = [];
  walk(answer, '');
  return faults;

  function walk(value: unknown, way: string): void {
    if (!isFields(value)) return;
    if (typeof value.uri === 'string' && value.uri !== uri) return;
    if (Array.isArray(value)) edits(value, way);
    if (isRanged(value)) range(value, way);
    else if (isAt(value)) place(value, way);
    const { range: outer, selectionRange: inner, parent } = value;
    if (isRanged(outer) && isRanged(inner) && !holds(outer, inner))
      faults.push(`${way}: ${written(outer)} does not hold its name ${written(inner)}`);
    if (isRanged(outer) && isFields(parent) && isRanged(parent.range) && !holds(parent.range, outer))
      faults.push(`${way}: ${written(outer)} is not in its parent`);
    // What a client only sends back is nobody's to judge.
    for (const [key, inside] of Object.entries(value)) if (key !== 'data') walk(inside, `${way}.${key}`);
  }

  function place({ line, character }: At, way: string): void {
    const text = lines[line];
    if (!Number.isInteger(line) || !Number.isInteger(character) || line < 0 || character < 0)
      faults.push(`${way}: ${line}:${character} is no place`);
    else if (text === undefined || character > text.length)
      faults.push(`${way}: ${line}:${character} is outside the text`);
    else if (isWithinPair(text, character)) faults.push(`${way}: ${line}:${character} cuts a character in two`);
  }

  function range(value: Ranged, way: string): void {
    if (!before(value.start, value.end)) faults.push(`${way}: ${written(value)} ends before it begins`);
  }

  /** A list of edits, of one text: none may touch what another replaces. */
  function edits(list: readonly unknown[], way: string): void {
    const ranges = list.flatMap((each) =>
      isFields(each) && isRanged(each.range) && (typeof each.newText === 'string' || isFields(each.snippet))
        ? [each.range]
        : [],
    );
    const sorted = ranges.toSorted((a, b) => (before(a.start, b.start) ? (before(b.start, a.start) ? 0 : -1) : 1));
    for (const [i, next] of sorted.entries()) {
      const last = sorted[i - 1];
      if (last !== undefined && !before(last.end, next.start))
        faults.push(`${way}: ${written(last)} and ${written(next)} overlap`);
    }
  }
}

/** What is wrong with tokens, five numbers each: order, overlap, length and places. */
export function tokenFaults(data: readonly number[], lines: readonly string[]): string[] {
  const faults: string[] = [];
  let [line, start, end] = [0, 0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down = 0, along = 0, length = 0] = data.slice(i, i + 3);
    line += down;
    start = down === 0 ? start + along : along;
    if (down === 0 && i > 0 && start < end) faults.push(`token ${i / 5} overlaps the one before`);
    if (down < 0 || along < 0 || length <= 0) faults.push(`token ${i / 5} is out of order`);
    end = start + length;
    const text = lines[line] ?? '';
    if (end > text.length) faults.push(`token ${i / 5} is outside its line`);
    else if (isWithinPair(text, start) || isWithinPair(text, end))
      faults.push(`token ${i / 5} cuts a character in two`);
  }
  if (data.length % 5 !== 0) faults.push('tokens are five numbers each');
  return faults;
}

const isWithinPair = (text: string, at: number): boolean =>
  at > 0 && /[\ud800-\udbff]/.test(text[at - 1] ?? '') && /[\udc00-\udfff]/.test(text[at] ?? '');
