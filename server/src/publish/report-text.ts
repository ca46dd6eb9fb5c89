/**
 * Knows a report as plain text for a terminal or a diff: stable order, one fact a line.
 */
import { gramsText, likelyText, trimmed } from '../measure/number-text.ts';
import { bandText, measureText, reachText } from '../recipe/measures/measure-text.ts';
import { figureText } from './label.ts';
import { allergenNames } from './report-allergens.ts';
import type { Report, ReportIngredient, ReportMeasure, ReportOvenTime, ReportPart } from './report-shape.ts';

export function reportText(report: Report): string {
  const lines: string[] = [report.recipe ?? 'A recipe without a name'];
  if (report.yield !== null) {
    const each = report.yield.each_g === null ? '' : `, ${gramsText(report.yield.each_g)} g each before cooking`;
    lines.push(`  yield  ${trimmed(report.yield.amount, 2)} ${report.yield.unit ?? ''}${each}`.trimEnd());
  }
  lines.push(`  mass   ${report.mass_g === null ? 'not known' : `${gramsText(report.mass_g)} g of ingredients`}`);
  const oven = report.out_of_oven_g;
  if (oven !== null)
    lines.push(
      oven.high === null
        ? `  baked  ${gramsText(oven.low)} g or more usually comes out of the oven`
        : `  baked  ${gramsText(oven.low)} to ${gramsText(oven.high)} g usually comes out of the oven`,
    );
  for (const { part, holds_ml, in_ml, grown_ml } of report.pans)
    lines.push(
      `  pan    ${part === '' ? '' : `${part}: `}filled to ${shareText(in_ml, holds_ml)} as it goes in, ${shareText(grown_ml, holds_ml)} at its highest`,
    );
  const { hands_on, waiting, total, by } = report.times_min;
  if (total !== null)
    lines.push(
      `  time   ${minutes(total)}: ${minutes(hands_on ?? 0)} at work, ${minutes(waiting ?? 0)} waiting, ${by === 'head' ? 'by the head' : 'as far as the steps say'}`,
    );
  for (const each of report.oven) lines.push(`  oven   ${ovenLine(each)}`);
  lines.push(`  state  ${report.state}`);
  for (const { what, unit, trials, low, high, mean } of report.spread)
    lines.push(
      trimmed(low, 1) === trimmed(high, 1)
        ? `  trials ${what}: ${trimmed(low, 1)} ${unit} in each of ${trials}`
        : `  trials ${what}: ${trimmed(low, 1)} to ${trimmed(high, 1)} ${unit}, ${trimmed(mean, 1)} on average of ${trials}`,
    );
  for (const part of report.parts) lines.push('', ...partLines(part));
  lines.push('', ...servingLines(report));
  for (const { severity, message, code } of report.findings) lines.push(`  ${severity}: ${message} [${code}]`);
  for (const { message, code, reason } of report.accepted)
    lines.push(`  accepted: ${message} [${code}] because ${reason}`);
  return `${lines.join('\n').trimEnd()}\n`;
}

function ovenLine({ line, estimate, not_estimated: why, said_min: said }: ReportOvenTime): string {
  const written = said === null ? '' : `, written ${said[0] === said[1] ? said[0] : `${said[0]} to ${said[1]}`} min`;
  if (estimate === null) return `line ${line}: not estimated: ${why}`;
  const { likely_min: likely, low_min: low, high_min: high, mass_g: mass, oven_c: heats, target_c: target } = estimate;
  const heat = `${heats.join(' then ')} °C${estimate.oven === null ? '' : ` in ${estimate.oven}`}`;
  const learned =
    estimate.trials === 0 ? '' : `, with ${estimate.trials === 1 ? 'one trial' : `${estimate.trials} trials`}`;
  return `line ${line}: likely ${likely} min (${low} to ${high})${written}, from ${gramsText(mass)} g, ${heat} and ${target} °C inside${learned}; a thermometer decides`;
}

function partLines(part: ReportPart): string[] {
  const title = [
    part.name === '' ? 'ingredients' : part.name,
    part.kind === null ? '' : `as ${part.kind}`,
    part.mass_g === null ? '' : `${gramsText(part.mass_g)} g`,
  ];
  const width = Math.max(8, ...part.ingredients.map((i) => i.name.length));
  return [
    title.filter((t) => t !== '').join('  '),
    ...part.ingredients.map((i) => ingredientLine(i, width)),
    ...part.not_understood.map(({ where, text }) => `  not understood, and in no sum: ${where}, \`${text}\``),
    ...compositionLines(part),
    ...part.measures.map(measureLine),
  ];
}

function ingredientLine(i: ReportIngredient, width: number): string {
  const { grams, grams_low: low, grams_high: high } = i;
  const weight = grams === null || low === null || high === null ? 'not known' : likelyText(grams, low, high);
  const share = i.share_percent === null ? '' : `${trimmed(i.share_percent, 1)} %`;
  return `  ${i.name.padEnd(width)}  ${weight.padEnd(20)}  ${share.padStart(7)}  ${ofFlour(i).padStart(16)}  ${i.grams_why}`.trimEnd();
}

/** Of what is listed and of all, where a starter or another part brings more. */
function ofFlour({ bakers_percent: listed, flour_percent: all }: ReportIngredient): string {
  if (listed === null) return '';
  const percent = `${trimmed(listed, 1)} % of flour`;
  return all === null || all === listed ? percent : `${percent} listed, ${trimmed(all, 1)} % of all`;
}

function compositionLines(part: ReportPart): string[] {
  const least = part.composition_at_least_g;
  const rows = Object.entries(least ?? part.composition_g).map(
    ([name, grams]) =>
      `${name} ${grams === null || (least !== null && grams === 0) ? 'not known' : `${gramsText(grams)} g`}`,
  );
  if (part.ingredients.length === 0) return [];
  return [`  ${least === null ? 'holds' : 'holds at least'}: ${rows.join(', ')}`];
}

const VERDICTS = {
  ok: 'as usual',
  low: 'below the usual',
  high: 'above the usual',
  'too low': 'far below',
  'too high': 'far above',
} as const;

/** `hangs on cream`: which it is, or what is in it, decides. */
const hangsOn = ({ hangs_on: lines }: ReportMeasure): string => `hangs on ${lines.join(', ')}`;

function measureLine(m: ReportMeasure): string {
  const band = bandText(m.name, m.band);
  if (m.value_low === null || m.value_high === null) return `  ${m.name}: not known (usual ${band})`;
  const value = measureText(m.name, m.value_low, m.value_high);
  if (m.verdict === null) return `  ${m.name}: ${value}, ${hangsOn(m)} (usual ${band})`;
  const reach = m.verdict === 'ok' ? reachText(m.name, m.value_low, m.value_high, m.band) : '';
  return `  ${m.name}: ${value}, ${VERDICTS[m.verdict]}${reach} (${band})`;
}

const FIELDS = {
  energy_kcal: ['energy', 'kcal'],
  fat_g: ['fat', 'g'],
  saturates_g: ['of it saturates', 'g'],
  carbohydrate_g: ['carbohydrate', 'g'],
  sugars_g: ['of it sugars', 'g'],
  fibre_g: ['fibre', 'g'],
  protein_g: ['protein', 'g'],
  salt_g: ['salt', 'g'],
  sodium_mg: ['sodium', 'mg'],
} as const;

function servingLines(report: Report): string[] {
  const lines: string[] = [];
  const { per_serving: serving, allergens } = report;
  if (serving !== null) {
    const rows = Object.entries(FIELDS).map(([key, [name, unit]]) => {
      const value = serving[key as keyof typeof serving];
      return `${name} ${value === null ? 'not known' : `${trimmed(value, value < 10 ? 1 : 0)} ${unit}`}`;
    });
    lines.push(`one of the yield, before cooking: ${rows.join(', ')}`);
  }
  lines.push(...labelLines(report), ...costLines(report));
  lines.push(...allergenLines(allergens));
  lines.push('Read every label: foods of one name differ by maker.');
  return lines;
}

function allergenLines({ us, eu, may_contain: may, check_label: labels, not_known: unknown }: Report['allergens']) {
  const list = (names: readonly string[]) =>
    names.length === 0 ? (unknown.length === 0 ? 'none found' : 'not known') : names.join(', ');
  const lines = [
    `allergens: US ${list(us)}; EU ${list(eu)}${unknown.length === 0 ? '' : `; not known for ${unknown.join(', ')}`}`,
  ];
  if (may.us.length + may.eu.length > 0) lines.push(`may contain: ${allergenNames(may)}`);
  if (labels.length > 0)
    lines.push(`check the label: ${labels.map((label) => `${label.food} (${allergenNames(label)})`).join('; ')}`);
  return lines;
}

const LABEL_ROWS = [
  ['energy', 'energy'],
  ['fat', 'fat'],
  ['saturates', 'of it saturates'],
  ['trans_fat', 'trans fat'],
  ['cholesterol', 'cholesterol'],
  ['carbohydrate', 'carbohydrate'],
  ['sugars', 'of it sugars'],
  ['added_sugars', 'added sugars'],
  ['fibre', 'fibre'],
  ['protein', 'protein'],
  ['salt', 'salt'],
  ['sodium', 'sodium'],
  ['vitamin_d', 'vitamin D'],
  ['calcium', 'calcium'],
  ['iron', 'iron'],
  ['potassium', 'potassium'],
] as const;

/** What the other side's label has alone. */
const NOT_ON: Readonly<Record<'US' | 'EU', ReadonlySet<string>>> = {
  US: new Set(['salt']),
  EU: new Set(['sodium', 'trans_fat', 'cholesterol', 'added_sugars', 'vitamin_d', 'calcium', 'iron', 'potassium']),
};

function labelLines({ nutrition }: Report): string[] {
  const {
    us_per_serving: us,
    eu_per_100g: eu,
    not_counted: missing,
    cooked_g: cooked,
    weighed_trials: trials,
    assumes,
  } = nutrition;
  const lines: string[] = [];
  if (cooked !== null && trials > 0)
    lines.push(`weighed after cooking: ${gramsText(cooked)} g${trials > 1 ? `, the mean of ${trials} trials` : ''}`);
  for (const [side, label] of [
    ['US', us],
    ['EU', eu],
  ] as const) {
    if (label === null) continue;
    const rows = LABEL_ROWS.flatMap(([key, name]) => {
      if (NOT_ON[side].has(key)) return [];
      const figure = label[key];
      return [`${name} ${figure === null ? 'not known' : figureText(figure)}`];
    });
    lines.push(`${side} label, ${label.of}, ${label.basis}: ${rows.join(', ')}`);
  }
  if (missing.length > 0) lines.push(`not counted in these: ${missing.join(', ')}`);
  lines.push(...assumes);
  return lines;
}

function costLines({ cost }: Report): string[] {
  if (cost === null) return [];
  // Nothing priced is not known, and not nothing.
  if (cost.lines.length === 0 && !cost.complete)
    return ["cost by the house's prices: not known; none of it has a price"];
  const each = cost.per_serving === null ? '' : `, ${cost.per_serving.toFixed(2)} for one of the yield`;
  const missing = cost.complete ? '' : `; no price for ${cost.without_price.join(', ')}`;
  return [`cost by the house's prices: ${cost.complete ? '' : 'at least '}${cost.total.toFixed(2)}${each}${missing}`];
}

function minutes(total: number): string {
  if (total >= MANY_HOURS * 60) return daysText(total);
  const hours = Math.floor(total / 60);
  const rest = Math.round(total % 60);
  return hours === 0 ? `${rest} min` : rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** `55 to 70 %` */
function shareText([low, high]: readonly [number, number], [least, most]: readonly [number, number]): string {
  const holds = (least + most) / 2;
  const [a, b] = [Math.round((low / holds) * 100), Math.round((high / holds) * 100)];
  return a === b ? `${a} %` : `${a} to ${b} %`;
}

/** From two days on. */
const MANY_HOURS = 48;

function daysText(total: number): string {
  const hours = Math.round(total / 60);
  return hours % 24 === 0 ? `${hours / 24} d` : `${Math.floor(hours / 24)} d ${hours % 24} h`;
}
