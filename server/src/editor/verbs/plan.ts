/** The day counted back from `serve`, as `19:30`, with the ovens of the house and one pair of hands. */
import { ovenNames, planFacts } from '../../publish/plan-facts.ts';
import { planText } from '../../publish/plan-text.ts';
import { readClock } from '../../recipe/plan/clock-text.ts';
import { planOf } from '../../recipe/plan/plan.ts';
import { EVERYDAY } from '../../recipe/plan/task.ts';
import { textIn } from '../page/acts/act.ts';
import { fileName, sayLineIn } from '../place.ts';
import type { Verb } from './verb.ts';

export const plan: Verb = {
  takes: ['serve'],
  title: 'Plan the day backwards',
  run: ({ snapshot, arg }) => {
    const serve = readClock(textIn(arg, 'serve') ?? '');
    if (serve === undefined) return { refused: 'Write a time of the day such as `19:30`.' };
    if (!snapshot.isWhole)
      return { refused: 'The recipe builds on what is not there: its findings say what is missing.' };
    const { recipe } = snapshot.whole;
    const ovens = ovenNames(snapshot.house.world, undefined);
    const kitchen = { ovens: ovens.length, pairsOfHands: 1, sharesOven: false, serve, awake: EVERYDAY };
    const source = { recipe, file: fileName(snapshot.uri), sayLine: sayLineIn(snapshot) };
    const planned = planOf([{ recipe, given: new Map(), puts: true }], kitchen);
    return { text: planText(planFacts(planned, [source], { serve, date: null, ovens })) };
  },
};
