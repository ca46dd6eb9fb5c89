import { beginningsOf } from '../../workspace/beginnings.ts';
import { DEFAULTS } from '../../workspace/settings.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type BeginAnswer, type BeginParams, beginRequest, messageVersion as version } from '../messages.ts';

/** The files that a folder of recipes begins with, but for what only a terminal may write. */
export const beginFeature: Feature = {
  requests: [
    onRequest<BeginParams, BeginAnswer>(beginRequest.method, { version, files: [] }, () => ({
      version,
      files: beginningsOf(DEFAULTS.measures, '').flatMap(({ at, name, text }) =>
        at === 'hooks' ? [] : [{ name, text }],
      ),
    })),
  ],
};
