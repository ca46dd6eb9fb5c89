import { type Adjustment, adjustPart } from '../../edits/adjust/adjust.ts';
import type { Hold, Target } from '../../edits/adjust/landing.ts';
import { changeText } from '../../edits/adjust/said.ts';
import { doubtful, measureNamed, readValue } from '../../edits/adjust/wish.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { middle } from '../../measure/quantity.ts';
import { printDocument } from '../../notation/document.ts';
import { plainFinding } from '../../publish/finding-json.ts';
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import { bandText, measureText } from '../../recipe/measures/measure-text.ts';
import { partMeasure } from '../../recipe/measures/part-measure.ts';
import type { Part, Recipe } from '../../recipe/model.ts';
import { sameName } from '../../recipe/words.ts';
import { broughtBy } from '../../workspace/offered.ts';
import type { Command } from '../command.ts';
import { housesFor, INPUT_OPTIONS, readOne, snapshotOf } from '../inputs.ts';
import { type Exit, refuseToWriteStdin, save, UsageError } from '../io.ts';
import { ANY, choiceOf, type Options } from '../options.ts';

const OPTIONS = {
  ...INPUT_OPTIONS,
  part: 'value',
  hold: 'value',
  keep: 'value',
  'whole-eggs': 'flag',
  write: 'flag',
  format: 'value',
} as const;

export const adjust: Command = {
  name: 'adjust',
  usage:
    'FILE --part NAME --MEASURE VALUE … [--hold mass|flour] [--keep "NAME, NAME"] [--whole-eggs] [--write] [--format text|json] [--stdin --stdin-name NAME]',
  summary: 'a measure brought to a value: the grams that change, and why',
  // A measure is an option of its own name; which there are hangs on the part.
  options: { ...OPTIONS, [ANY]: 'value' },
  examples: [
    'quern adjust loaf.quern --part dough --hydration 68%',
    'quern adjust tart.quern --part base --hydration 24% --hold mass --write',
    'quern adjust ice.quern --part mix --fat-share 10% --sugars-share 16% --keep "egg yolks"',
    'quern adjust pasta.quern --hydration 35% --whole-eggs',
  ],
  async run(options, io): Promise<Exit> {
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const hold = holdsOf(options);
    refuseToWriteStdin(options.flags, 'write');
    const input = await readOne(options, io);
    const snapshot = snapshotOf(input, housesFor(io));
    const { document, recipe } = snapshot;
    const part = partOf(recipe, options.values.part);
    const result = adjustPart(document, recipe, part, {
      targets: targetsOf(part, options),
      hold,
      keep: listed(options.values.keep),
      whole: options.flags.has('whole-eggs'),
    });
    if (!result.ok) throw new UsageError(result.why);
    const found = broughtBy(snapshot, snapshot.after(result.edits)).map(plainFinding);
    const harm = found.find(({ severity }) => severity === 'error');
    if (harm !== undefined && options.flags.has('write'))
      throw new UsageError(`nothing is written, since it would bring ${harm.code}: ${harm.message}`);
    const text = printDocument(applyEdits(document, result.edits));
    if (options.flags.has('write')) save([{ path: input.path, before: input.text, text }], io);
    if (format === 'json') {
      io.out(`${JSON.stringify({ ...asJson(part, result), brings: found.map(({ code }) => code), text }, null, 2)}\n`);
      return 0;
    }
    io.out(`${linesOf(part, result).join('\n')}\n`);
    for (const { message, code } of found) io.err(`note: it brings ${code}: ${message}\n`);
    if (!options.flags.has('write') && result.moved.length > 0)
      io.err('note: Nothing is written yet; --write writes it.\n');
    return 0;
  },
};

const listed = (words: string | undefined): string[] =>
  (words ?? '')
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

function holdsOf({ values: { hold } }: Options): readonly Hold[] {
  return listed(hold).map((word) => {
    const held = (['mass', 'flour'] as const).find((h) => h === word);
    if (held === undefined) throw new UsageError(`--hold is mass or flour, not \`${word}\``);
    return held;
  });
}

/** The part that is named; of a recipe with one list, that. */
function partOf(recipe: Recipe, named: string | undefined): Part {
  const parts = recipe.parts.filter(({ head }) => head.ingredients.length > 0);
  const names = parts.map(({ head }) => head.name || '(nameless)').join(', ');
  if (parts.length === 0) throw new UsageError('there is nothing to adjust: the file has no ingredients');
  const [first] = parts;
  if (named === undefined) {
    if (first !== undefined && parts.length === 1) return first;
    throw new UsageError(`say which part with --part NAME; the parts are ${names}`);
  }
  const found = parts.find(({ head }) => sameName(head.name, named));
  if (found === undefined) throw new UsageError(`there is no part \`${named}\` with a list; the parts are ${names}`);
  return found;
}

function targetsOf(part: Part, { values }: Options): Target[] {
  const asked = Object.entries(values).filter(([name]) => !Object.hasOwn(OPTIONS, name));
  if (asked.length === 0)
    throw new UsageError(`say which measure, and what it is to be: --hydration 68%; ${measuresOf(part)}`);
  const targets = asked.map(([name, words = '']): Target => {
    const measure = measureNamed(part, name);
    if (measure === undefined) throw new UsageError(`there is no measure --${name}; ${measuresOf(part)}`);
    const to = readValue(measure, words);
    if (typeof to === 'string') throw new UsageError(`--${name}: ${to}`);
    const worked = partMeasure(part, measure);
    const unsure = worked.known ? doubtful(measure, words, to, middle(worked.value)) : undefined;
    if (unsure !== undefined) throw new UsageError(`--${name}: ${unsure}; ${measuresOf(part)}`);
    return { measure, to };
  });
  const twice = targets.find(({ measure }, i) => targets.some((t, k) => k < i && t.measure === measure));
  if (twice !== undefined) throw new UsageError(`${MEASURES[twice.measure].words} is asked for twice: give one value`);
  return targets;
}

/** What is measured of a part, what that is now, and what is usual; of one without a kind, what may be asked. */
function measuresOf(part: Part): string {
  const { kind, name } = part.head;
  const whose = name === '' ? 'the recipe' : name;
  if (kind === undefined)
    return `${whose} says no kind, so nothing is usual for it; --hydration, --fat, --sugar, --salt and the like may be asked all the same`;
  const rows = kind.measures.map(({ measure, usual }) => {
    const worked = partMeasure(part, measure);
    const now = worked.known ? measureText(measure, worked.value.low, worked.value.high) : 'not known';
    return `--${optionOf(measure)} (${MEASURES[measure].words}: ${now}; usual ${bandText(measure, usual)})`;
  });
  return `${whose}, as ${kind.name}, has ${rows.join(', ')}`;
}

const optionOf = (measure: MeasureName): string => measure.replaceAll(' ', '-');

function linesOf(part: Part, { brought, moved, said }: Adjustment): string[] {
  const width = Math.max(0, ...moved.map(({ ingredient }) => ingredient.name.length));
  const subject = part.head.name === '' ? '' : `${part.head.name}: `;
  return [
    ...brought.map(({ measure, before, after }) => {
      const usual = part.head.kind?.measures.find((held) => held.measure === measure)?.usual;
      const band = usual === undefined ? '' : ` (usual: ${bandText(measure, usual)})`;
      const [was, is] = [before, after].map(({ low, high }) => measureText(measure, low, high));
      return `${subject}${MEASURES[measure].words} ${was} → ${is}${band}`;
    }),
    ...(moved.length === 0 ? ['  nothing moves: it is there already'] : []),
    ...moved.map((m) => `  ${m.ingredient.name.padEnd(width)}  ${m.before} → ${m.after}  (${changeText(m)})`),
    ...said,
  ];
}

const asJson = (part: Part, { brought, moved, said }: Adjustment) => ({
  version: 1,
  part: part.head.name,
  measures: brought.map(({ measure, to, before, after }) => ({
    name: measure,
    unit: MEASURES[measure].unit === 'celsius' ? 'C' : '1',
    before: [before.low, before.high],
    to,
    after: [after.low, after.high],
    band: part.head.kind?.measures.find((held) => held.measure === measure)?.usual ?? null,
  })),
  changes: moved.map(({ ingredient, before, after, gramsBefore, gramsAfter }) => ({
    name: ingredient.name,
    written: before,
    becomes: after,
    grams: Number(gramsBefore.toFixed(2)),
    grams_after: Number(gramsAfter.toFixed(2)),
  })),
  said,
});
