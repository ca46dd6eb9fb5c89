/**
 * Knows how the words for a food vary without changing it: plurals, British and American spelling, accents, hyphens.
 * Refuses to know which foods there are.
 */
import { onceByText } from '../measure/once.ts';

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
  const plain = compoundsOf(
    plainText(text).replace(SIZED, ', sized ').replace(AND_ITS, ', with ').replace(KIND_OF, '').replace(EITHER, ' or '),
  );
  const pieces = PAUSE.test(plain)
    ? plain
        .split(PAUSES)
        .map(tokensOf)
        .filter((words) => words.length > 0)
    : [tokensOf(plain)];
  const full = pieces[0] ?? [];
  const cut = full.findIndex((word, index) => index > 0 && CUTS.has(word) && !isAdjective(full, index));
  if (cut <= 0) return { head: full, tails: pieces.slice(1), full };
  return { head: full.slice(0, cut), tails: [full.slice(cut), ...pieces.slice(1)], full };
}

/** `butter the size of an egg`. */
const SIZED = / (?:about )?(?:the )?(?:size|bigness|weight|thickness) of /;
/** `oysters and their liquor`, `celery and leaves`. */
const AND_ITS = / (?:and|&) (?:(?:its|their) |(?=(?:the )?(?:liquor|liquid|leaves)(?:$|[,;(])))/;

/** `flounder/sole`. */
const EITHER = /(?<=\p{L}{3}) ?\/ ?(?=\p{L}{3})/gu;

/** `a mixture of berries`. */
const KIND_OF =
  /\b(?:mixture|mix|combination|assortment|selection|medley|variety|kinds?|sorts?|types?|choice) of (?=\S)/;

/** Without the compounds that say only how it was raised, made or sold, by whatever: `corn-fed`, `ready-to-bake`, `hormone-free`. */
function compoundsOf(plain: string): string {
  if (!COMPOUND.test(plain)) return plain;
  return plain
    .replace(PACKED, '$2, in $1')
    .replace(RAISED, ' ')
    .replace(READY, ' ')
    .replace(WITHOUT, ' ')
    .replace(ON_OFF, '$1$2');
}

const COMPOUND = /-|\b(?:fed|reared|raised|caught|ripened|grown|picked|free)\b/;
const RAISED =
  /\b\p{L}+[- ](?:fed|reared|raised|caught|ripened|grown|picked)\b|\b\p{L}+(?:-\p{L}+)*-(?:pressed|aged|milled|rolled|bottled|packaged|certified|inspected|imported|trimmed|washed|thin|thick|sized?)\b/gu;
/** `oil-packed tuna`. */
const PACKED = /\b(oil|water|brine|juice|syrup|salt|vinegar)-packed ([^,;()]+)/;
/** `ready-to-eat`, `off-the-bone`. */
const READY = /\b\p{L}+(?:-\p{L}+)*-(?:to|at|from|on-the|off-the|in-the)(?:-\p{L}+)+\b/gu;
const WITHOUT =
  /\b(?:hormone|antibiotic|steroid|pesticide|gmo|nitrate|nitrite|aluminum|aluminium|additive|preservative|bpa|cruelty|cage|chemical|msg|trans[- ]fat|pulp|seed|pit|stone|bone|rind|stem)s?[- ]free\b/g;
/** `head-on`, `skin-off`, `bone-in`: one word, as the book writes it. */
const ON_OFF = /\b(\p{L}+)-(on|in|off|out)\b(?!-)/gu;

/** `center cut pork chops`, `French-cut beans`, where nothing follows of how it is cut. */
const isAdjective = (words: readonly string[], at: number): boolean =>
  words[at] === 'cut' && at < words.length - 1 && !HOW_CUT.test(words[at + 1] ?? '');

const HOW_CUT =
  /^(?:in|into|to|up|on|from|off|across|along|about|at|as|by|the|a|an|and|or|with|for|if|thin|thick|small|fine|large|big|long|short|lengthwise|crosswise|diagonal|julienne|half|quarter|piece|bite|coarse|rough|one|two|three|four|five|six|eight|\d.*|.*ly)$/;

const PAUSE = /[,;:()[\]{}|–—-]/;
const PAUSES = /[,;:()[\]{}|]+|\s[–—-]\s/;

/** The key under which a name is kept: its words in the singular, one spelling, one space between. */
export function keyOf(name: string): string {
  return tokensOf(plainText(name)).join(' ');
}

function plainText(text: string): string {
  let plain = text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT) : text;
  plain = plain.toLowerCase();
  if (NOT_ASCII.test(plain)) {
    plain = plain
      .normalize('NFD')
      .replace(/\p{M}+|[’‘ʼ]/gu, '')
      .replace(/œ/g, 'oe')
      .replace(/ß/g, 'ss');
  }
  return plain.includes("'") || plain.includes('`') ? plain.replace(/['`]/g, '') : plain;
}

function tokensOf(plain: string): string[] {
  return spellAll(plain.split(NOT_ASCII.test(plain) ? NO_WORD : NO_ASCII_WORD));
}

function spellAll(raw: readonly string[]): string[] {
  const words: string[] = [];
  for (let at = 0; at < raw.length; at++) {
    const word = raw[at];
    if (word === undefined || word === '') continue;
    const joined = JOINS.get(word)?.get(raw[at + 1] ?? '');
    if (joined !== undefined) {
      words.push(joined);
      at++;
      continue;
    }
    const one = spellingOf(word);
    if (one.includes(' ')) words.push(...one.split(' '));
    else words.push(one);
  }
  return words;
}

const NOT_ASCII = /[^\x00-\x7f]/;
const NO_ASCII_WORD = /[^a-z0-9&]+/;
const NO_WORD = /[^\p{L}\p{N}&]+/u;

/** Words already read: the names of the book and the lines of a folder use the same few thousand. */
const spellingOf = onceByText(
  (word: string): string => {
    const one = SPELLINGS.get(word) ?? singular(word);
    return SPELLINGS.get(one) ?? one;
  },
  { texts: 20_000, letters: 30 },
);

/** Pairs of words that mean one thing, so that neither half is read alone. */
const JOINS: ReadonlyMap<string, ReadonlyMap<string, string>> = joinTable({
  'bone in': 'bonein',
  'skin on': 'skinon',
  'head on': 'headon',
  'shell on': 'shellon',
  'tail on': 'tailon',
  'tails on': 'tailon',
  'rind on': 'rindon',
  'skin off': 'skinoff',
  'tail off': 'tailsoff',
  'shell off': 'shelloff',
  'bone out': 'boneout',
  'no boil': 'noboil',
  'no bake': 'noboil',
  'no cook': 'noboil',
  'free range': 'freerange',
  'cage free': 'freerange',
  'gluten free': 'glutenfree',
  'dairy free': 'dairyfree',
  'sugar free': 'sugarfree',
  'egg free': 'eggfree',
  'salt free': 'unsalted',
  'full fat': 'fullfat',
  'full cream': 'fullfat',
  'fat free': 'nonfat',
  'non fat': 'nonfat',
  'good quality': 'goodquality',
  'high quality': 'goodquality',
  'top quality': 'goodquality',
  'ice cold': 'icecold',
  'orange blossom': 'orangeblossom',
  'room temperature': 'roomtemperature',
  'left over': 'leftover',
  'stone ground': 'stoneground',
  'half cooked': 'halfcooked',
  'part cooked': 'halfcooked',
  'par cooked': 'halfcooked',
  'partly cooked': 'halfcooked',
  'partially cooked': 'halfcooked',
  'under cooked': 'halfcooked',
  'store bought': 'storebought',
  'shop bought': 'storebought',
  'home made': 'homemade',
  'corn meal': 'cornmeal',
  'cocoa nut': 'coconut',
  'cocoa nuts': 'coconut',
  'ox tail': 'oxtail',
  'ox tails': 'oxtail',
  'whole wheat': 'wholewheat',
  'whole grain': 'wholegrain',
  'all purpose': 'allpurpose',
  'general purpose': 'allpurpose',
  'self raising': 'selfraising',
  'self rising': 'selfraising',
  'sun dried': 'sundried',
  'freeze dried': 'freezedried',
  'semi skimmed': 'semiskimmed',
  'semi skim': 'semiskimmed',
  'loosely packed': 'loose',
  'lightly packed': 'loose',
});

function joinTable(pairs: Readonly<Record<string, string>>): ReadonlyMap<string, ReadonlyMap<string, string>> {
  const table = new Map<string, Map<string, string>>();
  for (const [pair, joined] of Object.entries(pairs)) {
    const [first = '', second = ''] = pair.split(' ');
    const seconds = table.get(first) ?? new Map<string, string>();
    table.set(first, seconds.set(second, joined));
  }
  return table;
}

/** One spelling of each word, looked up before and after the plural is off. */
const SPELLINGS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    '&': 'and',
    n: 'and',
    frz: 'frozen',
    fzn: 'frozen',
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
    lowfat: 'low fat',
    selfrising: 'selfraising',
    skim: 'skimmed',
    soya: 'soy',
    soymilk: 'soy milk',
    catsup: 'ketchup',
    sirup: 'syrup',
    cocoanut: 'coconut',
    shalot: 'shallot',
    sweetpotato: 'sweet potato',
    oleomargarine: 'margarine',
    oleo: 'margarine',
    veg: 'vegetable',
    haldi: 'turmeric',
    pasteurized: 'pasteurised',
    crystallized: 'crystallised',
    caramelized: 'caramelised',
    iodized: 'iodised',
    tinned: 'canned',
    dehydrated: 'dried',
    lite: 'light',
    castor: 'caster',
    pitta: 'pita',
    houmous: 'hummus',
    matzoh: 'matzo',
    matzah: 'matzo',
    matza: 'matzo',
    matzoth: 'matzo',
    matzot: 'matzo',
    matsah: 'matzo',
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
    parsly: 'parsley',
    parsely: 'parsley',
    celary: 'celery',
    cellery: 'celery',
    brocoli: 'broccoli',
    broccolli: 'broccoli',
    cauliflour: 'cauliflower',
    rasberry: 'raspberry',
    rasberrie: 'raspberry',
    rasberries: 'raspberry',
    strawbery: 'strawberry',
    blueberrie: 'blueberry',
    mayonaise: 'mayonnaise',
    mayonnaisse: 'mayonnaise',
    parmesean: 'parmesan',
    mozzerella: 'mozzarella',
    marscapone: 'mascarpone',
    vanila: 'vanilla',
    vannila: 'vanilla',
    cardamon: 'cardamom',
    cardamum: 'cardamom',
    carraway: 'caraway',
    corriander: 'coriander',
    oregeno: 'oregano',
    thime: 'thyme',
    rosemarie: 'rosemary',
    worchestershire: 'worcestershire',
    worchester: 'worcestershire',
    avacado: 'avocado',
    bannana: 'banana',
    jalepeno: 'jalapeno',
    chesnut: 'chestnut',
    spinage: 'spinach',
    spinnage: 'spinach',
    shallott: 'shallot',
    escallop: 'scallop',
    vermicella: 'vermicelli',
    spagetti: 'spaghetti',
    spagheti: 'spaghetti',
    macarroni: 'macaroni',
    buttermik: 'buttermilk',
    margerine: 'margarine',
    tortila: 'tortilla',
    consome: 'consomme',
    catchup: 'ketchup',
    sallad: 'salad',
    pistache: 'pistachio',
    lettice: 'lettuce',
    letuce: 'lettuce',
    onoin: 'onion',
    mushroon: 'mushroom',
    tunip: 'turnip',
    rutabega: 'rutabaga',
    peper: 'pepper',
    peppar: 'pepper',
    nutmet: 'nutmeg',
    alspice: 'allspice',
    sugr: 'sugar',
    // As cards print them.
    pdr: 'powdered',
    powd: 'powdered',
    pwd: 'powdered',
    pwdr: 'powdered',
    chpd: 'chopped',
    grd: 'ground',
    frzn: 'frozen',
    froz: 'frozen',
    cnd: 'canned',
    marg: 'margarine',
    choc: 'chocolate',
    cinn: 'cinnamon',
    bkg: 'baking',
    evap: 'evaporated',
    parm: 'parmesan',
    mozz: 'mozzarella',
    chix: 'chicken',
    brn: 'brown',
    bnls: 'boneless',
    skls: 'skinless',
    unsltd: 'unsalted',
    swt: 'sweet',
    conf: 'confectioner',
    confec: 'confectioner',
    gran: 'granulated',
    veget: 'vegetable',
    dehy: 'dried',
    dehyd: 'dried',
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
    kiwis: 'kiwi',
    zucchinis: 'zucchini',
    kohlrabis: 'kohlrabi',
    chillis: 'chilli',
    chilis: 'chilli',
    enokis: 'enoki',
    salamis: 'salami',
    chapatis: 'chapati',
    rotis: 'roti',
    puris: 'puri',
    litchis: 'litchi',
    raviolis: 'ravioli',
    tortellinis: 'tortellini',
    pepperoncinis: 'pepperoncini',
    pierogis: 'pierogi',
    biscottis: 'biscotti',
    nashis: 'nashi',
    emus: 'emu',
    sloes: 'sloe',
    bries: 'brie',
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

/** A set of words from running text. */
export function wordSet(words: string): ReadonlySet<string> {
  return new Set(words.trim().split(/\s+/));
}

/** Where the name stops and the talk about it starts: `butter for greasing`, `oil plus more`. */
export const CUTS = wordSet(`
  for to plus at in with without such like preferably cut from into about then if per each see as minus until including on than by that which either whether when
`);
