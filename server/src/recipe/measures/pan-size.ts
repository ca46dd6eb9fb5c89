/**
 * Knows the geometry of pans: what they hold to the brim, and the surface that a crust has to cover. Where a line does not say how
 * deep a pan is, the pans of the trade do, from the shallowest to the deepest of that size.
 * Refuses to know how full a pan should be.
 */
import { significant, trimmed } from '../../measure/number-text.ts';
import type { Range } from '../../measure/quantity.ts';
import type { Measures } from '../../measure/systems.ts';
import { baseOf, dimensionOf } from '../../measure/unit.ts';
import { parseDocument } from '../../notation/document.ts';
import type { MeasuredNode, PanNode, PanShape } from '../../notation/tree.ts';
import { type TradePan, tradePans } from './pan-table.ts';

export interface PanSize {
  /** All pans together, in ml, brimful; the usual one where the depth is not said. */
  readonly volumeMl: number;
  /** What it may hold; both ends are `volumeMl` where all is said. */
  readonly rangeMl: Range;
  /** Bottoms and sides of all; not known where only the volume is. */
  readonly liningCm2?: number;
  /** Bottoms alone. */
  readonly bottomCm2?: number;
  readonly depthCm?: number;
  /** How many there are, hollows counted. */
  readonly count: number;
  /** What was taken to be so, in a cook's words. */
  readonly assumed: readonly string[];
}

/** A loaf tin's sides slope: it holds 0.92 of the box (common practice, no source). */
const LOAF = 0.92;
/** Sizes that differ by less are the same pan, in inches and in centimetres: 23 cm and 9 in. */
const NEAR = 0.02;
/** What is sold by one figure and called by another is that far apart: 1 lb and 450 g, 64 and 65 mm. */
const ALIKE = 0.1;
/** The hole of a ring tin that does not say it, as a share of its width (common practice, no source). */
const HOLE = 0.3;

interface Box {
  /** Across, or the sides, in mm. */
  readonly inner: readonly number[];
  readonly depth: number;
  /** How much of the geometric volume it holds, for sides that slope. */
  readonly fills: number;
}

/** The size of a pan, or of all when there are several; undefined where a length is missing. */
export function panSize(pan: PanNode, measures: Measures = 'us'): PanSize | undefined {
  if (!(pan.count > 0)) return undefined;
  const assumed: string[] = [];
  if (pan.unitMeant !== undefined)
    assumed.push(`the sizes are in ${pan.unitMeant === 'in' ? 'inches' : 'centimetres'}`);
  const one = pan.volume !== undefined ? ofVolume(pan, pan.volume, measures, assumed) : ofSizes(pan, assumed);
  if (one === undefined) return undefined;
  const count = countOf(pan, one.holes, assumed);
  return {
    volumeMl: one.volumeMl * count,
    rangeMl: { low: one.rangeMl.low * count, high: one.rangeMl.high * count },
    ...(one.liningCm2 !== undefined && { liningCm2: one.liningCm2 * count }),
    ...(one.bottomCm2 !== undefined && { bottomCm2: one.bottomCm2 * count }),
    ...(one.depthCm !== undefined && { depthCm: one.depthCm }),
    count,
    assumed,
  };
}

type One = Omit<PanSize, 'count' | 'assumed'> & { readonly holes: number };

/** `muffin tin` alone has the usual number of hollows. */
function countOf(pan: PanNode, holes: number, assumed: string[]): number {
  if (!pan.cups || pan.countNode !== undefined || pan.count !== 1 || holes === 1) return pan.count;
  assumed.push(`it has ${holes} hollows`);
  return holes;
}

function ofVolume(pan: PanNode, volume: MeasuredNode, measures: Measures, assumed: string[]): One | undefined {
  const unit = volume.unit?.symbol;
  // A pudding basin is sold by the imperial pint.
  const own = pan.form === 'basin' && unit === 'pint' ? 'imperial' : measures;
  const ml = unit === undefined || dimensionOf(unit) !== 'volume' ? undefined : baseOf(unit, own);
  const volumeMl = ml === undefined ? 0 : volume.quantity.low * ml;
  if (!(volumeMl > 0)) return undefined;
  if (own !== measures) assumed.push('the pints are imperial');
  const like = pan.form === undefined ? undefined : nearest(rowsOf(pan.form), (r) => r.volumeMl, volumeMl, ALIKE);
  const box = like === undefined ? undefined : geometry(pan.shape ?? 'round', boxOf(like, pan.shape));
  return {
    volumeMl,
    rangeMl: { low: volumeMl, high: volumeMl },
    ...(box && { liningCm2: box.liningCm2, bottomCm2: box.bottomCm2, depthCm: box.depthCm }),
    holes: 1,
  };
}

function ofSizes(pan: PanNode, assumed: string[]): One | undefined {
  const shape = shapeOf(pan);
  if (shape === undefined) return undefined;
  const written = lengths(pan, shape);
  if (written === undefined) return undefined;
  const { inner, depth } = written;
  if (depth !== undefined && inner.length > (shape === 'ring' ? 1 : 0)) {
    const fills = shape === 'loaf' ? LOAF : fillsOf(pan, inner);
    return exactly(geometry(shape, { inner, depth, fills }));
  }
  const rows = candidates(pan, shape, inner);
  const [usual] = rows;
  if (usual === undefined) return undefined;
  const boxes = rows.map((row): Box => {
    const like = boxOf(row, shape);
    return inner.length === 0
      ? like
      : {
          inner: shape === 'ring' ? [inner[0] ?? 0, HOLE * (inner[0] ?? 0)] : inner,
          depth: depth ?? row.depthMm,
          fills: like.fills,
        };
  });
  const sizes = boxes.map((box) => geometry(shape, box));
  const [first] = sizes;
  if (first === undefined) return undefined;
  const volumes = sizes.map((s) => s.volumeMl);
  if (inner.length === 0) sayWhole(usual, volumes, assumed);
  else if (depth === undefined) sayDepth(boxes, assumed);
  return {
    ...first,
    rangeMl: { low: Math.min(...volumes), high: Math.max(...volumes) },
    holes: usual.holes,
  };
}

/** Of a pan that is known by its name alone. */
function sayWhole({ innerMm, depthMm, volumeMl }: TradePan, volumes: readonly number[], assumed: string[]): void {
  const sides = innerMm.map((mm) => trimmed(mm / 10, 1)).join(' x ');
  const range = { low: Math.min(...volumes), high: Math.max(...volumes) };
  const others = range.low < range.high ? ` (${litresText(range)} by maker)` : '';
  assumed.push(
    `it is ${sides} cm, ${trimmed(depthMm / 10, 1)} cm deep, and holds ${litresText({ low: volumeMl, high: volumeMl })}${others}`,
  );
}

function sayDepth(boxes: readonly Box[], assumed: string[]): void {
  const depths = boxes.map((b) => b.depth);
  const [usual = 0] = depths;
  const text = (mm: number) => trimmed(mm / 10, 1);
  const [low, high] = [Math.min(...depths), Math.max(...depths)];
  assumed.push(
    low === high
      ? `it is ${text(usual)} cm deep`
      : `it is ${text(low)} to ${text(high)} cm deep, usually ${text(usual)}`,
  );
}

const exactly = (size: Required<Pick<PanSize, 'volumeMl' | 'liningCm2' | 'bottomCm2' | 'depthCm'>>): One | undefined =>
  size.volumeMl > 0 ? { ...size, rangeMl: { low: size.volumeMl, high: size.volumeMl }, holes: 1 } : undefined;

/** Two sizes without a word are the sides of a tin. */
function shapeOf({ shape, sizes }: PanNode): PanShape | undefined {
  if (shape !== undefined) return shape;
  const [a, b] = sizes;
  return a === undefined || b === undefined ? undefined : a.value === b.value ? 'square' : 'rectangle';
}

/** The sides, and the depth where it is written. */
function lengths(pan: PanNode, shape: PanShape): { inner: readonly number[]; depth: number | undefined } | undefined {
  const unit = pan.unit?.symbol ?? pan.unitMeant;
  const base = unit === undefined ? undefined : baseOf(unit, 'us');
  if (pan.sizes.length > 0 && base === undefined) return undefined;
  const mm = pan.sizes.map((s) => s.value * (base ?? 1));
  const deep = mmOf(pan.depth);
  const [a, b, c] = mm;
  switch (shape) {
    case 'round':
      return { inner: mm.slice(0, 1), depth: b ?? deep };
    case 'square':
      // `8 x 8 in` are its sides, `8 x 2 in` its side and depth.
      return { inner: mm.slice(0, 1), depth: c ?? (b === a ? undefined : b) ?? deep };
    case 'rectangle':
    case 'loaf':
      return { inner: mm.slice(0, 2), depth: c ?? deep };
    case 'ring':
      return { inner: c === undefined ? mm.slice(0, 1) : mm.slice(0, 2), depth: c ?? b ?? deep };
  }
}

function mmOf(node: MeasuredNode | undefined): number | undefined {
  const unit = node?.unit?.symbol;
  return node === undefined || unit === undefined ? undefined : node.quantity.low * (baseOf(unit, 'us') ?? 1);
}

/** How much of its box a pan of the trade of that size holds; all of it where there is none. */
function fillsOf(pan: PanNode, inner: readonly number[]): number {
  const row = pan.form === undefined || PLAIN.has(pan.form) ? undefined : ofSize(rowsOf(pan.form), inner)[0];
  return row === undefined ? 1 : boxOf(row, pan.shape).fills;
}

/** Written with all their sizes, these are reckoned as they stand. */
const PLAIN: ReadonlySet<string> = new Set(['round', 'square', 'rectangle', 'loaf', 'ring']);

/** The pans of the trade that a line may mean, the usual one first; of another size, those of its name, for their depth. */
function candidates(pan: PanNode, shape: PanShape, inner: readonly number[]): readonly TradePan[] {
  const form = pan.form ?? shape;
  const named = narrowed(rowsOf(form), pan);
  if (inner.length === 0) return named;
  const isDeep = pan.traits?.some((t) => t.startsWith('deep'));
  const deepest = Math.max(...named.map((row) => row.depthMm));
  // A deep pie dish is none of the shallow ones of its size.
  const bySize = ofSize(named, inner).filter((row) => !isDeep || row.depthMm >= deepest * DEEP);
  const unit = (pan.unit?.symbol ?? pan.unitMeant) === 'in' ? 'in' : 'cm';
  const found = bySize.length > 0 ? bySize : named;
  const own = found.filter((row) => row.by === unit);
  return deepOrNot(own.length > 0 ? own : found, pan.traits ?? []);
}

/** A deep pan is at least so deep, of the deepest of its name. Judgement. */
const DEEP = 0.8;

const rowsOf = (form: string): readonly TradePan[] =>
  tradePans().filter((row) => row.form.split(',').includes(form) || (form === 'ring' && RINGS.has(row.form)));
const RINGS: ReadonlySet<string> = new Set(['fluted ring', 'tube', 'gugelhupf', 'savarin']);

function narrowed(rows: readonly TradePan[], { sold, loaf, traits = [], sizes, depth }: PanNode): readonly TradePan[] {
  if (loaf !== undefined) {
    const grams = loaf.quantity.low * (baseOf(loaf.unit?.symbol ?? 'g', 'us') ?? 1);
    return rows.filter((row) => Math.abs(soldGrams(row) / grams - 1) < ALIKE);
  }
  const wanted = sold ?? ['mini', 'jumbo', 'large'].find((t) => traits.includes(t) && rows.some((r) => r.soldAs === t));
  if (wanted !== undefined) {
    const named = rows.filter((row) => row.soldAs === wanted);
    const deep = mmOf(depth);
    const asDeep = deep === undefined ? [] : named.filter((row) => Math.abs(row.depthMm / deep - 1) < ALIKE);
    return asDeep.length > 0 ? asDeep : named;
  }
  return sizes.length > 0 ? rows : rows.filter((row) => row.soldAs === '' || row.form === 'ramekin');
}

/** `2 lb`, in grams. */
const soldGrams = (row: TradePan): number =>
  /^\d+ lb$/.test(row.soldAs) ? Number.parseInt(row.soldAs, 10) * 453.6 : 0;

const ofSize = (rows: readonly TradePan[], inner: readonly number[]): readonly TradePan[] => {
  const wanted = inner.toSorted((a, b) => b - a);
  return rows.filter((row) => {
    const have = row.innerMm.toSorted((a, b) => b - a);
    return wanted.every((mm, i) => Math.abs((have[i] ?? 0) / mm - 1) < NEAR);
  });
};

function deepOrNot(rows: readonly TradePan[], traits: readonly string[]): readonly TradePan[] {
  const byDepth = rows.toSorted((a, b) => b.depthMm - a.depthMm);
  const [deepest, shallowest] = [byDepth[0], byDepth.at(-1)];
  if (traits.some((t) => t.startsWith('deep')) && deepest !== undefined)
    return rows.filter((r) => r.depthMm >= deepest.depthMm * 0.95);
  if (traits.includes('shallow') && shallowest !== undefined)
    return rows.filter((r) => r.depthMm <= shallowest.depthMm * 1.05);
  return rows;
}

/** A row as a box, with the share of it that it holds. */
function boxOf({ innerMm, depthMm, volumeMl }: TradePan, shape: PanShape | undefined): Box {
  const [across = 0] = innerMm;
  const inner = shape === 'ring' ? [across, HOLE * across] : innerMm;
  const whole = geometry(shape ?? (innerMm.length === 2 ? 'rectangle' : 'round'), { inner, depth: depthMm, fills: 1 });
  return { inner, depth: depthMm, fills: whole.volumeMl > 0 ? volumeMl / whole.volumeMl : 1 };
}

function nearest<T>(of: readonly T[], figure: (item: T) => number, wanted: number, most: number): T | undefined {
  const far = (item: T) => Math.abs(figure(item) / wanted - 1);
  const [found] = of.toSorted((a, b) => far(a) - far(b));
  return found !== undefined && far(found) < most ? found : undefined;
}

/** One pan, in ml, cm² and cm. */
function geometry(shape: PanShape, { inner, depth, fills }: Box) {
  const [a = 0, second] = inner.map((mm) => mm / 10);
  const b = second ?? a;
  const depthCm = depth / 10;
  const [bottomCm2, around] =
    shape === 'round'
      ? [Math.PI * (a / 2) ** 2, Math.PI * a]
      : shape === 'ring'
        ? [Math.PI * ((a / 2) ** 2 - (b / 2) ** 2), Math.PI * (a + b)]
        : shape === 'square'
          ? [a * a, 4 * a]
          : [a * b, 2 * (a + b)];
  return { volumeMl: bottomCm2 * depthCm * fills, bottomCm2, liningCm2: bottomCm2 + around * depthCm, depthCm };
}

/** How that volume is worked out, as a cook would reckon it: `π × (24 cm ÷ 2)² × 3 cm`. */
export function panSum(pan: PanNode): string {
  const { shape, sizes, volume, unit } = pan;
  const size = panSize(pan);
  const count = size?.count ?? pan.count;
  const [a, b, c] = sizes.map(({ value }) => `${value} ${unit?.symbol ?? pan.unitMeant ?? 'cm'}`);
  const each = {
    round: `π × (${a} ÷ 2)² × ${b}`,
    square: `${a} × ${a} × ${b}`,
    rectangle: `${a} × ${b} × ${c}`,
    loaf: `${a} × ${b} × ${c} × ${LOAF}, for its sloping sides`,
    ring: `π × ((${a} ÷ 2)² − (${b} ÷ 2)²) × ${c}`,
  };
  const isWhole = shape !== undefined && sizes.length === (shape === 'round' || shape === 'square' ? 2 : 3);
  const one =
    volume !== undefined || size === undefined
      ? 'as written'
      : isWhole && size.assumed.length === 0
        ? each[shape]
        : size.assumed.length === 0
          ? 'as written'
          : `taken so that ${size.assumed.join('; ')}`;
  return count > 1 ? `${count} × ${one}` : one;
}

/** `1.8 l`, `1.4 to 1.9 l`, `950 ml`. */
export function litresText({ low, high }: Range): string {
  const small = high < 995;
  const figure = (ml: number) => (small ? String(Math.round(ml / 10) * 10) : significant(ml / 1000, 2));
  const [a, b] = [figure(low), figure(high)];
  return `${a === b ? a : `${a} to ${b}`} ${small ? 'ml' : 'l'}`;
}

/** The volume of all pans together, in ml, brimful. */
export const panVolumeMl = (pan: PanNode): number | undefined => panSize(pan)?.volumeMl;

/** The pan that words name: `round 24 x 3 cm`, `12 x round 7 x 3 cm`, `1.2 l`, `9-inch springform`. */
export function panIn(words: string): PanNode | undefined {
  const line = parseDocument(`pan ${words.trim().replace(/^an? /i, '')}`).lines[0];
  return line?.statement.kind === 'pan' && line.faults.length === 0 ? line.statement.pan : undefined;
}
