import { CHECKS } from '../../checks/index.ts';
import { explainOn, explainPage } from '../../publish/page.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type ExplainAnswer, type ExplainParams, explainRequest, messageVersion } from '../messages.ts';

export const explainFeature: Feature = {
  requests: [
    onRequest<ExplainParams, ExplainAnswer>(explainRequest.method, null, ({ code, uri }, { snapshot: snapshotOf }) => {
      const check = CHECKS.find((c) => c.code === code);
      if (check === undefined) return null;
      const snapshot = uri === undefined ? undefined : snapshotOf(uri);
      const here = snapshot?.findings.open.filter((f) => f.code === code) ?? [];
      const markdown =
        snapshot === undefined || here.length === 0
          ? explainPage(check)
          : explainOn(check, here, snapshot, 'this recipe');
      return { version: messageVersion, title: check.title, markdown };
    }),
  ],
};
