/**
 * Knows the best plan of a day: nothing waits longer than it may, it begins as late as it can, and nothing waits longer than it must, in that
 * order. Orders are tried from the end, each task as late as those that are placed allow, or on the evening before; first the one that puts the longest way behind it,
 * then those that differ from it more and more.
 * Refuses to know what the tasks are.
 */
import { mayBeEvening, placesFor, wantedAt } from './placing.ts';
import { type DayKitchen, needsSomething, type Placed, type Task } from './task.ts';

export interface Schedule {
  /** By task. */
  readonly placed: readonly Placed[];
  /** Minutes by which things wait longer than they may, all together. */
  readonly tooLong: number;
  /** From the first begin until it is eaten. */
  readonly elapsed: number;
  /** Every order was tried, or could be no better. */
  readonly isBest: boolean;
}

/** So many tasks are put at most before the best so far is taken: some 50 ms. */
const MOST_PLACED = 60_000;
/** The same of a day that is only held against that one. */
export const MOST_PLACED_BESIDE = 10_000;
/** Of more tasks than these fewer are put, as each is held against all that are placed, which move it again and again. */
const MANY_TASKS = 24;

export function schedule(tasks: readonly Task[], kitchen: DayKitchen, most = MOST_PLACED): Schedule {
  const search = new Search(tasks, kitchen, most);
  return search.best();
}

interface Cost {
  readonly tooLong: number;
  readonly elapsed: number;
  readonly waits: number;
}

const NONE: Cost = { tooLong: 0, elapsed: 0, waits: 0 };

const isLess = (a: Cost, b: Cost): boolean =>
  a.tooLong !== b.tooLong ? a.tooLong < b.tooLong : a.elapsed !== b.elapsed ? a.elapsed < b.elapsed : a.waits < b.waits;

class Search {
  private readonly tasks: readonly Task[];
  private readonly kitchen: DayKitchen;
  private readonly followers: readonly (readonly number[])[];
  /** Minutes of the longest way that leads to a task, its own among them. */
  private readonly ways: readonly number[];
  private readonly placed: (Placed | undefined)[];
  private found: { readonly cost: Cost; readonly placed: readonly Placed[] } | undefined;
  private count = 0;
  private readonly most: number;
  /** Something was left untried. */
  private isCut = false;

  constructor(tasks: readonly Task[], kitchen: DayKitchen, most: number) {
    this.tasks = tasks;
    this.kitchen = kitchen;
    const followers: number[][] = tasks.map(() => []);
    tasks.forEach(({ after }, i) => {
      for (const before of after) followers[before]?.push(i);
    });
    this.followers = followers;
    this.ways = waysTo(tasks);
    this.placed = tasks.map(() => undefined);
    this.most = most * Math.min(1, (MANY_TASKS / tasks.length) ** 2);
  }

  best(): Schedule {
    for (let differing = 0; ; differing++) {
      this.isCut = false;
      this.go(NONE, differing);
      if (!this.isCut || this.count >= this.most) break;
    }
    const { cost, placed } = this.found ?? { cost: NONE, placed: [] };
    return { placed, tooLong: cost.tooLong, elapsed: cost.elapsed, isBest: !this.isCut };
  }

  private go(so: Cost, differing: number): void {
    const put: number[] = [];
    let cost: Cost = so;
    let ready = this.ready();
    // What needs nothing is in nobody's way: only the order of the others counts.
    for (let free = ready.find((i) => !this.needs(i)); free !== undefined; free = ready.find((i) => !this.needs(i))) {
      const [latest] = this.places(free);
      if (latest === undefined) return;
      cost = this.put(free, latest, cost);
      put.push(free);
      ready = this.ready();
    }
    if (ready.length === 0) this.keep(cost);
    else if (this.found === undefined || isLess(this.least(cost, ready), this.found.cost)) {
      let turn = 0;
      // A place is looked for only where it is tried: of many that are ready, most never are.
      for (const task of ready.toSorted((a, b) => this.way(b) - this.way(a))) {
        if (this.isEnough(turn, differing)) break;
        for (const place of this.places(task)) {
          if (this.isEnough(turn, differing)) break;
          this.go(this.put(task, place, cost), differing - turn);
          this.placed[task] = undefined;
          turn++;
        }
      }
    }
    for (const task of put) this.placed[task] = undefined;
  }

  /** Whether the next of a choice is left untried. */
  private isEnough(turn: number, differing: number): boolean {
    const isCut = turn > differing || (this.count >= this.most && this.found !== undefined);
    if (isCut) this.isCut = true;
    return isCut;
  }

  /** There is something to choose. */
  private needs(task: number): boolean {
    const own = this.tasks[task];
    return own !== undefined && (needsSomething(own) || (this.kitchen.awake !== undefined && mayBeEvening(own)));
  }

  private places(task: number): readonly Placed[] {
    return placesFor(task, this.tasks, this.followers[task] ?? [], this.placed, this.kitchen);
  }

  private way(task: number): number {
    return this.ways[task] ?? 0;
  }

  private put(task: number, place: Placed, { tooLong, elapsed, waits }: Cost): Cost {
    const own = this.tasks[task] as Task;
    this.placed[task] = place;
    this.count++;
    const wait = place.wanted - place.end;
    return {
      tooLong: tooLong + Math.max(0, wait - own.mayWait),
      elapsed: Math.max(elapsed, -place.start),
      waits: waits + wait,
    };
  }

  /** What is not placed, and nothing that is not needs it. */
  private ready(): number[] {
    const ready: number[] = [];
    for (let i = 0; i < this.tasks.length; i++)
      if (this.placed[i] === undefined && this.followers[i]?.every((each) => this.placed[each] !== undefined))
        ready.push(i);
    return ready;
  }

  /** What it comes to at the least. */
  private least(cost: Cost, ready: readonly number[]): Cost {
    let { elapsed } = cost;
    for (const task of ready) {
      const [wanted] = wantedAt(this.followers[task] ?? [], this.placed);
      elapsed = Math.max(elapsed, this.way(task) - wanted);
    }
    return { ...cost, elapsed };
  }

  private keep(cost: Cost): void {
    if (this.found !== undefined && !isLess(cost, this.found.cost)) return;
    this.found = { cost, placed: this.placed.flatMap((each) => each ?? []) };
  }
}

/** By task; tasks that wait for each other in a circle have none. */
function waysTo(tasks: readonly Task[]): readonly number[] {
  const ways: (number | undefined)[] = [];
  const wayTo = (i: number): number => {
    const known = ways[i];
    if (known !== undefined) return known;
    ways[i] = 0;
    const own = tasks[i];
    const way = own === undefined ? 0 : own.minutes + Math.max(0, ...own.after.map(wayTo));
    ways[i] = way;
    return way;
  };
  return tasks.map((_, i) => wayTo(i));
}
