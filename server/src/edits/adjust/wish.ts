/**
 * Knows how a measure and a value are read from what somebody typed: `hydration`, `24 %`, `0.24`.
 * Refuses to guess: what could be two figures is said.
 */
import { MEASURES } from '../../recipe/measures/definitions.ts';
import type { MeasureName } from '../../recipe/measures/kind.ts';
import type { Part } from '../../recipe/model.ts';

/** Every measure there is, as an option has it: `cake-hydration`. */
const BY_OPTION: ReadonlyMap<string, MeasureName> = new Map(
  (Object.keys(MEASURES) as MeasureName[]).map((name) => [name.replaceAll(' ', '-'), name]),
);

/** The measure that a name stands for in a part: its own where its kind has one of a longer name, `hydration` of a cake. */
export function measureNamed(part: Part, name: string): MeasureName | undefined {
  const wanted = name.trim().toLowerCase().replaceAll('-', ' ');
  const own = (part.head.kind?.measures ?? []).map(({ measure }) => measure);
  const exact = BY_OPTION.get(wanted.replaceAll(' ', '-'));
  if (exact !== undefined && own.includes(exact)) return exact;
  const longer = own.filter((measure) => measure.split(' ').includes(wanted));
  return longer.length === 1 ? longer[0] : exact;
}

/**
 * A value of a measure: a ratio, or degrees Celsius. Of a measure in per cent a figure without its sign is a share below 1, and per cent from
 * there on. A string says what to write instead.
 */
export function readValue(measure: MeasureName, words: string): number | string {
  const { unit } = MEASURES[measure];
  const match = /^([+-]?(?:\d+(?:\.\d+)?|\.\d+))\s*(%|°?\s*c)?$/i.exec(words.trim().replace('−', '-'));
  if (match === null) return `write a number such as ${EXAMPLES[unit]}, not \`${words}\``;
  const number = Number(match[1]);
  const sign = (match[2] ?? '').toLowerCase();
  const isDegrees = sign.endsWith('c');
  if (isDegrees !== (unit === 'celsius') && sign !== '')
    return `it is ${unit === 'celsius' ? 'in degrees: write' : 'no temperature: write'} a number such as ${EXAMPLES[unit]}, not \`${words}\``;
  if (unit === 'celsius') return number;
  if (number < 0) return 'it cannot be less than nothing';
  if (sign === '%') return number / 100;
  return unit === 'percent' && number >= 1 ? number / 100 : number;
}

const EXAMPLES = { percent: '24% or 0.24', times: '1.5', celsius: '-2.5' } as const;

/** How many times off a figure without its sign is taken for a slip, where the other reading is nearer. */
const FAR = 8;

/** Where a figure without a sign may well have been meant the other way: what to write. */
export function doubtful(measure: MeasureName, words: string, value: number, now: number): string | undefined {
  if (MEASURES[measure].unit !== 'percent' || /%/.test(words) || !(value > 0) || !(now > 0)) return undefined;
  const other = value < 1 && Number(words) < 1 ? value / 100 : value * 100;
  const far = (a: number): number => Math.abs(Math.log(a / now));
  return far(value) > Math.log(FAR) && far(other) < far(value)
    ? `\`${words}\` would be ${percent(value)}: write ${percent(value)} or ${percent(other)}`
    : undefined;
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(3))}%`;
