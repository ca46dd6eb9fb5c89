/**
 * Knows view 1, the recipe as a reader sees it: the list by part, the method by part, and what was found by its line.
 * Refuses to work anything out: it shows what the facts say.
 */
import type { ViewFacts } from './facts.ts';
import { Notes } from './found.ts';
import { listSection } from './list.ts';
import { methodSection } from './method.ts';
import { picturesOf } from './pictures.ts';

/** The content of `<section id="recipe">`. */
export function recipeView(facts: ViewFacts): string {
  const notes = new Notes(facts);
  const { sections } = facts.page;
  const lines = sections.flatMap((s) => [...s.ingredients, ...s.method].map(({ line }) => line));
  const above = notes.tellRest(Math.min(...sections.flatMap(({ line }) => line ?? []), ...lines));
  const blocks = [
    above === '' ? '' : `<ul class="list others">\n${above}\n</ul>`,
    picturesOf(facts, 'dish'),
    listSection(facts, notes),
    methodSection(facts, notes),
  ];
  const rest = notes.tellRest();
  if (rest !== '')
    blocks.push(
      `<section aria-labelledby="found">\n<h2 id="found">Found elsewhere in the file</h2>\n<ul class="list others">\n${rest}\n</ul>\n</section>`,
    );
  return blocks.filter((block) => block !== '').join('\n');
}
