// The scopes are those of the naming conventions for TextMate grammars (macromates.com/manual/en/language_grammars),
// which every colour theme knows. The lines are those of the notation's own tables.

import { readFileSync, writeFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { COUNT_FORMS } from '../../server/src/measure/count-words.ts';
import { NUMBER_WORDS } from '../../server/src/measure/number-words.ts';
import { UNITS } from '../../server/src/measure/unit.ts';
import { grammar, markdownGrammar, printGrammar } from '../../syntaxes/grammar.ts';
import { loadTokenizer, type Token } from './tokenize.ts';

const syntaxes = new URL('../../syntaxes/', import.meta.url);

describe('the printed grammars', () => {
  it.each([
    ['quern.tmLanguage.json', grammar],
    ['quern-markdown.tmLanguage.json', markdownGrammar],
  ])('%s is what grammar.ts says', (name, source) => {
    const file = new URL(name, syntaxes);
    const printed: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (!isDeepStrictEqual(printed, source)) writeFileSync(file, printGrammar(source));
    expect(printed, `${name} was stale and has been written anew: format it, read it and commit it`).toEqual(source);
  });
});

const tokenize = await loadTokenizer();

const number = 'constant.numeric.amount';
const mass = 'keyword.other.unit.mass';
const volume = 'keyword.other.unit.volume';
const count = 'keyword.other.unit.count';
const name = 'variable.other.ingredient';
const field = 'keyword.other.field';
const value = 'string.unquoted.field';
const temperature = 'constant.numeric.temperature';
const degrees = 'keyword.other.unit.temperature';
const time = 'constant.numeric.time';
const timeUnit = 'keyword.other.unit.time';
const step = 'keyword.control.step';
const portion = 'constant.language.portion';
const section = 'entity.name.section.part';
const joint = 'keyword.operator.joint';
const comma = 'punctuation.separator.preparation';
const preparation = '';

const lines: Record<string, readonly Token[]> = {
  'recipe Plum custard slice': [
    ['recipe', 'keyword.control.recipe'],
    ['Plum custard slice', 'entity.name.section.recipe'],
  ],
  'recipe Rye loaf as lean bread # new': [
    ['recipe', 'keyword.control.recipe'],
    ['Rye loaf', 'entity.name.section.recipe'],
    ['as', 'keyword.operator.as'],
    ['lean bread', 'support.type.kind'],
    ['#', 'punctuation.definition.comment'],
    ['new', 'comment.line.number-sign'],
  ],
  recipe: [['recipe', 'keyword.control.recipe']],
  'recipes are not a keyword': [['recipes are not a keyword', '']],
  '  by      Harbour Lane test kitchen': [
    ['by', field],
    ['Harbour Lane test kitchen', value],
  ],
  '  yield   12 squares': [
    ['yield', field],
    ['12', number],
    ['squares', value],
  ],
  '  pan     12 x round 7 x 3 cm': [
    ['pan', field],
    ['12', number],
    ['x', 'keyword.operator.by'],
    ['round', 'support.constant.pan'],
    ['7', number],
    ['x', 'keyword.operator.by'],
    ['3', 'constant.numeric.length'],
    ['cm', 'keyword.other.unit.length'],
  ],
  '  oven    160 C fan': [
    ['oven', field],
    ['160', temperature],
    ['C', degrees],
    ['fan', degrees],
  ],
  '  oven gas 4': [
    ['oven', field],
    ['gas', degrees],
    ['4', temperature],
  ],
  '  tags    autumn, supper club': [
    ['tags', field],
    ['autumn', value],
    [',', 'punctuation.separator.list'],
    ['supper club', value],
  ],
  '  note    Squares, 12 of them, \\# must cut clean.  # why': [
    ['note', field],
    ['Squares, 12 of them, \\# must cut clean.', value],
    ['#', 'punctuation.definition.comment'],
    ['why', 'comment.line.number-sign'],
  ],
  'from base.quern': [
    ['from', field],
    ['base.quern', 'string.unquoted.file'],
  ],
  'part base as sweet paste': [
    ['part', 'keyword.control.part'],
    ['base', section],
    ['as', 'keyword.operator.as'],
    ['sweet paste', 'support.type.kind'],
  ],
  'part juices from the pan': [
    ['part', 'keyword.control.part'],
    ['juices from the pan', section],
  ],
  'part juices from the pan from roast.quern': [
    ['part', 'keyword.control.part'],
    ['juices from the pan', section],
    ['from', 'keyword.operator.from'],
    ['roast.quern', 'string.unquoted.file'],
  ],
  '  Serves 4': [
    ['Serves', field],
    ['4', number],
  ],
  '  Prep: 20 min': [
    ['Prep', field],
    [':', ''],
    ['20', 'constant.numeric.time'],
    ['min', 'keyword.other.unit.time'],
  ],
  '  time    20 min at work': [
    ['time', field],
    ['20', 'constant.numeric.time'],
    ['min', 'keyword.other.unit.time'],
    ['at work', ''],
  ],
  'part crust from pastry/base.quern : sweet crust': [
    ['part', 'keyword.control.part'],
    ['crust', section],
    ['from', 'keyword.operator.from'],
    ['pastry/base.quern', 'string.unquoted.file'],
    [':', 'punctuation.separator.part'],
    ['sweet crust', section],
  ],
  '  240 g     plain flour': [
    ['240', number],
    ['g', mass],
    ['plain flour', name],
  ],
  '  500 g 00 flour': [
    ['500', number],
    ['g', mass],
    ['00 flour', name],
  ],
  '  1 1/2 cups butter, cold and cubed (unsalted)': [
    ['1 1/2', number],
    ['cups', volume],
    ['butter', name],
    [',', comma],
    ['cold and cubed', preparation],
    ['(', 'punctuation.definition.note.begin'],
    ['unsalted', 'string.unquoted.note'],
    [')', 'punctuation.definition.note.end'],
  ],
  '  2½ tsp crème fraîche': [
    ['2½', number],
    ['tsp', volume],
    ['crème fraîche', name],
  ],
  '  about 40–45 ml ice water': [
    ['about', 'keyword.operator.about'],
    ['40–45', number],
    ['ml', volume],
    ['ice water', name],
  ],
  '  40 to 45 g sugar': [
    ['40 to 45', number],
    ['g', mass],
    ['sugar', name],
  ],
  '  2 cups = 476 g  double cream': [
    ['2', number],
    ['cups', volume],
    ['=', 'keyword.operator.equals'],
    ['476', number],
    ['g', mass],
    ['double cream', name],
  ],
  '  500 g     plums, halved and stoned from 560 g': [
    ['500', number],
    ['g', mass],
    ['plums', name],
    [',', comma],
    ['halved and stoned', preparation],
    ['from', 'keyword.operator.from'],
    ['560', number],
    ['g', mass],
  ],
  '  1 large   egg yolk': [
    ['1', number],
    ['large', count],
    ['egg yolk', name],
  ],
  '  2 onions': [
    ['2', number],
    ['onions', name],
  ],
  '  1 can of 400 g tomatoes': [
    ['1', number],
    ['can', count],
    ['of', 'keyword.operator.of'],
    ['400', number],
    ['g', mass],
    ['tomatoes', name],
  ],
  '  2 1/2 C. oil': [
    ['2 1/2', number],
    ['C', volume],
    ['.', ''],
    ['oil', name],
  ],
  '  1 (14.5-ounce) can beans': [
    ['1', number],
    ['(', 'punctuation.definition.amount.begin'],
    ['14.5', number],
    ['-', ''],
    ['ounce', mass],
    [')', 'punctuation.definition.amount.end'],
    ['can', count],
    ['beans', name],
  ],
  '  one and one-half heaping cups flour plus 2 tbsp': [
    ['one and one-half', number],
    ['heaping', 'support.constant.fill'],
    ['cups', volume],
    ['flour', name],
    ['plus', joint],
    ['2', number],
    ['tbsp', volume],
  ],
  '  225 g/8 oz sugar': [
    ['225', number],
    ['g', mass],
    ['/', joint],
    ['8', number],
    ['oz', mass],
    ['sugar', name],
  ],
  '  juice of 1/2 lemon (about 2 tbsp)': [
    ['juice', 'support.constant.take'],
    ['of', 'keyword.operator.of'],
    ['1/2', number],
    ['lemon', name],
    ['(', 'punctuation.definition.amount.begin'],
    ['about', 'keyword.operator.about'],
    ['2', number],
    ['tbsp', volume],
    [')', 'punctuation.definition.amount.end'],
  ],
  '  1 can peas, or 2 cups fresh peas': [
    ['1', number],
    ['can', count],
    ['peas', name],
    [',', comma],
    ['or', joint],
    ['2', number],
    ['cups', volume],
    ['fresh peas', name],
  ],
  '  3 hams, 15 lbs. each': [
    ['3', number],
    ['hams', name],
    [',', comma],
    ['15', number],
    ['lbs.', 'keyword.other.unit'],
    ['each', 'keyword.operator.each'],
  ],
  '  3 tbsp flour plus more for dusting': [
    ['3', number],
    ['tbsp', volume],
    ['flour', name],
    ['plus more for dusting', preparation],
  ],
  '  2 cups (packed) brown sugar (a dark one of 2019)': [
    ['2', number],
    ['cups', volume],
    ['(packed)', 'support.constant.fill'],
    ['brown sugar', name],
    ['(', 'punctuation.definition.note.begin'],
    ['a dark one of 2019', 'string.unquoted.note'],
    [')', 'punctuation.definition.note.end'],
  ],
  '  yield 12 squares of 4 cm': [
    ['yield', field],
    ['12', number],
    ['squares of 4 cm', value],
  ],
  '  65 % water': [
    ['65', 'constant.numeric.share'],
    ['%', 'keyword.other.unit.share'],
    ['water', name],
  ],
  '  1 fl oz rum': [
    ['1', number],
    ['fl oz', volume],
    ['rum', name],
  ],
  '  to taste  nutmeg': [
    ['to taste', 'constant.language.amount'],
    ['nutmeg', name],
  ],
  '  optional 2 sprigs thyme': [
    ['optional', 'storage.modifier.optional'],
    ['2', number],
    ['sprigs', count],
    ['thyme', name],
  ],
  '  1,5 kg flour': [
    ['1,5', 'invalid.illegal.decimal-comma'],
    ['kg', 'keyword.other.unit'],
    ['flour', name],
  ],
  '  do Bake at 180°C fan for 35-40 min, until the centre reads 80 C.': [
    ['do', step],
    ['Bake at', ''],
    ['180', temperature],
    ['°C', degrees],
    ['fan', degrees],
    ['for', ''],
    ['35-40', time],
    ['min', timeUnit],
    [', until the centre reads', ''],
    ['80', temperature],
    ['C', degrees],
    ['.', ''],
  ],
  '  do Freeze at -18 C overnight.': [
    ['do', step],
    ['Freeze at', ''],
    ['-18', temperature],
    ['C', degrees],
    ['overnight', 'constant.language.time'],
    ['.', ''],
  ],
  '  do Warm the cream with half the milk, 60 ml of the water and the rest of the salt.': [
    ['do', step],
    ['Warm the cream with', ''],
    ['half the', portion],
    ['milk,', ''],
    ['60', number],
    ['ml', volume],
    ['of the water and', ''],
    ['the rest of the', portion],
    ['salt.', ''],
  ],
  '  do Whisk [whole milk] into the \\butter, then 2 in the pan.': [
    ['do', step],
    ['Whisk', ''],
    ['[', 'punctuation.definition.mention.begin'],
    ['whole milk', 'variable.other.mention'],
    [']', 'punctuation.definition.mention.end'],
    ['into the', ''],
    ['\\butter', 'constant.character.escape'],
    [', then', ''],
    ['2', number],
    ['in the pan.', ''],
  ],
  '  do': [['do', step]],
  'trial 2026-09-14 by Ines': [
    ['trial', 'keyword.control.trial'],
    ['2026-09-14', 'constant.numeric.date'],
    ['by', 'keyword.operator.by'],
    ['Ines', 'string.unquoted.tester'],
  ],
  '  took    52 min to bake': [
    ['took', 'keyword.other.trial'],
    ['52', time],
    ['min', timeUnit],
    ['to bake', ''],
  ],
  '  weighed 1385 g out of the oven': [
    ['weighed', 'keyword.other.trial'],
    ['1385', number],
    ['g', mass],
    ['out of the oven', ''],
  ],
  '  used    90 g caster sugar in custard': [
    ['used', 'keyword.other.trial'],
    ['90', number],
    ['g', mass],
    ['caster sugar', name],
    ['in', 'keyword.operator.in'],
    ['custard', section],
  ],
  '  saw     Set to the middle.': [
    ['saw', 'keyword.other.trial'],
    ['Set to the middle.', value],
  ],
  '  verdict change': [
    ['verdict', 'keyword.other.trial'],
    ['change', 'constant.language.verdict'],
  ],
  '  swap whole milk for 200 g oat drink': [
    ['swap', 'keyword.control.change'],
    ['whole milk', name],
    ['for', 'keyword.operator.from'],
    ['200', number],
    ['g', mass],
    ['oat drink', name],
  ],
  '  drop nutmeg': [
    ['drop', 'keyword.control.change'],
    ['nutmeg', name],
  ],
  '  add 10 g rum': [
    ['add', 'keyword.control.change'],
    ['10', number],
    ['g', mass],
    ['rum', name],
  ],
  'food rye flour': [
    ['food', 'keyword.control.food'],
    ['rye flour', 'entity.name.type.food'],
  ],
  '  also dark rye, ryemeal': [
    ['also', 'keyword.other.food'],
    ['dark rye', value],
    [',', 'punctuation.separator.list'],
    ['ryemeal', value],
  ],
  '  1 cup = 120 g': [
    ['1', number],
    ['cup', volume],
    ['=', 'keyword.operator.equals'],
    ['120', number],
    ['g', mass],
  ],
  '  water 12 %': [
    ['water', 'keyword.other.food'],
    ['12', 'constant.numeric.share'],
    ['%', 'keyword.other.unit.share'],
  ],
  '  price 1.40 per 1 kg': [
    ['price', 'keyword.other.food'],
    ['1.40', number],
    ['per', 'keyword.operator.per'],
    ['1', number],
    ['kg', mass],
  ],
  'allow dough-too-wet because It is poured, not rolled.': [
    ['allow', 'keyword.control.allow'],
    ['dough-too-wet', 'support.constant.finding'],
    ['because', 'keyword.operator.because'],
    ['It is poured, not rolled.', 'string.unquoted.reason'],
  ],
  'allow because': [
    ['allow', 'keyword.control.allow'],
    ['because', 'keyword.operator.because'],
  ],
  '# a comment': [
    ['#', 'punctuation.definition.comment'],
    ['a comment', 'comment.line.number-sign'],
  ],
  '  20 g apricots#3 # three': [
    ['20', number],
    ['g', mass],
    ['apricots#3', name],
    ['#', 'punctuation.definition.comment'],
    ['three', 'comment.line.number-sign'],
  ],
};

describe('a line of the list', () => {
  // What a cook may print in front of a food, each word from the table that the server reads with.
  const printed = [
    ...UNITS.filter((u) => u.dimension === 'mass' || u.dimension === 'volume').flatMap((u) => [
      u.symbol,
      ...u.spellings,
      ...(u.printed ?? []),
    ]),
    ...COUNT_FORMS,
  ];
  it('colours every unit and count word', () => {
    const asName = printed.filter((unit) => {
      const [, second, third] = tokenize(`  2 ${unit} flour`)[0] ?? [];
      return second?.[0] !== unit || !second[1].startsWith('keyword.other.unit.') || third?.[0] !== 'flour';
    });
    expect(asName).toEqual([]);
  });

  it('colours every number word', () => {
    expect(NUMBER_WORDS.filter((word) => tokenize(`  ${word} cup flour`)[0]?.[0]?.[1] !== number)).toEqual([]);
  });
});

describe('a line alone', () => {
  it.each(Object.entries(lines))('%s', (line, expected) => {
    expect(tokenize(line)).toEqual([expected]);
  });

  it('leaves no rule open for the next line', () => {
    const half = [
      'part x from',
      'do Whisk [whole',
      '  20 g butter, soft (from',
      'swap',
      'allow x because',
      'trial 2026',
    ];
    for (const line of half) {
      expect(tokenize(`${line}\nrecipe Next`)[1], line).toEqual(lines['recipe Plum custard slice']?.map(next));
    }
    function next([text, scope]: Token): Token {
      return [text === 'recipe' ? text : 'Next', scope];
    }
  });

  it('reads as long a line as the editor colours (20,000 characters)', () => {
    const long = `  do ${'½ of the [ ( 1 1/2 to \\ '.repeat(700)}`;
    expect(tokenize(long)[0]?.[0]).toEqual(['do', step]);
  });
});

describe('a fence in Markdown', () => {
  it('has the same colours and ends with the fence', async () => {
    const inMarkdown = await loadTokenizer('markdown.quern.codeblock');
    const [, header, amount, , after] = inMarkdown(
      '```quern\nrecipe Plum custard slice\n  240 g     plain flour\n```\nrecipe',
    );
    expect(header).toEqual(lines['recipe Plum custard slice']);
    expect(amount).toEqual(lines['  240 g     plain flour']);
    expect(after).toEqual([['recipe', 'markdown.quern.codeblock']]);
    expect(inMarkdown('```js\nrecipe Plum')[1]).toEqual([['recipe Plum', 'markdown.quern.codeblock']]);
  });
});

describe('a whole recipe', () => {
  it('keeps its colours', async () => {
    const recipe = readFileSync(new URL('pear-and-oat-slice.quern', import.meta.url), 'utf8');
    const printed = recipe
      .split('\n')
      .map((line, at) =>
        [line, ...(tokenize(recipe)[at] ?? []).map(([text, scope]) => `    ${text}  ${scope}`.trimEnd())].join('\n'),
      )
      .join('\n');
    await expect(printed).toMatchFileSnapshot('pear-and-oat-slice.scopes.txt');
  });
});
