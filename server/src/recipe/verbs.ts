/**
 * Knows what a cook's verb does: it heats, cools, rests or handles, and whether someone stands by.
 * Refuses to know the sentence around it.
 */
import data from '../../data/verbs.json' with { type: 'json' };

export type VerbClass = 'oven' | 'stove' | 'cooling' | 'resting' | 'handling';

const BY_VERB = new Map<string, VerbClass>();
for (const verb of data.handling) BY_VERB.set(verb, 'handling');
for (const verb of data.resting) BY_VERB.set(verb, 'resting');
for (const verb of data.cooling) BY_VERB.set(verb, 'cooling');
for (const verb of data.heating.stove) BY_VERB.set(verb, 'stove');
for (const verb of data.heating.oven) BY_VERB.set(verb, 'oven');

/** What the verb a word is a form of does; undefined when the word is no verb of the kitchen. */
export function verbClass(word: string): VerbClass | undefined {
  return formOf(word)?.does;
}

/** `baking`, `bakes` and `baked` are forms of `bake`. */
export function baseForm(word: string): string {
  return formOf(word)?.verb ?? word;
}

interface Form {
  readonly verb: string;
  readonly does: VerbClass;
}

/** Words already looked at; `null` for one that is no verb. */
const KNOWN = new Map<string, Form | null>();
const MOST_KNOWN = 20_000;

function formOf(word: string): Form | null {
  let form = KNOWN.get(word);
  if (form === undefined) {
    const verb = verbOf(word);
    const does = verb === undefined ? undefined : BY_VERB.get(verb);
    form = verb === undefined || does === undefined ? null : { verb, does };
    if (KNOWN.size < MOST_KNOWN && word.length < 30) KNOWN.set(word, form);
  }
  return form;
}

function verbOf(word: string): string | undefined {
  if (BY_VERB.has(word)) return word;
  for (const [ending, endings] of FORMS) {
    if (!word.endsWith(ending)) continue;
    const stem = word.slice(0, -ending.length);
    for (const end of endings) if (BY_VERB.has(stem + end)) return stem + end;
    if (stem.length > 3 && stem.at(-1) === stem.at(-2) && BY_VERB.has(stem.slice(0, -1))) return stem.slice(0, -1);
  }
  return undefined;
}

const FORMS: readonly (readonly [string, readonly string[]])[] = [
  ['ing', ['', 'e']],
  ['ed', ['', 'e']],
  ['es', ['', 'e']],
  ['s', ['']],
  ['d', ['']],
];
