import { likelyGrams } from '../../food/weigh.ts';
import { MEASURES_CHOICES } from '../../measure/systems.ts';
import { weighedLine, weighingLines } from '../../publish/weighing.ts';
import type { Command } from '../command.ts';
import type { WeighedJson } from '../formats/shapes.ts';
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
    const bound = weighedLine(words, { book: world.book, measures });
    if (bound === undefined)
      throw new UsageError(
        `\`${words}\` is no amount of a food: write the amount first, such as "1 1/2 cup plain flour"`,
      );
    const { weighed, food } = bound;
    if (choiceOf(options, 'format', ['text', 'json'], 'text') === 'json') {
      const answer: WeighedJson = weighed.known
        ? {
            version: 1,
            written: words,
            food: food?.id ?? null,
            grams: likelyGrams(weighed),
            grams_low: weighed.grams.low,
            grams_high: weighed.grams.high,
            grams_from: weighed.reason.kind,
            why: weighed.reason.words,
            source: weighed.reason.source,
          }
        : {
            version: 1,
            written: words,
            food: food?.id ?? null,
            grams: null,
            grams_low: null,
            grams_high: null,
            grams_from: null,
            why: weighed.why,
            source: null,
          };
      io.out(`${JSON.stringify(answer, null, 2)}\n`);
      return weighed.known ? 0 : 1;
    }
    io.out(`${weighingLines(bound).join('\n')}\n`);
    return weighed.known ? 0 : 1;
  },
};
