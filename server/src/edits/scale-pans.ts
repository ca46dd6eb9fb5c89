/**
 * Knows how the pans of a recipe and of its parts are written at another size: so many times as many, or the one that was asked for.
 * Refuses to choose a pan.
 */
import { trimmed } from '../measure/number-text.ts';
import type { MeasuredNode, PanNode } from '../notation/tree.ts';
import type { Part } from '../recipe/model.ts';
import { lineIn, type ScaleEvent, type ToScale, textOf } from './scaling.ts';
import { type Manner, sizeAmount } from './sized-amount.ts';
import { replaceSpan } from './text-edit.ts';

/** A part's own pans, where that comes out whole. */
export function* scalePartPan(work: ToScale, part: Part): Generator<ScaleEvent> {
  const { sizes, manner } = work;
  const { pan } = part.head;
  if (pan === undefined) return;
  const line = lineIn(work, part, pan.line);
  const written = textOf(work, line).slice(pan.node.start, pan.node.end);
  const by = sizes.lining.get(part.index) ?? sizes.by;
  const after = pansAtSize(pan.node, written, by, manner);
  if (after !== undefined) yield* panWritten(line, pan.node, written, after, by);
  else {
    const words = `The pan of the ${part.head.name} stays as written: choose one of ${trimmed(sizes.by, 2)} times the volume.`;
    yield { kind: 'said', words };
  }
}

/** The recipe's pan: the one that was asked for; else so many times the pans where that is a whole number. */
export function* scalePan(work: ToScale): Generator<ScaleEvent> {
  const { recipe, sizes, manner } = work;
  const { pan } = recipe;
  if (pan === undefined) return;
  const written = textOf(work, pan.at).slice(pan.node.start, pan.node.end);
  const after = sizes.pan ?? pansAtSize(pan.node, written, sizes.by, manner);
  if (after !== undefined)
    yield* panWritten(pan.at, pan.node, written, after, sizes.pan === undefined ? sizes.by : undefined);
}

/** `by` is undefined of a pan that was asked for. */
function* panWritten(
  line: number,
  node: PanNode,
  before: string,
  after: string,
  by: number | undefined,
): Generator<ScaleEvent> {
  yield { kind: 'edits', edits: [replaceSpan(line, node, after)] };
  yield { kind: 'change', words: `pan ${before} → ${after}` };
  const share =
    by === undefined || (node.volume !== undefined && node.countNode === undefined)
      ? 100
      : Math.round((100 * node.count * by) / pansFor(node, by));
  if (share !== 100) yield { kind: 'said', words: `Each pan is filled to ${share} % of what it was.` };
}

/** From here on several pans are taken, and not one that nobody sells. */
const SEVERAL = 1.6;
/** More than so many times as full, one runs over; less than so full, it is another cake (judgement). */
const FULLER = 1.1;
const EMPTIER = 0.8;

/** How many pans of the size that the recipe has: exactly, or of many the nearest that do not run over. */
function pansFor({ count }: PanNode, by: number): number {
  const wanted = count * by;
  const near = Math.round(wanted);
  return wanted / near > FULLER ? near + 1 : near;
}

/** Several pans become more or fewer, and one becomes two or three, where that comes out whole, or nearly so of many; a volume is another volume. */
function pansAtSize(pan: PanNode, written: string, by: number, manner: Manner): string | undefined {
  if (pan.volume !== undefined && pan.countNode === undefined && pan.form === undefined) {
    const base = pan.start;
    const shifted = shiftedBy(pan.volume, -base);
    return sizeAmount(0, written, shifted, by, manner).after;
  }
  const count = pan.count * by;
  const whole = pansFor(pan, by);
  const isExact = Math.abs(count / whole - 1) <= 0.001;
  if (whole < 1 || whole === pan.count || !(isExact || (by >= SEVERAL && count / whole >= EMPTIER))) return undefined;
  if (pan.countNode === undefined) return `${whole} x ${written}`;
  const { start, end } = pan.countNode;
  const behind = written.slice(end - pan.start);
  const rest = behind.replace(/^\s*[x×]\s*/, '');
  // `12 x round 7 x 3 cm`; of `muffin tin, 12` and `12 ramekins` the number alone changes.
  if (start !== pan.start || rest === behind) return `${written.slice(0, start - pan.start)}${whole}${behind}`;
  return whole === 1 ? rest : `${whole} x ${rest}`;
}

function shiftedBy(node: MeasuredNode, by: number): MeasuredNode {
  const shift = <T extends { readonly start: number; readonly end: number }>(span: T): T => ({
    ...span,
    start: span.start + by,
    end: span.end + by,
  });
  const { high, unit } = node;
  return {
    ...shift(node),
    low: shift(node.low),
    ...(high && { high: shift(high) }),
    ...(unit && { unit: shift(unit) }),
  };
}
