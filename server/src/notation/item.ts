/**
 * Knows one item of the list while it is read, and the node that it becomes.
 * Refuses to know how its pieces are found.
 */
import { dimensionIn, isCounted, type Measure } from './amounts.ts';
import type { Token } from './tokens.ts';
import type { BesideNode, Draft, IngredientNode, MeasuredNode, OtherNode, Span } from './tree.ts';

/** One item while it is read. */
export class Item {
  readonly node: Draft<IngredientNode>;
  more: IngredientNode[] | undefined;
  others: OtherNode[] | undefined;
  /** Its amount, whose sum may go on behind the name. */
  measure: Measure | undefined;
  private besides: BesideNode[] | undefined;

  constructor(node: Draft<IngredientNode>) {
    this.node = node;
  }

  get isBare(): boolean {
    return this.node.amount === undefined && this.measure === undefined;
  }

  beside(
    sign: BesideNode['sign'],
    at: Span,
    amount: MeasuredNode,
    means: BesideNode['means'],
    drained: boolean = false,
  ): void {
    this.besides ??= [];
    const { end } = amount;
    const start = Math.min(at.start, amount.start);
    this.besides.push({ sign, start, end, amount, means, ...(drained && { drained }) });
  }

  /** Whether the term goes on with the amount: `1 cup sugar plus 2 tbsp`. */
  adds(term: Measure): boolean {
    const { measure } = this;
    if (measure === undefined || term.unit === undefined || measure.upTo !== undefined) return false;
    const [a, b] = [dimensionIn(measure), dimensionIn(term)];
    // `1 stick butter plus 2 tbsp`
    if (isCounted(measure) && (b === 'mass' || b === 'volume')) {
      this.measure = { ...measure, plus: [...measure.plus, term] };
      return true;
    }
    if (a === undefined || a !== b || (a !== 'mass' && a !== 'volume')) return false;
    this.measure = { ...measure, plus: [...measure.plus, term] };
    return true;
  }

  /** Whether a package of a size behind a bare number is what it counts: `12 salmon, 1 lb. cans`. */
  counts(package_: Measure): boolean {
    const { measure } = this;
    if (
      measure === undefined ||
      measure.unit !== undefined ||
      measure.counted !== undefined ||
      measure.each !== undefined
    )
      return false;
    const { counted, each, can, point } = package_;
    if (can === undefined && (counted === undefined || each === undefined)) return false;
    this.measure = { ...measure, counted, each, can, point };
    return true;
  }

  /** Words that are told of it; further ones are told behind the first, with whatever stands between. */
  prepare(line: string, first: Token, last: Token): void {
    const start = this.node.preparation?.start ?? first.start;
    this.node.preparation = { start, end: last.end, text: line.slice(start, last.end) };
  }

  done(): IngredientNode {
    const { node } = this;
    if (this.besides !== undefined) node.beside = this.besides;
    if (this.others !== undefined) node.others = this.others;
    if (this.more !== undefined) node.more = this.more;
    return node;
  }
}
