/**
 * Knows where the prices of a house stand: in the `food` blocks of the files of its folder.
 */
import { parseDocument } from '../notation/document.ts';
import { outline } from '../notation/outline.ts';
import { type PriceList, pricesOf } from '../publish/cost.ts';
import type { Snapshot } from '../workspace/snapshot.ts';
import { housesFor } from './inputs.ts';
import type { Io } from './io.ts';

/** The prices that hold for a file; those in the file itself count as it is typed. */
export function pricesFor(snapshot: Snapshot, path: string, io: Io): PriceList {
  const texts = housesFor(io)
    .foodFiles(path)
    .filter((p) => p !== path)
    .flatMap((p) => io.files.read(p) ?? [])
    .filter((text) => /^[ \t]*price[ \t]/m.test(text));
  const { book, measures } = snapshot.house.world;
  return pricesOf([...texts.map((text) => outline(parseDocument(text))), snapshot.outline], book, measures);
}
