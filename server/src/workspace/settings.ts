/**
 * Knows the settings of a house: the table of them, their defaults, and how `quern.json` is read.
 * Refuses to know where the file lies.
 */

import type { Severity } from '../checks/check.ts';
import type { FoodSafetyRules } from '../checks/house.ts';
import { CHECKS } from '../checks/index.ts';
import type { Measures } from '../measure/unit.ts';

export interface Settings {
  readonly measures: Measures;
  readonly foodSafety: FoodSafetyRules;
  readonly severities: Readonly<Record<string, Severity | 'off'>>;
  /** Globs, relative to the house's folder, of files that are not checked. */
  readonly ignore: readonly string[];
}

export const DEFAULTS: Settings = { measures: 'us', foodSafety: 'us-food-code-2022', severities: {}, ignore: [] };

export const MEASURES_CHOICES = ['us', 'metric', 'imperial'] as const satisfies readonly Measures[];
export const FOOD_SAFETY_CHOICES = [
  'us-food-code-2022',
  'usda-fsis-home',
] as const satisfies readonly FoodSafetyRules[];
export const SEVERITY_CHOICES = ['error', 'warning', 'info', 'hint', 'off'] as const satisfies readonly (
  | Severity
  | 'off'
)[];

export interface SettingsRead {
  readonly settings: Settings;
  /** What could not be used, with what to write instead. */
  readonly problems: readonly string[];
}

/** Settings from parsed JSON of any shape, over the ones given. What is wrong is left out and said. */
export function readSettings(json: unknown, over: Settings = DEFAULTS): SettingsRead {
  const problems: string[] = [];
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return { settings: over, problems: ['quern.json holds one object, such as `{ "measures": "metric" }`'] };
  }
  let settings = over;
  for (const [key, value] of Object.entries(json)) {
    switch (key) {
      case '$schema':
        break;
      case 'locale':
      case 'bands':
        problems.push(`\`${key}\` is not used yet`);
        break;
      case 'measures':
        if (isOneOf(value, MEASURES_CHOICES)) settings = { ...settings, measures: value };
        else problems.push(oneOf(key, MEASURES_CHOICES));
        break;
      case 'foodSafety':
        if (isOneOf(value, FOOD_SAFETY_CHOICES)) settings = { ...settings, foodSafety: value };
        else problems.push(oneOf(key, FOOD_SAFETY_CHOICES));
        break;
      case 'severities':
        settings = { ...settings, severities: { ...settings.severities, ...readSeverities(value, problems) } };
        break;
      case 'ignore':
        if (Array.isArray(value) && value.every((v) => typeof v === 'string'))
          settings = { ...settings, ignore: value };
        else problems.push('`ignore` is a list of paths, such as `["drafts/**"]`');
        break;
      default:
        problems.push(`\`${key}\` is no setting; there are measures, foodSafety, severities and ignore`);
    }
  }
  return { settings, problems };
}

/** The same from the text of `quern.json`. */
export function parseSettings(text: string, over: Settings = DEFAULTS): SettingsRead {
  try {
    return readSettings(JSON.parse(text), over);
  } catch (error) {
    return {
      settings: over,
      problems: [`quern.json is no JSON: ${error instanceof Error ? error.message : String(error)}`],
    };
  }
}

function readSeverities(value: unknown, problems: string[]): Record<string, Severity | 'off'> {
  const severities: Record<string, Severity | 'off'> = {};
  if (typeof value !== 'object' || value === null) {
    problems.push('`severities` gives each code a level, such as `{ "unused-part": "hint" }`');
    return severities;
  }
  for (const [code, level] of Object.entries(value)) {
    if (!CHECKS.some((c) => c.code === code)) problems.push(`\`${code}\` is no finding; \`quern explain\` lists them`);
    else if (!isOneOf(level, SEVERITY_CHOICES)) problems.push(oneOf(`severities.${code}`, SEVERITY_CHOICES));
    else severities[code] = level;
  }
  return severities;
}

function isOneOf<T extends string>(value: unknown, choices: readonly T[]): value is T {
  return typeof value === 'string' && (choices as readonly string[]).includes(value);
}

const oneOf = (key: string, choices: readonly string[]): string =>
  `\`${key}\` is one of ${choices.map((c) => `"${c}"`).join(', ')}`;
