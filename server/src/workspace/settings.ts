/**
 * Knows the settings of a house: the table of them, their defaults, and how `quern.json` is read.
 * Refuses to know where the file lies.
 */

import { isAlwaysTold } from '../checks/always-told.ts';
import type { Check } from '../checks/check.ts';
import type { FoodSafetyRules } from '../checks/house.ts';
import { CHECKS } from '../checks/index.ts';
import type { Severity } from '../checks/severity.ts';
import { LANGUAGES, type Language } from '../food/language.ts';
import { trimmed } from '../measure/number-text.ts';
import { MEASURES_CHOICES, type Measures } from '../measure/systems.ts';
import { baseOf } from '../measure/unit.ts';
import type { UnitSymbol } from '../measure/unit-symbol.ts';
import type { Band, HouseBands, Kind } from '../recipe/measures/kind.ts';
import { KINDS } from '../recipe/measures/kinds.ts';
import type { HouseOvens } from '../recipe/model.ts';
import { readOvens } from './house-ovens.ts';
import { onKey, onValue, type SettingsFault } from './settings-fault.ts';

export interface Settings {
  readonly measures: Measures;
  /** Whose words for foods are offered and said; as the book has them where nothing is set. */
  readonly language?: Language;
  readonly foodSafety: FoodSafetyRules;
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
  /** What the house calls usual, by kind and measure: `{ "shortcrust": { "hydration": [0.2, 0.5] } }`. */
  readonly bands: HouseBands;
  /** The ovens of the house by name. */
  readonly ovens: HouseOvens;
  /** Files, by their paths from the house's folder, whose `food` blocks hold for all of it, beside every `foods.quern`. */
  readonly foods: readonly string[];
  /** Globs, relative to the house's folder, of files that are not checked. */
  readonly ignore: readonly string[];
}

export const DEFAULTS: Settings = {
  measures: 'us',
  foodSafety: 'us-food-code-2022',
  severities: {},
  bands: {},
  ovens: {},
  foods: [],
  ignore: [],
};

const MEASURES_WORDS: Readonly<Record<Measures, { readonly name: string; readonly eggs: string }>> = {
  us: { name: 'US customary', eggs: 'the United States' },
  metric: { name: 'Metric spoons and cups, imperial pints', eggs: 'the European Union' },
  british: { name: "Today's British kitchen", eggs: 'the European Union' },
  australian: { name: 'Australia', eggs: 'Australia' },
  canadian: { name: 'Canada', eggs: 'Canada' },
  imperial: { name: 'The old British kitchen', eggs: 'the European Union' },
};

/** What is measured by in such a house, in one sentence: `Australia: a teaspoon of 5 ml, …`. */
export function measuresSaid(measures: Measures): string {
  const ml = (unit: UnitSymbol): string => {
    const holds = baseOf(unit, measures) ?? 0;
    return `${trimmed(holds, holds < 100 ? 1 : 0)} ml`;
  };
  const { name, eggs } = MEASURES_WORDS[measures];
  const held = `a teaspoon of ${ml('tsp')}, a tablespoon of ${ml('tbsp')}, a cup of ${ml('cup')}, a pint of ${ml('pint')}, a fluid ounce of ${ml('fl oz')}`;
  return `${name}: ${held}, and eggs sized as in ${eggs}.`;
}

export const FOOD_SAFETY_CHOICES = [
  'us-food-code-2022',
  'usda-fsis-home',
] as const satisfies readonly FoodSafetyRules[];
const SEVERITY_CHOICES = ['error', 'warning', 'info', 'hint', 'off'] as const satisfies readonly (Severity | 'off')[];

/** The levels a house may give a finding. What can hurt someone is never off: it is accepted recipe by recipe, with a reason. */
export const levelsFor = (check: Check): readonly (Severity | 'off')[] =>
  isAlwaysTold(check) ? SEVERITY_CHOICES.filter((level) => level !== 'off') : SEVERITY_CHOICES;

export interface SettingsRead {
  readonly settings: Settings;
  /** What could not be used, with what to write instead. */
  readonly problems: readonly string[];
  /** The same with their places. */
  readonly faults: readonly SettingsFault[];
}

/** Settings from parsed JSON of any shape, over the ones given. What is wrong is left out and said. */
export function readSettings(json: unknown, over: Settings = DEFAULTS): SettingsRead {
  const problems: SettingsFault[] = [];
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return wholeFault(over, 'quern.json holds one object, such as `{ "measures": "metric" }`');
  }
  let settings = over;
  for (const [key, value] of Object.entries(json)) {
    switch (key) {
      case '$schema':
        break;
      case 'locale':
        problems.push(onKey('`locale` is not used yet', key));
        break;
      case 'bands':
        settings = { ...settings, bands: { ...settings.bands, ...readBands(value, problems) } };
        break;
      case 'measures':
        if (isOneOf(value, MEASURES_CHOICES)) settings = { ...settings, measures: value };
        else problems.push(onValue(oneOf(key, MEASURES_CHOICES), key));
        break;
      case 'language':
        if (isOneOf(value, LANGUAGES)) settings = { ...settings, language: value };
        else problems.push(onValue(oneOf(key, LANGUAGES), key));
        break;
      case 'foodSafety':
        if (isOneOf(value, FOOD_SAFETY_CHOICES)) settings = { ...settings, foodSafety: value };
        else problems.push(onValue(oneOf(key, FOOD_SAFETY_CHOICES), key));
        break;
      case 'severities':
        settings = { ...settings, severities: { ...settings.severities, ...readSeverities(value, problems) } };
        break;
      case 'ovens':
        settings = { ...settings, ovens: { ...settings.ovens, ...readOvens(value, problems) } };
        break;
      case 'foods':
        if (Array.isArray(value) && value.every((v) => typeof v === 'string')) settings = { ...settings, foods: value };
        else problems.push(onValue('`foods` is a list of files, such as `["pantry/dairy.quern"]`', key));
        break;
      case 'ignore':
        if (Array.isArray(value) && value.every((v) => typeof v === 'string'))
          settings = { ...settings, ignore: value };
        else problems.push(onValue('`ignore` is a list of paths, such as `["drafts/**"]`', key));
        break;
      default:
        problems.push(
          onKey(
            `\`${key}\` is no setting; there are measures, language, foodSafety, severities, bands, ovens, foods and ignore`,
            key,
          ),
        );
    }
  }
  return { settings, problems: problems.map((p) => p.words), faults: problems };
}

/** The same from the text of `quern.json`. */
export function parseSettings(text: string, over: Settings = DEFAULTS): SettingsRead {
  try {
    return readSettings(JSON.parse(text), over);
  } catch (error) {
    return wholeFault(over, `quern.json is no JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
}

const wholeFault = (settings: Settings, words: string): SettingsRead => ({
  settings,
  problems: [words],
  faults: [{ words, path: [], on: 'value' }],
});

function readSeverities(value: unknown, problems: SettingsFault[]): Record<string, Severity | 'off'> {
  const severities: Record<string, Severity | 'off'> = {};
  if (typeof value !== 'object' || value === null) {
    problems.push(onValue('`severities` gives each code a level, such as `{ "unused-part": "hint" }`', 'severities'));
    return severities;
  }
  for (const [code, level] of Object.entries(value)) {
    const check = CHECKS.find((c) => c.code === code);
    if (check === undefined)
      problems.push(onKey(`\`${code}\` is no finding; \`quern explain\` lists them`, 'severities', code));
    else if (isOneOf(level, levelsFor(check))) severities[code] = level;
    else if (level === 'off' && check.family === 'safety')
      problems.push(
        onValue(
          `\`${code}\` is about safety and is never off: accept it in the recipe, with \`allow ${code} because …\``,
          'severities',
          code,
        ),
      );
    else problems.push(onValue(oneOf(`severities.${code}`, levelsFor(check)), 'severities', code));
  }
  return severities;
}

function readBands(value: unknown, problems: SettingsFault[]): Record<string, Record<string, Band>> {
  const bands: Record<string, Record<string, Band>> = {};
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    problems.push(
      onValue(
        '`bands` gives what is usual by kind and measure, such as `{ "shortcrust": { "hydration": [0.2, 0.5] } }`',
        'bands',
      ),
    );
    return bands;
  }
  for (const [name, measures] of Object.entries(value)) {
    const kind = KINDS.find((k) => k.name === name);
    if (kind === undefined) problems.push(onKey(`\`bands.${name}\`: there is no such kind`, 'bands', name));
    else if (typeof measures !== 'object' || measures === null)
      problems.push(
        onValue(
          `\`bands.${name}\` holds measures, such as \`{ "${kind.measures[0]?.measure ?? 'hydration'}": [0.2, 0.5] }\``,
          'bands',
          name,
        ),
      );
    else bands[name] = readKindBands(kind, measures, problems);
  }
  return bands;
}

function readKindBands(kind: Kind, measures: object, problems: SettingsFault[]): Record<string, Band> {
  const bands: Record<string, Band> = {};
  for (const [measure, band] of Object.entries(measures)) {
    const known = kind.measures.map((m) => m.measure as string);
    if (!known.includes(measure))
      problems.push(
        onKey(
          `\`bands.${kind.name}.${measure}\`: ${kind.name} is judged by ${known.join(', ')}`,
          'bands',
          kind.name,
          measure,
        ),
      );
    else if (isBand(band)) bands[measure] = band;
    else
      problems.push(
        onValue(
          `\`bands.${kind.name}.${measure}\` is a pair, low and high, such as [0.2, 0.5]; null is no limit`,
          'bands',
          kind.name,
          measure,
        ),
      );
  }
  return bands;
}

function isBand(value: unknown): value is Band {
  if (!Array.isArray(value) || value.length !== 2) return false;
  const [low, high]: unknown[] = value;
  const ends = [low, high].every((n) => n === null || (typeof n === 'number' && Number.isFinite(n)));
  return ends && !(typeof low === 'number' && typeof high === 'number' && low > high);
}

function isOneOf<T extends string>(value: unknown, choices: readonly T[]): value is T {
  return typeof value === 'string' && (choices as readonly string[]).includes(value);
}

const oneOf = (key: string, choices: readonly string[]): string =>
  `\`${key}\` is one of ${choices.map((c) => `"${c}"`).join(', ')}`;
