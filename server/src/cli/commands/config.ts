import { trimmed } from '../../measure/number-text.ts';
import { baseOf } from '../../measure/unit.ts';
import type { UnitSymbol } from '../../measure/unit-symbol.ts';
import type { HouseRead } from '../../workspace/houses.ts';
import { DEFAULTS, readSettings, type Settings } from '../../workspace/settings.ts';
import type { Command } from '../command.ts';
import type { ConfigJson, SettingJson } from '../formats/shapes.ts';
import { housesFor, isIgnored } from '../inputs.ts';
import { type Exit, type Io, UsageError } from '../io.ts';
import { choiceOf } from '../options.ts';

const DEFAULT = 'the default';
/** Settings with names of their own, each said by itself. */
const GROUPS = ['severities', 'bands', 'ovens'] as const satisfies readonly (keyof Settings)[];
const isGroup = (key: string): boolean => (GROUPS as readonly string[]).includes(key);
/** What differs from house to house, and is measured with. */
const HELD: readonly UnitSymbol[] = ['tsp', 'tbsp', 'cup', 'fl oz', 'pint', 'quart', 'gallon'];

export const config: Command = {
  name: 'config',
  usage: 'FILE [--format text|json]',
  summary: 'the settings in force for a file, and where each comes from',
  options: { format: 'value' },
  examples: ['quern config tart.quern', 'quern config pastry/ --format json'],
  run(options, io): Exit {
    const format = choiceOf(options, 'format', ['text', 'json'], 'text');
    const [path, ...more] = options.rest;
    if (path === undefined || more.length > 0) throw new UsageError('name one file or folder');
    const effects = effectsOf(io.resolve(path), io);
    io.out(format === 'json' ? `${JSON.stringify(effects, null, 2)}\n` : text(effects));
    return 0;
  },
};

function effectsOf(path: string, io: Io): ConfigJson {
  const houses = housesFor(io);
  const read = houses.of(path);
  const folder = io.files.houseAbove(path);
  const written = folder === undefined ? undefined : io.files.join(folder, 'quern.json');
  const file = written === undefined ? DEFAULT : io.shown(written);
  const own = written === undefined ? {} : objectOf(io.files.read(written));
  const settings: Record<string, SettingJson> = {};
  for (const [key, value] of Object.entries(read.settings)) {
    if (isGroup(key)) continue;
    settings[key] = { value, from: isUsed(own, key, read.settings) ? file : DEFAULT };
  }
  for (const group of GROUPS) {
    const of = (read.settings as unknown as Readonly<Record<string, unknown>>)[group];
    for (const [name, value] of Object.entries(of ?? {})) settings[`${group}.${name}`] = { value, from: file };
  }
  return {
    version: 1,
    file: io.shown(path),
    house: folder === undefined ? null : io.shown(folder),
    settings,
    holds_ml: Object.fromEntries(HELD.map((unit) => [unit, baseOf(unit, read.settings.measures) ?? Number.NaN])),
    foods: foodsOf(read, [...houses.foodFiles(path)].reverse(), io),
    ignored: isIgnored(path, io, houses),
    problems: read.problems,
  };
}

/** Whether what the house writes for a setting is what is in force: a mistake there leaves the default. */
function isUsed(own: Readonly<Record<string, unknown>>, key: string, settings: Settings): boolean {
  if (!Object.hasOwn(own, key)) return false;
  const alone = readSettings({ [key]: own[key] }, DEFAULTS);
  const of = (all: Settings): unknown => (all as unknown as Readonly<Record<string, unknown>>)[key];
  return alone.problems.length === 0 && JSON.stringify(of(alone.settings)) === JSON.stringify(of(settings));
}

function foodsOf({ house }: HouseRead, files: readonly string[], io: Io): ConfigJson['foods'] {
  const texts = files.map((path) => ({ path, text: io.files.read(path) ?? '' }));
  return house.world.book
    .all()
    .filter((food) => food.house === true)
    .map(({ name }) => {
      const file = texts.find(({ text }) => text.split('\n').some((line) => line.trim() === `food ${name}`));
      return { name, from: file === undefined ? 'the house' : io.shown(file.path) };
    });
}

function objectOf(text: string | undefined): Readonly<Record<string, unknown>> {
  try {
    const json: unknown = JSON.parse(text ?? '{}');
    return typeof json === 'object' && json !== null ? (json as Readonly<Record<string, unknown>>) : {};
  } catch {
    return {};
  }
}

function text(effects: ConfigJson): string {
  const rows = Object.entries(effects.settings).map(([key, { value, from }]) => [key, words(value), from] as const);
  const keys = Math.max(...rows.map(([key]) => key.length));
  const values = Math.max(...rows.map(([, value]) => value.length));
  const names = Math.max(...effects.foods.map(({ name }) => name.length));
  const lines = [
    effects.file,
    effects.house === null
      ? '  belongs to no house: there is no quern.json and no foods.quern above it'
      : `  house  ${effects.house}`,
    ...(effects.ignored ? ['  ignored by the house: a folder that holds it is checked without it'] : []),
    '',
    ...rows.map(([key, value, from]) => `  ${key.padEnd(keys)}  ${value.padEnd(values)}  ${from}`),
  ];
  const held = Object.entries(effects.holds_ml).map(([unit, ml]) => `${unit} ${trimmed(ml, ml < 100 ? 1 : 0)}`);
  lines.push('', `what is measured with, in ml: ${held.join(', ')}`);
  if (effects.foods.length > 0)
    lines.push('', 'foods of the house', ...effects.foods.map(({ name, from }) => `  ${name.padEnd(names)}  ${from}`));
  if (effects.problems.length > 0)
    lines.push('', 'what could not be used', ...effects.problems.map((problem) => `  ${problem}`));
  return `${lines.join('\n')}\n`;
}

function words(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'none' : value.join(', ');
  return typeof value === 'string' ? value : JSON.stringify(value);
}
