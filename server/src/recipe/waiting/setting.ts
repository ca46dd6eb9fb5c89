/** Knows how long what must set in the cold takes to, by `data/heat/sets.tsv`, its mass and how it lies. Refuses to judge a written time. */
import text from '../../../data/heat/sets.tsv';
import { bookIdOf } from '../../food/food.ts';
import type { Cooling } from '../../heat/cooling.ts';
import { densityAt } from '../../heat/material.ts';
import { type ColdPlace, coldPlaces } from '../../heat/places.ts';
import { once } from '../../measure/once.ts';
import type { Range } from '../../measure/quantity.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import type { PlaceKind } from '../../prose/event.ts';
import { depthSaid } from '../../prose/thickness.ts';
import { type MadeOf, madeOf } from '../baking/made-of.ts';
import { piecesIn } from '../baking/pieces.ts';
import { tinShape } from '../baking/tins.ts';
import type { Stay } from '../journey/bodies.ts';
import { onceWithParts } from '../journey/once-with-parts.ts';
import { panSize } from '../measures/pan-size.ts';
import type { Recipe } from '../model.ts';
import { cooledOnce } from './cooled-once.ts';

/** How it lies where nothing else is said: each in a mould, or all of it in a tin, a bowl, a disc or a block. */
type Lies = 'mould' | 'tin' | 'bowl' | 'disc' | 'block';

interface Sort {
  readonly name: string;
  readonly foods: ReadonlySet<string>;
  readonly kinds: ReadonlySet<string>;
  readonly lies: Lies;
  readonly fromC: number;
  readonly toC: number;
  /** Minutes after its middle is so cold. */
  readonly more: number;
  readonly place: PlaceKind | undefined;
  readonly porosity: number;
  readonly freezesC: number;
}

export interface SettingStay {
  readonly sort: string;
  readonly lies: Lies;
  /** Of one. */
  readonly kg: number;
  /** m */
  readonly depth: number;
  readonly place: ColdPlace;
  readonly fromC: number;
  readonly toC: number;
  readonly more: number;
  /** Minutes until it is set, the last ones with it. */
  readonly likely: number;
  readonly minutes: Range;
}

/** How deep, by how wide: cups of 150 ml, a bowl, a disc of dough, a block of ice cream (judgement). */
const DEPTHS: Readonly<Record<Exclude<Lies, 'tin'>, number>> = { mould: 0.67, bowl: 0.4, disc: 1 / 6, block: 0.67 };

const PLACES: Partial<Record<PlaceKind, string>> = { cold: 'refrigerator', frozen: 'freezer' };

const isLies = (word: string | undefined): word is Lies => word === 'tin' || (word !== undefined && word in DEPTHS);

const SORTS = once((): readonly Sort[] =>
  rowsIn(text).map(([name = '', foods, kinds, lies, from, to, more, place, porosity, freezes]) => ({
    name,
    foods: new Set(wordsIn(foods ?? '')),
    kinds: new Set(wordsIn(kinds ?? '')),
    lies: isLies(lies) ? lies : 'tin',
    fromC: Number(from),
    toC: Number(to),
    more: Number(more),
    place: place === 'cold' || place === 'frozen' ? place : undefined,
    porosity: Number(porosity),
    freezesC: Number(freezes),
  })),
);

/** Whether somebody says that it is cold where it lies. */
export const liesCold = ({ lies: { sure, place } }: Stay): boolean =>
  sure === 'said' && place !== undefined && place in PLACES;

/** Undefined where nothing in it sets by the cold, nobody says that it is cold there, or neither a depth nor a mass is known. */
export const settingOf = (recipe: Recipe, stay: Stay): SettingStay | undefined =>
  liesCold(stay) ? workedOut(recipe, stay, undefined) : undefined;

const workedOut = onceWithParts(
  ({ part, body }: Stay) => [part, ...body.members.map(({ of }) => of.part)],
  (recipe, stay) => work(recipe, stay),
);

function work(recipe: Recipe, stay: Stay): SettingStay | undefined {
  const { lies, body } = stay;
  const name = lies.place && PLACES[lies.place];
  const place = name === undefined ? undefined : coldPlaces().get(name);
  if (place === undefined || (body.band === 'frozen' && lies.place !== 'frozen')) return undefined;
  const made = madeOf(recipe, body);
  const sort = made && SORTS().find((each) => each.place === lies.place && isOf(each, made));
  if (made === undefined || sort === undefined) return undefined;
  const volume = made.grams / 1000 / densityAt(made.makeup, 20) / (1 - sort.porosity);
  const lying = lyingOf(recipe, stay, sort, volume);
  if (lying === undefined) return undefined;
  const { depth, across, pieces } = lying;
  const cooling: Cooling = {
    makeup: made.makeup,
    porosity: sort.porosity,
    freezesC: sort.freezesC,
    depth,
    ...(across !== undefined && { across }),
    startC: sort.fromC,
    place,
    covered: false,
    thin: false,
  };
  const cooled = cooledOnce(cooling, sort.toC);
  return (
    cooled && {
      sort: sort.name,
      lies: sort.lies,
      kg: made.grams / 1000 / pieces,
      depth,
      place,
      fromC: sort.fromC,
      toC: sort.toC,
      more: sort.more,
      likely: cooled.likely + sort.more,
      minutes: { low: cooled.range.low + sort.more, high: cooled.range.high + sort.more },
    }
  );
}

/** What makes it set is in it, or most of it is of a part of such a kind. */
function isOf({ foods, kinds }: Sort, { fillings, grams }: MadeOf): boolean {
  if (fillings.some(({ ingredient: { food } }) => food !== undefined && foods.has(bookIdOf(food)))) return true;
  const own = fillings.filter(({ head: { kind } }) => kind !== undefined && kinds.has(kind.name));
  return own.reduce((sum, each) => sum + each.grams, 0) > MOST * grams;
}
const MOST = 0.7;

/** m³ (judgement: at the quickest). */
const LARGEST_M3 = 0.001;

interface LiesSo {
  readonly depth: number;
  /** Where it gives heat off at its sides too. */
  readonly across?: number;
  readonly pieces: number;
}

function lyingOf(recipe: Recipe, { part: at, line }: Stay, { lies }: Sort, volume: number): LiesSo | undefined {
  const part = recipe.parts[at];
  const step = part?.steps.find((each) => each.line === line);
  const said = step && depthSaid(step.sentence);
  if (part === undefined) return undefined;
  if (said !== undefined) return { depth: said, pieces: 1 };
  const node = part.head.pan?.node ?? recipe.pan?.node;
  const size = node && panSize(node, recipe.world.measures);
  const shape = node && size && tinShape(node, size);
  const isInTin = lies === 'tin' || lies === 'mould';
  if (isInTin && size !== undefined && shape !== undefined)
    return { depth: volume / shape.areaM2 / size.count, pieces: size.count };
  // More than a litre stands in several tubs, bowls or discs.
  const pieces = isInTin ? piecesIn(recipe, part) : Math.ceil(volume / LARGEST_M3);
  if (pieces === undefined || lies === 'tin') return undefined;
  const share = DEPTHS[lies];
  const across = Math.cbrt((4 * volume) / pieces / Math.PI / share);
  return { depth: share * across, across, pieces };
}
