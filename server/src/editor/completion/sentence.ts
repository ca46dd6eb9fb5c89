/** In a sentence: the verb at its beginning; units after a number, heats before one; else ingredients no step has used, then the used ones and earlier parts. */
import { figureBehind, mayBeginName } from '../../prose/expected.ts';
import type { LedgerEntry, Part } from '../../recipe/model.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { sayLeft } from '../hover/ingredient.ts';
import { sayGrams } from '../words.ts';
import { heatsHere } from './heat.ts';
import { type Completion, type Completions, NOTHING, type Typing } from './item.ts';
import { IN_SENTENCES, units } from './unit.ts';
import { completeVerb } from './verb.ts';

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
  if (part === undefined) return NOTHING;
  if (/^\s*do\s*$/.test(ahead)) return typing.byBlank ? NOTHING : completeVerb(part, word, character);
  const heats = heatsHere(typing);
  if (heats.length > 0) return { items: heats, incomplete: true };
  if (typing.byBlank && !opensName(ahead)) return NOTHING;
  const { names, incomplete } = namesFor(typing.snapshot, part, word.toLowerCase());
  return { items: names.map((name) => completionOf(name, before, word)), incomplete };
}

const opensName = (before: string): boolean => /\s$/.test(before) && mayBeginName(before);

function unitsHere(before: string): string[] {
  const { amounts, times, heats } = IN_SENTENCES;
  switch (figureBehind(before)) {
    case 'time':
      return [...times, ...heats, ...amounts];
    case 'temperature':
      return [...heats, ...times, ...amounts];
    case 'amount':
      return [...amounts, ...times, ...heats];
  }
}

/** Of earlier parts and what is left of them: a cook means one of the nearest, or types another letter. */
const MOST_FROM_EARLIER = 50;

interface Name {
  readonly name: string;
  readonly kind: 'ingredient' | 'part';
  readonly detail: string;
}

/** The likeliest first. */
function namesFor(snapshot: Snapshot, part: Part, word: string): { names: Name[]; incomplete: boolean } {
  const unused: Name[] = [];
  const started: Name[] = [];
  const used: Name[] = [];
  for (const entry of part.ledger) {
    const name = { name: entry.ingredient.name, kind: 'ingredient' as const };
    if (entry.uses.length === 0) unused.push({ ...name, detail: `${amountOf(entry)}not used yet` });
    else if (entry.left.high > 0.02) started.push({ ...name, detail: `${sayLeft(entry)} left` });
    else used.push({ ...name, detail: 'used up' });
  }
  const fresh: Name[] = [];
  const taken: Name[] = [];
  const left: Name[] = [];
  const includes = new Set(part.includes);
  let room = MOST_FROM_EARLIER;
  for (let index = part.index - 1; index >= 0 && room > 0; index--) {
    const head = snapshot.recipe.heads[index];
    if (head !== undefined && head.name !== '' && begins(head.name, word)) {
      if (includes.has(head)) taken.push({ name: head.name, kind: 'part', detail: 'a part, already used' });
      else fresh.push({ name: head.name, kind: 'part', detail: 'a part' });
      room--;
    }
    for (const entry of snapshot.recipe.parts[index]?.ledger ?? []) {
      const { name } = entry.ingredient;
      if (entry.left.high <= 0.02 || entry.uses.length === 0 || !begins(name, word)) continue;
      left.push({ name, kind: 'ingredient', detail: `${sayLeft(entry)} left of the ${head?.name ?? ''}` });
      room--;
    }
  }
  const seen = new Set<string>();
  const names = [...unused, ...started, ...fresh, ...used, ...taken, ...left].filter(({ name }) => {
    if (seen.has(name)) return false;
    seen.add(name);
    return true;
  });
  return { names, incomplete: room <= 0 };
}

/** Whether a word of the name begins as typed. */
const begins = (name: string, typed: string): boolean =>
  typed === '' || name.toLowerCase().startsWith(typed) || name.toLowerCase().includes(` ${typed}`);

function amountOf({ ingredient }: LedgerEntry): string {
  return ingredient.weighed.known ? `${sayGrams(ingredient.weighed.grams)}, ` : '';
}

/** The name, or the end of it that starts as typed; `the` before it where none stands there. */
function completionOf({ name, kind, detail }: Name, before: string, word: string): Completion {
  const end = before.length;
  const start = end - typedOf(name, before, word).length;
  const typed = before.slice(start).toLowerCase();
  const text = typed === '' ? name : (endsOf(name).find((n) => n.toLowerCase().startsWith(typed)) ?? name);
  const bare = opensName(before.slice(0, start)) || /\[\s*$/.test(before.slice(0, start));
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
