/**
 * Knows a line of the list while its items are read: its text, how far it is read, and what was found wrong.
 * Refuses to know any form.
 */
import { type Measure, measuredOf } from './amounts.ts';
import type { Cursor } from './cursor.ts';
import { isNamePart, Kind } from './tokens.ts';
import type { MeasuredNode, Span, SyntaxFault } from './tree.ts';

export class ListLine {
  readonly faults: SyntaxFault[];
  readonly line: string;
  readonly cursor: Cursor;

  constructor(line: string, cursor: Cursor, faults: SyntaxFault[]) {
    this.line = line;
    this.cursor = cursor;
    this.faults = faults;
  }

  /** Where the chunk ends that the token is in: at a comma, a bracket or the end. */
  chunkEnd(at: number): number {
    const { tokens } = this.cursor;
    let i = at;
    while (i + 1 < tokens.length && isNamePart(tokens[i + 1]?.kind ?? Kind.End)) i++;
    return tokens[i]?.end ?? 0;
  }

  measured(measure: Measure): MeasuredNode {
    return measuredOf(this.line, measure, this.faults);
  }

  fault(code: SyntaxFault['code'], { start, end }: Span, detail: string, write?: string): void {
    this.faults.push({ code, start, end, detail, ...(write !== undefined && { write }) });
  }
}
