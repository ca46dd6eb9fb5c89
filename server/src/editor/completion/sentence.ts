/** In a sentence: units after a number; else ingredients no step has used, then the used ones and earlier parts. */
import type { LedgerEntry } from '../../recipe/ledger.ts';
import type { Part } from '../../recipe/recipe.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { sayLeft } from '../hover/ingredient.ts';
import { sayGrams } from '../words.ts';
import { all, type Completion, type Completions, NOTHING, type Typing } from './item.ts';
import { units } from './unit.ts';

export function completeSentence(typing: Typing): Completions {
  const { before, character, part } = typing;
  const number = /(?:\d|[½⅓⅔¼¾⅛⅜⅝⅞])(\s*)(°?\p{L}*)$/u.exec(before);
  if (number !== null) {
    const [, gap = '', typed = ''] = number;
    return units(
      unitsHere(before.slice(0, number.index)),
      character - typed.length,
      character,
      gap === '' && typed === '',
    );
  }
  const word = /[\p{L}][\p{L}'’-]*$/u.exec(before)?.[0] ?? '';
  const ahead = before.slice(0, character - word.length);
  // The first word is a verb.
  if (part === undefined || /^\s*do\s*$/.test(ahead)) return NOTHING;
  if (typing.byBlank && !OPENS_NAME.test(ahead)) return NOTHING;
  return all(namesFor(typing.snapshot, part).map((name) => completionOf(name, before, word)));
}

const OPENS_NAME = /\b(?:the|of|both|remaining|your)\s+$/i;
const HOT = /\b(?:at|to|reads|reaches|oven|below|above|until|over|under|about)\s+(?:about\s+)?[\d\s.–-]*$/i;
const LONG = /\b(?:for|another|within|after|further|every)\s+(?:about\s+)?[\d\s.–-]*$/i;

function unitsHere(before: string): string[] {
  const heat = ['C', 'F', 'C fan'];
  const time = ['min', 'h', 's', 'd'];
  const amounts = ['g', 'ml', 'tsp', 'tbsp', 'cup', 'cm', 'mm', '%'];
  if (LONG.test(before)) return [...time, ...heat, ...amounts];
  return HOT.test(before) ? [...heat, ...time, ...amounts] : [...amounts, ...time, ...heat];
}

interface Name {
  readonly name: string;
  readonly kind: 'ingredient' | 'part';
  readonly detail: string;
}

/** The likeliest first. */
function namesFor(snapshot: Snapshot, part: Part): Name[] {
  const unused: Name[] = [];
  const started: Name[] = [];
  const used: Name[] = [];
  for (const entry of part.ledger) {
    const name = { name: entry.ingredient.name, kind: 'ingredient' as const };
    if (entry.uses.length === 0) unused.push({ ...name, detail: `${amountOf(entry)}not used yet` });
    else if (entry.left.high > 0.02) started.push({ ...name, detail: `${sayLeft(entry)} left` });
    else used.push({ ...name, detail: 'used up' });
  }
  const taken = new Set(part.includes);
  const parts = part.heads
    .slice(0, part.index)
    .filter((head) => head.name !== '')
    .map(
      (head): Name => ({ name: head.name, kind: 'part', detail: taken.has(head) ? 'a part, already used' : 'a part' }),
    )
    .reverse();
  const fresh = parts.filter((p) => p.detail === 'a part');
  const rest = parts.filter((p) => p.detail !== 'a part');
  const left = snapshot.recipe.parts.slice(0, part.index).flatMap((p) =>
    p.ledger
      .filter((e) => e.left.high > 0.02 && e.uses.length > 0)
      .map(
        (e): Name => ({
          name: e.ingredient.name,
          kind: 'ingredient',
          detail: `${sayLeft(e)} left of the ${p.head.name}`,
        }),
      ),
  );
  const seen = new Set<string>();
  return [...unused, ...started, ...fresh, ...used, ...rest, ...left].filter(({ name }) => {
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
}

function amountOf({ ingredient }: LedgerEntry): string {
  return ingredient.weighed.known ? `${sayGrams(ingredient.weighed.grams)}, ` : '';
}

/** The name, or the end of it that starts as typed; `the` before it where none stands there. */
function completionOf({ name, kind, detail }: Name, before: string, word: string): Completion {
  const end = before.length;
  const start = end - typedOf(name, before, word).length;
  const typed = before.slice(start).toLowerCase();
  const text = typed === '' ? name : (endsOf(name).find((n) => n.toLowerCase().startsWith(typed)) ?? name);
  const bare = OPENS_NAME.test(before.slice(0, start)) || /\[\s*$/.test(before.slice(0, start));
  return { label: name, kind, detail, start, end, text: bare ? text : `the ${text}`, filter: name };
}

/** As much of the text before the caret as begins the name: more than the last word where the words before it belong. */
function typedOf(name: string, before: string, word: string): string {
  const lower = name.toLowerCase();
  const words = before.split(/(?<=\s)/u).slice(-4);
  for (let n = words.length; n > 1; n--) {
    const run = words.slice(-n).join('');
    if (run.toLowerCase().trimStart() === run.toLowerCase() && lower.startsWith(run.toLowerCase())) return run;
  }
  return word;
}

/** The name, then what is left of it from each later word on. */
function endsOf(name: string): string[] {
  const words = name.split(' ');
  return words.map((_, i) => words.slice(i).join(' '));
}
