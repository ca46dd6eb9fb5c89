import { likelyGrams } from '../../food/weigh.ts';
import { likelyText } from '../../measure/number-text.ts';
import { MEASURES_CHOICES } from '../../measure/systems.ts';
import { parseDocument } from '../../notation/document.ts';
import { bindIngredient } from '../../recipe/list/ingredient.ts';
import type { Command } from '../command.ts';
import { housesFor } from '../inputs.ts';
import { UsageError } from '../io.ts';
import { choiceOf } from '../options.ts';

export const weigh: Command = {
  name: 'weigh',
  usage: '"1 1/2 cup plain flour" [--measures us|metric|british|australian|canadian|imperial] [--format text|json]',
  summary: 'grams, and the reason for them',
  options: { measures: 'value', format: 'value' },
  examples: [
    'quern weigh "1 1/2 cup plain flour"',
    'quern weigh "3 large eggs"',
    'quern weigh "2 tbsp honey" --measures metric',
  ],
  run(options, io) {
    const words = options.rest.join(' ').trim();
    if (words === '') throw new UsageError('say what to weigh: quern weigh "1 1/2 cup plain flour"');
    const { world } = housesFor(io).of(io.cwd).house;
    const measures = choiceOf(options, 'measures', MEASURES_CHOICES, world.measures);
    const statement = parseDocument(words).lines[0]?.statement;
    const bound =
      statement?.kind === 'ingredient' ? bindIngredient(statement, 0, { book: world.book, measures }) : undefined;
    if (bound === undefined)
      throw new UsageError(
        `\`${words}\` is no amount of a food: write the amount first, such as "1 1/2 cup plain flour"`,
      );
    const { weighed, food, match } = bound;
    if (choiceOf(options, 'format', ['text', 'json'], 'text') === 'json') {
      const answer = weighed.known
        ? {
            food: food?.id ?? null,
            grams: likelyGrams(weighed),
            grams_low: weighed.grams.low,
            grams_high: weighed.grams.high,
            grams_from: weighed.reason.kind,
            why: weighed.reason.words,
            source: weighed.reason.source,
          }
        : {
            food: food?.id ?? null,
            grams: null,
            grams_low: null,
            grams_high: null,
            grams_from: null,
            why: weighed.why,
            source: null,
          };
      io.out(`${JSON.stringify({ version: 1, written: words, ...answer }, null, 2)}\n`);
      return weighed.known ? 0 : 1;
    }
    if (weighed.known) {
      const grams = likelyText(likelyGrams(weighed), weighed.grams.low, weighed.grams.high);
      io.out(`${grams} ${food?.name ?? bound.name}\n${weighed.reason.words} (${weighed.reason.source})\n`);
      return 0;
    }
    const near = match.kind === 'ambiguous' ? match.foods : match.kind === 'unknown' ? match.near : [];
    io.out(`not known${food === undefined ? '' : `, ${food.name}`}: ${weighed.why}\n`);
    if (near.length > 0)
      io.out(`${match.kind === 'ambiguous' ? 'it could be' : 'did you mean'} ${near.map((f) => f.name).join(', ')}?\n`);
    return 1;
  },
};
