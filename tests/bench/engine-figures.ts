import type { Profiler } from 'node:inspector';
import type { Figure } from './measure.ts';

/** Milliseconds by stage. */
export type StageFigures = readonly { readonly stage: string; readonly p50: number; readonly p95: number }[];

/** What the bundled engine bench writes to its standard output, as JSON. */
export interface EngineFigures {
  readonly sizes: {
    readonly size: number;
    readonly characters: number;
    readonly findings: number;
    readonly parts: number;
    /** From the text to the answer, in a new house. */
    readonly opened: StageFigures;
    /** One character changed. */
    readonly edited: StageFigures;
    /** One character of an ingredient's or a part's name changed. */
    readonly renamed: StageFigures;
    /** Milliseconds of the slowest first. */
    readonly openedByCheck: readonly (readonly [code: string, ms: number])[];
    readonly editedByCheck: readonly (readonly [code: string, ms: number])[];
    readonly profile?: Profiler.Profile;
  }[];
}

/** What `sentence-engine.ts` writes: milliseconds to the findings of all checks. */
export interface SentenceFigures {
  readonly p50: Figure;
  readonly p95: Figure;
}
