/**
 * Knows how the table of minerals is packed into the bundles, at less than two thirds of its size, and unpacked when a label is first asked for: its figures are
 * round numbers, 29 to a decade, so that each is one letter.
 * Refuses to know what they are figures of.
 */

/** The round numbers: each at most a tenth above the one before, so that every figure is within a twentieth of one. */
const STEPS = [
  10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 22, 24, 26, 28, 30, 33, 36, 39, 42, 46, 50, 55, 60, 66, 72, 79, 86, 94,
];
/** The first decade that has letters is that of hundredths. */
const FIRST = -2;

/** The nearest round number, within a twentieth of the figure; what is less than a hundredth is nothing. */
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
/** The letter of the first step; of steps too far for a letter the second stands behind this. */
const LETTERS = 35;
const FAR = '~';
const FAR_FROM = 91;

/** By its columns: the keys, ascending, each by how far it is from the one before; then a letter a figure. */
export function packedFigures(table: string): string {
  const [, heading = '', ...rows] = table.trimEnd().split('\n');
  const cells = rows.map((row) => row.split('\t'));
  const keys = cells.map(([key], at) => Number(key) - Number(cells[at - 1]?.[0] ?? 0));
  const columns = heading
    .split('\t')
    .slice(1)
    .map((_, at) => packedColumn(cells.map((row) => row[at + 1] ?? '')));
  return `${PACKED}${[keys.join(' '), ...columns].join('\n')}`;
}

/** Its first letter says at which step its letters begin. */
function packedColumn(cells: readonly string[]): string {
  const steps = cells.map((cell) => (cell === '' ? null : stepOf(Number(cell))));
  const least = Math.min(FAR_FROM, ...steps.flatMap((step) => step ?? []));
  const letters = steps.map((step) => {
    if (step === null) return EMPTY;
    if (step === undefined) return ZERO;
    const above = step - least;
    return above < FAR_FROM ? letter(above) : FAR + letter(above - FAR_FROM);
  });
  return letter(least) + letters.join('');
}

const letter = (step: number): string => String.fromCharCode(LETTERS + step);

/** The figures of each key, packed or not; undefined where one is not known. */
export function figuresByKey(text: string): ReadonlyMap<number, readonly (number | undefined)[]> {
  if (!text.startsWith(PACKED)) {
    const rows = text.trimEnd().split('\n').slice(2);
    return new Map(
      rows.map((row) => {
        const [key, ...cells] = row.split('\t');
        return [Number(key), cells.map((cell) => (cell === '' ? undefined : Number(cell)))];
      }),
    );
  }
  const [keys = '', ...columns] = text.slice(PACKED.length).split('\n');
  const figures = columns.map(figuresIn);
  const rows = new Map<number, readonly (number | undefined)[]>();
  let key = 0;
  keys.split(' ').forEach((more, at) => {
    key += Number(more);
    rows.set(
      key,
      figures.map((column) => column[at]),
    );
  });
  return rows;
}

function figuresIn(column: string): (number | undefined)[] {
  const figures: (number | undefined)[] = [];
  const stepAt = (at: number): number => column.charCodeAt(at) - LETTERS;
  const least = stepAt(0);
  for (let at = 1; at < column.length; at++) {
    if (column[at] === EMPTY) figures.push(undefined);
    else if (column[at] === ZERO) figures.push(0);
    else if (column[at] === FAR) figures.push(numberAt(least + FAR_FROM + stepAt(++at)));
    else figures.push(numberAt(least + stepAt(at)));
  }
  return figures;
}
