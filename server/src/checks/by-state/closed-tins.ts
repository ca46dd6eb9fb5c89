/**
 * Knows which tins of food are heated with nobody having opened them: by what is said of the tin, or since it is opened only afterwards.
 * Refuses to know what is in them. A tin that is filled, lined or closed by the cook is one to bake in.
 */
import type { Span } from '../../notation/tree.ts';
import type { Act } from '../../prose/event.ts';
import type { Spoken } from '../../prose/things.ts';
import type { BoundEvent } from '../../recipe/journey/bind.ts';
import type { Journey } from '../../recipe/journey/fold.ts';
import type { IngredientRef } from '../../recipe/model.ts';
import { speaks, within } from '../../recipe/things-said.ts';
import { onceFor } from '../once.ts';
import { type Done, doneIn, spokenInSentence } from './done.ts';

/** What is done to a tin to have what is in it. */
const OPENS: ReadonlySet<Act> = new Set(['open', 'pierce']);
/** The cook's own: what was open is shut, or is filled. */
const FILLS: ReadonlySet<Act> = new Set(['close', 'pack', 'stuff', 'combine']);
/** It stays as it is meanwhile: `leave it shut`, `simmer the can whole`. */
const LEAVES: ReadonlySet<Act> = new Set(['stay', 'heat', 'ready', 'cool']);
/** Denied, it stays as it came. */
const WOULD_OPEN: ReadonlySet<Act> = new Set(['open', 'pierce', 'cut', 'shape', 'remove', 'unknown']);

/** The first heating of a tin that is shut, in all that is done. */
export const tinHeatedShut = onceFor((journey: Journey): Done | undefined => {
  const done = doneIn(journey);
  if (!done.some(({ things }) => speaks(things, 'tin'))) return undefined;
  const listed = tinsIn(journey);
  let heated: Done | undefined;
  let isShut = false;
  let isSpokenOf = false;
  for (const [at, each] of done.entries()) {
    const { event, names } = each.by;
    const own = spokenInSentence(done, at);
    const isNamed = speaks(own, 'tin');
    const isTin = isNamed && !isFilled(each.by, own);
    // One to bake in.
    if (isNamed && !isTin && listed.length === 0) return undefined;
    const isContent = names.some(({ mention }) => mention.ingredients.some((ref) => isAmong(ref, listed)));
    const isOther = names.some(({ mention }) => mention.ingredients.some((ref) => !isAmong(ref, listed)));
    if (isContent && isPouredFrom(each.by, own)) break;
    if (isTin) isSpokenOf = true;
    else if (isContent || (isOther && event.medium?.is !== 'water')) isSpokenOf = false;
    const isOpener = speaks(own, 'opener');
    if (!isSpokenOf && !isOpener && !(OPENS.has(event.act) && names.length === 0)) {
      // What was in it is in hand.
      if (isContent) break;
      continue;
    }
    if (event.said === 'not' && WOULD_OPEN.has(event.act)) isShut = true;
    if (event.said !== 'yes') continue;
    if (
      speaks(own, 'unopened') ||
      (isTin && speaks(own, 'left shut')) ||
      (speaks(own, 'shut') && !speaks(own, 'door') && LEAVES.has(event.act))
    )
      isShut = true;
    else if (OPENS.has(event.act) || isOpener || speaks(own, 'vent'))
      return isShut || listed.length > 0 ? heated : undefined;
    else if (
      isTin &&
      (event.act === 'ready' ? names.length === 0 && !isShut && listed.length === 0 : FILLS.has(event.act))
    )
      return undefined;
    if (heated === undefined && isHeating(done, at)) heated = each;
  }
  return isShut ? heated : undefined;
});

/** `Set it in a deep tin`: what is put in is no tin. */
const isFilled = ({ event }: BoundEvent, own: readonly Spoken[]): boolean => {
  const isTin = (slot: Span): boolean => speaks(within(own, slot), 'tin');
  return (
    event.objects.some(({ role, by }) => role === 'what' && (by === 'it' || by === 'mixture' || by === 'all')) &&
    !event.objects.some((slot) => slot.role !== 'into' && isTin(slot))
  );
};

/** `Pour in the milk from the tin`: somebody opened it. */
const isPouredFrom = ({ event }: BoundEvent, own: readonly Spoken[]): boolean =>
  event.objects.some((slot) => slot.role === 'from' && speaks(within(own, slot), 'tin'));

/** The lines that count tins. */
const tinsIn = ({ parts }: Journey): readonly IngredientRef[] =>
  parts.flatMap((part) =>
    part.head.ingredients.flatMap(({ node: { amount } }, ingredient) =>
      amount?.kind === 'measured' && (amount.quantity.count === 'tin' || amount.quantity.count === 'can')
        ? [{ part: part.index, ingredient }]
        : [],
    ),
  );

const isAmong = (ref: IngredientRef, refs: readonly IngredientRef[]): boolean =>
  refs.some((other) => other.part === ref.part && other.ingredient === ref.ingredient);

/** It is heated, or set where it is hot; `nestle it in them`: where the step before it was. */
function isHeating(done: readonly Done[], at: number): boolean {
  const { by, part, line } = done[at] as Done;
  if (by.event.act === 'heat' || isAtHeat(by)) return true;
  const isThere = by.event.objects.some(({ role, by: how }) => (role === 'with' || role === 'into') && how === 'it');
  return (
    isThere && done.slice(0, at).some((before) => before.part === part && before.line === line && isAtHeat(before.by))
  );
}

const isAtHeat = ({ event }: BoundEvent): boolean =>
  event.where.some(
    ({ is, not, way }) =>
      !not && way !== 'off' && way !== 'out of' && (is === 'stove' || is === 'oven' || is === 'hot'),
  );
