import { trimmed } from '../../measure/number-text.ts';
import { middle, type Range } from '../../measure/quantity.ts';
import { totalOf } from '../../measure/total.ts';
import type { Dimension } from '../../measure/unit-row.ts';
import type { MeasuredNode, SentenceItem } from '../../notation/tree.ts';
import type { World } from '../../recipe/model.ts';
import { defineCheck, type Found } from '../check.ts';

interface Values {
  /** In mm, g or ml. */
  readonly first: Range;
  readonly other: Range;
  readonly unit: 'mm' | 'g' | 'ml';
}

const UNITS: Partial<Record<Dimension, Values['unit']>> = { length: 'mm', mass: 'g', volume: 'ml' };
/** What is rounded to whole inches, quarters of one, ounces and cups (common practice, no source: 5 mm is printed for a quarter of an inch). */
const FAR: Readonly<Record<Values['unit'], number>> = { mm: 1.4, g: 1.2, ml: 1.3 };
/** From here on lengths are rounded to the inch. */
const LONG_MM = 100;
const FAR_LONG = 1.12;

export default defineCheck<Values>({
  code: 'measure-said-twice',
  title: 'A measure of a step is written in two units, and they do not agree',
  family: 'bookkeeping',
  severity: 'warning',
  scope: 'part',
  doubtsFigure: true,
  source: { kind: 'publication', title: 'NIST SP 811 (2008), appendix B: what each unit holds' },
  explain: `**What it computes.** A length, weight or volume that a step writes in two units (\`2.5 cm (1 in)\`, \`450 g/1 lb\`): the one against the other.

**Why it matters.** Half of the readers go by the one, half by the other.

**What to do.** Mend the one that is wrong. Of the list \`weights-disagree\` holds the same.

**Silent** within a factor of ${FAR.g} for weights, ${FAR.ml} for volumes, ${FAR.mm} for lengths and ${FAR_LONG} for those above ${LONG_MM / 10} cm.`,
  *find(part, { world }) {
    for (const { line, sentence } of part.steps)
      for (const [at, item] of sentence.items.entries()) {
        const next = sentence.items[at + 1];
        if (next?.kind !== 'mark' || (next.mark !== '(' && next.mark !== '/')) continue;
        const [one, two] = [measuredOf(item), measuredOf(sentence.items[at + 2])];
        const values = one && two && disagreement(one, two, world);
        if (one && two && values)
          yield { at: { line, start: one.start, end: two.end }, values } satisfies Found<Values>;
      }
  },
  say: ({ first, other, unit }) => ({
    message: `The first is ${trimmed(middle(first), 0)} ${unit}, and what is written beside it ${trimmed(middle(other), 0)} ${unit}: mend the one that is wrong.`,
    value: middle(other),
    unit,
  }),
  examples: {
    good: [
      'recipe Oat slab\n  200 g     rolled oats\n  80 g      honey\n  do Stir the honey into the oats and press 1 cm (1/2 in) thick.\n',
      'recipe Oat slab\n  200 g     rolled oats\n  80 g      honey\n  do Stir the honey into the oats and roll into a log 30 cm/12 in long.\n',
    ],
    bad: [
      'recipe Oat slab\n  200 g     rolled oats\n  80 g      honey\n  do Stir the honey into the oats and press 2.5 cm (3 in) thick.\n# "2.5 cm (3 in" measure-said-twice: 25 mm, and what is written beside it 76 mm\n',
      'recipe Oat slab\n  200 g     rolled oats\n  80 g      honey\n  do Stir the honey into the oats and press into balls of 50 g/4 oz.\n# "50 g/4 oz" measure-said-twice: 113 g\n',
    ],
  },
});

const measuredOf = (item: SentenceItem | undefined): MeasuredNode | undefined =>
  item?.kind === 'length' ? item.measured : item?.kind === 'measured' && item.unit !== undefined ? item : undefined;

function disagreement(one: MeasuredNode, two: MeasuredNode, { measures }: World): Values | undefined {
  const [first, other] = [totalOf(one.quantity, measures), totalOf(two.quantity, measures)];
  const unit = first && UNITS[first.dimension];
  if (first === undefined || unit === undefined || other?.dimension !== first.dimension) return undefined;
  // `5 mm / 1 cm` may be two things.
  if (isMetric(one) === isMetric(two)) return undefined;
  const far = unit === 'mm' && first.low >= LONG_MM ? FAR_LONG : FAR[unit];
  return first.low <= other.high * far && other.low <= first.high * far ? undefined : { first, other, unit };
}

const METRIC: ReadonlySet<MeasuredNode['quantity']['unit']> = new Set([
  'mm',
  'cm',
  'mg',
  'g',
  'kg',
  'ml',
  'cl',
  'dl',
  'l',
]);
const isMetric = ({ quantity }: MeasuredNode): boolean => METRIC.has(quantity.unit);
