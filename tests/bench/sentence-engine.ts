/**
 * Measures what one changed sentence costs inside the engine, without a server: from the new text to the findings of all checks, once
 * every function that it runs is compiled. Bundled and run by `bundle.ts`.
 */
import { argv } from 'node:process';
import { makeHouse } from '../../server/src/workspace/houses.ts';
import { DEFAULTS } from '../../server/src/workspace/settings.ts';
import { Snapshot } from '../../server/src/workspace/snapshot.ts';
import { recipeCase } from './cases.ts';
import type { SentenceFigures } from './engine-figures.ts';
import { quantile } from './figures.ts';

const WARM_UP = 2;

const [, , edits = '2000'] = argv;
const { text, sentences } = recipeCase(60);
const script = sentences();
let snapshot = Snapshot.open('bench.quern', 1, text, makeHouse(DEFAULTS).house);
void snapshot.findings;
for (let i = 0; i < WARM_UP * Number(edits); i++) timed();
// Every second one takes the change back, to a text that is known: with those among them the middle is either.
const samples = Array.from({ length: Number(edits) }, () => {
  const changed = timed();
  timed();
  return changed;
});
const figures: SentenceFigures = { p50: quantile(samples, 0.5) ?? 0, p95: quantile(samples, 0.95) ?? 0 };
process.stdout.write(JSON.stringify(figures));

/** The milliseconds of the next change. */
function timed(): number {
  const { line, character, length, text: words } = script.next().value;
  const range = { start: { line, character }, end: { line, character: character + length } };
  const start = performance.now();
  snapshot = snapshot.edited(snapshot.version + 1, [{ range, text: words }]);
  void snapshot.findings;
  return performance.now() - start;
}
