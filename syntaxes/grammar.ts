// Knows which words of a line are coloured before the server has read it; quern.tmLanguage.json is printed from here.
// It refuses to know which ingredient a word means: that needs the whole recipe, and comes as semantic tokens.
// Units, count words, number words and words for how full a measure is are those of the tables the server reads with.
import { BIASES } from '../server/src/measure/bias.ts';
import { COUNT_FORMS } from '../server/src/measure/count-words.ts';
import { NUMBER_WORDS } from '../server/src/measure/number-words.ts';
import { UNITS } from '../server/src/measure/unit.ts';
import type { Dimension } from '../server/src/measure/unit-row.ts';
import { ABOUT } from '../server/src/notation/label-list.ts';
import { PICTURE_ENDINGS } from '../server/src/notation/picture-endings.ts';
import { TAKEN } from '../server/src/notation/takes.ts';
import { OPENERS } from '../server/src/notation/time.ts';
import { SIZE_WORDS } from '../server/src/notation/words.ts';
import { SAYS } from '../server/src/notation/yield.ts';
import { COMPOSITION, FRACTIONS, SHAPES } from './editors/words.ts';

type Capture = { readonly name?: string; readonly patterns?: readonly Rule[] };
type Captures = Readonly<Record<string, Capture>>;
type Rule =
  | { readonly include: string }
  | { readonly match: string; readonly name?: string; readonly captures?: Captures }
  | {
      readonly begin: string;
      readonly end: string;
      readonly name?: string;
      readonly contentName?: string;
      readonly beginCaptures?: Captures;
      readonly endCaptures?: Captures;
      readonly patterns?: readonly Rule[];
    };

const glyph = `[${FRACTIONS}]`;
const digit = `[\\d${FRACTIONS}]`;
// '00 flour' is a flour, not a number.
const one = `(?!00)(?:\\d+\\s\\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d+)?${glyph}?|${glyph})`;
const number = `(?<![\\p{L}\\p{N}.])${one}(?:\\s*[-–]\\s*${one}|\\s+to\\s+${one})?`;
const wordEnd = '(?![\\p{L}\\p{N}])';
// A comment needs a blank before its mark; what a line says ends before that blank.
const lineEnd = '(?=\\s+#|\\s*$)';

/** Words of which one is meant, longer ones first; a single letter keeps its case, longer words do not. */
function anyOf(words: Iterable<string>): string {
  const all = new Set(words);
  const long = [...all].filter((w) => w.length > 1 && !(w.length > 2 && w.endsWith('s') && all.has(w.slice(0, -1))));
  long.sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
  const spelled = long.map((w) => w.replaceAll('.', '\\.').replace(/[ -]/g, '[ -]') + (all.has(`${w}s`) ? 's?' : ''));
  const single = [...all].filter((w) => w.length === 1);
  return [...(spelled.length > 0 ? [`(?i:${spelled.join('|')})`] : []), ...single].join('|');
}

/** The units of a dimension; in the list of ingredients also as they are printed. */
function unitsOf(dimension: Dimension, inList: 'list' | 'sentence'): string {
  return anyOf(
    UNITS.filter((u) => u.dimension === dimension).flatMap((u) => {
      const { symbol, spellings, printed = [], vessel } = u;
      if (inList === 'list') return [symbol, ...spellings, ...printed];
      return vessel === true ? [] : [symbol, ...spellings];
    }),
  );
}

const units = {
  mass: unitsOf('mass', 'sentence'),
  volume: unitsOf('volume', 'sentence'),
  count: anyOf(['extra large', ...SIZE_WORDS, ...COUNT_FORMS]),
  length: unitsOf('length', 'sentence'),
  time: unitsOf('time', 'sentence'),
};

// How cooks print an amount in the list: `2-1/2`, `.5`, `one and one-half`, `a`, `2 or 3`, `3- to 4-lb`.
const words = anyOf(NUMBER_WORDS.filter((w) => w.length > 1));
const figures = `\\d+(?:-|\\s+and\\s+)\\d+/\\d+|\\d+\\s+${glyph}|\\.\\d+|${one}`;
const spelledOut = `(?:an?\\s+)?(?:${words})(?:(?:-|\\s+and\\s+|\\s+)(?:${words}))?(?:\\s+an?(?=\\s))?${wordEnd}(?!-and)`;
const printed = `(?<![\\p{L}\\p{N}.])(?:${figures}|${spelledOut})(?:(?:\\s*-?\\s*[-–—]\\s*|-?\\s+(?:to|or)\\s+)(?:${figures}|(?:${words})${wordEnd}))?`;
const about = anyOf(ABOUT);
const bias = anyOf(BIASES.flatMap((b) => b.words));
const packed = anyOf(BIASES.flatMap((b) => b.words.filter((w) => w.includes('packed'))));
const taken = anyOf(TAKEN);
const printedUnits = {
  mass: unitsOf('mass', 'list'),
  volume: unitsOf('volume', 'list'),
  length: unitsOf('length', 'list'),
};
const printedUnit = `(?:${printedUnits.mass}|${printedUnits.volume}|${printedUnits.length}|${units.count})${wordEnd}\\.?`;
const opensAmount = `(?:(?:${about})\\.?\\s+|~\\s*)?(?:${digit}|\\.\\d|an?\\s|(?:${words})${wordEnd}|(?:${bias})\\s)`;
// An amount may follow: what stands between two is a joint.
const nextAmount = `(?:(?:${about})\\.?\\s+|~)?(?:${digit}|\\.\\d|(?:${words})[\\s-])`;

const takenBefore = `((?:[\\p{L}-]+\\s+){0,3}(?:${taken})(?:\\s*(?:,|&|and)\\s*(?:[\\p{L}-]+\\s+){0,3}(?:${taken}))*)\\s+(of|from)\\s+(?:the\\s+)?(?=${nextAmount}|an?\\s)`;
const aside = `(?:plus|and)\\s+(?:some\\s+)?(?:more|extra)${wordEnd}|for\\s+(?!${nextAmount})\\p{L}`;

const composition = COMPOSITION.join('|');
const field = 'keyword.other.field.quern';
const trialWord = 'keyword.other.trial.quern';
const foodWord = 'keyword.other.food.quern';
// Bold in most themes, and listed as a section by those that know the second.
const partName = 'markup.heading.part.quern entity.name.section.part.quern';
const shapes = SHAPES.join('|');

export const grammar = {
  name: 'Quern',
  scopeName: 'source.quern',
  fileTypes: ['quern'],
  patterns: [
    '#recipe',
    '#part',
    '#step',
    '#field-yield',
    '#field-pan',
    '#field-oven',
    '#field-time',
    '#said-yield',
    '#said-time',
    '#field-tags',
    '#field-from',
    '#field-picture',
    '#field-text',
    '#trial',
    '#trial-measure',
    '#trial-used',
    '#trial-saw',
    '#trial-verdict',
    '#change',
    '#food',
    '#food-names',
    '#food-share',
    '#food-price',
    '#allow',
    '#ingredient',
    '#comment',
  ].map(include),
  repository: {
    comment: {
      match: '(?:^|(?<=\\s))(#).*$',
      name: 'comment.line.number-sign.quern',
      captures: { 1: scope('punctuation.definition.comment.quern') },
    },
    escape: { match: '\\\\(?:#|[\\p{L}\\p{N}]+)', name: 'constant.character.escape.quern' },

    recipe: header('recipe', 'markup.heading.recipe.quern entity.name.section.recipe.quern'),
    part: {
      match: `^\\s*(part)(?:\\s+(?!(?:as|from)\\s)(\\S.*?))??(?:\\s+(as)(?:\\s+(\\S.*?))?|\\s+(from)(?:\\s+((?:(?!\\sfrom\\s).)*?\\.quern)(?:\\s*(:)\\s*(\\S.*?))?)?)?${lineEnd}`,
      captures: {
        1: scope('keyword.control.part.quern'),
        2: scope(partName),
        3: scope('keyword.operator.as.quern'),
        4: scope('support.type.kind.quern'),
        5: scope('keyword.operator.from.quern'),
        6: scope('string.unquoted.file.quern'),
        7: scope('punctuation.separator.part.quern'),
        8: scope(partName),
      },
    },
    step: line('do', 'keyword.control.step.quern', ['#sentence'], 'meta.step.quern'),

    'field-yield': line('yield', field, ['#comment', '#made', '#amount', '#field-value']),
    'field-pan': line('pan', field, ['#comment', '#pan-shape', '#pan-cross', '#amount', '#field-value']),
    'field-oven': line('oven', field, ['#sentence']),
    'field-time': line('time', field, ['#sentence']),
    'said-yield': line(
      inEitherCase(SAYS.keys()),
      field,
      ['#comment', '#made', '#amount', '#field-value'],
      undefined,
      '(?=\\s*:?\\s+(?:about\\s+)?\\d)',
    ),
    'said-time': line(inEitherCase(OPENERS), field, ['#sentence'], undefined, '(?=\\s*:|\\s+(?:time|in|about|\\d))'),
    'field-tags': line('tags', field, ['#comment', '#separator', '#list-item']),
    'field-from': {
      match: `^\\s*(from)(?:\\s+(\\S.*?))?${lineEnd}`,
      captures: { 1: scope(field), 2: scope('string.unquoted.file.quern') },
    },
    'field-picture': {
      match: `^\\s*(picture)(?:\\s+(\\S.*?\\.(?i:${PICTURE_ENDINGS.join('|')}))(?:\\s*(,)\\s*(\\S.*?)?)?)?${lineEnd}`,
      captures: {
        1: scope(field),
        2: scope('string.unquoted.file.quern'),
        3: scope('punctuation.separator.picture.quern'),
        4: scope('string.unquoted.field.quern'),
      },
    },
    'field-text': line('by|serve|note|source', field, ['#comment', '#field-value']),
    'field-value': { match: `\\S.*?${lineEnd}`, name: 'string.unquoted.field.quern' },
    'list-item': { match: `[^\\s,#][^,]*?(?=\\s*,|\\s+#|\\s*$)`, name: 'string.unquoted.field.quern' },
    // What is made is named by its noun, though it be a count word: `12 squares`.
    made: {
      match: `(${number})\\s+((?:${units.count})${wordEnd}.*?)${lineEnd}`,
      captures: { 1: scope('constant.numeric.amount.quern'), 2: scope('string.unquoted.field.quern') },
    },
    'pan-shape': { match: `\\b(?:${shapes})\\b`, name: 'support.constant.pan.quern' },
    'pan-cross': { match: '(?<=\\s)x(?=\\s)', name: 'keyword.operator.by.quern' },
    separator: { match: ',', name: 'punctuation.separator.list.quern' },

    ingredient: {
      begin: `^\\s*(?:(optional)(?=\\s|$)|(?=${opensAmount}|(?:${units.count}|${printedUnits.volume})\\.?\\s|to taste${wordEnd}|as needed${wordEnd}|${takenBefore}))`,
      beginCaptures: { 1: scope('storage.modifier.optional.quern') },
      end: '$',
      name: 'meta.ingredient.quern',
      patterns: [include('#ingredient-parts')],
    },
    'ingredient-parts': {
      patterns: [
        '#comment',
        '#escape',
        '#free-amount',
        '#taken',
        '#printed-amount',
        '#amount',
        '#equals',
        '#from-amount',
        '#joint',
        '#of-amount',
        '#each-of',
        '#another-item',
        '#amount-behind',
        '#preparation',
        '#aside',
        '#amount-again',
        '#ingredient-note',
        '#ingredient-name',
      ].map(include),
    },
    'free-amount': {
      match: `(?<![\\p{L}\\p{N}])(?:to taste|as needed)${wordEnd}`,
      name: 'constant.language.amount.quern',
    },
    equals: { match: '=', name: 'keyword.operator.equals.quern' },
    'from-amount': {
      match: `(?<=\\s)(from|for)(?=\\s+(?:about\\s+)?${digit})`,
      name: 'keyword.operator.from.quern',
    },
    // `juice of`, `finely grated zest and juice of`
    taken: {
      match: `\\G\\s*${takenBefore}`,
      captures: { 1: scope('support.constant.take.quern'), 2: scope('keyword.operator.of.quern') },
    },
    'printed-amount': {
      patterns: [
        printedMeasure(printedUnits.mass, 'mass'),
        printedMeasure(printedUnits.volume, 'volume'),
        printedMeasure(units.count, 'count'),
        {
          match: `(${printed})[\\s-]*(${printedUnits.length})${wordEnd}`,
          captures: { 1: scope('constant.numeric.length.quern'), 2: scope('keyword.other.unit.length.quern') },
        },
        {
          match: `(?<![\\p{L}\\p{N}])(?:(?:${about})\\.?|~)(?=\\s*${nextAmount})`,
          name: 'keyword.operator.about.quern',
        },
        // What holds one, behind its size; one that is meant, at the start.
        {
          match: `(?<=^|[\\d\\s)-])(?:(${bias})\\s+)?(${units.count}|${printedUnits.volume})${wordEnd}(?=\\.?\\s+(?:of\\s+)?[\\p{L}\\d(])`,
          captures: { 1: scope('support.constant.fill.quern'), 2: scope('keyword.other.unit.count.quern') },
        },
        { match: `\\((${packed})\\)|(?<=\\s)(${packed})(?=\\s)`, name: 'support.constant.fill.quern' },
        { match: `(?:${printed})(?![\\p{L}\\p{N}])(?!\\s*%|,\\d)`, name: 'constant.numeric.amount.quern' },
      ],
    },
    // `plus 2 tbsp`, `or 2 cups fresh peas`, `/8 oz`
    joint: {
      match: `(?<=\\s)(?:plus|and|or|to|x|[+&×])(?=\\s*${nextAmount})|(?<=\\S)\\s*/(?=\\s*${digit})|(?<=[\\d½])\\s*[x×](?=\\s*${digit})`,
      name: 'keyword.operator.joint.quern',
    },
    // `each of ginger and cloves`
    'each-of': { match: `(?<=\\s)each(?=(?:\\s+of)?\\s+\\p{L})`, name: 'keyword.operator.each.quern' },
    // `, or 2 cups fresh peas`
    'another-item': {
      match: `(,)\\s*(or|plus|and|[+&])(?=\\s+${nextAmount})`,
      captures: { 1: scope('punctuation.separator.preparation.quern'), 2: scope('keyword.operator.joint.quern') },
    },
    // `, 15 lbs. each`
    'amount-behind': {
      match: `(,)\\s*(?:(${about})\\.?\\s+)?(${printed})[\\s-]*(${printedUnit})(?:\\s+(each))?(?=\\s*(?:[,(]|\\s#|$))`,
      captures: {
        1: scope('punctuation.separator.preparation.quern'),
        2: scope('keyword.operator.about.quern'),
        3: scope('constant.numeric.amount.quern'),
        4: scope('keyword.other.unit.quern'),
        5: scope('keyword.operator.each.quern'),
      },
    },
    'of-amount': { match: `(?<=\\s)of(?=\\s)`, name: 'keyword.operator.of.quern' },
    preparation: {
      begin: ',',
      beginCaptures: { 0: scope('punctuation.separator.preparation.quern') },
      end: `(?=\\(|\\s+#|\\s+from\\s+(?:about\\s+)?${digit}|$)`,
      contentName: 'meta.preparation.quern',
      patterns: [include('#escape')],
    },
    // `plus more for dusting`, `for frying`: as much a remark as what follows a comma.
    aside: {
      begin: `(?<=\\s)(?=${aside})`,
      end: `(?=\\(|\\s+#|$)`,
      contentName: 'meta.preparation.quern',
      patterns: [include('#escape')],
    },
    // A bracket that holds only an amount: the same again.
    'amount-again': {
      begin: `(\\()(?=(?>${nextAmount}|(?>${printedUnit})|\\d|(?:each|total|or|in|all|to|from)${wordEnd}|[\\s=/;,.–-])++\\))`,
      beginCaptures: { 1: scope('punctuation.definition.amount.begin.quern') },
      end: '\\)',
      endCaptures: { 0: scope('punctuation.definition.amount.end.quern') },
      patterns: ['#printed-amount', '#amount', '#equals', '#joint'].map(include),
    },
    'ingredient-note': {
      begin: '\\(',
      beginCaptures: { 0: scope('punctuation.definition.note.begin.quern') },
      end: '(\\))|(?=\\s+#|$)',
      endCaptures: { 1: scope('punctuation.definition.note.end.quern') },
      contentName: 'string.unquoted.note.quern',
    },
    'ingredient-name': {
      match: `[^\\s,(=#\\\\/][^,(=]*?(?=\\s*[,(=]|\\s+#|\\s+(?:from|for)\\s+(?:about\\s+)?${digit}|\\s+(?:${aside})|\\s+(?:plus|and|or|[+&])\\s+${nextAmount}|\\s*/\\s*${digit}|\\s*$)`,
      name: 'variable.other.ingredient.quern',
    },

    trial: {
      match: `^\\s*(trial)(?:\\s+(\\d{4}-\\d{2}-\\d{2}))?(?:\\s+(by)(?:\\s+(\\S.*?))?)?${lineEnd}`,
      captures: {
        1: scope('keyword.control.trial.quern'),
        2: scope('constant.numeric.date.quern'),
        3: scope('keyword.operator.by.quern'),
        4: scope('string.unquoted.tester.quern'),
      },
    },
    'trial-measure': line('took|started|reached|weighed', trialWord, ['#sentence']),
    'trial-used': {
      begin: '^\\s*(used)(?=\\s|$)',
      beginCaptures: { 1: scope(trialWord) },
      end: '$',
      patterns: [
        {
          match: `(?<=\\s)(in)\\s+(\\S.*?)${lineEnd}`,
          captures: { 1: scope('keyword.operator.in.quern'), 2: scope('entity.name.section.part.quern') },
        },
        ...['#comment', '#escape', '#free-amount', '#amount'].map(include),
        {
          match: `[^\\s,(=#\\\\].*?(?=\\s+in\\s|\\s+#|\\s*$)`,
          name: 'variable.other.ingredient.quern',
        },
      ],
    },
    'trial-saw': line('saw|tested', trialWord, ['#comment', '#field-value']),
    'trial-verdict': {
      match: `^\\s*(verdict)(?:\\s+(keep|change|reject)${wordEnd})?`,
      captures: { 1: scope(trialWord), 2: scope('constant.language.verdict.quern') },
    },

    change: line('swap|drop|add', 'keyword.control.change.quern', ['#ingredient-parts'], 'meta.change.quern'),

    food: header('food', 'entity.name.type.food.quern'),
    'food-names': line('like|also|contains', foodWord, ['#comment', '#separator', '#list-item']),
    'food-share': line(`${composition}|trim`, foodWord, ['#comment', '#amount'], undefined, `(?=\\s+${digit})`),
    'food-price': line('price', foodWord, ['#comment', '#per', '#amount'], undefined, `(?=\\s+${digit})`),
    per: { match: `(?<=\\s)per${wordEnd}`, name: 'keyword.operator.per.quern' },

    allow: {
      match: `^\\s*(allow)(?:\\s+(?!because\\s)([a-z][a-z-]*))?(?:\\s+(because)(?:\\s+(\\S.*?))?)?${lineEnd}`,
      captures: {
        1: scope('keyword.control.allow.quern'),
        2: scope('support.constant.finding.quern'),
        3: scope('keyword.operator.because.quern'),
        4: scope('string.unquoted.reason.quern'),
      },
    },

    sentence: {
      patterns: ['#comment', '#mention', '#escape', '#portion', '#amount'].map(include),
    },
    mention: {
      match: '(\\[)([^\\]]+)(\\])',
      captures: {
        1: scope('punctuation.definition.mention.begin.quern'),
        2: scope('variable.other.mention.quern'),
        3: scope('punctuation.definition.mention.end.quern'),
      },
    },
    portion: {
      match:
        '(?i)(?<![\\p{L}\\p{N}])(?:half(?: of)? the|(?:a (?:third|quarter|fifth|sixth|eighth|tenth|little|few)|two[ -]thirds|three[ -]quarters|the rest|the remainder) of the|the remaining|all(?: of)? the)(?![\\p{L}\\p{N}])',
      name: 'constant.language.portion.quern',
    },

    // The order matters: '4 C' is a temperature before it is four of something.
    amount: {
      patterns: [
        {
          match: `(?<![\\p{L}\\p{N}.])(\\d+,\\d+)\\s*(${units.mass}|${units.volume}|%|°?[CF])${wordEnd}`,
          captures: { 1: scope('invalid.illegal.decimal-comma.quern'), 2: scope('keyword.other.unit.quern') },
        },
        {
          match: `(?<![\\p{L}\\p{N}])(gas)\\s+(\\d+(?:/\\d+)?|[½¼])${wordEnd}`,
          captures: {
            1: scope('keyword.other.unit.temperature.quern'),
            2: scope('constant.numeric.temperature.quern'),
          },
        },
        {
          match: `(${number.replaceAll(one, `[-−]?${one}`)})\\s*(°\\s?[CF]?|[CF])${wordEnd}(?:\\s+(fan)${wordEnd})?`,
          captures: {
            1: scope('constant.numeric.temperature.quern'),
            2: scope('keyword.other.unit.temperature.quern'),
            3: scope('keyword.other.unit.temperature.quern'),
          },
        },
        measured(units.time, 'constant.numeric.time.quern', 'keyword.other.unit.time.quern'),
        {
          match: `(?<![\\p{L}\\p{N}])overnight${wordEnd}`,
          name: 'constant.language.time.quern',
        },
        {
          match: `(${number})\\s*(%)`,
          captures: { 1: scope('constant.numeric.share.quern'), 2: scope('keyword.other.unit.share.quern') },
        },
        measured(units.mass, 'constant.numeric.amount.quern', 'keyword.other.unit.mass.quern'),
        measured(units.volume, 'constant.numeric.amount.quern', 'keyword.other.unit.volume.quern'),
        measured(units.count, 'constant.numeric.amount.quern', 'keyword.other.unit.count.quern'),
        {
          // '2 in the pan' is no length.
          match: `(${number})\\s*(${units.length})${wordEnd}(?!\\s+(?:the|a|an)\\s)`,
          captures: { 1: scope('constant.numeric.length.quern'), 2: scope('keyword.other.unit.length.quern') },
        },
        {
          match: `(?<![\\p{L}\\p{N}])about(?=\\s+${digit})`,
          name: 'keyword.operator.about.quern',
        },
        { match: `${number}(?![\\p{L}\\p{N}])`, name: 'constant.numeric.amount.quern' },
      ],
    },
  },
};

/** The same colours in a fence marked `quern` of a Markdown file. */
export const markdownGrammar = {
  scopeName: 'markdown.quern.codeblock',
  injectionSelector: 'L:text.html.markdown',
  patterns: [include('#fence')],
  repository: {
    fence: {
      begin: '(^|\\G)(\\s*)(`{3,}|~{3,})\\s*(?i:(quern)(?=\\s|$))[^`]*$',
      beginCaptures: {
        3: scope('punctuation.definition.markdown'),
        4: scope('fenced_code.block.language.markdown'),
      },
      end: '(^|\\G)(\\2|\\s{0,3})(\\3)\\s*$',
      endCaptures: { 3: scope('punctuation.definition.markdown') },
      name: 'markup.fenced_code.block.markdown',
      patterns: [
        {
          begin: '(^|\\G)(\\s*)(.*)',
          while: '(^|\\G)(?!\\s*([`~]{3,})\\s*$)',
          contentName: 'meta.embedded.block.quern',
          patterns: [include('source.quern')],
        },
      ],
    },
  },
};

export function printGrammar(value: object): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}

function scope(name: string): Capture {
  return { name };
}

function include(name: string): { readonly include: string } {
  return { include: name };
}

/** A line that opens something: its word, a name, and the kind it is meant to be. */
function header(word: string, nameScope: string): Rule {
  return {
    match: `^\\s*(${word})(?:\\s+(?!as\\s)(\\S.*?))??(?:\\s+(as)(?:\\s+(\\S.*?))?)?${lineEnd}`,
    captures: {
      1: scope(`keyword.control.${word}.quern`),
      2: scope(nameScope),
      3: scope('keyword.operator.as.quern'),
      4: scope('support.type.kind.quern'),
    },
  };
}

/** Words that may open a line as a title does: `Serves`, `serves`. */
function inEitherCase(words: Iterable<string>): string {
  return [...words].map((word) => `[${word.charAt(0).toUpperCase()}${word.charAt(0)}]${word.slice(1)}`).join('|');
}

/** A line that starts with one of the words, and whose rest is coloured by the rules given. */
function line(words: string, wordScope: string, rest: readonly string[], name?: string, after = '(?=\\s|$)'): Rule {
  return {
    begin: `^\\s*(${words})${after}`,
    beginCaptures: { 1: scope(wordScope) },
    end: '$',
    ...(name === undefined ? {} : { name }),
    patterns: rest.map(include),
  };
}

function measured(unit: string, numberScope: string, unitScope: string): Rule {
  return {
    match: `(${number})\\s*(${unit})${wordEnd}`,
    captures: { 1: scope(numberScope), 2: scope(unitScope) },
  };
}

/** An amount of the list with its unit; a hyphen, a point and how full the measure is may stand with them. */
function printedMeasure(unit: string, dimension: 'mass' | 'volume' | 'count'): Rule {
  return {
    match: `(${printed}|(?<![\\p{L}\\p{N}])an?(?=\\s))[\\s-]*(?:\\(?(${bias})\\)?\\s+)?(?:of\\s+)?(${unit})${wordEnd}\\.?`,
    captures: {
      1: scope('constant.numeric.amount.quern'),
      2: scope('support.constant.fill.quern'),
      3: scope(`keyword.other.unit.${dimension}.quern`),
    },
  };
}
