/**
 * Knows the pan that a `pan` line describes, and what such a line must say.
 * Refuses to know what goes into it.
 */
import { unitOf } from './amounts.ts';
import { type Children, nodes, pieces, runOf } from './grammar.ts';
import { numeralOf } from './numerals.ts';
import { isLength } from './readings.ts';
import type { MeasuredNode, NumeralNode, PanNode, PanShape, SyntaxFault } from './tree.ts';

/** How many sizes a shape has, and what they look like. */
const SHAPES: Readonly<Record<PanShape, { readonly sizes: number; readonly example: string }>> = {
  round: { sizes: 2, example: '24 x 3 cm' },
  square: { sizes: 2, example: '20 x 5 cm' },
  rectangle: { sizes: 3, example: '30 x 20 x 4 cm' },
  loaf: { sizes: 3, example: '21 x 11 x 6 cm' },
  ring: { sizes: 3, example: '24 x 8 x 10 cm' },
};

/** The pan of a `pan` rule, with a fault when its shape or sizes are not as the notation wants them. */
export function panOf(line: string, c: Children, faults: SyntaxFault[]): PanNode | undefined {
  const [countNode] = numeralsOf(line, c.count, faults);
  const shapeToken = pieces(c.shape)[0]?.first;
  const sizes = numeralsOf(line, c.size, faults);
  const unitToken = pieces(c.UnitWord).at(-1)?.first;
  const unit = unitToken && unitOf(unitToken);
  const start = countNode?.start ?? shapeToken?.start ?? sizes[0]?.start;
  if (start === undefined) return undefined;
  const end = Math.max(sizes.at(-1)?.end ?? 0, unit?.end ?? 0, shapeToken?.end ?? 0);
  const counted = { start, end, count: countNode?.value ?? 1, ...(countNode && { countNode }) };
  const [only] = sizes;
  if (shapeToken === undefined && sizes.length === 1 && only !== undefined && unit !== undefined && !isLength(unit)) {
    const quantity = { low: only.value, high: only.value, about: false, unit: unit.symbol };
    const volume: MeasuredNode = { kind: 'measured', start: only.start, end: unit.end, quantity, low: only, unit };
    return { ...counted, sizes: [], volume };
  }
  const written = shapeToken?.written?.word ?? '';
  const shape = Object.hasOwn(SHAPES, written) ? (written as PanShape) : undefined;
  if (shape === undefined) {
    faults.push({
      code: 'bad-pan',
      start,
      end,
      detail:
        'a pan is `round`, `square`, `rectangle`, `loaf` or `ring`, then its sizes: `pan round 24 x 3 cm`, or a volume: `pan 1.2 l`',
    });
  } else if (sizes.length !== SHAPES[shape].sizes || unit === undefined || !isLength(unit)) {
    faults.push({
      code: 'bad-pan',
      start,
      end,
      detail: `give its sizes and the unit, the depth last: \`pan ${shape} ${SHAPES[shape].example}\``,
    });
  }
  return { ...counted, ...(shape && { shape }), sizes, ...(unit && { unit }) };
}

function numeralsOf(line: string, found: Children[string], faults: SyntaxFault[]): NumeralNode[] {
  return nodes(found).flatMap((numeral) => {
    const run = runOf(pieces(numeral.Single ?? numeral.Mixed));
    return run === undefined ? [] : [numeralOf(line, run, faults)];
  });
}
