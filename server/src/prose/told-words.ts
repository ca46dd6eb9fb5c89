/**
 * Knows the words by which a text tells of others, of another time, and of what came of it (`data/prose/told.tsv`).
 * Refuses to know of whom a sentence tells.
 */
import toldText from '../../data/prose/told.tsv';
import { phrasesOf } from './phrases.ts';

const TOLD = [
  /** The writer, the reader, whoever does or eats it. */
  'self',
  'nobody',
  'other',
  'they',
  /** It is somebody else's: another pot than this one. */
  'theirs',
  'his',
  /** Where others do it, and what they wrote. */
  'house',
  /** Of another time; and no more. */
  'past',
  'no more',
  'says',
  /** What is set against it. */
  'own',
  /** It is done so here, too. */
  'adopts',
  /** What came of it; denied, it is as good as done here. */
  'harms',
  /** What grows where it can; denied, the same. */
  'germs',
  /** Done away with. */
  'gone',
  /** As another does it. */
  'as',
  /** What is seen is called no cause to go on. */
  'calms',
] as const;
export type Told = (typeof TOLD)[number];

/** What the items say of it. */
export const toldIn = phrasesOf(toldText, TOLD, (word) => [word]);
