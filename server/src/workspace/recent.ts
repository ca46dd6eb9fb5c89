/**
 * Knows the last few states of one file: what is typed and taken back again, or what a fix would write, mostly was there before.
 * Refuses to know what is worked out for a state.
 */
import type { Document } from '../notation/document.ts';

/** A slip is taken back letter by letter. */
const MOST = 6;

export class Recent<T extends { readonly document: Document }> {
  private readonly states: T[] = [];

  add(state: T): void {
    const at = this.states.indexOf(state);
    if (at >= 0) this.states.splice(at, 1);
    this.states.push(state);
    if (this.states.length > MOST) this.states.shift();
  }

  /** The latest of the very same text; `line` is one that is likely to tell them apart. */
  like(document: Document, line: number): T | undefined {
    return this.states.findLast((state) => isSameText(state.document, document, line));
  }
}

function isSameText(a: Document, b: Document, line: number): boolean {
  return (
    a.lines.length === b.lines.length &&
    a.lines[line]?.text === b.lines[line]?.text &&
    a.lines.every((each, i) => each === b.lines[i] || each.text === b.lines[i]?.text) &&
    a.eols.every((each, i) => each === b.eols[i])
  );
}
