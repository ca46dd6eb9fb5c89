/**
 * Knows which nut, fish, crustacean or cereal a food brings where the law wants that one named, from `data/label/which.tsv`.
 * Refuses to guess: of a mixture it is not known, and the maker is to be asked.
 */
import whichText from '../../data/label/which.tsv';
import { once } from '../measure/once.ts';
import { rowsIn, wordsIn } from '../measure/table-rows.ts';
import { type AllergenPair, pairsOf, SORTS } from './allergens.ts';
import { bookIdOf, type Food, type FoodClass } from './food.ts';

/** An allergen as both laws call it; where they want the sort named, which it is: `undefined` if nobody knows. */
export interface NamedAllergen extends AllergenPair {
  readonly which?: readonly (string | undefined)[];
}

/** Of what the sort is named: the word of the table, and the class whose foods are called by their own names. */
const GROUPS: readonly { readonly law: string; readonly of: string; readonly class?: FoodClass }[] = [
  { law: 'tree nuts', of: 'nuts', class: 'nut' },
  { law: 'nuts', of: 'nuts', class: 'nut' },
  { law: 'fish', of: 'fish', class: 'fish' },
  { law: 'crustacean shellfish', of: 'crustaceans', class: 'shellfish' },
  { law: 'crustaceans', of: 'crustaceans', class: 'shellfish' },
  { law: 'cereals containing gluten', of: 'gluten' },
];

const NAMES = once(() => {
  const names = new Map<string, Map<string, string>>();
  for (const [of = '', name = '', ids] of rowsIn(whichText)) {
    const group = names.get(of) ?? new Map<string, string>();
    names.set(of, group);
    for (const id of wordsIn(ids)) group.set(id, name);
  }
  return names;
});

const NOT_KNOWN = 'not known';

/** What a food brings, in the law's order. */
export function namedAllergens(food: Food): readonly NamedAllergen[] {
  return pairsOf(food.allergens).map((pair) => {
    const group = GROUPS.find(({ law }) => law === pair.eu || law === pair.us);
    if (group === undefined) return pair;
    const of = pair.us === 'tree nuts' && pair.eu === null ? 'pine nuts' : group.of;
    return { ...pair, which: [...new Set(sortsOf(food, of, group.class, pair))] };
  });
}

function sortsOf(food: Food, of: string, own: FoodClass | undefined, { us }: AllergenPair): (string | undefined)[] {
  const said = (food.allergens.sorts ?? [])
    .flatMap((word) => [SORTS.get(word.trim().toLowerCase()) ?? NONE])
    .filter(([group]) => group === of);
  const listed = NAMES().get(of)?.get(bookIdOf(food));
  const names = said.map(([, name]) => name);
  // Beside wheat there may be another: the words of a rye bread are wheat and gluten.
  if (of === 'gluten' && us === 'wheat' && listed?.startsWith('wheat') !== true) names.unshift('wheat');
  if (listed !== undefined) names.push(listed);
  if (names.length > 0) return names.map((name) => (name === NOT_KNOWN ? undefined : name));
  return own !== undefined && food.class === own ? [ownName(food)] : [undefined];
}

/** `smoked haddock` is haddock, `canned tuna in oil` tuna. */
const ownName = ({ name }: Food): string => name.replace(/ (?:in .*|meat)$/, '').replace(KEPT_OR_CUT, '');
const KEPT_OR_CUT =
  /\b(?:smoked|canned|cooked|fresh|dried|salt|hot|wild|pickled|flaked|ground|roasted|bitter|soft[ -]shell)[ -]/g;

const NONE: readonly [string, string] = ['', ''];
