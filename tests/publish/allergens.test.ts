/**
 * What a page says of the allergens of a list: contains, may contain, check the label, not known. By the United States' list (FALCPA 2004
 * and the FASTER Act 2021) and the European Union's (Regulation (EU) 1169/2011, annex II); that ghee and whey are milk, couscous, seitan and
 * soy sauce wheat, malt barley is common knowledge of both; which foods differ by maker is from pack labels; all from memory.
 */
import { describe, expect, test } from 'vitest';
import { allergensListed } from '../../server/src/recipe/list/allergens.ts';
import { open } from '../support/harness.ts';

/** Each list in short words of its own; those of the EU alone, or of the US alone, are marked. */
const SHORT: Readonly<Record<string, string>> = {
  'cereals containing gluten': 'gluten',
  'crustacean shellfish': 'crustaceans',
  'tree nuts': 'nuts',
  soybeans: 'soy',
};
const short = (names: readonly string[]): string[] => names.map((name) => SHORT[name] ?? name);

/** Names of both lists once, sorted. */
const union = ({ us, eu }: { readonly us: readonly string[]; readonly eu: readonly string[] }): string =>
  [...new Set([...short(us), ...short(eu)])].sort().join(' ');

const listed = (...lines: string[]) =>
  allergensListed(open(`recipe X\n${lines.map((line) => `  ${line}\n`).join('')}`).recipe.parts.map((p) => p.head));

/** `contains; may contain; check the label; not known`, what is empty left out behind. */
function said(...lines: string[]): string {
  const { us, eu, mayContain, labels, notKnown } = listed(...lines);
  const label = labels.map((l) => union(l)).join(' ');
  return [union({ us, eu }), union(mayContain), label, notKnown.join(' ')]
    .join('; ')
    .replace(/(?:; )+$/, '')
    .trim();
}

describe('one line brings', () => {
  test.each<[string, string]>([
    // Milk.
    ['200 ml milk', 'milk'],
    ['80 g butter, melted', 'milk'],
    ['80 g unsalted butter, cold and cubed', 'milk'],
    ['30 g ghee', 'milk'],
    ['30 g whey powder', 'milk'],
    ['100 g buttermilk', 'milk'],
    ['200 ml cream', 'milk'],
    ['100 g cheese, grated', 'milk'],
    ['100 g goat cheese', 'milk'],
    ['100 g paneer', 'milk'],
    // What only sounds like it.
    ['200 ml coconut milk', ''],
    ['30 g cocoa butter', ''],
    ['100 g butter beans', ''],
    ['5 g cream of tartar', ''],
    ['300 g butternut squash', ''],
    ['1 head butterhead lettuce', ''],
    // Eggs.
    ['2 large eggs', 'eggs'],
    ['3 egg whites', 'eggs'],
    ['1 egg yolk', 'eggs'],
    ['100 g mayonnaise', 'eggs; ; mustard'],
    ['1 aubergine', ''],
    // Wheat, and gluten that is no wheat.
    ['200 g plain flour', 'gluten wheat'],
    ['200 g spelt flour', 'gluten wheat'],
    ['100 g semolina', 'gluten wheat'],
    ['100 g couscous', 'gluten wheat'],
    ['100 g bulgur', 'gluten wheat'],
    ['100 g seitan', 'gluten wheat'],
    ['200 g rye flour', 'gluten'],
    ['100 g pearl barley', 'gluten'],
    ['20 g malt extract', 'gluten'],
    ['30 ml malt vinegar', 'gluten'],
    ['330 ml beer', 'gluten'],
    ['100 g rolled oats', 'gluten'],
    ['100 g buckwheat flour', ''],
    ['100 g cornflour', ''],
    ['100 g rice noodles', ''],
    ['50 ml whisky', ''],
    // Soy, and what holds it.
    ['30 ml soy sauce', 'gluten soy wheat'],
    ['100 g tofu', 'soy'],
    ['20 g miso', 'soy; ; gluten wheat'],
    ['30 ml tamari', 'soy; ; gluten wheat'],
    // Nuts, peanuts, sesame.
    ['100 g almonds', 'nuts'],
    ['100 g ground almonds', 'nuts'],
    ['100 g marzipan', 'nuts; ; eggs'],
    ['100 g praline', 'nuts'],
    ['30 g pine nuts', 'nuts'],
    ['50 g peanut butter', 'peanuts'],
    ['30 ml groundnut oil', 'peanuts'],
    ['50 g tahini', 'sesame'],
    ['100 g hummus', 'sesame'],
    ['100 g desiccated coconut', '; ; sulphites'],
    ['2 g nutmeg', ''],
    // Fish, crustaceans, molluscs.
    ['4 anchovy fillets', 'fish'],
    ['20 ml fish sauce', 'fish; ; crustaceans molluscs'],
    ['10 ml Worcestershire sauce', 'fish; ; gluten soy wheat'],
    ['200 g prawns', 'crustaceans'],
    ['300 g mussels', 'molluscs'],
    ['200 g surimi', 'fish; ; crustaceans eggs gluten molluscs soy wheat'],
    ['200 g oyster mushrooms', ''],
    ['20 ml oyster sauce', 'gluten molluscs soy wheat'],
    // The rest of the EU's list.
    ['2 stalks celery', 'celery'],
    ['300 g celeriac', 'celery'],
    ['10 g Dijon mustard', 'mustard sulphites'],
    ['100 ml white wine', 'sulphites'],
    ['100 g dried apricots', 'sulphites'],
    ['50 g lupin flour', 'lupin'],
    // Only a label tells.
    ['300 g pork sausages', '; ; celery gluten milk mustard soy sulphites wheat'],
    ['1 stock cube', '; ; celery eggs gluten milk mustard soy wheat'],
    ['1 l vegetable stock', '; ; celery gluten milk soy wheat'],
    ['50 g Thai red curry paste', '; ; crustaceans fish soy'],
    ['100 g breadcrumbs', 'gluten wheat; ; eggs milk sesame soy'],
    ['100 g margarine', '; ; milk soy'],
    ['100 g dark chocolate', '; ; milk nuts soy'],
    ['200 g dried pasta', 'gluten wheat; ; eggs'],
    ['200 g kimchi', '; ; crustaceans fish soy'],
    // Nobody knows.
    ['100 g xyloquartz', '; ; ; xyloquartz'],
    ['100 g gluten-free pasta', '; ; eggs soy'],
    // One of several: what all have is in it, what one has may be, and which it is is not known.
    ['200 g noodles', '; eggs gluten wheat; ; noodles'],
    ['50 g nuts', 'nuts; peanuts; ; nuts'],
    ['100 ml wine', 'sulphites'],
    ['1 cup milk and water', 'milk'],
    // A choice: the first is in it, the others may be.
    ['100 g butter or margarine', 'milk; soy; soy'],
    ['100 g oil or butter', '; milk'],
    ['250 g cocoa or ground almonds', '; nuts'],
    ['100 g walnuts or pecans, chopped', 'nuts'],
    ['30 ml tamari or soy sauce', 'soy; gluten wheat; gluten wheat'],
    ['1 can condensed milk, or 2 cups coconut milk', 'milk'],
    ['100 g sunflower seeds, or almonds', '; nuts'],
    ['100 g butter or xyloquartz', 'milk; ; ; xyloquartz'],
    ['200 ml cream, or coconut milk', 'milk'],
    ['200 ml coconut milk, or cream', '; milk'],
    ['30 ml tamari (or soy sauce)', 'soy; gluten wheat; gluten wheat'],
    ['100 g butter/margarine', 'milk; soy; soy'],
    ['200 ml oat or soya milk', 'gluten; soy; wheat'],
    ['100 g peanut or almond butter', 'peanuts; nuts'],
    // What is said not to be in it is not.
    ['200 ml sunflower oil, not butter', ''],
    ['200 ml oil, no butter', ''],
    // What is named behind a comma may be in it.
    ['100 g lentils (walnuts)', '; nuts'],
    ['4 bananas, sliced, walnuts', '; nuts'],
    ['6 tbsp butter, browned', 'milk'],
    // Two on a line.
    ['2 eggs plus 1 yolk', 'eggs'],
    ['30 ml olive oil, plus a knob of butter', 'milk'],
    ['10 g each of almonds, sesame seeds and milk', 'milk nuts sesame'],
    // However it is measured.
    ['to taste butter', 'milk'],
    ['as needed flour, for dusting', 'gluten wheat'],
    ['optional 50 g walnuts', 'nuts'],
    ['1 cup = 240 g milk, warm (whole)', 'milk'],
  ])('%s: %s', (line, expected) => {
    expect(said(line)).toBe(expected);
  });
});

describe('a list', () => {
  test('names what is sure once, and no label for it', () => {
    expect(said('200 g plain flour', '80 g butter', '100 g breadcrumbs')).toBe('gluten milk wheat; ; eggs sesame soy');
  });

  test('says with each label whose it is', () => {
    expect(listed('1 stock cube', '100 g margarine', '20 g soy sauce').labels.map(({ name }) => name)).toEqual([
      'stock cube',
      'margarine',
    ]);
  });

  test.each([
    ['FLOUR,WHEAT,GENERAL PURPOSE 1 kg', 'gluten wheat'],
    ['butter, for the tin', 'milk'],
    ['Butter, 4 oz', 'milk'],
    ['salt and celery salt', 'celery'],
  ])('has what a line without an amount in front brings: %s', (line, expected) => {
    expect(said('500 g lentils', line)).toBe(expected);
  });

  test('does not pass over a line that nobody can read', () => {
    expect(said('200 g plain flour', '3 F butter of xyloquartz', '100 g')).toContain('; ; ; ');
  });
});
