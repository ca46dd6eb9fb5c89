/** Chances that come out the same in every run: mulberry32, a public-domain generator of 32-bit numbers. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** From 0 up to and without 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** A whole number, both ends included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.next() * (high - low + 1));
  }

  chance(share: number): boolean {
    return this.next() < share;
  }

  pick<T>(items: readonly T[]): T {
    const item = items[this.whole(0, items.length - 1)];
    if (item === undefined) throw new Error('nothing to pick from');
    return item;
  }

  /** Different items, in the order of the list. */
  some<T>(items: readonly T[], count: number): T[] {
    const left = items.map((_, i) => i);
    while (left.length > count) left.splice(this.whole(0, left.length - 1), 1);
    return left.map((i) => items[i]).filter((item) => item !== undefined);
  }
}
