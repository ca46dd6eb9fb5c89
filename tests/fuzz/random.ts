/** Numbers by chance that come again with their seed. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** A whole number from 0, below a limit; 0 below none. */
  below(limit: number): number {
    // Mulberry32, by Tommy Ettinger (public domain).
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return limit <= 0 ? 0 : ((mixed ^ (mixed >>> 14)) >>> 0) % limit;
  }

  one<T>(of: readonly [T, ...T[]]): T;
  one<T>(of: readonly T[]): T | undefined;
  one<T>(of: readonly T[]): T | undefined {
    return of[this.below(of.length)];
  }
}
