/**
 * Knows how sure a conclusion is: as the weakest of what it rests on.
 */
import type { Sure } from '../../prose/event.ts';

export type { Sure };

const RANK: Readonly<Record<Sure, number>> = { said: 2, inferred: 1, unread: 0 };

export const weakest = (a: Sure, b: Sure): Sure => (RANK[a] <= RANK[b] ? a : b);
