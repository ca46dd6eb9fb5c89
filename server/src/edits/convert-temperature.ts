/**
 * Knows how a heat is written on another scale: Celsius, Fahrenheit, gas marks, a still oven and one with a fan; all that it is written in
 * together.
 * Refuses to know sentences: what a temperature is of comes with it.
 */

import { celsiusOf } from '../notation/celsius.ts';
import type { TemperatureNode } from '../notation/tree.ts';
import { FAN_LOWER_C, FAN_LOWER_F } from '../recipe/dials.ts';
import { degreesIn, type TemperatureScale } from '../recipe/journey/degrees.ts';
import type { HeatFigure } from '../recipe/journey/figures.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export type Oven = 'fan' | 'still';

export interface Wish {
  readonly scale?: TemperatureScale;
  readonly oven?: Oven;
}

export interface WrittenTemperature {
  readonly edit: TextEdit;
  readonly before: string;
  readonly after: string;
}

/** A heat as far as converting it asks. */
export type HeatToConvert = Pick<HeatFigure, 'start' | 'end' | 'written' | 'of' | 'bound' | 'isHalf'>;

/** The oven of a recipe's head. */
export const ovenHeat = (node: TemperatureNode): HeatToConvert => ({
  start: node.start,
  end: node.end,
  written: [node],
  of: 'oven',
  bound: 'is',
  isHalf: false,
});

/**
 * The heat on a scale, for a kind of oven; undefined where nothing changes, or where a gas mark cannot say it.
 * Ovens land on what their dials show; a temperature in the food or around it is to the degree, never on the unsafe side. What is written on
 * the scale already stays as it is, and what says the same again is left out: `180C/160C fan/gas 4` is `350 F/325 F fan`.
 */
export function convertTemperature(
  line: number,
  text: string,
  heat: HeatToConvert,
  wish: Wish,
): WrittenTemperature | undefined {
  const { written, of, bound, isHalf } = heat;
  // Of what scale it is, nobody said; of a change there is no dial.
  if (isHalf || bound === 'change') return undefined;
  const said = written.filter(({ unit }) => unit !== 'unsaid');
  if (of !== 'oven' && (wish.scale === 'gas' || wish.scale === undefined)) return undefined;
  const targets = said.map((node) => targetOf(node, of, wish));
  if (targets.length === 0 || targets.every(({ same }) => same)) return undefined;
  const texts: string[] = [];
  const seen = new Set<string>();
  for (const { scale, fan } of targets) {
    const key = `${scale} ${fan}`;
    if (seen.has(key)) continue;
    seen.add(key);
    const own = targets.find((each) => each.same && each.scale === scale && each.fan === fan);
    const node = own?.node ?? targets.find((each) => each.scale === scale && each.fan === fan)?.node;
    const shown =
      node && (own === undefined ? writtenAs(text, node, of, scale, fan) : text.slice(node.start, node.end));
    if (shown === undefined) return undefined;
    texts.push(shown);
  }
  const after = texts.join('/');
  const before = text.slice(heat.start, heat.end);
  return before === after ? undefined : { edit: replaceSpan(line, heat, after), before, after };
}

interface Target {
  readonly node: TemperatureNode;
  readonly scale: TemperatureScale;
  readonly fan: boolean;
  /** It is written so. */
  readonly same: boolean;
}

function targetOf(node: TemperatureNode, of: HeatFigure['of'], wish: Wish): Target {
  const unit = node.unit === 'unsaid' ? 'C' : node.unit;
  const fan = wish.oven === undefined ? node.fan && wish.scale !== 'gas' : wish.oven === 'fan' && of === 'oven';
  const scale: TemperatureScale = wish.scale ?? (unit === 'gas' && fan ? 'C' : unit);
  return { node, scale, fan, same: scale === unit && fan === node.fan };
}

function writtenAs(
  text: string,
  node: TemperatureNode,
  of: HeatFigure['of'],
  scale: TemperatureScale,
  fan: boolean,
): string | undefined {
  const lower = node.unit === 'F' ? FAN_LOWER_F / 1.8 : FAN_LOWER_C;
  const shift = of === 'oven' ? (node.fan ? lower : 0) - (fan ? lower : 0) : 0;
  const { low, high } = celsiusOf(node);
  const ends = (node.high === undefined ? [low] : [low, high]).map((c) => degreesIn(c + shift, scale, of));
  if (ends.some((e) => e === undefined)) return undefined;
  const between = node.high === undefined ? '' : separator(text.slice(node.low.end, node.high.start));
  const degree = /°/.test(text.slice(node.start, node.end)) ? '°' : '';
  const numbers = ends.join(between);
  const about = node.about ? 'about ' : '';
  return scale === 'gas' ? `${about}gas ${numbers}` : `${about}${numbers} ${degree}${scale}${fan ? ' fan' : ''}`;
}

const separator = (written: string): string => (/to/.test(written) ? ' to ' : '-');
