/** The file in its canonical layout. */
import { formatting } from '../formatting.ts';
import type { Verb } from './verb.ts';

export const format: Verb = {
  takes: [],
  title: 'Lay out the file',
  run: ({ snapshot }) => ({ edits: formatting(snapshot), changes: [], said: [] }),
};
