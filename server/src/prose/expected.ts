/**
 * Knows what a half-written sentence makes likely next: a time, a temperature or an amount behind a number; a name.
 * Refuses to know which names there are.
 */
import { sentenceIn } from '../notation/sentence.ts';
import type { SentenceItem } from '../notation/tree.ts';
import { jointOf, senseOf, thingOf, timeOf, verbOf } from './lexicon.ts';
import type { JointRow, ThingRow, TimeRow, Weights } from './rows.ts';

export type FigureExpected = 'time' | 'temperature' | 'amount';

/** What a number is likely of that stands behind the text: `for`, `at`. */
export function figureBehind(text: string): FigureExpected {
  const { items } = sentenceIn(text);
  for (let at = items.length - 1; at >= 0; at--) {
    const item = items[at] as SentenceItem;
    // `for about 10-`
    if (item.kind !== 'word') continue;
    const sense = senseOf(item.word);
    const joint = jointOf(sense);
    if (joint?.is === 'quantity' || joint?.is === 'adverb' || joint?.is === 'bound') continue;
    const adds = joint?.adds ?? [];
    if (joint?.way === 'for' || joint?.is === 'after' || (adds.length === 0 && isBeforeTime(timeOf(sense), joint)))
      return 'time';
    const tells = joint === undefined ? [verbOf(sense)?.figure, figureOf(thingOf(sense))] : [adds];
    return tells.some((weights) => weights !== undefined && weights.length > 0) ? 'temperature' : 'amount';
  }
  return 'amount';
}

/** `within`, `every`, `another` */
const isBeforeTime = (row: TimeRow | undefined, joint: JointRow | undefined): boolean =>
  (row?.is === 'bound' && joint?.is !== 'preposition') || row?.kind === 'limit' || row?.kind === 'every';
/** A pan says nothing of how hot it is. */
const figureOf = (row: ThingRow | undefined): Weights | undefined => (row?.sort === 'vessel' ? undefined : row?.figure);

/** Whether a name may begin behind the text: `the`, `of`, `both`. */
export function mayBeginName(text: string): boolean {
  const last = sentenceIn(text).items.at(-1);
  const joint = last?.kind === 'word' ? jointOf(senseOf(last.word)) : undefined;
  return joint?.is === 'article' || joint?.is === 'all' || joint?.is === 'rest' || joint?.way === 'of';
}
