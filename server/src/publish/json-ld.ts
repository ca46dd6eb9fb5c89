/**
 * Knows a page for readers as schema.org's Recipe in JSON-LD (schema.org/Recipe, HowToSection, HowToStep, NutritionInformation).
 * Refuses to state what is not known: a missing time, figure or author is left out.
 */
import { allergenLines, ingredientText, type PageSection, type ReaderPage } from './reader-page.ts';

/** It may be put into a page as it is: no word of a recipe ends the element that it stands in. */
export function jsonLd(page: ReaderPage): string {
  const text = JSON.stringify(recipeNode(page), null, 2);
  return `${text.replace(/[<>&\u2028\u2029]/g, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`;
}

function recipeNode(page: ReaderPage): object {
  const { times } = page;
  const cook = times.cookingMin;
  // What is not cooking is preparing, rests too, so that the two make the total.
  const prep = times.totalMin === null ? times.handsOnMin : times.totalMin - (cook ?? 0);
  const [us = '', eu = '', ...more] = allergenLines(page);
  const description = [...page.notes, page.state, us, eu, ...more, ...page.cautions].join(' ');
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: page.title,
    ...(page.by !== undefined && { author: { '@type': authorType(page.by), name: page.by }, creditText: page.by }),
    description,
    ...(page.tags.length > 0 && { keywords: page.tags.join(', ') }),
    ...(page.makes !== undefined && { recipeYield: page.makes }),
    ...(prep !== null && prep > 0 && { prepTime: duration(prep) }),
    ...(cook !== null && { cookTime: duration(cook) }),
    ...(times.totalMin !== null && { totalTime: duration(times.totalMin) }),
    ...tools(page),
    recipeIngredient: page.sections.flatMap((s) => s.ingredients).map(ingredientText),
    recipeInstructions: instructions(page.sections),
    ...(page.nutrition !== undefined && { nutrition: nutritionNode(page.nutrition) }),
    ...(page.source !== undefined && { isBasedOn: { '@type': 'CreativeWork', name: page.source } }),
  };
}

/** The pan of the recipe, and those that a part alone goes into. */
function tools({ pan, sections }: ReaderPage): { readonly tool?: object } {
  const pans = new Set([pan, ...sections.map((section) => section.pan)].filter((name) => name !== undefined));
  const nodes = [...pans].map((name) => ({ '@type': 'HowToTool', name: `Pan: ${name}` }));
  const [only] = nodes;
  return only === undefined ? {} : { tool: nodes.length === 1 ? only : nodes };
}

/** Steps alone for one part; sections where there are several. */
function instructions(sections: readonly PageSection[]): object[] {
  const told = sections.filter((s) => s.steps.length > 0);
  const steps = (s: PageSection) => s.steps.map((text, i) => ({ '@type': 'HowToStep', position: i + 1, text }));
  const [only] = told;
  if (only !== undefined && told.length === 1) return steps(only);
  return told.map((s, i) => ({
    '@type': 'HowToSection',
    position: i + 1,
    name: s.name === '' ? 'Method' : s.name,
    itemListElement: steps(s),
  }));
}

function nutritionNode(label: NonNullable<ReaderPage['nutrition']>): object {
  const text = (figure: { readonly text: string } | null) => figure?.text;
  const sodium =
    label.sodium ?? (label.salt === null ? null : { text: `${Math.round((label.salt.value / 2.5) * 1000)} mg` });
  const calories = /[\d.]+ kcal/.exec(label.energy?.text ?? '')?.[0];
  const mass = label.mass_g === null || label.of === '100 g' ? '' : ` (${Math.round(label.mass_g)} g, ${label.basis})`;
  const fields = {
    servingSize: `${label.of}${mass}`,
    calories,
    fatContent: text(label.fat),
    saturatedFatContent: text(label.saturates),
    carbohydrateContent: text(label.carbohydrate),
    sugarContent: text(label.sugars),
    fiberContent: text(label.fibre),
    proteinContent: text(label.protein),
    sodiumContent: sodium?.text,
  };
  return {
    '@type': 'NutritionInformation',
    ...Object.fromEntries(Object.entries(fields).filter(([, v]) => v !== undefined)),
  };
}

/** ISO 8601: `PT1H25M`, `P2DT3H`. */
export function duration(minutes: number): string {
  const whole = Math.max(0, Math.round(minutes));
  const [days, hours, rest] = [Math.floor(whole / 1440), Math.floor((whole % 1440) / 60), whole % 60];
  const date = days > 0 ? `${days}D` : '';
  const time = `${hours > 0 ? `${hours}H` : ''}${rest > 0 ? `${rest}M` : ''}`;
  return date === '' && time === '' ? 'PT0M' : `P${date}${time === '' ? '' : `T${time}`}`;
}

/** A name that says it is a place or a body is one; any other is a person's. */
function authorType(name: string): 'Organization' | 'Person' {
  return /\b(?:kitchen|bakery|restaurant|caf[eé]|bistro|school|college|company|co|ltd|inc|press|magazine|service|department|house|club|canteen|dairy|farm|hotel|institute|office|agency)\b/i.test(
    name,
  )
    ? 'Organization'
    : 'Person';
}
