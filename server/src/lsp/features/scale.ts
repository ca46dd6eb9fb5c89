import { scaleRecipe } from '../../edits/scale.ts';
import { readTarget } from '../../edits/scale-target.ts';
import { editsOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';
import { messageVersion, type ScaleAnswer, type ScaleParams, scaleRequest } from '../messages.ts';

const refuse = (why: string): ScaleAnswer => ({ version: messageVersion, ok: false, why });

export const scaleFeature: Feature = {
  requests: [
    onRequest<ScaleParams, ScaleAnswer>(
      scaleRequest.method,
      refuse('Quern could not scale this recipe; its log says why.'),
      ({ uri, to }, { snapshot: snapshotOf }) => {
        const snapshot = snapshotOf(uri);
        if (snapshot === undefined) return refuse('The recipe is not open.');
        const target = readTarget(String(to));
        if (target === undefined) return refuse('Write a size such as `by 1.5`, `double` or `to 12 slices`.');
        const scaled = scaleRecipe(snapshot.document, snapshot.recipe, target);
        if (!scaled.ok) return refuse(scaled.why);
        const { edits, changes, said } = scaled.scaling;
        return { version: messageVersion, ok: true, edits: editsOf(snapshot, edits), changes, said };
      },
      ({ uri }) => uri,
    ),
  ],
};
