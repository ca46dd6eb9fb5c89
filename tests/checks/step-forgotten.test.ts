import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const DOUGH =
  ' as enriched bread\n  500 g     bread flour\n  250 ml    whole milk\n  60 g      butter\n  9 g       fine salt\n  7 g       instant yeast\n';
const BEANS =
  '\n  250 g     dried chickpeas\n  1 l       water\n  8 g       salt\n  100 g     tahini\n  30 ml     lemon juice\n';
const CREAM =
  ' as set cream\n  500 ml    double cream\n  80 g      caster sugar\n  3 leaves  gelatine\n  100 ml    water\n';
const FOOL = '\n  300 g     gooseberries\n  80 g      caster sugar\n  300 ml    double cream\n';
const ICE =
  ' as ice cream\n  300 ml    whole milk\n  200 ml    double cream\n  90 g      caster sugar\n  80 g      egg yolk\n';
const STOCK = ' as stock\n  1 kg      chicken bones\n  2 l       water\n  1         onion\n';
const SALMON = ' as cure\n  1 kg      salmon fillet\n  45 g      coarse salt\n  35 g      caster sugar\n';
const CASE =
  '\npart case as shortcrust\n  250 g     plain flour\n  125 g     butter\n  50 g      ice water\n  do Rub the butter into the flour and bind with the ice water.\n  do Wrap and chill at 4 C for 1 h.\n';

const said = (list: string, steps: readonly string[], name = 'Dish'): readonly string[] =>
  open(`recipe ${name}${list}${steps.map((step) => `  do ${step}\n`).join('')}`).findings.open.flatMap(
    ({ code, said: { message } }) => (code === 'step-forgotten' ? [message] : []),
  );

const KNEAD = 'Knead the flour, milk, butter, salt and yeast for 10 min.';
const BAKE = 'Bake at 190 C for 20 min until golden. Cool on a rack.';
const CUSTARD = 'Heat the milk, cream, sugar and yolks to 82 C, stirring.';

describe('an act that is needed does not come', () => {
  test.each<[list: string, steps: readonly string[], words: string, name?: string]>([
    [DOUGH, [KNEAD, 'Roll into 12 balls and set on a tray.', BAKE], 'never rises before this'],
    [DOUGH, [KNEAD, 'Prove at 24 C for 1 h.', 'Roll into 12 balls and set on a tray.', BAKE], 'let it prove once more'],
    [DOUGH, [KNEAD, 'Knock back, shape in 12 and prove at 24 C for 45 min.', BAKE], 'nothing has let it rise'],
    [
      DOUGH,
      [KNEAD, 'Prove at 24 C for 1 h.', 'Brush with milk, slash and dust with flour.', BAKE],
      'neither shaped nor put in a tin',
    ],
    [
      BEANS,
      [
        'Cover the chickpeas with the water, boil and skim, then simmer for 30 min. Drain.',
        'Blend with the tahini, lemon juice and salt.',
      ],
      'neither soaked nor boiled',
    ],
    [
      CREAM,
      [
        'Heat the cream with the sugar.',
        'Stir in the gelatine until dissolved.',
        'Pour into 6 moulds and chill for 5 h.',
      ],
      'goes in dry',
    ],
    [
      CREAM,
      [
        'Soak the gelatine in the water for 5 min.',
        'Heat the cream with the sugar, squeeze the gelatine and stir it in.',
        'Pour into 6 moulds.',
      ],
      'cold to set',
    ],
    [
      FOOL,
      [
        'Simmer the gooseberries with the sugar for 10 min and crush them.',
        'Cool completely.',
        'Fold in the cream and chill for 2 h.',
      ],
      'never whipped',
    ],
    [ICE, [CUSTARD, 'Strain, chill at 4 C overnight and churn for 25 min.', 'Serve.'], ''],
    [ICE, [CUSTARD, 'Strain and churn for 25 min.', 'Freeze at -18 C for 4 h. Serve.'], 'while it is hot'],
    [
      ICE,
      [CUSTARD, 'Strain, chill at 4 C overnight and freeze at -18 C for 4 h.', 'Serve in bowls.'],
      'breaks up the ice',
    ],
    [
      STOCK,
      [
        'Bring the bones and onion to a simmer in the water.',
        'Skim, add the onion and simmer for 3 h.',
        'Cool in an ice bath and keep in the fridge for 3 days.',
      ],
      'never strained',
    ],
    [CASE, ['Bake at 190 C for 20 min until gold.', 'Cool on a rack.'], 'never rolled'],
    [
      '\n  6         eggs\n  250 g     mascarpone\n  60 g      sugar\n',
      [
        'Separate the eggs.',
        'Beat the yolks with the sugar and the mascarpone.',
        'Whisk the whites and fold them in.',
        'Spoon into 6 glasses.',
        'Serve.',
      ],
      'cold to set',
      'Lemon mousse',
    ],
    [SALMON, ['Mix the salt and sugar and rub into the salmon.', 'Wrap.', 'Rinse, dry and slice.'], 'gets no time'],
  ])('%s %s', (list, steps, words, name) => {
    expect(said(list, steps, name)).toEqual(words === '' ? [] : [expect.stringContaining(words)]);
  });

  test.each<[list: string, steps: readonly string[], name?: string]>([
    // In one breath, nothing is left out.
    [DOUGH, [KNEAD, 'Prove at 24 C for 1 h, shape in 12 and bake at 190 C for 20 min. Cool on a rack.']],
    [DOUGH, [KNEAD, 'Prove at 24 C for 1 h.', 'Roll into 12 balls, cover and leave for 40 min.', BAKE]],
    // One rise, in the tin.
    [DOUGH, [KNEAD, 'Shape into a loaf and lay in the tin.', 'Let stand in a warm place until doubled.', BAKE]],
    // A word that nobody knows may be the act.
    [DOUGH, [KNEAD, 'Roll into 12 balls.', 'Blorf the balls on the tray.', BAKE]],
    [
      BEANS.replace('chickpeas', 'chickpeas, soaked overnight'),
      [
        'Simmer the chickpeas in the water for 30 min and drain.',
        'Blend with the tahini, lemon juice and salt.',
        'Chill and serve.',
      ],
    ],
    [
      BEANS,
      [
        'Simmer the chickpeas in the water for 2 h until soft. Drain.',
        'Blend with the tahini, lemon juice and salt.',
        'Serve.',
      ],
    ],
    [
      CREAM.replace('3 leaves  gelatine', '8 g       powdered gelatine'),
      [
        'Heat the cream with the sugar and stir in the gelatine until dissolved.',
        'Pour into 6 moulds and chill for 5 h.',
        'Turn out.',
      ],
    ],
    [
      FOOL.replace('double cream', 'double cream, whipped'),
      ['Simmer the gooseberries with the sugar for 10 min.', 'Crush and cool.', 'Fold in the cream and chill for 2 h.'],
    ],
    [
      FOOL,
      [
        'Simmer the gooseberries with the sugar for 10 min.',
        'Crush and cool.',
        'Fold in the softly whipped cream and chill for 2 h.',
      ],
    ],
    // Made ready in the part that goes on with it.
    [
      `${CASE}part tart\n  400 g     cherries\n`,
      ['Roll out the case, line the tin and fill with the cherries.', 'Bake at 190 C for 35 min until gold.'],
    ],
    [ICE, [CUSTARD, 'Strain and chill at 4 C overnight.', 'Freeze at -18 C for 4 h, beating it every hour.', 'Serve.']],
    [
      SALMON,
      [
        'Cut the salmon in two.',
        'Mix the salt and sugar and rub into the salmon.',
        'Wrap and cure at 4 C for 2 d.',
        'Wipe and slice.',
      ],
    ],
  ])('and does, %s %s', (list, steps, name) => {
    expect(said(list, steps, name)).toEqual([]);
  });
});

describe('gelatine that was soaked', () => {
  const SOAK = 'Soak the gelatine in the water for 5 min.';
  const HEAT = 'Heat the cream with the sugar to 80 C.';
  const CHILL = 'Pour into moulds and chill at 4 C for 5 h. Dip in hot water and turn out.';
  test.each<[steps: readonly string[], found: number]>([
    [[SOAK, HEAT, CHILL], 1],
    [[HEAT, SOAK, 'Cool for 10 min.', CHILL], 1],
    [[SOAK, HEAT, 'Squeeze out the gelatine and stir it in until melted.', CHILL], 0],
    [[SOAK, 'Dissolve in the hot cream and add the sugar.', CHILL], 0],
    [[SOAK, HEAT, 'Whisk it in.', CHILL], 0],
  ])('%j: %i', (steps, found) => {
    expect(said(CREAM, steps).filter((message) => message.includes('never goes in'))).toHaveLength(found);
  });
});
