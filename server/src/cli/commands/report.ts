import { REPORT_FORMATS, reportedAs } from '../../publish/reported.ts';
import { recipeRecord } from '../../recipe/trials/state.ts';
import { readTrials } from '../../recipe/trials/trials.ts';
import type { Command } from '../command.ts';
import type { RecipeRowJson, RecipesJson } from '../formats/shapes.ts';
import { housesFor, INPUT_OPTIONS, readMany, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf, type Options } from '../options.ts';
import { pricesFor } from '../prices.ts';
import { whereIn } from '../where.ts';

export const report: Command = {
  name: 'report',
  usage: 'FILE|FOLDER [--cooked] [--format text|json|html] [--stdin --stdin-name NAME]',
  summary:
    'the recipe worked out: grams, percentages, composition, measures, times; of a folder, the state of each recipe',
  options: { ...INPUT_OPTIONS, cooked: 'flag', format: 'value' },
  examples: [
    'quern report tart.quern',
    'quern report tart.quern --cooked',
    'quern report tart.quern --format json',
    'quern report .',
  ],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', REPORT_FORMATS, 'text');
    const [path] = options.rest;
    if (path !== undefined && io.kind(io.resolve(path)) === 'folder') {
      if (format === 'html') throw new UsageError('a folder is told as text or JSON');
      return reportFolder(options, io, format);
    }
    const input = await readOne(options, io);
    const snapshot = snapshotOf(input, housesFor(io));
    const { whole, outline, findings } = snapshot;
    const reported = reportedAs(format, whole.recipe, findings, {
      trials: readTrials(outline),
      prices: pricesFor(snapshot, input.path, io),
      sayLine: whereIn(snapshot, io),
      cooked: options.flags.has('cooked'),
    });
    if (format === 'html') io.document(reported);
    else io.out(reported);
    return 0;
  },
};

/** One line a recipe: what the kitchen's record says of it. */
async function reportFolder(options: Options, io: Io, format: 'text' | 'json'): Promise<Exit> {
  const houses = housesFor(io);
  const rows = (await readMany(options, io, houses)).flatMap((input): RecipeRowJson[] => {
    const snapshot = snapshotOf(input, houses);
    const { recipe } = snapshot.whole;
    if (snapshot.outline.recipe === undefined) return [];
    const record = recipeRecord(recipe, readTrials(snapshot.outline));
    const latest = record.trials.at(-1);
    return [
      {
        path: input.shown,
        recipe: snapshot.recipe.name,
        state: record.state,
        trial: latest?.date ?? null,
        verdict: latest?.verdict ?? null,
        findings: snapshot.findings.open.length,
      },
    ];
  });
  const document: RecipesJson = { version: 1, recipes: rows };
  io.out(format === 'json' ? `${JSON.stringify(document, null, 2)}\n` : table(rows));
  return 0;
}

function table(rows: readonly RecipeRowJson[]): string {
  const cells = [
    ['recipe', 'state', 'last trial', 'findings', 'file'],
    ...rows.map((r) => [
      r.recipe,
      r.state,
      [r.trial, r.verdict].filter((w) => w !== null).join(' ') || '-',
      String(r.findings),
      r.path,
    ]),
  ];
  const widths = (cells[0] ?? []).map((_, i) => Math.max(...cells.map((row) => row[i]?.length ?? 0)));
  return `${cells
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')}\n`;
}
