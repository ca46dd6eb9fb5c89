/**
 * Knows a recipe as it is looked at: at another size, with other measures or degrees first, by the very edits that would write it so.
 * Refuses to write anything.
 */
import { wrongPlaces } from '../../checks/finding.ts';
import { convertRecipe } from '../../edits/convert.ts';
import { scaleRecipe } from '../../edits/scale.ts';
import { madeInNumber, withWord } from '../../edits/sized-amount.ts';
import { trimmed } from '../../measure/number-text.ts';
import type { Look, Looking } from '../../publish/view/look.ts';
import { madeOf, ownDegrees, ownMeasures } from '../../publish/view/own.ts';
import { yieldNoun } from '../../recipe/yield.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';

export interface Looked {
  readonly snapshot: Snapshot;
  /** Absent where what is looked at is what the text says. */
  readonly looking?: Looking;
  /** Why not all that is wished can be looked at. */
  readonly why?: string;
}

interface Turn {
  readonly snapshot: Snapshot;
  readonly at: string;
  readonly text: string;
  readonly said: readonly string[];
  readonly back: string;
}

/** Of a file that stands by itself, or of a variant written out in full. */
export function lookedAt(snapshot: Snapshot, look: Look): Looked {
  const turns: Turn[] = [];
  let now = snapshot;
  let why: string | undefined;
  for (const turn of [sized, measured, heated]) {
    const done = turn(now, look);
    if (typeof done === 'string') why ??= done;
    else if (done !== undefined) {
      turns.push(done);
      now = done.snapshot;
    }
  }
  const [first] = turns;
  if (first === undefined) return { snapshot, ...(why !== undefined && { why }) };
  return {
    snapshot: now,
    ...(why !== undefined && { why }),
    looking: {
      at: turns.map(({ at }) => at).join(', '),
      text: `The text says ${turns.map(({ text }) => text).join(', ')}.`,
      said: [...(why === undefined ? [] : [why]), ...turns.flatMap(({ said }) => said)],
      back: turns.length === 1 ? first.back : 'Back to the text',
    },
  };
}

/** A turn; undefined where nothing turns, and a sentence where it cannot. */
type Turned = Turn | string | undefined;

function sized(snapshot: Snapshot, { makes, makesOf }: Look): Turned {
  const { document, recipe } = snapshot;
  const text = madeOf(recipe);
  if (makes === undefined || text === undefined || makes === text || !(makes > 0)) return undefined;
  if (makesOf !== undefined && makesOf !== text) return undefined;
  const scaled = scaleRecipe(document, recipe, { kind: 'by', by: makes / text });
  if (!scaled.ok) return sentence(scaled.why);
  const noun = recipe.yield === undefined ? '' : yieldNoun(recipe.yield.node);
  const { edits, said } = scaled.scaling;
  return {
    snapshot: snapshot.after(edits),
    at: `${trimmed(makes, 2)} ${withWord(noun, madeInNumber(noun, text, makes))}`,
    text: trimmed(text, 2),
    said,
    back: `Back to ${trimmed(text, 2)}`,
  };
}

const WORDS = { 'weight-first': 'grams first', 'measure-first': 'measures first' } as const;

/** Both stand on a line then, so that no gram is lost. */
function measured(snapshot: Snapshot, { measures }: Look): Turned {
  const text = ownMeasures(snapshot.recipe);
  if (measures === undefined || measures === text) return undefined;
  const to = measures === 'measure-first' ? 'us' : 'weight';
  const { edits, said } = convertRecipe(snapshot.document, snapshot.recipe, { to, both: true, ...markedIn(snapshot) });
  const [at, own] = [WORDS[measures], WORDS[text]];
  return { snapshot: snapshot.after(edits), at, text: own, said, back: `Back to ${own}` };
}

function heated(snapshot: Snapshot, { degrees }: Look): Turned {
  if (degrees === undefined || degrees === ownDegrees(snapshot.recipe)) return undefined;
  const to = degrees === 'C' ? 'celsius' : 'fahrenheit';
  const { edits, said } = convertRecipe(snapshot.document, snapshot.recipe, { to, ...markedIn(snapshot) });
  if (edits.length === 0) return undefined;
  const text = degrees === 'C' ? '°F' : '°C';
  return { snapshot: snapshot.after(edits), at: `°${degrees}`, text, said, back: `Back to ${text}` };
}

/** What is wrong is mended before it is turned into something else. */
const markedIn = ({ findings }: Snapshot) => ({ marked: wrongPlaces(findings) });

const sentence = (why: string): string => `${why.charAt(0).toUpperCase()}${why.slice(1)}.`;
