import { startTrial } from '../../editor/trial.ts';
import { editsOf, rangeOf } from '../convert.ts';
import { type Feature, onRequest } from '../feature.ts';
import { messageVersion, type RecordTrialAnswer, type RecordTrialParams, recordTrialRequest } from '../messages.ts';

const refuse = (why: string): RecordTrialAnswer => ({ version: messageVersion, ok: false, why });

export const trialsFeature: Feature = {
  requests: [
    onRequest<RecordTrialParams, RecordTrialAnswer>(
      recordTrialRequest.method,
      refuse('Quern could not start a trial; its log says why.'),
      ({ uri, date }, view) => {
        const snapshot = view.snapshot(uri);
        if (snapshot === undefined) return refuse('The recipe is not open.');
        if (!/^\d{4}-\d{2}-\d{2}$/.test(String(date))) return refuse('A date is written as 2026-09-14.');
        const started = startTrial(snapshot, date);
        if (started === undefined) return refuse('There is no recipe in this file to try, or not the whole of it.');
        return {
          version: messageVersion,
          ok: true,
          edits: editsOf(snapshot, started.edits),
          first: rangeOf(started.first),
        };
      },
      ({ uri }) => uri,
    ),
  ],
};
