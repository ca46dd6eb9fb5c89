import { CHECKS } from '../../checks/index.ts';
import { explainOn, explainPage } from '../../publish/page.ts';
import { typePage } from '../../publish/type-pages.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type ExplainAnswer, type ExplainParams, explainRequest, messageVersion } from '../messages.ts';

export const explainFeature: Feature = {
  requests: [
    onRequest<ExplainParams, ExplainAnswer>(explainRequest.method, null, ({ code, uri }, view) => {
      const snapshot = uri === undefined ? undefined : view.snapshot(uri);
      const check = CHECKS.find((c) => c.code === code);
      if (check === undefined) {
        // A kind or a food has a page, too: in a house, as it has them.
        const { world } = (snapshot ?? view.textAt(uri ?? '', '')).house;
        const page = typePage(code, world);
        return page === undefined ? null : { version: messageVersion, ...page };
      }
      const here = snapshot?.findings.open.filter((f) => f.code === code) ?? [];
      const markdown =
        snapshot === undefined || here.length === 0
          ? explainPage(check)
          : explainOn(check, here, snapshot, 'this recipe');
      return { version: messageVersion, title: check.title, markdown };
    }),
  ],
};
