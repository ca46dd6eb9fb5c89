/** Pans: the tins of the trade that hold about what is listed first, then the shapes. */
import { trimmed } from '../../measure/number-text.ts';
import type { PanShape } from '../../notation/tree.ts';
import { type TradePan, tradePans } from '../../recipe/measures/pan-table.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { all, type Completion, type Completions, NOTHING, stops, type Typing } from './item.ts';

/** Forms of the table that are a shape of the notation, and what that is made of. */
const SHAPES: Readonly<Record<string, PanShape>> = {
  round: 'round',
  'sandwich,round': 'round',
  square: 'square',
  'brownie,square': 'square',
  rectangle: 'rectangle',
  'traybake,rectangle': 'rectangle',
  loaf: 'loaf',
};

/** More than a glance takes in is found by typing on. */
const MOST = 6;
/** A tin is filled to about so much of what it holds: common practice, no source. */
const FILLED = 0.65;

export function completePan({ before, character, snapshot }: Typing): Completions {
  const match = /^\s*pan\s+(?:\d+\s*x\s*)?(\p{L}*)$/u.exec(before);
  if (match === null) return NOTHING;
  const typed = match[1] ?? '';
  const start = character - typed.length;
  const item = (label: string, detail: string, snippet?: string): Completion => ({
    label,
    kind: 'value',
    detail,
    start,
    end: character,
    text: label,
    ...(snippet !== undefined && { snippet: stops(snippet) }),
    filter: label,
  });
  const tin = snapshot.house.world.language === 'american' ? 'muffin pan' : 'muffin tin';
  return all([
    ...usual(snapshot, typed).map(({ pan, shape }) => item(written(pan, shape), `holds ${litres(pan.volumeMl)}`)),
    ...PANS.map(([label, sizes, detail]) => item(label, detail, `${label} ${sizes}`)),
    item(tin, 'of the usual size', `${tin}, <12>`),
    item('half sheet', 'of the usual size'),
  ]);
}

const PANS: readonly (readonly [PanShape, string, string])[] = [
  ['round', '<24> x <3> cm', 'across x deep'],
  ['square', '<20> x <5> cm', 'side x deep'],
  ['rectangle', '<30> x <20> x <4> cm', 'long x wide x deep'],
  ['loaf', '<21> x <11> x <6> cm', 'long x wide x deep'],
  ['ring', '<24> x <8> x <10> cm', 'across x hole x deep'],
];

interface Tin {
  readonly pan: TradePan;
  readonly shape: PanShape;
}

/** Sold in the house's measures; the nearest to what is listed, or in the order of the table where that is not known. */
function usual({ recipe, house }: Snapshot, typed: string): readonly Tin[] {
  const by = house.world.measures === 'us' ? 'in' : 'cm';
  const tins = tradePans().flatMap((pan): Tin[] => {
    const shape = SHAPES[pan.form];
    return shape === undefined || pan.by !== by || !shape.startsWith(typed.toLowerCase()) ? [] : [{ pan, shape }];
  });
  const complete = recipe.heads.every(({ massG, nominal }) => massG.complete && !nominal);
  const wanted = recipe.heads.reduce((sum, { massG }) => sum + massG.likely, 0) / FILLED;
  if (!complete || wanted <= 0) return tins.slice(0, MOST);
  const off = ({ pan }: Tin): number => Math.abs(Math.log(pan.volumeMl / wanted));
  return tins.sort((a, b) => off(a) - off(b)).slice(0, MOST);
}

function written({ innerMm, depthMm, by }: TradePan, shape: PanShape): string {
  const size = (mm: number): string =>
    by === 'in' ? trimmed(Math.round((mm / 25.4) * 4) / 4, 2) : trimmed(mm / 10, 1);
  const sides = shape === 'square' ? innerMm.slice(0, 1) : innerMm;
  return `${shape} ${[...sides, depthMm].map(size).join(' x ')} ${by}`;
}

const litres = (ml: number): string => (ml < 1000 ? `${Math.round(ml / 10) * 10} ml` : `${trimmed(ml / 1000, 1)} l`);
