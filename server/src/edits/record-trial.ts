/**
 * Knows how a trial is started in a file: its date, the lines worth measuring in this recipe, and the fingerprint of what is tested.
 * Refuses to know what day it is, or what was measured: each figure is a blank, with what is to be expected beside it.
 */

import type { Document } from '../notation/document.ts';
import type { DurationNode, Span } from '../notation/tree.ts';
import type { Event } from '../prose/event.ts';
import { type NamedVerb, verbNamed } from '../prose/verb-named.ts';
import type { Bake } from '../recipe/baking/bakes.ts';
import { ovenTimes } from '../recipe/baking/oven-time.ts';
import { rangeText } from '../recipe/baking/said.ts';
import { isBaked } from '../recipe/journey/deeds.ts';
import { durationOf, heatsOf, isOfCooling, timesOf } from '../recipe/journey/figures.ts';
import type { Part, Recipe, Step } from '../recipe/model.ts';
import { fingerprint } from '../recipe/trials/trials.ts';
import { collapse } from '../recipe/words.ts';
import { replaceSpan, type TextEdit } from './text-edit.ts';

export interface TrialStarted {
  readonly edits: readonly TextEdit[];
  /** The line at which the new trial opens, once the edits are made. */
  readonly line: number;
}

/** Adds a trial at the end of the file, with blanks for what is to be measured. `date` is `2026-09-14`. */
export function recordTrial(document: Document, recipe: Recipe, date: string, by?: string): TrialStarted {
  const last = document.lines.length - 1;
  const end = document.lines[last]?.text.length ?? 0;
  const opening = by === undefined ? `trial ${date}` : `trial ${date} by ${collapse(by)}`;
  const lines = [opening, ...worthMeasuring(recipe), `  tested  ${fingerprint(recipe)}`, VERDICT];
  const open = document.lines[last]?.text.trim() === '';
  const gap = open ? (document.lines[last - 1]?.text.trim() === '' || last === 0 ? '' : '\n') : '\n\n';
  const text = `${gap}${lines.join('\n')}\n`;
  const line = last + (gap.match(/\n/g)?.length ?? 0);
  return { edits: [replaceSpan(last, { start: end, end }, text)], line };
}

/** Nobody has judged it yet: until then it proves nothing to a reader. */
const VERDICT = '  # verdict keep, change or reject: write it once it is tasted';

/** The longest time in the oven or on the stove, and the last temperature promised in the food. */
function worthMeasuring(recipe: Recipe): string[] {
  const heated = recipe.parts.flatMap((part) => part.steps.flatMap((step) => heatedIn(part, step)));
  const longest = heated.reduce<Heated | undefined>(
    (a, b) => (a === undefined || (b.node?.highMin ?? 0) >= (a.node?.highMin ?? 0) ? b : a),
    undefined,
  );
  const estimated = ovenTimes(recipe).flatMap((time) => (time.is === 'estimated' ? [time] : []));
  const took = longest ?? estimated.flatMap(({ bake }) => untimed(bake) ?? [])[0];
  const promised = recipe.parts.flatMap((part) => part.steps.flatMap((step) => promisedIn(part, step))).at(-1);
  const rows: string[] = [];
  if (took !== undefined) {
    const estimate = estimated.find(({ bake }) => bake.event === took.event);
    const hints = expected(took.said, estimate && rangeText(estimate));
    rows.push(`  took    … ${unitOf(took.node)} to ${took.verb.base}${inOven(recipe, took)}${hints}`);
  }
  if (promised !== undefined) rows.push(`  reached … ${promised.scale} in the centre${expected(promised.said)}`);
  return rows;
}

/** A time by the heat, with its verb. */
interface Heated {
  readonly event: Event;
  readonly verb: NamedVerb;
  readonly node: DurationNode | undefined;
  readonly said: string | undefined;
}

function heatedIn(part: Part, step: Step): readonly Heated[] {
  const text = lineOf(part, step.line);
  return timesOf(step).flatMap(({ said, event }): readonly Heated[] => {
    const node = event.act === 'heat' ? durationOf(step, said) : undefined;
    const verb = node && event.verb && verbNamed(textAt(text, event.verb));
    return node === undefined || verb === undefined ? [] : [{ event, verb, node, said: textAt(text, node) }];
  });
}

/** A bake of which no time is said. */
function untimed({ part, line, event }: Bake): Heated | undefined {
  const verb = event.verb && verbNamed(textAt(lineOf(part, line), event.verb));
  return verb && { event, verb, node: undefined, said: undefined };
}

function promisedIn(part: Part, step: Step): readonly { readonly said: string; readonly scale: string }[] {
  return heatsOf(step).flatMap((figure) => {
    const [node] = figure.of === 'food' && !isOfCooling(figure) ? figure.written : [];
    return node === undefined
      ? []
      : [{ said: textAt(lineOf(part, step.line), node), scale: node.unit === 'F' ? 'F' : 'C' }];
  });
}

const unitOf = (node: DurationNode | undefined): string =>
  node !== undefined && node.lowMin >= LONG_MIN ? 'h' : 'min';
/** What takes longer is told in hours. */
const LONG_MIN = 180;

/** Which oven of the house, where it has one. */
function inOven({ world }: Recipe, { event }: Heated): string {
  const [only, ...others] = Object.keys(world.ovens ?? {});
  return isBaked(event) && only !== undefined && others.length === 0 ? ` in ${only}` : '';
}

/** What is to be confirmed, or not. */
function expected(said: string | undefined, likely?: string): string {
  const words = [...(said === undefined ? [] : [`the steps say ${said}`]), ...(likely === undefined ? [] : [likely])];
  return words.length === 0 ? '' : `  # ${words.join('; ')}`;
}

const lineOf = ({ head }: Part, line: number): string => head.source.lines[line]?.text ?? '';
const textAt = (text: string, { start, end }: Span): string => text.slice(start, end);
