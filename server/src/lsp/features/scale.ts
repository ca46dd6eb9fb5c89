import { readTarget } from '../../edits/scale-target.ts';
import { applyEdits } from '../../edits/text-edit.ts';
import { printDocument } from '../../notation/document.ts';
import { scaledInFull, WRITTEN_IN_FULL } from '../../workspace/scale-in-full.ts';
import { editsOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type ScaleAnswer, type ScaleParams, scaleRequest, messageVersion as version } from '../messages.ts';

const refuse = (why: string): ScaleAnswer => ({ version, ok: false, why });

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
        const { snapshot: at, result, inFull } = scaledInFull(snapshot, target);
        if (!result.ok) return refuse(result.why);
        const { edits, changes, said } = result.scaling;
        if (!inFull) return { version, ok: true, edits: editsOf(snapshot, edits), changes, said };
        const text = printDocument(applyEdits(at.document, edits));
        return { version, ok: true, edits: [], changes, said: [WRITTEN_IN_FULL, ...said], inFull: text };
      },
      ({ uri }) => uri,
    ),
  ],
};
