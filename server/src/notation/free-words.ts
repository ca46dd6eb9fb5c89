/**
 * Knows the words that say that the cook decides how much: `as required`, `to your taste`, `TT`, `q.s.`.
 */
import { Kind, type Token } from './tokens.ts';

/** Words that say with `as` or `to` that the cook decides; the scanner knows the plain ones. */
const DECIDED: ReadonlyMap<string, RegExp> = new Map([
  ['as', /^(?:required|necessary|needed|desired|liked|wanted|preferred)$/],
  ['to', /^taste$/],
]);

/** What such words open with. */
export const OPENS_FREE: ReadonlySet<string> = new Set([...DECIDED.keys(), 'tt', 'qs', 'q']);

/** How many tokens say so there: `as required`, `to your taste`, `TT`, `q.s.`; 0 for none. */
export function freeWords(tokens: readonly Token[], i: number): number {
  const word = (at: number): string => tokens[at]?.written?.word ?? '';
  const first = word(i);
  if (tokens[i]?.written?.image === 'TT' || first === 'qs') return 1;
  if (first === 'q' && word(i + 2) === 's') return tokens[i + 3]?.kind === Kind.Other ? 4 : 3;
  const decided = DECIDED.get(first);
  if (decided === undefined) return 0;
  if (decided.test(word(i + 1))) return 2;
  return first === 'to' && /^(?:your|one's|own)$/.test(word(i + 1)) && /^(?:taste|liking)$/.test(word(i + 2)) ? 3 : 0;
}
