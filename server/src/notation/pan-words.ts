/**
 * Knows the words that say what pan is meant: its form, how deep or large it is of its kind, and what it is made of.
 * Refuses to know sizes: those of the trade are data.
 */
import type { PanShape } from './tree.ts';

export interface PanForm {
  /** As `data/pans.tsv` has it. */
  readonly form: string;
  readonly shape: PanShape;
  /** Sold by the number of its hollows, or one by one: a bare number counts them. */
  readonly cups?: boolean;
  /** Its name alone says how large it is: `half sheet`. */
  readonly sold?: string;
}

const of = (form: string, shape: PanShape, more: Partial<PanForm> = {}): PanForm => ({ form, shape, ...more });
const SHEETS = ['full', 'two-thirds', 'half', 'quarter', 'eighth'] as const;

/** One row a name, every word in the singular, without the words that any pan may have. */
const FORMS: Readonly<Record<string, PanForm>> = {
  round: of('round', 'round'),
  circular: of('round', 'round'),
  layer: of('round', 'round'),
  cake: of('round', 'round'),
  sandwich: of('sandwich', 'round'),
  square: of('square', 'square'),
  brownie: of('brownie', 'square'),
  rectangle: of('rectangle', 'rectangle'),
  rectangular: of('rectangle', 'rectangle'),
  oblong: of('rectangle', 'rectangle'),
  traybake: of('traybake', 'rectangle'),
  roasting: of('roasting', 'rectangle'),
  loaf: of('loaf', 'loaf'),
  bread: of('loaf', 'loaf'),
  pullman: of('pullman', 'rectangle'),
  terrine: of('terrine', 'loaf'),
  ring: of('ring', 'ring'),
  'fluted ring': of('fluted ring', 'ring'),
  tube: of('tube', 'ring'),
  'angel food': of('tube', 'ring'),
  angel: of('tube', 'ring'),
  gugelhupf: of('gugelhupf', 'ring'),
  kugelhopf: of('gugelhupf', 'ring'),
  savarin: of('savarin', 'ring'),
  springform: of('springform', 'round'),
  'spring-form': of('springform', 'round'),
  tart: of('tart', 'round'),
  tartlet: of('tart', 'round'),
  flan: of('tart', 'round'),
  quiche: of('tart', 'round'),
  'oblong tart': of('oblong tart', 'rectangle'),
  'rectangular tart': of('oblong tart', 'rectangle'),
  pie: of('pie', 'round'),
  skillet: of('skillet', 'round'),
  frying: of('skillet', 'round'),
  tatin: of('tatin', 'round'),
  'tarte tatin': of('tatin', 'round'),
  paella: of('paella', 'round'),
  charlotte: of('charlotte', 'round'),
  souffle: of('souffle', 'round'),
  soufflé: of('souffle', 'round'),
  pudding: of('basin', 'round'),
  basin: of('basin', 'round'),
  casserole: of('casserole', 'rectangle'),
  gratin: of('casserole', 'rectangle'),
  'dutch oven': of('dutch oven', 'round'),
  ...Object.fromEntries(SHEETS.map((sold) => [`${sold} sheet`, of('sheet', 'rectangle', { sold })])),
  sheet: of('sheet', 'rectangle'),
  'jelly roll': of('jelly roll', 'rectangle', { sold: '' }),
  'jelly-roll': of('jelly roll', 'rectangle', { sold: '' }),
  'swiss roll': of('swiss roll', 'rectangle', { sold: '' }),
  'steam table': of('steam table', 'rectangle', { sold: 'full' }),
  hotel: of('steam table', 'rectangle', { sold: 'full' }),
  'full hotel': of('steam table', 'rectangle', { sold: 'full' }),
  'half hotel': of('steam table', 'rectangle', { sold: 'half' }),
  'full steam table': of('steam table', 'rectangle', { sold: 'full' }),
  'half steam table': of('steam table', 'rectangle', { sold: 'half' }),
  gastronorm: of('gastronorm', 'rectangle'),
  gn: of('gastronorm', 'rectangle'),
  muffin: of('muffin', 'round', { cups: true }),
  cupcake: of('muffin', 'round', { cups: true }),
  bun: of('bun', 'round', { cups: true }),
  patty: of('bun', 'round', { cups: true }),
  popover: of('popover', 'round', { cups: true }),
  'yorkshire pudding': of('yorkshire pudding', 'round', { cups: true }),
  madeleine: of('madeleine', 'round', { cups: true }),
  financier: of('financier', 'round', { cups: true }),
  dariole: of('dariole', 'round', { cups: true }),
  ramekin: of('ramekin', 'round', { cups: true }),
  'custard cup': of('custard cup', 'round', { cups: true }),
};

/** How a pan differs from others of its name. */
export const PAN_TRAITS: ReadonlySet<string> = new Set([
  'deep',
  'deep-dish',
  'shallow',
  'mini',
  'small',
  'medium',
  'standard',
  'large',
  'jumbo',
]);

/** What a pan is made of, and how it looks: no part of its size. */
export const PAN_MATERIALS: ReadonlySet<string> = new Set(
  'glass ceramic dark light shiny black metal non-stick nonstick tin-plated aluminium aluminum steel stainless iron cast cast-iron silicone earthenware stoneware enamel enamelled heatproof ovenproof'.split(
    ' ',
  ),
);

/** What any pan may be called, and what stands between its sizes. */
const FILLERS: ReadonlySet<string> = new Set(
  'tin pan dish mould mold plate tray case cup hole hollow cavity baking bake cake a an the of or about with each in by across wide long diameter high size sized capacity mark removable loose loose-based loose-bottomed bottom bottomed base based sided fluted straight straight-sided lidded individual buttered greased lined oven-safe jelly blancmange bombe trifle lasagne serving preserving bowl'.split(
    ' ',
  ),
);

const isPanFiller = (word: string): boolean =>
  FILLERS.has(word) || PAN_MATERIALS.has(word) || PAN_TRAITS.has(word) || word.length === 0;

/** The form that the words of a pan name, in order; undefined for none, and the first word that no pan has for an unknown one. */
export function panForm(words: readonly string[]): PanForm | { readonly unknown: string } | undefined {
  const all = words.map(singularPan);
  const own = all.filter((w) => !isPanFiller(w) || w === 'cup' || w === 'fluted' || w === 'cake');
  for (let from = 0; from < own.length; from++)
    for (let to = own.length; to > from; to--) {
      const phrase = own.slice(from, to).join(' ');
      if (phrase !== 'cake' && Object.hasOwn(FORMS, phrase)) {
        const form = FORMS[phrase] as PanForm;
        const rest = [...own.slice(0, from), ...own.slice(to)].find((w) => !isPanFiller(w) && !Object.hasOwn(FORMS, w));
        return rest === undefined ? form : { unknown: rest };
      }
    }
  const unknown = own.find((w) => !isPanFiller(w));
  if (unknown !== undefined) return { unknown };
  return own.includes('cake') ? FORMS.cake : undefined;
}

/** Words of pans are regular but for these. */
const singularPan = (word: string): string =>
  Object.hasOwn(SINGULARS, word)
    ? (SINGULARS[word] as string)
    : word.length > 3 && /[^s]s$/.test(word)
      ? word.slice(0, -1)
      : word;

const SINGULARS: Readonly<Record<string, string>> = {
  'two-thirds': 'two-thirds',
  dishes: 'dish',
  glasses: 'glass',
  patties: 'patty',
  cavities: 'cavity',
};
