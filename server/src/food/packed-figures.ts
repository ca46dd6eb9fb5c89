/**
 * Knows how the table of minerals is packed into the bundles, at less than two thirds of its size, and unpacked when a label is first asked for: its figures are
 * round numbers, 17 to a decade, so that each is one letter.
 * Refuses to know what they are figures of.
 */

/** The round numbers of a decade, so near each other that every figure is within a tenth of one. */
const STEPS = [10, 11, 13, 15, 17, 19, 22, 25, 29, 33, 38, 44, 51, 59, 68, 78, 89];
/** The first decade that has letters is that of hundredths. */
const FIRST = -2;

/** The nearest round number, within a tenth of the figure; what is less than a hundredth is nothing. */
export function roundNumber(value: number): number {
  const step = stepOf(value);
  return step === undefined ? 0 : numberAt(step);
}

/** How many steps above a hundredth it is; undefined below. */
function stepOf(value: number): number | undefined {
  if (value < 0.0095) return undefined;
  const decade = Math.floor(Math.log10(value) + 1e-9);
  const digits = value / 10 ** (decade - 1);
  const off = (at: number): number => Math.abs(Math.log((STEPS[at] ?? 100) / digits));
  const nearest = STEPS.reduce((best, _, at) => (off(at) < off(best) ? at : best), 0);
  const above = off(STEPS.length) < off(nearest);
  return (decade - FIRST) * STEPS.length + (above ? STEPS.length : nearest);
}

const numberAt = (step: number): number =>
  Number(((STEPS[step % STEPS.length] ?? 10) * 10 ** (Math.floor(step / STEPS.length) + FIRST - 1)).toPrecision(2));

/** A packed table begins with this, the table itself with a remark. */
const PACKED = ':';
const [EMPTY, ZERO] = [' ', '!'];
/** The letter of the first step: behind it are as many as five decades have. */
const LETTERS = 35;

/** By its columns, a letter a figure, in an order of the keys that whoever reads it knows too: each key once. */
export function packedFigures(table: string, order: readonly number[]): string {
  const [, heading = '', ...rows] = table.trimEnd().split('\n');
  const cells = new Map(rows.map((row) => row.split('\t')).map(([key, ...figures]) => [Number(key), figures]));
  const columns = heading
    .split('\t')
    .slice(1)
    .map((_, at) => packedColumn(order.map((key) => cells.get(key)?.[at] ?? '')));
  return PACKED + columns.join('\n');
}

/** Its first letter says at which step its letters begin. */
function packedColumn(cells: readonly string[]): string {
  const steps = cells.map((cell) => (cell === '' ? null : stepOf(Number(cell))));
  const least = Math.min(...steps.flatMap((step) => step ?? []));
  return (
    letter(least) +
    steps.map((step) => (step === null ? EMPTY : step === undefined ? ZERO : letter(step - least))).join('')
  );
}

const letter = (step: number): string => String.fromCharCode(LETTERS + step);

/** The figures of each key, packed or not; undefined where one is not known. */
export function figuresByKey(
  text: string,
  order: () => readonly number[],
): ReadonlyMap<number, readonly (number | undefined)[]> {
  if (text.startsWith(PACKED)) {
    const figures = text.slice(PACKED.length).split('\n').map(figuresIn);
    return new Map(order().map((key, at) => [key, figures.map((column) => column[at])]));
  }
  const rows = text.trimEnd().split('\n').slice(2);
  return new Map(
    rows.map((row) => {
      const [key, ...cells] = row.split('\t');
      return [Number(key), cells.map((cell) => (cell === '' ? undefined : Number(cell)))];
    }),
  );
}

function figuresIn(column: string): (number | undefined)[] {
  const stepAt = (at: number): number => column.charCodeAt(at) - LETTERS;
  return Array.from(column.slice(1), (sign, at) => {
    if (sign === EMPTY) return undefined;
    return sign === ZERO ? 0 : numberAt(stepAt(0) + stepAt(at + 1));
  });
}
