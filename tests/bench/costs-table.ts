/** How the costs are printed: each row against its anchor, what it is to reach, and what it leaves out. */
import type { Cost } from './costs.ts';
import { median } from './figures.ts';
import { printColumns, show } from './table.ts';

export function printCosts(costs: readonly Cost[]): string {
  const rows = costs.map(({ what, anchor, rounds, toReach, beyond }) => {
    const at = median(rounds);
    return [
      what,
      anchor,
      at === undefined ? 'no answer' : show(at),
      rounds.length < 2 ? '' : `${show(Math.min(...rounds))}–${show(Math.max(...rounds))}`,
      toReach === undefined ? '' : String(toReach),
      beyond === undefined ? '' : String(beyond),
      at === undefined || toReach === undefined
        ? ''
        : at <= (beyond ?? 0)
          ? 'beyond'
          : at <= toReach
            ? 'reached'
            : 'over',
    ];
  });
  const left = costs.flatMap(({ what, without }) => (without === undefined ? [] : [`${what}: ${without}`]));
  return [
    printColumns([['what', 'anchor', 'at', 'rounds', 'to reach', 'beyond', ''], ...rows]),
    ...left.map((words) => `  ${words}.`),
  ].join('\n');
}
