/** Measures what a changed sentence costs, in a process of its own. */
import { inBundle } from './bundle.ts';
import type { SentenceFigures } from './engine-figures.ts';

/** Of so many changes; no answer where it fails. */
export async function measureSentences(edits: number, limitMs: number): Promise<SentenceFigures> {
  try {
    return await inBundle(
      'sentence-engine.ts',
      [String(edits)],
      limitMs,
      (output) => JSON.parse(output) as SentenceFigures,
    );
  } catch (error) {
    process.stderr.write(`${String(error)}\n`);
    return { p50: 'no answer', p95: 'no answer' };
  }
}
