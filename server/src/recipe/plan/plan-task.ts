/** Knows a task of a plan with the words and the heat that its recipe gives it. Refuses to know how it is found, and when it is done. */
import type { Range } from '../../measure/quantity.ts';
import type { Span } from '../../notation/tree.ts';
import type { Event } from '../../prose/event.ts';
import type { Lasting } from '../journey/lasting.ts';
import type { Task } from './task.ts';

/**
 * `head`: what the head says of the work is shared evenly among what is silent. `given`: by whoever plans. `estimate`: worked out of what is
 * in the oven, or stands there. `put`: work that says no minutes, with so many put for it. `unsaid`: nobody says it, and none are reckoned.
 */
export type MinutesFrom = 'steps' | 'head' | 'given' | 'estimate' | 'put' | 'unsaid';

export interface PlanTask extends Task, Span {
  readonly part: number;
  /** The line of its step in the part, from 0. */
  readonly line: number;
  /** Later steps that go on with it, where it stands: their lines and words. */
  readonly also: readonly (Span & { readonly line: number })[];
  readonly spent: Lasting['spent'];
  readonly from: MinutesFrom;
  /** As the steps say it. */
  readonly said: Range | undefined;
  /** Of an estimate: eight of ten lie within. */
  readonly estimate?: Range;
  /** Minutes that it may last before the cook has to do something about it: its minutes where nothing says more. */
  readonly most: number;
  /** What it is done on or in where that is no oven; undefined where it stands about, or nobody says. */
  readonly on: 'hob' | 'smoker' | 'cold' | undefined;
  /** °C of the dial, each from so many minutes after it went in. */
  readonly stages: readonly OvenTurn[];
  /** Days for which it may lie before the next. */
  readonly days: number;
}

export interface OvenTurn {
  readonly atMin: number;
  readonly celsius: number;
  readonly fan: boolean;
}

/** A task before what comes behind it is known. */
export interface Drafted extends Omit<PlanTask, 'after' | 'mayWait' | 'most' | 'on'> {
  readonly event: Event | undefined;
  readonly meanwhile: boolean;
}
