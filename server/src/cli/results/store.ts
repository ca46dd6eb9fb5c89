/**
 * Knows what one run finds of an earlier one, and leaves for the next: of each file by the sum of all that it is worked out from.
 * Refuses to know how files are checked.
 */
import type { Houses } from '../../workspace/houses.ts';
import type { CheckWish } from '../checked-file.ts';
import type { Input } from '../inputs.ts';
import type { Io, KeptTexts } from '../io.ts';
import { isToldTheSame } from './asked-bases.ts';
import { type KeptResult, KeptResults } from './kept-results.ts';

/** The keys of files in one run; `digest` makes their sums. */
export class ResultKeys {
  private readonly houseSums = new Map<string, string>();
  private readonly houses: Houses;
  readonly digest: KeptTexts['digest'];

  constructor(houses: Houses, digest: KeptTexts['digest']) {
    this.houses = houses;
    this.digest = digest;
  }

  of(input: Input, { fixes }: CheckWish): string {
    const { path, shown, within, encoding } = input;
    if (within !== undefined) this.houses.opened(within);
    // Of what is not read even to look for a text fails.
    const text = encoding?.isRead === false ? '' : input.text;
    const house = this.sumOf(this.houses.keyOf(path, text));
    return this.digest(JSON.stringify([path, shown, within ?? '', text, encoding, house, fixes]));
  }

  private sumOf(house: string): string {
    let sum = this.houseSums.get(house);
    if (sum === undefined) {
      sum = this.digest(house);
      this.houseSums.set(house, sum);
    }
    return sum;
  }
}

export class ResultStore {
  private readonly kept: KeptTexts;
  private readonly name: string;
  private readonly results: KeptResults;

  constructor(kept: KeptTexts, cwd: string) {
    this.kept = kept;
    this.name = `check-${kept.digest(cwd).slice(0, 16)}`;
    this.results = new KeptResults(kept.read(this.name), kept.build);
  }

  /** What an earlier run found, where it would be told the same again. */
  find(key: string, houses: Houses): KeptResult | undefined {
    const found = this.results.find(key);
    return found !== undefined && isToldTheSame(found.asked, houses.bases, this.kept.digest) ? found : undefined;
  }

  /** The same once more, which was found before. */
  again(key: string): KeptResult | undefined {
    return this.results.find(key);
  }

  /** Of a run that failed nowhere. */
  keep(key: string, result: KeptResult): void {
    if (result.file.bugs.length === 0) this.results.keep(key, result);
  }

  write({ keepsIn }: CheckWish, io: Io): void {
    const text = this.results.text();
    const why = text === undefined ? undefined : this.kept.write(this.name, text);
    if (why !== undefined && keepsIn !== undefined) io.err(`quern: nothing is kept in \`${keepsIn}\`: ${why}\n`);
  }
}
