import { diffText } from '../../publish/diff/words.ts';
import { diffRecipes } from '../../publish/diff.ts';
import { changedSince, factsOf, isAsTested, readTrials } from '../../recipe/trials/trials.ts';
import { type Feature, onRequest } from '../feature.ts';
import {
  type AsTestedAnswer,
  type AsTestedParams,
  asTestedRequest,
  type DiffAnswer,
  type DiffParams,
  diffRequest,
  messageVersion,
  type TrialsAnswer,
  type TrialsParams,
  trialsRequest,
} from '../messages.ts';

/** Two texts of one recipe, as a cook would tell them apart; the trials whose versions may be asked for, and which text one of them tested. */
export const diffFeature: Feature = {
  requests: [
    onRequest<DiffParams, DiffAnswer>(diffRequest.method, null, ({ uri, a, b, uriOfA = uri }, view) => {
      const [before, after] = [view.textAt(uriOfA, String(a)), view.textAt(uri, String(b))];
      const found = diffRecipes(before.whole.recipe, after.whole.recipe);
      return {
        version: messageVersion,
        same: found.changes.length === 0 && found.batch === 1,
        words: diffText(found),
      };
    }),
    onRequest<TrialsParams, TrialsAnswer>(
      trialsRequest.method,
      { version: messageVersion, trials: [] },
      ({ uri }, view) => {
        const snapshot = view.snapshot(uri);
        if (snapshot === undefined) return { version: messageVersion, trials: [] };
        const facts = factsOf(snapshot.whole.recipe);
        const trials = readTrials(snapshot.outline).map(({ date, by, verdict, tested }) => ({
          date,
          by: by ?? null,
          verdict: verdict ?? null,
          changedLines: tested === undefined ? null : linesOf(changedSince(facts, tested)),
          asWritten: tested !== undefined && isAsTested(facts, tested),
          tested: tested ?? null,
        }));
        return { version: messageVersion, trials };
      },
      ({ uri }) => uri,
    ),
    onRequest<AsTestedParams, AsTestedAnswer>(
      asTestedRequest.method,
      { version: messageVersion, at: null },
      ({ uri, tested, texts }, view) => {
        const at = texts.findIndex((text) => isAsTested(factsOf(view.textAt(uri, String(text)).whole.recipe), tested));
        return { version: messageVersion, at: at < 0 ? null : at };
      },
    ),
  ],
};

const linesOf = (facts: readonly { readonly part: number; readonly line: number }[]): number =>
  new Set(facts.map(({ part, line }) => `${part}:${line}`)).size;
