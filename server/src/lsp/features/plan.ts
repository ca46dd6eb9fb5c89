import { sayLineIn } from '../../editor/place.ts';
import { ovenNames, planFacts } from '../../publish/plan-facts.ts';
import { planHtml } from '../../publish/plan-html.ts';
import { readClock } from '../../recipe/plan/clock-text.ts';
import { planOf } from '../../recipe/plan/plan.ts';
import { EVERYDAY } from '../../recipe/plan/task.ts';
import { type Feature, onRequest } from '../feature.ts';
import { messageVersion, type PlanAnswer, type PlanParams, planRequest } from '../messages.ts';

const refuse = (why: string): PlanAnswer => ({ version: messageVersion, ok: false, why });

/** The day planned backwards, for recipes that are open, with the ovens of the house and one pair of hands. */
export const planFeature: Feature = {
  requests: [
    onRequest<PlanParams, PlanAnswer>(
      planRequest.method,
      refuse('Quern could not plan this day; its log says why.'),
      ({ uris, serve: written }, view) => {
        const serve = readClock(written);
        if (serve === undefined) return refuse('Write a time of the day such as `19:30`.');
        const open = uris.flatMap((uri) => {
          const snapshot = view.snapshot(uri);
          return snapshot === undefined ? [] : [{ snapshot, file: nameOf(view.pathOf(uri) ?? uri) }];
        });
        if (!open.every(({ snapshot }) => snapshot.isWhole))
          return refuse('A recipe builds on what is not there: its findings say what is missing.');
        const [first] = open;
        if (first === undefined) return refuse('No recipe is open.');
        const ovens = ovenNames(first.snapshot.house.world, undefined);
        const kitchen = { ovens: ovens.length, pairsOfHands: 1, sharesOven: false, serve, awake: EVERYDAY };
        const plan = planOf(
          open.map(({ snapshot }) => ({ recipe: snapshot.whole.recipe, given: new Map(), puts: true })),
          kitchen,
        );
        const sources = open.map(({ snapshot, file }) => ({
          recipe: snapshot.whole.recipe,
          file,
          sayLine: sayLineIn(snapshot, open.length > 1 ? file : undefined),
        }));
        const facts = planFacts(plan, sources, { serve, date: null, ovens });
        return { version: messageVersion, ok: true, title: `For ${facts.serve}`, html: planHtml(facts) };
      },
    ),
  ],
};

const nameOf = (path: string): string => path.split('/').at(-1) ?? path;
