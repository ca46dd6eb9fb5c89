/** Knows how the ovens of a house are read from its settings. Refuses to know what is baked in them. */
import type { HouseOven, HouseOvens } from '../recipe/model.ts';
import { onKey, onValue, type SettingsFault } from './settings-fault.ts';

/** K by which a dial may be off: one that is further off is to be repaired, or the figure is in °F (common practice, no source). */
export const MOST_OFFSET_K = 50;

const EXAMPLE = '`{ "lower deck": { "fan": true, "offset": -8 } }`';

/** What can be used of it; what cannot is added to the problems. */
export function readOvens(value: unknown, problems: SettingsFault[]): HouseOvens {
  const ovens: [name: string, oven: HouseOven][] = [];
  if (!isObject(value)) {
    problems.push(onValue(`\`ovens\` names the ovens of the house, such as ${EXAMPLE}`, 'ovens'));
    return {};
  }
  for (const [name, oven] of Object.entries(value)) {
    if (name.trim() === '')
      problems.push(onKey(`an oven is called by its name in a trial, such as ${EXAMPLE}`, 'ovens', name));
    else if (!isObject(oven))
      problems.push(onValue(`\`ovens.${name}\` says what the oven is, such as ${EXAMPLE}`, 'ovens', name));
    else ovens.push([name, readOven(name, oven, problems)]);
  }
  return Object.fromEntries(ovens);
}

function readOven(name: string, oven: object, problems: SettingsFault[]): HouseOven {
  let read: HouseOven = {};
  for (const [key, value] of Object.entries(oven)) {
    const at = ['ovens', name, key] as const;
    if (key === 'fan') {
      if (typeof value === 'boolean') read = { ...read, fan: value };
      else problems.push(onValue(`\`ovens.${name}.fan\` is true where its fan runs, or false`, ...at));
    } else if (key === 'offset') {
      if (typeof value === 'number' && Math.abs(value) <= MOST_OFFSET_K) read = { ...read, offset: value };
      else
        problems.push(
          onValue(
            `\`ovens.${name}.offset\` is by how many °C the oven is warmer than its dial says, at most ${MOST_OFFSET_K}; below 0 where it is colder`,
            ...at,
          ),
        );
    } else problems.push(onKey(`\`ovens.${name}.${key}\`: of an oven there are fan and offset`, ...at));
  }
  return read;
}

const isObject = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
