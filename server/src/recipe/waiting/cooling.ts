/**
 * Knows when what stands hot in the cold passes the limits of cooling, by its depth where that is said, by its tin, or as a pot by its mass.
 * Refuses to know how fast it must.
 */
import type { Cooled, Cooling } from '../../heat/cooling.ts';
import { densityAt } from '../../heat/material.ts';
import { type ColdPlace, coldPlaces } from '../../heat/places.ts';
import type { PlaceKind, VesselKind } from '../../prose/event.ts';
import { depthSaid } from '../../prose/thickness.ts';
import { type MadeOf, madeOf } from '../baking/made-of.ts';
import { tinShape } from '../baking/tins.ts';
import type { Stay } from '../journey/bodies.ts';
import { isBaked } from '../journey/deeds.ts';
import { panSize } from '../measures/pan-size.ts';
import type { Recipe } from '../model.ts';
import { cooledOnce } from './cooled-once.ts';

export interface CoolingStay {
  readonly kg: number;
  /** m */
  readonly depth: number;
  /** What the depth is from. */
  readonly by: 'said' | 'tin' | 'pot';
  readonly place: ColdPlace;
  /** °C from which it is counted. */
  readonly fromC: number;
  readonly passes: readonly { readonly celsius: number; readonly cooled: Cooled }[];
}

/** °C: from here, and to these (Food Code 2022, 3-501.14). */
const FROM_C = 57;
const TO_C = [21, 5] as const;

/** Water in what fills a pot from wall to wall, and what flows in it, as shares. */
const WET = 0.6;
const LIQUID = 0.25;
const LEAST_KG = 0.2;

/** Undefined where it is not hot, nobody says that it is cold there, or neither its depth nor its mass is known. */
export function coolingOf(recipe: Recipe, stay: Stay): CoolingStay | undefined {
  const { body, lies } = stay;
  const place = lies.sure === 'said' ? placeOf(stay) : undefined;
  if (body.band !== 'hot' || place === undefined || DIVIDED_IN.has(body.vessel ?? 'open')) return undefined;
  const made = madeOf(recipe, body);
  if (made === undefined || made.grams < LEAST_KG * 1000) return undefined;
  const lying = lyingOf(recipe, stay, made);
  if (lying === undefined) return undefined;
  const { depth, by } = lying;
  const thin = by === 'pot' && made.of('liquid') >= LIQUID * made.grams;
  const cooling: Cooling = {
    makeup: made.makeup,
    depth,
    ...(by === 'pot' && { across: depth }),
    startC: FROM_C,
    place,
    covered: body.shut !== 'open',
    thin,
  };
  const passes = TO_C.flatMap((celsius) => {
    const cooled = cooledOnce(cooling, celsius);
    return cooled === undefined ? [] : [{ celsius, cooled }];
  });
  return passes.length === 0 ? undefined : { kg: made.grams / 1000, depth, by, place, fromC: FROM_C, passes };
}

/** Each piece is its own size there. */
const DIVIDED_IN: ReadonlySet<VesselKind> = new Set<VesselKind>(['jar', 'airtight', 'wrap', 'tool']);

const PLACES: Partial<Record<PlaceKind, string>> = { cold: 'refrigerator', frozen: 'freezer' };

function placeOf({ by: { event }, lies }: Stay): ColdPlace | undefined {
  const name = event.medium?.is === 'ice' ? 'ice bath' : lies.place && PLACES[lies.place];
  return name === undefined ? undefined : coldPlaces().get(name);
}

function lyingOf(recipe: Recipe, stay: Stay, made: MadeOf): Pick<CoolingStay, 'depth' | 'by'> | undefined {
  const part = recipe.parts[stay.part];
  const step = part?.steps.find(({ line }) => line === stay.line);
  const said = step && depthSaid(step.sentence);
  if (said !== undefined) return { depth: said, by: 'said' };
  const volume = made.grams / 1000 / densityAt(made.makeup, 20);
  const isFromOven = stay.body.members.some(
    ({ state: { heatedBy } }) => heatedBy !== undefined && isBaked(heatedBy.event),
  );
  const node = part?.head.pan?.node ?? recipe.pan?.node;
  const size = node && panSize(node, recipe.world.measures);
  const shape = node && size && tinShape(node, size);
  if (isFromOven && size !== undefined && shape !== undefined)
    return { depth: volume / shape.areaM2 / size.count, by: 'tin' };
  // What is solid lies as it likes.
  if (isFromOven || made.makeup.water < WET || made.of('liquid') < LIQUID * made.grams) return undefined;
  return { depth: Math.cbrt((4 * volume) / Math.PI), by: 'pot' };
}
