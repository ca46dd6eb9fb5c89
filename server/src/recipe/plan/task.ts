/**
 * Knows what a plan of a day is made of: tasks with what they need, the kitchen they are done in, and where each comes to stand.
 * Refuses to know recipes. Times are minutes, of the clock counted from when it is eaten: -90 is an hour and a half before.
 */

/** °C as it goes in and as it comes out; they differ where the oven is turned in between. */
export interface OvenNeed {
  readonly first: number;
  readonly last: number;
}

export interface Task {
  readonly minutes: number;
  /** Somebody is at it all the time. */
  readonly hands: boolean;
  readonly oven?: OvenNeed;
  /** It is hot, and somebody is up by then. */
  readonly watched?: boolean;
  /** Indexes of tasks that end before it begins. */
  readonly after: readonly number[];
  /** How long what comes of it may wait for what comes next, and be as good and as safe. */
  readonly mayWait: number;
}

/** Minutes of a day. */
export interface Awake {
  readonly from: number;
  readonly to: number;
}

/** When somebody is up where nothing else is said (judgement). */
export const EVERYDAY: Awake = { from: 6 * 60, to: 23 * 60 };

export interface DayKitchen {
  readonly ovens: number;
  readonly pairsOfHands: number;
  /** Whatever is baked at one heat fits into an oven together. */
  readonly sharesOven: boolean;
  /** When it is eaten, as a minute of the day. */
  readonly serve: number;
  /** When somebody may be at work; always where nothing is said. */
  readonly awake?: Awake;
}

/** What a task may end no later for. */
export type Bound =
  | { readonly is: 'serving' }
  /** A task that needs it. */
  | { readonly is: 'next'; readonly task: number }
  /** A task that has the hands, or the oven. */
  | { readonly is: 'hands' | 'oven'; readonly task: number }
  | { readonly is: 'night' };

export interface Placed {
  readonly start: number;
  readonly end: number;
  readonly bound: Bound;
  /** When what comes next begins, or it is eaten. */
  readonly wanted: number;
  readonly oven?: number;
  readonly pair?: number;
}

/** Whether anybody, or an oven, has to be there: else it goes on by itself, at any hour and beside anything. */
export const needsSomething = ({ minutes, hands, oven }: Task): boolean => minutes > 0 && (hands || oven !== undefined);
