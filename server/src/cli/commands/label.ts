import { labelDraft } from '../../publish/label/draft.ts';
import { draftText, SIDES } from '../../publish/label/draft-text.ts';
import { referenceNamed, references } from '../../recipe/label/reference.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import type { Command } from '../command.ts';
import type { LabelJson } from '../formats/shapes.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, UsageError } from '../io.ts';
import { choiceOf } from '../options.ts';

export const label: Command = {
  name: 'label',
  usage: 'FILE [--side both|us|eu] [--as CATEGORY] [--cooked] [--format text|json] [--stdin --stdin-name NAME]',
  summary:
    'the draft of a label: Nutrition Facts of a serving, ingredients by weight with what the name stresses, allergens by name, and what to ask',
  options: { ...INPUT_OPTIONS, side: 'value', as: 'value', cooked: 'flag', format: 'value' },
  examples: ['quern label tart.quern', 'quern label tart.quern --side us --as pie', 'quern label stew.quern --cooked'],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const side = choiceOf(options, 'side', SIDES, 'both');
    const category = options.values.as;
    if (category !== undefined && referenceNamed(category) === undefined)
      throw new UsageError(
        `--as names a category of reference amounts: ${references()
          .map(({ id }) => id)
          .join(', ')}`,
      );
    const { whole, outline, isWhole } = snapshotOf(await readOne(options, io), housesFor(io));
    if (!isWhole) throw new UsageError('it builds on what is not there: `quern check` says what is missing');
    const { recipe } = whole;
    const draft = labelDraft(recipe, readTrials(outline), {
      cooked: options.flags.has('cooked'),
      ...(category !== undefined && { category }),
    });
    const name = recipe.name === '' ? null : recipe.name;
    const document: LabelJson = { version: 1, recipe: name, ...draft };
    io.out(
      format === 'json'
        ? `${JSON.stringify(document, null, 2)}\n`
        : draftText(name ?? 'A recipe without a name', draft, side),
    );
    return 0;
  },
};
