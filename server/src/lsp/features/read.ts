import { readPasted } from '../../editor/pasted.ts';
import { LONGEST_TEXT } from '../../edits/read-text/read-text.ts';
import { type Feature, onRequest } from '../feature.ts';
import { messageVersion, type ReadAnswer, type ReadParams, readRequest } from '../messages.ts';

/** A printed recipe, pasted or copied, in the notation. */
export const readFeature: Feature = {
  requests: [
    onRequest<ReadParams, ReadAnswer>(readRequest.method, null, ({ uri, text }, { textAt }) => {
      const copied = String(text);
      // A part of what was copied would take the place of the whole.
      const read = copied.length > LONGEST_TEXT ? undefined : readPasted(textAt(uri, copied));
      return read === undefined ? null : { version: messageVersion, text: read.text, missed: read.missed.length };
    }),
  ],
};
