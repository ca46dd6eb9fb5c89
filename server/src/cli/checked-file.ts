/**
 * Knows one file checked, as plain data: it can be sent from a worker, and holds nothing of what it was worked out from.
 * Refuses to know how it is shown.
 */
import type { Family, Fix } from '../checks/check.ts';
import { encodingWords } from '../checks/encoding-words.ts';
import type { Finding } from '../checks/finding.ts';
import { printDocument } from '../notation/document.ts';
import { type PlainFinding, plainFinding } from '../publish/finding-json.ts';
import { type Fingerprint, fingerprintOf } from '../publish/fingerprint.ts';
import { type RecipeState, recipeRecord } from '../recipe/trials/state.ts';
import { readTrials } from '../recipe/trials/trials.ts';
import type { Houses } from '../workspace/houses.ts';
import { offeredFixes } from '../workspace/offered.ts';
import { mended } from '../workspace/unattended.ts';
import { type Input, snapshotToCheck } from './inputs.ts';
import { UsageError } from './io.ts';

export interface CheckedFinding extends PlainFinding {
  readonly family: Family;
  readonly related: Finding['related'];
  /** Empty unless the fixes were asked for. */
  readonly fixes: readonly Fix[];
  /** Empty unless the titles, or the fixes, were asked for. */
  readonly fixTitles: readonly string[];
  readonly fingerprint: Fingerprint;
}

export interface CheckedFile {
  readonly path: string;
  readonly shown: string;
  /** The recipe's name; the file's where it has none. */
  readonly recipe: string;
  /** What the kitchen's record says of it; null where the file holds no recipe. */
  readonly state: RecipeState | null;
  readonly open: readonly CheckedFinding[];
  readonly accepted: readonly (CheckedFinding & { readonly reason: string })[];
  /** Found, and known from the baseline. */
  readonly known: readonly CheckedFinding[];
  /** What could not be used of its house. */
  readonly problems: readonly string[];
  /** Checks that failed on it: bugs of Quern. */
  readonly bugs: readonly string[];
  /** After all fixes that may run unattended, where that was asked for and is another text than before. */
  readonly mended?: { readonly before: string; readonly text: string };
}

export interface CheckWish {
  /** What is wanted of each fix. */
  readonly fixes: 'none' | 'titles' | 'whole';
  /** Make the fixes that may run unattended. */
  readonly mend: boolean;
  /** Where results are to be kept, as it was named. */
  readonly keepsIn?: string;
}

/** `bases` writes down what is asked of it, where somebody wants to know. */
export function checkFile(input: Input, houses: Houses, wish: CheckWish, bases = houses.bases): CheckedFile {
  const read = snapshotToCheck(input, houses, bases);
  if (wish.mend && input.encoding?.isRead === false)
    throw new UsageError(`\`${input.shown}\` ${encodingWords(input.encoding)}; nothing was mended`);
  const snapshot = wish.mend ? mended(read) : read;
  const { open, accepted } = snapshot.findings;
  const plain = (finding: Finding): CheckedFinding => {
    const fixes = wish.fixes === 'none' ? [] : offeredFixes(finding, snapshot);
    return {
      ...plainFinding(finding),
      family: finding.check.family,
      related: finding.related,
      // What each would do is much to send from a worker.
      fixes: wish.fixes === 'whole' ? fixes : [],
      fixTitles: fixes.map((fix) => fix.title),
      fingerprint: fingerprintOf(finding, snapshot.recipe, snapshot.document.lines, input.shown),
    };
  };
  const isRecipe = snapshot.outline.recipe !== undefined;
  return {
    path: input.path,
    shown: input.shown,
    recipe: snapshot.recipe.name === '' ? input.shown : snapshot.recipe.name,
    state: isRecipe ? recipeRecord(snapshot.whole.recipe, readTrials(snapshot.outline)).state : null,
    open: open.map(plain),
    accepted: accepted.map((f) => ({ ...plain(f), reason: f.reason })),
    known: [],
    problems: houses.of(input.path).problems,
    bugs: snapshot.bugs.map(({ check, error }) => `${check} failed: ${String(error)}`),
    ...(snapshot !== read && { mended: { before: input.text, text: printDocument(snapshot.document) } }),
  };
}
