import { CHECKS } from '../../checks/index.ts';
import { explainPage } from '../../publish/page.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type ExplainAnswer, type ExplainParams, explainRequest, messageVersion } from '../messages.ts';

export const explainFeature: Feature = {
  requests: [
    onRequest<ExplainParams, ExplainAnswer>(explainRequest.method, null, ({ code }) => {
      const check = CHECKS.find((c) => c.code === code);
      return check === undefined ? null : { version: messageVersion, title: check.title, markdown: explainPage(check) };
    }),
  ],
};
