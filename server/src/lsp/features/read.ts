import { readPasted } from '../../editor/pasted.ts';
import { type Feature, onRequest } from '../feature.ts';
import { messageVersion, type ReadAnswer, type ReadParams, readRequest } from '../messages.ts';

/** A printed recipe, pasted or copied, in the notation. */
export const readFeature: Feature = {
  requests: [
    onRequest<ReadParams, ReadAnswer>(readRequest.method, null, ({ uri, text }, { textAt }) => {
      const read = readPasted(textAt(uri, String(text)));
      return read === undefined ? null : { version: messageVersion, text: read.text, missed: read.missed.length };
    }),
  ],
};
