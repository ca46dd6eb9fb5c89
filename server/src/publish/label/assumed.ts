/**
 * Knows what the figures of a label take for granted, in sentences.
 */
import { FLESH } from '../../food/food.ts';
import { likenessOf } from '../../food/likened.ts';
import { hasMineralRow } from '../../food/minerals.ts';
import { gramsText, percentText } from '../../measure/number-text.ts';
import { cookedIn } from '../../recipe/label/cooked.ts';
import type { Recipe } from '../../recipe/model.ts';
import { capital } from '../../recipe/words.ts';
import { counted, type Nutrition } from '../nutrition.ts';

export function assumptions(recipe: Recipe, nutrition: Nutrition, cooked: boolean): readonly string[] {
  const all = counted(recipe);
  return [
    'A draft: whoever answers for the label checks it. Figures are worked out from public tables, minerals within a tenth, and not measured.',
    weightSaid(nutrition, cooked),
    ...(cooked ? [cookedSaid(recipe)] : []),
    ...likenessesSaid(recipe),
    ...(recipe.parts.some(({ head }) => head.ingredients.some(({ optional }) => optional))
      ? ['What is optional is not counted.']
      : []),
    ...(all.some(({ food }) => food?.class === 'milk') ? ['Milk is taken without added vitamin D.'] : []),
    ...(nutrition.addedSugars !== null && nutrition.addedSugars.low !== nutrition.addedSugars.high
      ? ['How much sugar makers put to some of the foods is not known: added sugars lie between none of it and all.']
      : []),
    ...(all.some(
      ({ food }) =>
        food !== undefined && FLESH.includes(food.class) && food.class !== 'fish' && food.class !== 'shellfish',
    )
      ? ['With meat or poultry it may be for the USDA, not the FDA, to say what its label has (9 CFR 317 and 381).']
      : []),
  ];
}

/** What has no row of minerals in the public table, and by what it is reckoned: each of them once. */
export function likenessesSaid(recipe: Recipe): readonly string[] {
  const said = new Map<string, string[]>();
  for (const { name, food, weighed } of counted(recipe)) {
    if (food === undefined || !weighed.known || hasMineralRow(food)) continue;
    const { how, foods } = likenessOf(food) ?? { how: 'nothing', foods: [] };
    const names = foods.map((each) => each.name);
    const by =
      how === 'nothing'
        ? undefined
        : how === 'class'
          ? 'within what others of their sort have'
          : how === 'mixed'
            ? `as ${names.join(' and ')} mixed to its fat or water`
            : names.length === 1
              ? `as ${names[0]}`
              : `between ${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
    if (by !== undefined) said.set(by, [...new Set([...(said.get(by) ?? []), name])]);
  }
  if (said.size === 0) return [];
  const each = [...said].map(([by, names]) => `${names.join(', ')} ${by}`);
  return [
    `Minerals, cholesterol and vitamin D that the public table does not have are taken by likeness: ${each.join('; ')}.`,
  ];
}

function weightSaid({ cookedG, estimatedG, weighedTrials, rawG }: Nutrition, cooked: boolean): string {
  if (rawG === null) return 'Something on the list has no weight, so that no figure can be given.';
  if (cookedG === null)
    return cooked
      ? 'What it weighs when it is done is not known near enough: no water is taken away. Weigh it, and write it into a trial.'
      : 'Figures are of what goes in, before cooking; nothing is taken away.';
  if (estimatedG !== undefined)
    return `It is taken to weigh ${gramsText(cookedG)} g when it is done, as ${estimatedG.by === 'oven' ? 'usually ' : ''}${gramsText(estimatedG.low)} to ${gramsText(estimatedG.high)} g ${estimatedG.by === 'oven' ? 'come out of the oven' : 'are left by what the steps say'}, and to have lost water alone: weigh it.`;
  return `It weighs ${gramsText(cookedG)} g when it is done, as ${weighedTrials === 1 ? 'a trial' : `${weighedTrials} trials`} weighed it, and has lost water alone.`;
}

/** How each sort of food is taken to be cooked. */
function cookedSaid(recipe: Recipe): string {
  const ways = new Map<string, string[]>();
  const alcohol: string[] = [];
  for (const [{ name, food }, { way, alcohol: left }] of cookedIn(recipe)) {
    if (food === undefined || way === 'raw') continue;
    if ((food.per100.alcohol ?? 0) > 0) alcohol.push(` ${capital(name)} keeps ${percentText(left)} of its alcohol.`);
    ways.set(way, [...new Set([...(ways.get(way) ?? []), name])]);
  }
  const said = capital([...ways].map(([way, names]) => `${WAYS[way] ?? way}: ${names.join(', ')}`).join('; '));
  return said === ''
    ? 'No step cooks anything, as far as it is understood: nothing is taken away.'
    : `What cooking leaves of calcium, iron, potassium, sodium and alcohol is by the USDA's retention factors (release 6, 2007). ${said}.${alcohol.join('')} Vitamin D and cholesterol are taken to stay, and salt in water that is poured off is counted as eaten.`;
}

const WAYS: Readonly<Record<string, string>> = {
  roasted: 'in the oven',
  fried: 'fried',
  drained: 'boiled and drained',
  pot: 'in a pot, with its liquid',
};
