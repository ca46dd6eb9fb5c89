/**
 * Knows the forms that a row's words take: `stirs`, `stirring`, `stirred`; `dishes`.
 * Refuses to know what they mean.
 */

/** How a verb stands in a sentence. */
const FORMS = [
  'base',
  /** `simmers` */
  's',
  'ing',
  /** Past or participle: `chilled`, `frozen`. */
  'past',
  /** `put`, `set`: nobody can tell. */
  'base or past',
] as const;
export type Form = (typeof FORMS)[number];

/** A letter for each, in the generated table. */
export const FORM_LETTERS = { base: 'b', s: 's', ing: 'i', past: 'p', 'base or past': 'x' } as const satisfies Readonly<
  Record<Form, string>
>;
export const formOfLetter = (letter: string): Form | undefined => FORMS.find((form) => FORM_LETTERS[form] === letter);

/** The forms of a verb of any number of words, the first inflected. `given` are those that no rule makes. */
export function verbForms(verb: string, given: readonly string[]): readonly (readonly [string, Form])[] {
  const [first = '', ...rest] = verb.split(' ');
  const tail = rest.length === 0 ? '' : ` ${rest.join(' ')}`;
  const ings = given.filter((form) => form.endsWith('ing'));
  const pasts = given.filter((form) => !form.endsWith('ing'));
  if (ings.length === 0) ings.push(`${stemBefore('ing', first)}ing`);
  if (pasts.length === 0) pasts.push(pastOf(first));
  // `labeled`, and in Britain `labelled`.
  if (given.length === 0 && UNSTRESSED_L.test(first)) {
    ings.push(`${first}ling`);
    pasts.push(`${first}led`);
  }
  return [
    [first + tail, pasts.includes(first) ? 'base or past' : 'base'],
    [withS(first) + tail, 's'],
    ...ings.map((form): [string, Form] => [form + tail, 'ing']),
    ...pasts.filter((form) => form !== first).map((form): [string, Form] => [form + tail, 'past']),
  ];
}

/** A noun and its plural. */
export const nounForms = (noun: string): readonly string[] => [noun, withS(noun)];

const UNSTRESSED_L = /[aeiouy][^aeiouy]+[ae]l$/;

function withS(word: string): string {
  if (/(?:l|ea|oa)f$/.test(word)) return `${word.slice(0, -1)}ves`;
  if (word.endsWith('ife')) return `${word.slice(0, -2)}ves`;
  if (/(?:[sxz]|[cs]h)$/.test(word)) return `${word}es`;
  if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ies`;
  if (/[^aeiou]o$/.test(word)) return `${word}es`;
  return `${word}s`;
}

function pastOf(verb: string): string {
  if (verb.endsWith('e')) return `${verb}d`;
  if (/[^aeiou]y$/.test(verb)) return `${verb.slice(0, -1)}ied`;
  return `${stemBefore('ed', verb)}ed`;
}

/** `stir` and `unwrap` double their last letter, `season` and `boil` do not; longer ones that do are given. */
function stemBefore(ending: 'ing' | 'ed', verb: string): string {
  if (ending === 'ing' && /[^eoy]e$/.test(verb)) return verb.slice(0, -1);
  const last = verb.slice(verb.lastIndexOf('-') + 1).replace(/^(?:un|re|de|over)(?=[^aeiouy]+[aeiouy][bdgmnpst]$)/, '');
  if (/c$/.test(last)) return `${verb}k`;
  return /^(?:[^aeiou]|qu)*[aeiouy][^aeiouwxyh]$/.test(last) ? verb + verb.slice(-1) : verb;
}

/** `evenly`: what an adverb is made like, where no row has it. */
export const isAdverb = (word: string): boolean => word.length > 4 && word.endsWith('ly');
