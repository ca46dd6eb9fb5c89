/**
 * Knows which of an editor's settings the engine reads.
 * Refuses to know the houses, whose own settings go before these.
 */
import { DEFAULTS, readSettings, type Settings } from '../workspace/settings.ts';
import { record } from './capabilities.ts';

/** Settings of the editor; what cannot be used is warned of and left out. */
export function settingsIn(value: unknown, warn: (problem: string) => void): Settings {
  const known = Object.fromEntries(
    Object.entries(record(value)).filter(
      ([key, v]) => ['measures', 'language', 'foodSafety', 'severities'].includes(key) && v !== null,
    ),
  );
  const { settings, problems } = readSettings(known, DEFAULTS);
  for (const problem of problems) warn(problem);
  return settings;
}
