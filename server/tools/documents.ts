/**
 * Knows what is generated from the code into documents: the schema of `quern.json`, settings of the manifest, and tables in `server/docs`.
 * `tests/house/stale.test.ts` writes a stale copy anew, then fails.
 */
import type { Check } from '../src/checks/check.ts';
import { SHOWN_SETTINGS } from '../src/editor/shown.ts';
import { LANGUAGES } from '../src/food/language.ts';
import { MEASURES_CHOICES } from '../src/measure/systems.ts';
import type { Kind } from '../src/recipe/measures/kind.ts';
import { KINDS } from '../src/recipe/measures/kinds.ts';
import { MOST_OFFSET_K } from '../src/workspace/house-ovens.ts';
import { FOOD_SAFETY_CHOICES, levelsFor, measuresSaid } from '../src/workspace/settings.ts';

/** The JSON Schema of `quern.json`, as text. */
export function settingsSchema(checks: readonly Check[]): string {
  const schema = {
    $schema: 'http://json-schema.org/draft-07/schema#',
    title: 'quern.json: what a kitchen sets for its folder of recipes',
    type: 'object',
    additionalProperties: false,
    properties: {
      $schema: { type: 'string' },
      measures: {
        enum: MEASURES_CHOICES,
        default: 'us',
        description: `Whose cup, pint and spoon, and by whose rules eggs are sized. ${MEASURES_CHOICES.map(measuresSaid).join(' ')}`,
      },
      language: {
        enum: LANGUAGES,
        description: 'Whose words for foods come first and are said: plain flour or all-purpose flour.',
      },
      foodSafety: {
        enum: FOOD_SAFETY_CHOICES,
        default: 'us-food-code-2022',
        description: 'The rules that safe temperatures are held against. Local codes come first.',
      },
      severities: {
        type: 'object',
        description: 'How grave a finding is here, by code.',
        additionalProperties: false,
        properties: Object.fromEntries(
          checks.map((c) => [c.code, { enum: levelsFor(c), default: c.severity, description: `${c.title}.` }]),
        ),
      },
      bands: {
        type: 'object',
        description:
          'What is usual here, by kind and measure: a low and a high, null for no limit. Ratios: 0.35 is 35 %.',
        additionalProperties: false,
        properties: Object.fromEntries(KINDS.filter((k) => k.measures.length > 0).map((k) => [k.name, bandsOf(k)])),
      },
      ovens: {
        type: 'object',
        description: 'The ovens of the house, by the names that trials call them: took 46 min to bake in lower deck.',
        additionalProperties: {
          type: 'object',
          additionalProperties: false,
          properties: {
            fan: { type: 'boolean', description: 'Its fan runs.' },
            offset: {
              type: 'number',
              minimum: -MOST_OFFSET_K,
              maximum: MOST_OFFSET_K,
              description: 'By how many °C it is warmer than its dial says; below 0 where it is colder.',
            },
          },
        },
      },
      foods: {
        type: 'array',
        items: { type: 'string' },
        default: [],
        description:
          'Files whose food blocks hold for all recipes of the folder, beside every foods.quern: paths relative to this folder.',
      },
      ignore: {
        type: 'array',
        items: { type: 'string' },
        default: [],
        description: 'Files that are not checked, as patterns of .gitignore relative to this folder.',
      },
    },
  };
  return `${JSON.stringify(schema)}\n`;
}

const bandsOf = (kind: Kind): object => ({
  type: 'object',
  additionalProperties: false,
  properties: Object.fromEntries(
    kind.measures.map((m) => [
      m.measure,
      { type: 'array', items: { type: ['number', 'null'] }, minItems: 2, maxItems: 2, default: m.usual },
    ]),
  ),
});

/** `package.json` with the settings of what is shown in the text, in the place of those that it has. */
export function withShownSettings(manifest: string): string {
  const parsed: Manifest = JSON.parse(manifest);
  const { properties } = parsed.contributes.configuration;
  const others = Object.entries(properties).filter(([key]) => !isShownSetting(key));
  const ours = Object.values(SHOWN_SETTINGS).map(({ key, default: unset, words, choices }, i) => [
    `quern.${key}`,
    {
      scope: 'window',
      order: FIRST_SHOWN + i,
      ...(choices === undefined
        ? { type: 'boolean' }
        : { type: 'string', enum: Object.keys(choices), enumDescriptions: Object.values(choices) }),
      default: unset,
      markdownDescription: words,
    },
  ]);
  parsed.contributes.configuration.properties = Object.fromEntries([...others, ...ours]);
  return `${JSON.stringify(parsed, null, 2)}\n`;
}

interface Manifest {
  readonly contributes: { readonly configuration: { properties: Record<string, unknown> } };
}

/** Behind those of a house. */
const FIRST_SHOWN = 10;

const isShownSetting = (key: string): boolean => Object.values(SHOWN_SETTINGS).some((s) => key === `quern.${s.key}`);

/** What is shown in the text, as `server/docs/settings.md` lists it: no `quern.json` decides it. */
export const shownTable = (): string =>
  [
    '| editor setting | shows | default |',
    '| --- | --- | --- |',
    ...Object.values(SHOWN_SETTINGS).map(({ key, default: unset, words, choices }) => {
      const all = Object.keys(choices ?? {}).map((choice) => `\`${choice}\``);
      const shows = all.length === 0 ? words : `${words} ${all.join(', ')}`;
      return `| \`quern.${key}\` | ${shows} | ${typeof unset === 'string' ? `\`${unset}\`` : unset ? 'on' : 'off'} |`;
    }),
  ].join('\n');

/** The table of checks, by family, in Markdown. */
export function checksTable(checks: readonly Check[]): string {
  const rows = [...new Set(checks.map((c) => c.family))].flatMap((family) =>
    checks.filter((c) => c.family === family).map((c) => `| ${family} | \`${c.code}\` | ${c.severity} | ${c.title} |`),
  );
  return ['| family | code | | what it says |', '| --- | --- | --- | --- |', ...rows].join('\n');
}

/** A text with what stands between two marks replaced. */
export function between(text: string, mark: string, content: string): string {
  const [start, end] = [`<!-- ${mark} -->`, `<!-- /${mark} -->`];
  const from = text.indexOf(start);
  const to = text.indexOf(end);
  return from < 0 || to < 0 ? text : `${text.slice(0, from + start.length)}\n${content}\n${text.slice(to)}`;
}
