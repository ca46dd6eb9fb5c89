/**
 * Knows which verb of the lexicon a text opens with, whatever its form; for texts that are no sentence of a recipe: `to bake`, a printed line.
 * Refuses to know what is said of it.
 */
import { sentenceIn } from '../notation/sentence.ts';
import { verbForms } from './forms.ts';
import { formOf, senseOf, verbOf } from './lexicon.ts';
import { read } from './read.ts';
import type { VerbRow } from './rows.ts';

export interface NamedVerb {
  /** The same for all verbs that do the same. */
  readonly key: string;
  /** As an order: `bake` of `baking`; worked out when it is asked for. */
  readonly base: string;
  /** The word is a thing as often. */
  readonly noun: boolean;
}

const FIRST = /^[\p{L}'’-]+/u;

/** The verb that is the first word of a text; undefined where it is none. */
export function verbNamed(text: string): NamedVerb | undefined {
  const word = (FIRST.exec(text.trim())?.[0] ?? '').toLowerCase().replace('’', "'");
  const row = word === '' ? undefined : verbOf(senseOf(word));
  return row && new Named(word, row);
}

class Named implements NamedVerb {
  private readonly word: string;
  private readonly row: VerbRow;

  constructor(word: string, row: VerbRow) {
    this.word = word;
    this.row = row;
  }

  get key(): string {
    return this.row.words[0] ?? this.word;
  }

  get base(): string {
    return baseOf(this.word, this.row);
  }

  get noun(): boolean {
    return this.row.noun;
  }
}

function baseOf(word: string, { words, forms }: VerbRow): string {
  for (const verb of words) {
    const given = words[0] === verb ? forms : [];
    if (!verb.includes(' ') && verbForms(verb, given).some(([form]) => form === word)) return verb;
  }
  return word;
}

/** Whether a text orders something at its beginning: `Sift the flour`, not `Flour, sifted`. */
export function opensWithOrder(text: string): boolean {
  const sentence = sentenceIn(text);
  const first = read(sentence.items, [])[0];
  if (first?.as !== 'ordered' || first.verb === undefined || first.verb.start !== sentence.items[0]?.start)
    return false;
  // `Flour, sifted` is as likely a thing; `Mix.` is none.
  const { objects, where, times, temperatures, medium, vessel } = first;
  const isSaid = where.length + times.length + temperatures.length > 0 || medium !== undefined || vessel !== undefined;
  return (
    /[.!]\s*$/.test(text) || verbNamed(text)?.noun !== true || isSaid || objects.some(({ by }) => by !== 'nothing')
  );
}

/** Whether a word, in any form, is a verb of the lexicon where it stands behind nothing that makes it a thing. */
export const isVerb = (word: string): boolean => formOf(senseOf(word)) !== undefined;
