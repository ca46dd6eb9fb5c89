/** Knows the cost table: its rows, what each is to reach, and how it is printed. */
import { SIZES, type Size } from './cases.ts';
import { median } from './figures.ts';
import type { Figure, Measure } from './measure.ts';

export interface Row {
  readonly measure: string;
  readonly unit: 'ms' | 'MB' | 's' | 'KB';
  /** Lines of the file. */
  readonly lines?: Size;
  readonly quern: Figure;
  /** Absent where the JSON server has nothing like it. */
  readonly json?: Figure;
  /** Absent where nothing is promised. */
  readonly toReach?: number;
}

interface Line {
  readonly measure: Measure;
  readonly words: string;
  readonly unit: Row['unit'];
  /** By size, in the order of `SIZES`; undefined leaves the row out, null promises nothing. */
  readonly toReach: readonly [number | null | undefined, number | null | undefined, number | null | undefined];
}

const LINES: readonly Line[] = [
  { measure: 'edit-p50', words: 'one character to findings, p50', unit: 'ms', toReach: [0.3, 0.35, 1.0] },
  { measure: 'edit-p95', words: 'one character to findings, p95', unit: 'ms', toReach: [1.0, 1.2, 2.5] },
  { measure: 'symbols', words: 'change, then document symbols', unit: 'ms', toReach: [0.35, 1.1, 8] },
  { measure: 'hover', words: 'hover', unit: 'ms', toReach: [0.25, 0.4, 0.6] },
  { measure: 'completion', words: 'completion', unit: 'ms', toReach: [0.25, 0.4, 0.6] },
  { measure: 'format', words: 'format the document', unit: 'ms', toReach: [0.3, 0.5, 3.5] },
  { measure: 'start', words: 'process start to first findings', unit: 'ms', toReach: [85, 85, 110] },
  { measure: 'memory-open', words: 'memory with the file open', unit: 'MB', toReach: [62, 65, 72] },
  { measure: 'memory-edited', words: 'memory after the edits', unit: 'MB', toReach: [undefined, undefined, 140] },
  {
    measure: 'pushed',
    words: 'one character to findings, pushed',
    unit: 'ms',
    toReach: [undefined, null, undefined],
  },
];

/** Figures of every round, by server, size and measure. */
export type Rounds = readonly {
  readonly server: 'quern' | 'json';
  readonly lines: Size;
  readonly figures: Partial<Record<Measure, Figure>>;
}[];

export function serverRows(rounds: Rounds): Row[] {
  const of = (server: 'quern' | 'json', lines: Size, measure: Measure): Figure =>
    medianFigure(
      rounds.filter((r) => r.server === server && r.lines === lines).map((r) => r.figures[measure] ?? 'no answer'),
    );
  return LINES.flatMap(({ measure, words, unit, toReach }) =>
    SIZES.flatMap((lines, i): Row[] => {
      const reach = toReach[i];
      if (reach === undefined) return [];
      return [
        {
          measure: words,
          unit,
          lines,
          quern: of('quern', lines, measure),
          json: of('json', lines, measure),
          ...(reach !== null && { toReach: reach }),
        },
      ];
    }),
  );
}

/** The median of the rounds that gave an answer. */
export function medianFigure(figures: readonly Figure[]): Figure {
  return median(figures.filter((f) => f !== 'no answer')) ?? 'no answer';
}

/** Quern's figure as a multiple of the JSON server's. */
export function ratioOf({ quern, json }: Row): number | undefined {
  return typeof quern === 'number' && typeof json === 'number' && json > 0 ? quern / json : undefined;
}

const HEAD = ['', 'lines', 'Quern', 'JSON server', 'ratio', 'to reach', ''];

export function printTable(rows: readonly Row[]): string {
  let last = '';
  const cells = rows.map((row) => {
    const words = `${row.measure}, ${row.unit}`;
    const shown = words === last ? '' : words;
    last = words;
    const ratio = ratioOf(row);
    return [
      shown,
      row.lines?.toLocaleString('en') ?? '',
      show(row.quern),
      row.json === undefined ? '' : show(row.json),
      ratio === undefined ? '' : ratio.toFixed(2),
      row.toReach === undefined ? '' : String(row.toReach),
      row.toReach === undefined || row.quern === 'no answer' ? '' : row.quern <= row.toReach ? 'reached' : 'over',
    ];
  });
  return printColumns([HEAD, ...cells]);
}

/** Columns as wide as their widest cell; the first and last to the left, figures to the right. */
export function printColumns(rows: readonly (readonly string[])[]): string {
  const [first = []] = rows;
  const widths = first.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0)));
  return rows
    .map((row) =>
      row
        .map((cell, column) =>
          column === 0 || column === row.length - 1
            ? cell.padEnd(widths[column] ?? 0)
            : cell.padStart(widths[column] ?? 0),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export function show(figure: Figure): string {
  if (figure === 'no answer') return figure;
  return figure < 10 ? figure.toFixed(2) : figure < 100 ? figure.toFixed(1) : figure.toFixed(0);
}
