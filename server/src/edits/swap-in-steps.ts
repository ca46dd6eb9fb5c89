/**
 * Knows how the steps speak of what is in the list after a swap, and no longer of what is used up.
 * Refuses to choose what is in the list.
 */
import { kitchenGrams } from '../measure/kitchen.ts';
import { trimmed } from '../measure/number-text.ts';
import { middle } from '../measure/quantity.ts';
import type { Document } from '../notation/document.ts';
import type { Ingredient, Part, Recipe, TakenUse } from '../recipe/model.ts';
import { ADJECTIVES, singular, wordsOf } from '../recipe/words.ts';
import type { Amount } from './swap-plan.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

/** `the yolks and the whites` becomes `the yolks` where the whites are used up. */
export function unsaid(document: Document, recipe: Recipe, part: Part, line: Ingredient): TextEdit[] {
  const uses = part.ledger.find((e) => e.ingredient === line)?.uses ?? [];
  return uses.flatMap(({ part: of, line: at, mention }) => {
    const number = (recipe.partsAt[of] ?? 0) + at;
    const before = (document.lines[number]?.text ?? '').slice(0, mention.whole.start);
    const join = /(?:,? and|,) $/.exec(before);
    return join === null ? [] : [replaceSpan(number, { start: join.index, end: mention.end }, '')];
  });
}

/** The steps speak of what is now in the list: the new name, and with it what goes in beside it. */
export function mentionEdits(
  document: Document,
  recipe: Recipe,
  use: TakenUse,
  main: Amount,
  added: readonly Amount[],
): TextEdit[] {
  const { mention } = use;
  if (mention.ingredients.length > 1 && !mention.every) return [];
  const line = (recipe.partsAt[use.part] ?? 0) + use.line;
  const { text } = document.lines[line] ?? { text: '' };
  // `Butter the pan` is a verb; in `milk, butter and salt` it is not.
  if (mention.verb && !text.slice(mention.end).startsWith(' and ')) return [];
  const said = text.slice(mention.start, mention.end);
  const edits: TextEdit[] = [];
  const share = middle(use.taken);
  const { portion } = mention;
  const inGrams = portion.kind === 'amount' && portion.measured.unit !== undefined;
  if (inGrams && share > 0)
    edits.push(replaceSpan(line, portion.measured, `${trimmed(kitchenGrams(main.grams * share), 2)} g`));
  const takes = use.taken.high > 0 || use.before.high >= 1;
  const beside = takes
    ? added.map((a) => {
        const lead = inGrams
          ? `${trimmed(kitchenGrams(a.grams * share), 2)} g of the `
          : leadOf(text.slice(mention.whole.start, mention.start));
        return `${lead}${a.name}`;
      })
    : [];
  const named = isNamed(said, main.name) ? said : mention.forced ? `[${main.name}]` : inCase(said, main.name);
  const joined = [named, ...beside];
  const written = joined.length < 2 ? named : `${joined.slice(0, -1).join(', ')} and ${joined.at(-1)}`;
  if (written !== said) edits.push(replaceSpan(line, mention, written));
  return edits;
}

/** `the`, `half the`: what stood before the old name goes before the new one too, but for a capital. */
const leadOf = (written: string): string => (/^\p{Lu}/u.test(written) ? written.toLowerCase() : written);

/** Whether words still name a food so called: the name or the end of it, as steps may. */
function isNamed(said: string, name: string): boolean {
  const words = wordsOf(said);
  const full = wordsOf(name);
  if (words.length === 1 && full.length > 1 && ADJECTIVES.has(words[0] ?? '')) return false;
  return words.length > 0 && full.slice(-words.length).join(' ') === words.join(' ');
}

function inCase(said: string, name: string): string {
  const one = said.length > 0 && singular(said.toLowerCase()) === said.toLowerCase() && /s$/.test(name);
  const written = one && /(?:egg yolk|egg white)s$/.test(name) ? name.slice(0, -1) : name;
  return /^\p{Lu}/u.test(said) ? `${written.charAt(0).toUpperCase()}${written.slice(1)}` : written;
}
