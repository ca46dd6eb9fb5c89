/** Prints where the time of an edit goes inside the engine. */
import type { EngineFigures, StageFigures } from './engine-figures.ts';
import type { EngineRun } from './profile.ts';
import { printColumns } from './table.ts';

const SLOWEST = 8;

export function printEngine({ figures, hot, profiled }: EngineRun): string {
  return [
    ...figures.sizes.map(printSize),
    `Time spent in functions themselves, one character changed at ${profiled.toLocaleString('en')} lines`,
    printColumns([
      ['', 'share', ''],
      ...hot.slice(0, 10).map(({ name, share, place }) => [`  ${name}`, percent(share), place]),
    ]),
  ].join('\n\n');
}

function printSize(size: EngineFigures['sizes'][number]): string {
  const stages = size.edited.map(({ stage }) => stage);
  const row = (words: string, of: StageFigures): string[] => [
    `  ${words}, ms p50/p95`,
    ...of.map(({ p50, p95 }) => `${ms(p50)}/${ms(p95)}`),
    '',
  ];
  const slowest = (words: string, of: readonly (readonly [string, number])[]) =>
    `  ${words}, ms: ${of
      .slice(0, SLOWEST)
      .map(([code, spent]) => `${code} ${ms(spent)}`)
      .join(', ')}`;
  return [
    `${size.size.toLocaleString('en')} lines, ${size.characters.toLocaleString('en')} characters, ${size.parts} parts, ${size.findings} findings`,
    printColumns([
      ['', ...stages, ''],
      row('opened, new house', size.opened),
      row('one character changed', size.edited),
      row('one of a name changed', size.renamed),
    ]),
    slowest('checks when opened', size.openedByCheck),
    slowest('checks at a change', size.editedByCheck),
  ].join('\n');
}

const ms = (n: number): string => (n < 10 ? n.toFixed(3) : n.toFixed(0));
const percent = (share: number): string => `${(share * 100).toFixed(1)} %`;
