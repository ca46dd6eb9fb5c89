/** Knows what is worked out of one bake: how long it is likely to take and what that rests on, or why it is not estimated. */
import type { HeatEstimate, Load } from '../../heat/estimate.ts';
import type { HouseOven } from '../model.ts';
import type { Bake } from './bakes.ts';
import type { Declined } from './kind-of-bake.ts';

export type OvenTime = { readonly bake: Bake } & (
  | { readonly is: 'declined'; readonly why: Declined }
  | {
      readonly is: 'estimated';
      readonly load: Load;
      readonly estimate: HeatEstimate;
      /** The end is the kind's, and not said. */
      readonly targetAssumed: boolean;
      /** How warm it goes in is the kind's; else a trial measured it. */
      readonly startAssumed: boolean;
      /** Which oven of the house it is for, where a trial says. */
      readonly oven?: HouseOven & { readonly name: string };
      /** Of this recipe, that the estimate has learned from. */
      readonly trials: number;
    }
);

export type Estimated = Extract<OvenTime, { is: 'estimated' }>;
