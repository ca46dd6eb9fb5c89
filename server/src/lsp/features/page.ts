import type { CancellationToken } from 'vscode-languageserver';
import { outcomeOf } from '../../editor/page/acts.ts';
import { fixesTried } from '../../editor/page/fixes.ts';
import { readLook, readView } from '../../editor/page/look.ts';
import { pageOf } from '../../editor/page/page.ts';
import { STYLE } from '../../publish/view/style.ts';
import { editsOf } from '../convert.ts';
import { type Feature, onRequest, type View } from '../feature.ts';
import {
  type PageActAnswer,
  type PageActParams,
  type PageAnswer,
  type PageParams,
  pageActRequest,
  pageRequest,
  messageVersion as version,
} from '../messages.ts';

const refuse = (why: string): PageActAnswer => ({ version, ok: false, why });

/** The recipe as a page, one view at a time, and what comes of its buttons and fields. */
export const pageFeature: Feature = {
  requests: [
    onRequest<PageParams, PageAnswer>(
      pageRequest.method,
      null,
      async ({ uri, view: name, look, readOnly, hasty, style }, view, token) => {
        // Whoever types has the findings first.
        await view.quiet();
        await view.workedOut(uri, token);
        const isStill = hasty !== true && readOnly === undefined && (await triedAll(uri, view, token));
        const snapshot = token.isCancellationRequested ? undefined : view.snapshot(uri);
        if (snapshot === undefined) return null;
        const shown = readView(name);
        const wish = {
          view: shown,
          look: readLook(look),
          hasty: !isStill,
          ...(typeof readOnly === 'string' && { readOnly }),
          ...(shown === 'label' && { prices: view.prices(snapshot) }),
        };
        const page = pageOf(snapshot, wish);
        return { version, documentVersion: snapshot.version, ...page, ...(style === true && { style: STYLE }) };
      },
      ({ uri }) => uri,
    ),
    onRequest<PageActParams, PageActAnswer>(
      pageActRequest.method,
      refuse('Quern could not do this; its log says why.'),
      ({ uri, look, act, arg, value }, view) => {
        const snapshot = view.snapshot(uri);
        if (snapshot === undefined) return refuse('The recipe is not open.');
        const outcome = outcomeOf(act, { snapshot, look: readLook(look), arg, value });
        if ('refused' in outcome) return refuse(outcome.refused);
        return {
          version,
          ok: true,
          documentVersion: snapshot.version,
          ...('edits' in outcome && { edits: editsOf(snapshot, outcome.edits) }),
          ...(outcome.look !== undefined && { look: { ...outcome.look } }),
          ...(outcome.said !== undefined && { said: outcome.said }),
        };
      },
      ({ uri }) => uri,
    ),
  ],
};

/** Tries the fixes of one finding after another, and reads messages between them; false where the text changed meanwhile. */
async function triedAll(uri: string, view: View, token: CancellationToken): Promise<boolean> {
  const snapshot = view.snapshot(uri);
  for (const finding of snapshot?.findings.open ?? []) {
    if (snapshot === undefined || token.isCancellationRequested || view.snapshot(uri) !== snapshot) return false;
    fixesTried(finding, snapshot);
    await view.quiet();
  }
  return true;
}
