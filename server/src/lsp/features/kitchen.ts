import { kitchenRecipes } from '../../editor/recipes.ts';
import { type Feature, onRequest } from '../feature.ts';
import { type KitchenAnswer, type KitchenParams, kitchenRequest, messageVersion as version } from '../messages.ts';

/** Every recipe of the folders, for a client that lists them. */
export const kitchenFeature: Feature = {
  requests: [
    onRequest<KitchenParams, KitchenAnswer>(
      kitchenRequest.method,
      { version, recipes: [] },
      async (_params, view, token) => {
        await view.quiet();
        const work = kitchenRecipes(view.kitchen());
        for (;;) {
          const { done, value } = work.next();
          if (done === true)
            return {
              version,
              recipes: value.map(({ path, latest = null, uses, ...recipe }) => ({
                ...recipe,
                uri: view.uriAt(path),
                latest,
                uses: uses.map(({ path: used, part = null, of }) => ({ uri: view.uriAt(used), part, of })),
              })),
            };
          await view.quiet();
          if (token.isCancellationRequested) return { version, recipes: [] };
        }
      },
    ),
  ],
};
