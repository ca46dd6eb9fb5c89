// Knows how the recipes of a folder are put into groups: by how they were cooked, by tag, by what they are made with, by folder.
// It refuses to know the editor.

import type { KitchenRecipe } from '../../../server/src/lsp/messages.ts';

export const groupings = ['state', 'tag', 'part', 'folder'] as const;
export type Grouping = (typeof groupings)[number];

export type Group = {
  /** The same after the recipes changed. */
  readonly key: string;
  readonly label: string;
  /** Where a part comes from. */
  readonly of?: string;
  /** Of all its recipes. */
  readonly state?: KitchenRecipe['state'];
  readonly recipes: readonly KitchenRecipe[];
};

const states: Readonly<Record<KitchenRecipe['state'], string>> = {
  'cooked as written': 'Cooked as written',
  'cooked, changed since': 'Cooked, changed since',
  'never cooked': 'Never cooked',
};

/** The groups in order, each with its recipes in theirs; none is empty. `folderOf` says in which folder a file lies, '' for the outermost. */
export function groupsOf(
  recipes: readonly KitchenRecipe[],
  by: Grouping,
  folderOf: (uri: string) => string,
): readonly Group[] {
  switch (by) {
    case 'state':
      return (Object.keys(states) as KitchenRecipe['state'][]).flatMap((state) => {
        const of = recipes.filter((recipe) => recipe.state === state);
        return of.length === 0 ? [] : [{ key: `state ${state}`, label: states[state], state, recipes: of }];
      });
    case 'tag':
      return gathered(
        recipes,
        ({ tags }) =>
          [...new Set(tags.map((tag) => tag.toLowerCase()))].map((tag) => ({ key: `tag ${tag}`, label: tag })),
        'Without a tag',
      );
    case 'part':
      return gathered(
        recipes,
        ({ uses }) =>
          uses.map(({ uri, part, of }) =>
            part === null ? { key: `uses ${uri}`, label: of } : { key: `uses ${uri} ${part}`, label: part, of },
          ),
        'Built on no other',
      );
    case 'folder':
      return gathered(
        recipes,
        ({ uri }) => {
          const folder = folderOf(uri);
          return folder === '' ? [] : [{ key: `folder ${folder}`, label: folder }];
        },
        'In no folder of its own',
      );
  }
}

type Place = Omit<Group, 'recipes'>;

/** Every recipe in each of its places; those without one last. */
function gathered(
  recipes: readonly KitchenRecipe[],
  placesOf: (recipe: KitchenRecipe) => readonly Place[],
  without: string,
): readonly Group[] {
  const groups = new Map<string, Place & { readonly recipes: KitchenRecipe[] }>();
  const rest: KitchenRecipe[] = [];
  for (const recipe of recipes) {
    const places = placesOf(recipe);
    if (places.length === 0) rest.push(recipe);
    for (const place of places) {
      const group = groups.get(place.key) ?? { ...place, recipes: [] };
      groups.set(place.key, group);
      if (group.recipes.at(-1) !== recipe) group.recipes.push(recipe);
    }
  }
  const sorted = [...groups.values()].sort((a, b) => a.label.localeCompare(b.label) || (a.key < b.key ? -1 : 1));
  return rest.length === 0 ? sorted : [...sorted, { key: 'rest', label: without, recipes: rest }];
}
