import { type Feature, onRequest } from '../feature.ts';
import { aliveRequest } from '../messages.ts';

/** Answered between two pieces of work; while none is, a client may take the server for hung. */
export const aliveFeature: Feature = {
  requests: [onRequest<object, null>(aliveRequest.method, null, () => null)],
};
