/**
 * Knows the arithmetic of a measure on one recipe, line by line, for the page of a finding.
 */
import { gramsText } from '../../measure/number-text.ts';
import { bandText, MEASURES, measureText } from '../../recipe/measures.ts';
import { type BandValues, bringing, gramsOf } from './band.ts';

/** Whether a finding's values are those of a measure held against a band. */
export function isBandValues(values: unknown): values is BandValues {
  return (
    typeof values === 'object' &&
    values !== null &&
    ['measure', 'contents', 'kind', 'verdict'].every((key) => key in values)
  );
}

/** A Markdown table: what each ingredient weighs, brings, and counts for below the line; then the result and the band. */
export function arithmetic(values: BandValues): string[] {
  const { measure: held, value, kind, contents } = values;
  const definition = MEASURES[held.measure];
  const result = `That is the ${definition.words}: ${measureText(held.measure, value.low, value.high)}; usual for ${kind.name}: ${bandText(held.measure, held.usual)}.`;
  if (!('top' in definition)) return [result];
  const rows = contents.map((i) => {
    const grams = gramsOf(i);
    const top = definition.topG?.(i);
    return {
      name: i.name,
      grams,
      top: top === undefined ? grams * bringing(i, definition.top) : (top.low + top.high) / 2,
      bottom: grams * bringing(i, definition.bottom),
    };
  });
  const sum = (of: 'grams' | 'top' | 'bottom') => rows.reduce((total, r) => total + r[of], 0);
  const cells = (name: string, grams: number, top: number, bottom: number) =>
    `| ${name} | ${gramsText(grams)} | ${gramsText(top)} | ${gramsText(bottom)} |`;
  return [
    '| ingredient | g | counts above the line | below it |',
    '| --- | ---: | ---: | ---: |',
    ...rows.map((r) => cells(r.name, r.grams, r.top, r.bottom)),
    cells('**in all**', sum('grams'), sum('top'), sum('bottom')),
    '',
    `By the middle of each range, ${gramsText(sum('top'))} to ${gramsText(sum('bottom'))}. ${result}`,
  ];
}
