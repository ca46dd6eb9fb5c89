/**
 * Knows how a difference between two recipes is said, one change a line, as a cook would say it.
 * Refuses to know how it was found.
 */
import { gramsText, trimmed } from '../../measure/number-text.ts';
import { middle } from '../../measure/quantity.ts';
import { measureText } from '../../recipe/measures/measure-text.ts';
import { round } from '../rounded.ts';
import type { Change, RecipeDiff } from './change.ts';

/** The difference as text: the batch first, then the changes by part. */
export function diffText(diff: RecipeDiff): string {
  const lines = [...headline(diff)];
  const measured = diff.changes.filter((c) => c.kind === 'measured');
  if (measured.length > 3)
    lines.push(`written in other measures, the same weight: ${measured.map((c) => c.name).join(', ')}`);
  const told = diff.changes.filter((c) => c.kind !== 'measured' || measured.length <= 3);
  let part: string | undefined;
  for (const change of told) {
    const of = 'part' in change && !change.kind.startsWith('part-') ? change.part : '';
    if (of !== part && of !== '') lines.push(`${of}:`);
    part = of;
    lines.push(of === '' ? changeText(change) : `  ${changeText(change)}`);
  }
  return lines.map((line) => `${line}\n`).join('');
}

/** The same, as JSON: every change with its figures and its words. */
export function diffJson(diff: RecipeDiff, names: { readonly from: string; readonly to: string }): string {
  const { batch, yield: made = null, changes } = diff;
  const worded = changes.map((change) => ({ ...rounded(change), text: changeText(change) }));
  return `${JSON.stringify({ version: 1, ...names, batch: round(batch, 4), yield: made, changes: worded }, null, 2)}\n`;
}

function headline({ batch, yield: made, changes }: RecipeDiff): string[] {
  if (batch === 1) return changes.length === 0 ? ['nothing that a cook would do otherwise'] : [];
  const size = `${made === undefined ? '' : `${fromTo(made.from, made.to)}, `}${trimmed(batch, 2)} times the batch`;
  return [
    changes.length === 0 ? `the same recipe at another size: ${size}` : `another size: ${size}; set against that:`,
  ];
}

/** One change in words, without the name of its part. */
function changeText(change: Change): string {
  switch (change.kind) {
    case 'field':
      return fieldText(change.field, change.from, change.to);
    case 'yield':
      return yieldText(change);
    case 'part-added':
      return `${change.part === '' ? 'all new' : `new part ${change.part}`}${change.of.length === 0 ? '' : `: ${change.of.join(', ')}`}`;
    case 'part-dropped':
      return change.part === '' ? `nothing left of ${change.of.join(', ')}` : `no part ${change.part} any more`;
    case 'part-renamed':
      return `the part ${orNameless(change.from)} is now ${orNameless(change.to)}`;
    case 'part-kind':
      return change.to === ''
        ? `${orNameless(change.part)} is no longer said to be ${change.from}`
        : `${orNameless(change.part)} is ${change.to} now${change.from === '' ? '' : `, not ${change.from}`}`;
    case 'part-pan':
      return fieldText(`pan of ${orNameless(change.part)}`, change.from, change.to);
    case 'part-moved':
      return `${orNameless(change.part)} comes ${ordinal(change.to)} now, not ${ordinal(change.from)}`;
    case 'amount':
      return amountText(change);
    case 'measured':
      return `${change.name} written as ${change.to}, not ${change.from}: the same weight`;
    case 'ingredient-added':
      return `new: ${join(change.amount, change.name)}`;
    case 'ingredient-dropped':
      return `no ${change.name} any more (${change.amount === '' ? 'no amount' : change.amount})`;
    case 'ingredient-swapped':
      return `${join(change.toAmount, change.to)} in the place of ${join(change.fromAmount, change.from)}`;
    case 'ingredient-moved':
      return `${change.name} goes into ${orNameless(change.to)}, not ${orNameless(change.from)}`;
    case 'preparation':
      return change.to === null
        ? `${change.name}: no longer ${change.from ?? ''}`
        : `${change.name}: ${change.to}${change.from === null ? '' : `, not ${change.from}`}`;
    case 'optional':
      return change.optional ? `${change.name} may be left out now` : `${change.name} may not be left out any more`;
    case 'measure':
      return measureChange(change);
    case 'time':
      return timeText(change);
    case 'temperature':
      return temperatureText(change);
    case 'portion':
      return `step ${change.step} takes ${change.to}, not ${change.from}`;
    case 'step-added':
      return `new step ${change.step}: ${change.text}`;
    case 'step-dropped':
      return `no longer, was step ${change.step}: ${change.text}`;
    case 'step-moved':
      return change.part === change.toPart
        ? `step ${change.from} is step ${change.to} now: ${change.text}`
        : `step ${change.from} went to ${orNameless(change.toPart)}, step ${change.to}: ${change.text}`;
    case 'step-reworded':
      return `step ${change.step} reads: ${change.to} (was: ${change.from})`;
    case 'total-time':
      return `${minutes(change.fromMin)} in all to ${minutes(change.toMin)}, as far as the steps say`;
    case 'trial-added':
      return `a trial more: ${change.trial}`;
    case 'trial-dropped':
      return `a trial less: ${change.trial}`;
    case 'accepts':
      return `${change.code} is accepted now, because ${change.reason}`;
    case 'accepts-no-more':
      return `${change.code} is no longer accepted (it was, because ${change.reason})`;
    case 'food-added':
      return `new food of the house: ${change.food}`;
    case 'food-dropped':
      return `no longer a food of the house: ${change.food}`;
    case 'food':
      return `${change.food}: ${change.to ?? `no longer ${change.from ?? ''}`}${change.to !== null && change.from !== null ? ` (was: ${change.from})` : ''}`;
  }
}

/** `hydration 31 % to 38 %`; where either is a range, `hydration 59 to 60 %, was 65 to 67 %`. */
function measureChange({ name, from, to }: Extract<Change, { kind: 'measure' }>): string {
  const [was, is] = [measureText(name, from.low, from.high), measureText(name, to.low, to.high)];
  return / to /.test(was + is) ? `${name} ${is}, was ${was}` : `${name} ${was} to ${is}`;
}

function fieldText(field: string, from: string | null, to: string | null): string {
  const name = field === 'name' ? 'the name' : field;
  if (from === null || from === '') return `${name}: ${to ?? ''} (new)`;
  if (to === null || to === '') return `${name} taken out (was: ${from})`;
  return `${name} ${from} to ${to}`;
}

function yieldText(change: Extract<Change, { kind: 'yield' }>): string {
  const { from, to, eachFromG, eachToG } = change;
  if (from === null) return `yield: ${to ?? ''} (new)`;
  if (to === null) return `no yield any more (was: ${from})`;
  const each =
    eachFromG === null || eachToG === null
      ? ''
      : `: ${gramsText(eachToG)} g each instead of ${gramsText(eachFromG)} g, before cooking`;
  return `yield ${fromTo(from, to)}${each}`;
}

/** `8 to 12 slices`: what both say after the number is said once. */
function fromTo(from: string, to: string): string {
  const [a = '', b = ''] = [from, to].map((text) => text.replace(/^\S+/, ''));
  return a !== '' && a === b ? `${from.slice(0, -a.length)} to ${to}` : `${from} to ${to}`;
}

function amountText({ name, from, to, fromG, toG, expectedG }: Extract<Change, { kind: 'amount' }>): string {
  const written = `${from === '' ? 'no amount' : from} to ${to === '' ? 'no amount' : to}`;
  if (fromG === null || toG === null || expectedG === null) return `${name} ${written}`;
  const by = toG - expectedG;
  const grams = gramsText(Math.abs(by));
  const way = by > 0 ? 'up' : 'down';
  const against = Math.abs(expectedG - fromG) < 0.001 ? '' : `; ${gramsText(expectedG)} g at this batch`;
  return grams === '0' ? `${name} ${written}` : `${name} ${way} ${grams} g (${written}${against})`;
}

function timeText({ verb, step, fromMin, toMin, from, to }: Extract<Change, { kind: 'time' }>): string {
  const by = middle(toMin) - middle(fromMin);
  const what = verb ?? `step ${step}`;
  if (by === 0) return `${what} ${from} to ${to}`;
  return `${what} ${minutes(Math.abs(by))} ${by > 0 ? 'longer' : 'shorter'} (${from} to ${to})`;
}

function temperatureText(change: Extract<Change, { kind: 'temperature' }>): string {
  const { verb, role, step, fromC, toC, from, to } = change;
  const by = Math.round(middle(toC) - middle(fromC));
  if (role === 'food') return `done at ${to}, not ${from}`;
  const what = verb ?? `step ${step}`;
  if (by === 0) return `${what} at ${to}, not ${from}`;
  return `${what} ${Math.abs(by)} C ${by > 0 ? 'hotter' : 'cooler'} (${from} to ${to})`;
}

function minutes(total: number): string {
  if (total < 1) return `${Math.round(total * 60)} s`;
  const whole = Math.round(total);
  const [days, hours, rest] = [Math.floor(whole / 1440), Math.floor((whole % 1440) / 60), whole % 60];
  const words = [days > 0 ? `${days} d` : '', hours > 0 ? `${hours} h` : '', rest > 0 ? `${rest} min` : ''];
  return words.filter((w) => w !== '').join(' ') || '0 min';
}

const join = (amount: string, name: string): string => (amount === '' ? name : `${amount} ${name}`);
const orNameless = (part: string): string => (part === '' ? 'the recipe itself' : part);
const ORDINALS = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];
const ordinal = (n: number): string => ORDINALS[n] ?? `no. ${n}`;

/** Figures without the noise of their arithmetic. */
function rounded(change: Change): object {
  return JSON.parse(
    JSON.stringify(change, (_, value: unknown) => (typeof value === 'number' ? round(value, 4) : value)),
  ) as object;
}
