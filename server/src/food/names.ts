/**
 * Knows how the words for a food vary without changing it: plurals, British and American spelling, accents, hyphens.
 * Refuses to know which foods there are.
 */

/** A line is read no further than this; the name of a food is never longer. */
const LONGEST_TEXT = 600;

/** The words of an ingredient line's name: those before the first comma, bracket or `for`, and those after it, piece by piece. */
export interface Phrase {
  readonly head: readonly string[];
  readonly tails: readonly (readonly string[])[];
  /** The whole of what stands before the first comma or bracket, `for` and `in` included. */
  readonly full: readonly string[];
}

/** Reads the words of a phrase, normalised as `keyOf` does it. */
export function readPhrase(text: string): Phrase {
  const pieces = plainText(text)
    .split(/[,;:()[\]{}|]+|\s[–—-]\s/u)
    .map(tokensOf)
    .filter((words) => words.length > 0);
  const full = pieces[0] ?? [];
  const cut = full.findIndex((word, index) => index > 0 && CUTS.has(word));
  const head = cut > 0 ? full.slice(0, cut) : full;
  const rest = cut > 0 ? [full.slice(cut), ...pieces.slice(1)] : pieces.slice(1);
  return { head, tails: rest, full };
}

/** The key under which a name is kept: its words in the singular, one spelling, one space between. */
export function keyOf(name: string): string {
  return tokensOf(plainText(name).replace(/[,;:()[\]{}|]+/gu, ' ')).join(' ');
}

function plainText(text: string): string {
  let plain = text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT) : text;
  plain = plain.toLowerCase();
  if (/[^\x20-\x7e]/.test(plain))
    plain = plain
      .normalize('NFD')
      .replace(/\p{M}+/gu, '')
      .replace(/œ/g, 'oe')
      .replace(/ß/g, 'ss');
  return plain.replace(/['’‘ʼ`]/gu, '');
}

function tokensOf(plain: string): string[] {
  const words: string[] = [];
  for (const [word] of plain.replace(JOINED, (run) => JOINS[run.replace(/[\s-]+/g, ' ')] ?? run).matchAll(WORD)) {
    const spelled = SPELLINGS.get(word) ?? singular(word);
    for (const part of (SPELLINGS.get(spelled) ?? spelled).split(' ')) words.push(part);
  }
  return words;
}

const WORD = /[\p{L}\p{N}]+|&/gu;

/** Pairs of words that mean one thing, so that neither half is read alone. */
const JOINS: Readonly<Record<string, string>> = {
  'bone in': 'bonein',
  'skin on': 'skinon',
  'free range': 'freerange',
  'gluten free': 'glutenfree',
  'dairy free': 'dairyfree',
  'sugar free': 'sugarfree',
  'egg free': 'eggfree',
  'nut free': 'nutfree',
  'full fat': 'fullfat',
  'full cream': 'fullfat',
  'fat free': 'nonfat',
  'non fat': 'nonfat',
  lowfat: 'low fat',
  'good quality': 'goodquality',
  'room temperature': 'roomtemperature',
  'ready to eat': 'readytoeat',
  'store bought': 'storebought',
  'home made': 'homemade',
  'shop bought': 'storebought',
  'deep frying': 'deepfrying',
  'whole wheat': 'wholewheat',
  'whole grain': 'wholegrain',
  'all purpose': 'allpurpose',
  'self raising': 'selfraising',
  'self rising': 'selfraising',
  'sun dried': 'sundried',
  'freeze dried': 'freezedried',
  'day old': 'dayold',
  'pre cooked': 'precooked',
};
const JOINED = new RegExp(
  `\\b(?:${Object.keys(JOINS)
    .map((pair) => pair.replace(' ', '[\\s-]+'))
    .join('|')})\\b`,
  'g',
);

/** One spelling of each word, looked up before and after the plural is off. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '&': 'and',
    n: 'and',
    yoghurt: 'yogurt',
    yoghourt: 'yogurt',
    gelatin: 'gelatine',
    chili: 'chilli',
    chile: 'chilli',
    flavor: 'flavour',
    flavored: 'flavoured',
    unflavored: 'unflavoured',
    flavoring: 'flavouring',
    color: 'colour',
    coloring: 'colouring',
    fiber: 'fibre',
    whiskey: 'whisky',
    lasagna: 'lasagne',
    donut: 'doughnut',
    sulfured: 'sulphured',
    unsulfured: 'unsulphured',
    skim: 'skimmed',
    soya: 'soy',
    soymilk: 'soy milk',
    catsup: 'ketchup',
    pasteurized: 'pasteurised',
    crystallized: 'crystallised',
    caramelized: 'caramelised',
    iodized: 'iodised',
    tinned: 'canned',
    lite: 'light',
    castor: 'caster',
    pitta: 'pita',
    houmous: 'hummus',
    bulghur: 'bulgur',
    burghul: 'bulgur',
    choy: 'choi',
    bok: 'pak',
    portabella: 'portobello',
    crimini: 'cremini',
    phyllo: 'filo',
    breadcrumb: 'bread crumb',
    beansprout: 'bean sprout',
    parmigiana: 'parmesan',
    pureed: 'pureed',
    licorice: 'liquorice',
    brocolli: 'broccoli',
    mozarella: 'mozzarella',
    cinammon: 'cinnamon',
    tumeric: 'turmeric',
    tomatoe: 'tomato',
    potatoe: 'potato',
  }),
);

const IRREGULAR: ReadonlyMap<string, string> = new Map(
  Object.entries({
    leaves: 'leaf',
    loaves: 'loaf',
    halves: 'half',
    calves: 'calf',
    cookies: 'cookie',
    brownies: 'brownie',
    pies: 'pie',
    smoothies: 'smoothie',
    chillies: 'chilli',
    chilies: 'chilli',
    anchovies: 'anchovy',
    quiches: 'quiche',
    brioches: 'brioche',
    geese: 'goose',
    oxen: 'ox',
    roes: 'roe',
    molasses: 'molasses',
    cos: 'cos',
    octopuses: 'octopus',
    lies: 'lie',
  }),
);

/** The singular of an English word by the regular rules and the exceptions that food needs. */
export function singular(word: string): string {
  const odd = IRREGULAR.get(word);
  if (odd !== undefined) return odd;
  if (word.length <= 3 || !word.endsWith('s') || /(?:ss|us|is)$/.test(word)) return word;
  if (word.endsWith('ies')) return word.length > 4 ? `${word.slice(0, -3)}y` : word.slice(0, -1);
  if (/(?:sh|ch|x|ss|zz|o)es$/.test(word)) return word.slice(0, -2);
  return word.slice(0, -1);
}

function wordSet(words: string): ReadonlySet<string> {
  return new Set(words.trim().split(/\s+/));
}

/** Where the name stops and the talk about it starts: `butter for greasing`, `oil plus more`. */
const CUTS = wordSet(`
  for to plus at in with without such like preferably cut from into about then if per each see as minus until including on than by
`);

/** Words that say nothing about what the food is. */
export const IGNORED = wordSet(`
  a an the of some few more extra about approx approximately roughly finely coarsely thinly thickly lightly freshly very well just
  fresh good best goodquality quality premium organic freerange local homemade storebought bought ready readytoeat natural pure real
  cold cool chilled warm warmed hot tepid lukewarm roomtemperature softened hard firm ripe small large medium big little tiny
  extra jumbo thick thin long short heaped heaping level levelled leveled scant generous rounded slightly peeled unpeeled skinned
  skinless boneless bonein skinon trimmed cored pitted stoned deseeded seeded destemmed stemmed hulled shelled podded washed rinsed
  scrubbed cleaned drained patted squeezed beaten whisked separated strained sieved divided optional cut bite sized size inch cm mm
  unwaxed zested unbleached bleached enriched tender young baby thawed defrosted packaged plump bashed bruised split scraped favourite
  favorite brand finest prepared uncooked
`);

/** How a food is cut or handled: what a measure of it may depend on. */
export const FORMS = wordSet(`
  chopped diced cubed sliced grated shredded minced crushed mashed pureed melted sifted packed loose crumbled ground halved quartered
  julienned slivered flaked torn whole whipped spooned frozen toasted cooked
`);

/** Forms made after measuring when they stand after the comma: `1 cup flour, sifted` is not `1 cup sifted flour`. */
export const MADE_AFTER = wordSet('sifted melted whipped toasted cooked');

/** Words that name another food unless the book has it under the longer name. */
export const CHANGES = wordSet(`
  canned dried smoked skimmed nonfat light reduced low glutenfree dairyfree sugarfree eggfree vegan vegetarian powdered powder pickled
  candied crystallised evaporated condensed instant imitation sundried freezedried cured salted sweetened flavoured
`);

/** A food washed and dried is not a dried food. */
export const WASHED = wordSet('washed rinsed soaked spun patted drained scrubbed cleaned wiped');
