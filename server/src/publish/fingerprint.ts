/**
 * Knows what makes a finding the same one after the lines around it have moved: its code, its recipe, its part and what it is about.
 * Refuses to know where it stands.
 */
import type { Finding } from '../checks/finding.ts';
import type { Recipe } from '../recipe/model.ts';

export interface Fingerprint {
  readonly code: string;
  /** The recipe's name; the file's where it has none. */
  readonly recipe: string;
  readonly part: string;
  /** The ingredient, or the words that are marked. */
  readonly subject: string;
}

/** `shown` is the file as people are shown it. */
export function fingerprintOf(
  finding: Finding,
  recipe: Recipe,
  lines: readonly { text: string }[],
  shown: string,
): Fingerprint {
  const { line, start, end } = finding.at;
  const at = recipe.partsAt.findLastIndex((first) => first <= line);
  const part = recipe.parts[at];
  const ingredient = part?.head.ingredients.find((i) => i.line + (recipe.partsAt[at] ?? 0) === line);
  const words = (lines[line]?.text ?? '').slice(start, end);
  return {
    code: finding.code,
    recipe: recipe.name === '' ? shown : recipe.name,
    part: part?.head.name ?? '',
    subject: plain(ingredient?.name ?? words),
  };
}

export const fingerprintText = ({ code, recipe, part, subject }: Fingerprint): string =>
  [code, recipe, part, subject].map((p) => p.replaceAll('|', ' ')).join('|');

const plain = (words: string): string => words.trim().replace(/\s+/g, ' ').toLowerCase().slice(0, 80);
