/**
 * Knows where hot liquid is shut in the jug of a machine and whirled: it turns to steam all at once, and throws the lid off.
 * Refuses to know what else burns.
 */
import type { Act } from '../../prose/event.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import type { FoldedStep } from '../../recipe/journey/folded-step.ts';
import { speaks, within } from '../../recipe/things-said.ts';
import type { At } from './burning-step.ts';
import { mixtureIn } from './spoils.ts';
import type { Level } from './verdict.ts';

/** Of what is poured from a blender, water by weight (judgement). */
const LIQUID = 0.6;
const COOLS: ReadonlySet<Act> = new Set(['cool', 'stay', 'freeze']);
/** A lid goes on before, or in the same breath. */
const NEXT = 40;

/**
 * A machine is named, or a jug that runs at a speed. It is as grave as it is full, or as it boils and is shut; only shut, a warning;
 * and one that merely blends is nobody's business.
 */
export function whirledShut(at: At, { event }: BoundEvent): Level | undefined {
  const { step, things } = at;
  const isMachine = speaks(things, 'blender');
  if (speaks(things, 'stick blender', 'vent') || (!isMachine && !speaks(things, 'jug'))) return undefined;
  const own = within(things, event);
  const isFull = speaks(things, 'brim');
  const isWhirled =
    event.act === 'combine'
      ? isMachine || (speaks(own, 'whirl') && event.craft === undefined)
      : speaks(own, 'whirl') ||
        // `Ladle it into the blender up to the rim, and give it full power`
        (event.act === 'put' &&
          isMachine &&
          isFull &&
          speaks(own, 'blender') &&
          !step.events.some(({ event: other }) => other.act === 'combine'));
  if (!isWhirled) return undefined;
  const isSaidHot = speaks(things, 'boiling');
  if (!isHotLiquid(at, event.start, isSaidHot)) return undefined;
  const isClosed = step.events.some(
    ({ event: other }) => other.act === 'close' && other.said === 'yes' && other.start < event.end + NEXT,
  );
  const isShut = isClosed || speaks(things, 'shut');
  const boils = isSaidHot || step.events.some(({ event: other }) => other.act === 'heat' && other.as === 'told');
  if (isMachine ? isFull || (isShut && boils) : isShut && (isFull || boils)) return 'error';
  return isShut ? 'warning' : undefined;
}

/** What is in hand is mostly water, and hot by what was done or said. */
function isHotLiquid({ journey, step, place }: At, start: number, isSaidHot: boolean): boolean {
  const before = journey.steps[place - 1];
  const cools = step.events.some(({ event }) => COOLS.has(event.act) && event.start < start);
  const isIn = ({ bodies, focus }: FoldedStep['after']): boolean =>
    bodies.some((body) => {
      if (!isSaidHot && (!focus.includes(body.id) || body.band !== 'hot')) return false;
      const { massG, waterG } = mixtureIn(journey, body);
      return waterG >= massG * LIQUID;
    });
  return isIn(step.after) || (!cools && before !== undefined && isIn(before.after));
}
