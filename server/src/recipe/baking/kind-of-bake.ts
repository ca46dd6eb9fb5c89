/**
 * Knows as what a thing heats in the oven, by what it is made of and what it lies in, or why nobody can say how long it takes.
 * Refuses to know how long that is.
 */
import { type HeatKind, heatKinds } from '../../heat/kinds.ts';
import type { DarkPan } from '../../heat/pan-materials.ts';
import type { Tells } from '../../prose/event.ts';
import { WAS } from '../journey/bodies.ts';
import { nameSpeaksOf, speaksOf, speaksOfSeveral } from '../journey/deeds.ts';
import { foodOf } from '../list/stand-in.ts';
import type { PanSize } from '../measures/pan-size.ts';
import type { PartHead, Recipe } from '../model.ts';
import type { Bake } from './bakes.ts';
import { cutOf, thicknessOf } from './cuts.ts';
import { type Filling, isPastry, type MadeOf } from './made-of.ts';
import type { TinShape } from './tins.ts';

/** Why there is no estimate: `dry` when it is dry or brown, and not when it is hot. */
export type Declined =
  | 'dry'
  | 'tender'
  | 'small'
  | 'blind'
  | 'frozen'
  | 'stuffed'
  | 'cut'
  | 'contents'
  | 'no weight'
  | 'no pan'
  | 'no heat'
  | 'unknown sort'
  | 'overfull'
  | 'out of range';

export interface Sorted {
  readonly kind: HeatKind;
  /** Of a joint, by its diameter. */
  readonly length: number;
}

export interface InOven {
  readonly recipe: Recipe;
  readonly bake: Bake;
  /** What a step before has cut up, `PART.INGREDIENT`. */
  readonly cutUp: ReadonlySet<string>;
  readonly made: MadeOf;
  readonly tin: { readonly size: PanSize; readonly shape: TinShape } | undefined;
  /** Of what the tin is, where that takes more heat. */
  readonly pan: DarkPan | undefined;
  /** Pieces on a tray, in hollows or cups, or joints beside each other. */
  readonly pieces: number;
}

/** Shares of the mass. */
const FLESHY = 0.55;
const FLOURY = 0.15;
const JUICY_PIE = 0.45;
const BRAISED = 0.15;
const MOSTLY = 0.6;
/** kg of a piece of flesh that is roasted as a joint, and of a roll and a loaf of dough. */
const JOINT_KG = 0.8;
const ROLL_KG = 0.15;
const MOST_POTATO_KG = 0.6;
/** cm of a tin that is a sheet. */
const SHEET_CM2 = 800;

/** Done when they are dry and brown. */
const DRY_KINDS: ReadonlySet<string> = new Set([
  'choux',
  'meringue',
  'puff pastry',
  'cookie',
  'crumble',
  'granola',
  'shortcrust',
  'sweet paste',
  'popover batter',
  'flatbread',
  'pizza dough',
]);
const DRY_SIGNS: ReadonlySet<Tells | undefined> = new Set<Tells>(['dry', 'stage']);

export function sortOf(inOven: InOven): Sorted | Declined {
  const { bake, made, tin, pieces } = inOven;
  const { body, until, event } = bake;
  if (body === undefined || event.act !== 'heat') return 'contents';
  if (body.band === 'frozen') return 'frozen';
  if (body.members.some(({ state }) => (state.was & WAS.stuffed) !== 0)) return 'stuffed';
  const names = kindNames(inOven);
  if (isWithoutFlour(inOven)) return 'contents';
  if (onlyPastry(made)) return 'blind';
  const dry = made.fillings.filter(({ head: { kind } }) => DRY_KINDS.has(kind?.name ?? ''));
  if (dry.reduce((sum, { grams }) => sum + grams, 0) > MOSTLY * made.grams) return 'dry';
  if (until.some(({ is }) => DRY_SIGNS.has(is))) return 'dry';
  if (fleshIn(made).reduce((sum, { grams }) => sum + grams, 0) > FLESHY * made.grams) return fleshSort(inOven);
  const share = (family: Parameters<MadeOf['of']>[0]) => made.of(family) / made.grams;
  const potato = made.fillings.every(({ ingredient }) => foodOf(ingredient)?.class === 'vegetable');
  if (potato) return vegetableSort(inOven);
  if ((share('pulse') > 0 || until.some(({ is }) => is === 'tender')) && share('flour') < FLOURY) return 'tender';
  const flour = share('flour');
  if (flour > FLOURY && isFlat(inOven)) return 'dry';
  if (share('yeast') > 0 && flour > FLOURY && pieces === 1 && tin === undefined && isInShares(inOven)) return 'cut';
  if (share('yeast') > 0 && flour > FLOURY) return sorted(made.grams / 1000 / pieces < ROLL_KG ? 'roll' : 'bread');
  if (bake.inBath && share('egg') > 0 && flour < FLOURY) return tin === undefined ? 'no pan' : sorted('custard cup');
  const pastry = hasPastry(made);
  if (flour > FLOURY && !pastry) {
    if (names.some((name) => SCONES.has(name))) return sorted('scone');
    if (tin === undefined) return pieces > 1 ? 'dry' : 'no pan';
    if (tin.size.count > 1 && tin.shape.areaM2 < HOLLOW_M2) return sorted('small cake');
    if (tin.shape.isLoaf) return sorted('loaf cake');
    if (made.makeup.water < BAR_WATER) return sorted('bar');
    return sorted(tin.shape.areaM2 * 1e4 > SHEET_CM2 ? 'sheet cake' : 'layer cake');
  }
  if (made.makeup.water < BAR_WATER && flour > 0 && share('sugar') > FLOURY && !pastry)
    return tin === undefined ? 'no pan' : sorted('bar');
  if (names.includes('cheese filling')) return tin === undefined ? 'no pan' : sorted('cheesecake');
  if (pastry && share('juicy') > JUICY_PIE && share('egg') < 0.05)
    return tin === undefined ? 'no pan' : sorted('fruit pie');
  if (share('egg') > 0.05 && (pastry || share('milk') > 0.1 || share('egg') > 0.1))
    return tin === undefined ? 'no pan' : sorted('custard tart');
  return tin === undefined ? 'no pan' : sorted('casserole');
}

const SCONES: ReadonlySet<string> = new Set(['scone', 'US biscuit']);
const HOLLOW_M2 = 0.006;
/** Of the mass, water in what is baked as a bar. */
const BAR_WATER = 0.22;

const hasPastry = ({ fillings }: MadeOf): boolean => fillings.some(isPastry);

export const onlyPastry = ({ fillings, grams }: MadeOf): boolean =>
  fillings.reduce((sum, each) => (isPastry(each) ? sum + each.grams : sum), 0) > 0.9 * grams;

function sorted(name: string, length?: number): Sorted | Declined {
  const kind = heatKinds().get(name);
  return kind === undefined ? 'unknown sort' : { kind, length: length ?? kind.length };
}

/** Buns or rolls, and nobody says how many. */
const isInShares = ({ bake: { part }, recipe }: InOven): boolean =>
  nameSpeaksOf(recipe.name, 'share') || part.steps.some((step) => speaksOfSeveral(step, 'share'));

/** `Pizza`, `focaccia`: by its name, or in its steps. */
export const isFlat = ({ bake: { part }, recipe }: Pick<InOven, 'bake' | 'recipe'>): boolean =>
  nameSpeaksOf(recipe.name, 'flat') || part.steps.some((step) => speaksOf(step, 'flat'));

/** What is of a kind that is made of flour has lost it on the way: nobody knows what lies there. */
const isWithoutFlour = ({ bake: { part }, made }: InOven): boolean =>
  part.head.kind?.needs?.some((row) => row.length === 1 && row[0] === 'flour') === true &&
  part.head.flourG.low > 0 &&
  made.of('flour') === 0;

/** The kinds of the part and of those that it takes in. */
const kindNames = ({ bake: { part } }: InOven): readonly string[] =>
  [part.head, ...part.includes].flatMap(({ kind }: PartHead) => kind?.name ?? []);

function fleshSort({ bake, cutUp, made, pieces, tin }: InOven): Sorted | Declined {
  const flesh = fleshIn(made);
  const minced = made.of('mince') > 0 || isMinced(bake, new Set(flesh.map(({ ref }) => ref)));
  const [main] = flesh.toSorted((a, b) => b.grams - a.grams);
  if (main === undefined) return 'contents';
  if (minced) {
    if (bake.inBath) return tin === undefined ? 'no pan' : sorted('custard cup');
    return made.grams / 1000 / pieces < JOINT_KG ? 'small' : sorted('meat loaf');
  }
  if (made.of('liquid') > BRAISED * made.grams || bake.until.some(({ is }) => is === 'tender')) return 'tender';
  if (flesh.length > 1) return 'cut';
  if (thicknessOf(main.ingredient) !== undefined) return sorted('thick piece');
  if (cutUp.has(main.ref)) return 'cut';
  const food = foodOf(main.ingredient);
  const cut = cutOf(main.ingredient);
  const kg = main.grams / 1000 / pieces;
  if (food?.class === 'fish' || food?.class === 'shellfish' || cut?.is === 'small' || kg < JOINT_KG) return 'small';
  if (food?.class === 'poultry') return cut === undefined ? sorted('bird') : 'small';
  return sorted('joint', cut?.length);
}

const fleshIn = ({ fillings }: MadeOf): readonly Filling[] =>
  fillings.filter(({ ingredient }) => FLESH_CLASSES.has(foodOf(ingredient)?.class ?? ''));
const FLESH_CLASSES: ReadonlySet<string> = new Set([
  'meat',
  'ground meat',
  'poultry',
  'ground poultry',
  'fish',
  'shellfish',
  'cured meat',
]);

const isMinced = ({ body }: Bake, flesh: ReadonlySet<string>): boolean =>
  (body?.members ?? []).some(({ of, state }) => state.cut === 'minced' && flesh.has(`${of.part}.${of.ingredient}`));

/** Whole potatoes, and nothing else that grows. */
function vegetableSort({ made, cutUp, pieces }: InOven): Sorted | Declined {
  const [only, ...others] = made.fillings;
  if (only === undefined || others.length > 0) return 'cut';
  if (cutUp.has(only.ref) || cutOf(only.ingredient)?.is === 'small') return 'cut';
  // A kilogram of them is no one potato.
  if (made.grams / 1000 / pieces > MOST_POTATO_KG) return 'small';
  return foodOf(only.ingredient)?.name.includes('potato') ? sorted('potato') : 'tender';
}
