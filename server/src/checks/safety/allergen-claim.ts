import type { Span, TextField, TextNode } from '../../notation/tree.ts';
import { boundEvents } from '../../recipe/journey/bind.ts';
import { type BroughtAllergen, foodsHeld, unreadOn } from '../../recipe/list/allergens.ts';
import type { Ingredient, Part, PartHead, Recipe, Step } from '../../recipe/model.ts';
import { titleOf } from '../../recipe/names/title.ts';
import { sameName } from '../../recipe/words.ts';
import { defineCheck, type Found, type Place, type Said } from '../check.ts';
import { lent, overParts } from '../over-parts.ts';
import { type Claim, type Claimed, claimsIn, claimsToldIn, keepsIt, startsWithFood, verdictOn } from './claims.ts';
import { CAUTION } from './limits.ts';
import { untoldIn } from './told-allergens.ts';

/** One food that does not keep what is claimed of the recipe. */
interface Broken {
  readonly name: string;
  /** `contains milk` */
  readonly why: string;
  /** It is an alternative, or named beside the food of its line. */
  readonly maybe: boolean;
  readonly claims: readonly Claim[];
  readonly claimedAt: Place;
}

/** What must be read, or is not known, before a claim can stand. */
interface Unsure {
  readonly claim: Claim;
  /** Name, and what is to be said of it. */
  readonly asks: readonly (readonly [string, string])[];
  readonly unknown: readonly string[];
}

/** What is held, and left out where a note tells what the dish contains. */
interface Untold {
  readonly untold: readonly BroughtAllergen[];
}

type Values = Broken | Unsure | Untold;

export default defineCheck<Values>({
  code: 'allergen-claim',
  title: 'It is called free of something that is on the list',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'publication',
    title:
      '21 CFR 101.91 and Regulation (EU) 828/2014: gluten-free is 20 mg/kg at most; FALCPA 2004 with the FASTER Act 2021, Regulation (EU) 1169/2011, annex II, ISO 23662:2021 (from memory)',
  },
  explain: `**What it computes.** Which claims the title, the names of parts, the yield, tags, notes, the serving text and what steps tell make (gluten-free, dairy-free, nut-free, egg-free, vegan, vegetarian, alcohol-free and more), and whether each food of the list keeps them: by the allergens it contains, for vegan and vegetarian by what it comes from. The name of a part claims for that part and what it takes in.

**Why it matters.** Whoever reads \`gluten-free\` may not read the list. Soy sauce holds wheat, ghee is milk, Worcestershire sauce has anchovies, marshmallows gelatine.

**What to do.** Take a food that keeps the claim and say so on the line (\`gluten-free soy sauce\`, \`vegan butter\`), or take the claim out. Where an alternative breaks it, that is a warning; where only a label tells (oats, stock cubes, dark chocolate), or a food is not known, information names them once. A note that tells the allergens (\`Contains: wheat, egg\`, \`Allergens: none\`) and not all of them is a warning (information, where it is celery and the like, which the EU alone lists, and amounts are in cups).

**Nuts.** Peanuts count under nut-free. Coconut and chestnut are no nuts of the EU's list, and FDA took them off its own in 2025: they are named, and no more.

**Silent** for what is negated or conditional (\`not suitable for vegans\`, \`for a vegan version use oil\`, \`can be made gluten-free\`), for what is said of a dish beside (\`with vegan mayonnaise\`), and for foods whose own line keeps the claim.`,
  find: ({ recipe }) => [...found(recipe), ...untoldOf(recipe)],
  say: (values) =>
    'untold' in values
      ? {
          message: `Contains ${values.untold.map(({ us, eu, by }) => `${us ?? eu} (\`${by[0]}\`)`).join(', ')} too: name all. ${CAUTION}`,
        }
      : 'asks' in values
        ? sayUnsure(values)
        : sayBroken(values),
  examples: {
    good: [
      'recipe Gluten-free noodle bowl\n  yield   4 bowls\n  note    For a vegan version leave out the egg.\n  300 g     rice noodles\n  40 g      gluten-free soy sauce\n  1 large   egg\n  do Boil the noodles with the egg for 8 min, and toss with the soy sauce.\n',
      'recipe Buttered leeks\n  yield   4 portions\n  note    Not suitable for vegans, and it can be made dairy-free with oil.\n  serve   Hot, with vegan sausages.\n  500 g     leeks\n  40 g      butter\n  do Soften the leeks in the butter over a low heat for 15 min, until they give.\n',
      'recipe Vegan bean pot\n  yield   4 portions\n  tags    vegan, freezes well\n  400 g     canned white beans\n  200 g     canned tomatoes\n  30 g      olive oil\n  do Simmer the beans with the tomatoes and the oil for 20 min.\n',
    ],
    bad: [
      'recipe Gluten-free noodle bowl\n  300 g     rice noodles\n  40 g      soy sauce\n# "soy sauce" allergen-claim: contains wheat\n  do Boil the noodles and toss with the soy sauce.\n',
      'recipe Traybake\n  note    This one is nut free and vegan.\n  200 g     plain flour\n  150 g     ground almonds\n# "ground almonds" allergen-claim: contains tree nuts\n  150 g     butter\n# "butter" allergen-claim: contains milk\n  do Rub the butter into the flour and the almonds, press in the tin and bake at 170 C for 25 min until gold.\n',
      'recipe Pudding\n  tags    vegetarian, winter\n  500 ml    milk\n  4 sheets  gelatine\n# "gelatine" allergen-claim: slaughtered\n  do Heat the milk to 80 C, melt the gelatine in it and chill for 4 h.\n',
      'recipe Cake\n  note Contains wheat and egg.\n#      ^^^^^^^^^^^^^^^^^^^^^^^ allergen-claim warning: milk\n  200 g     plain flour\n  200 g     butter\n  200 g     eggs\n  do Beat all and bake at 180 C for 30 min until gold.\n',
      'recipe Vegan bean pot\n#      ^^^^^ allergen-claim info: stock cube\n  400 g     canned white beans\n  1         stock cube\n  500 ml    water\n  do Simmer the beans with the stock cube and the water for 20 min.\n',
    ],
  },
});

const NOTHING: readonly never[] = [];

/** A claim, where it stands, and whether it is about one part alone. */
interface PlacedClaim {
  readonly claim: Claim;
  readonly at: Place;
  readonly part?: Part;
  /** What stands behind it in a step: of a food that is named there it is no claim of the dish. */
  readonly after?: string;
}

/** The same objects for what is found again. */
const FOUND = lent(
  (_, last?: { value: Map<string, Found<Values>> }) => last?.value ?? new Map<string, Found<Values>>(),
);

function found(recipe: Recipe): readonly Found<Values>[] {
  const claims = claimsOf(recipe);
  if (claims.length === 0) return NOTHING;
  const before = FOUND(recipe);
  const now = new Map(judged(recipe, claims).map((each) => [JSON.stringify(each), each] as const));
  const same = [...now].map(([key, each]) => before.get(key) ?? each);
  before.clear();
  for (const [i, key] of [...now.keys()].entries()) before.set(key, same[i] as Found<Values>);
  return same;
}

function untoldOf(recipe: Recipe): readonly Found<Untold>[] {
  const { at, untold, isElsewhere } = untoldIn(recipe) ?? {};
  return at === undefined || untold === undefined
    ? NOTHING
    : [{ at, values: { untold }, severity: isElsewhere ? 'info' : 'warning' }];
}

/** Every claim of the recipe, once for what it is about. */
function claimsOf(recipe: Recipe): readonly PlacedClaim[] {
  const ofParts = CLAIMING(recipe);
  const ofHead = claimsOfHead(recipe);
  if (ofParts.length === 0) return ofHead;
  const claims = [...ofHead];
  // What the last steps say of the dish is often said above as well.
  const isFood = foodsOf(recipe);
  for (const claim of ofParts.flatMap(({ value }) => value))
    if (
      !startsWithFood(claim.after ?? '', isFood) &&
      !claims.some((other) => other.claim === claim.claim && (other.part ?? claim.part) === claim.part)
    )
      claims.push(claim);
  return claims;
}

/** Claims, each once. */
class Claims {
  readonly placed: PlacedClaim[] = [];

  add({ text, start }: TextNode, line: number, part?: Part, isFood?: (words: string) => boolean): void {
    for (const claimed of claimsIn(text, isFood)) {
      if (this.placed.some(({ claim }) => claim === claimed.claim)) continue;
      this.placed.push({ claim: claimed.claim, at: placed(claimed, line, start, part), ...(part && { part }) });
    }
  }
}

const foodsOf =
  ({ world }: Recipe) =>
  (words: string): boolean =>
    world.book.findInText(words).kind !== 'unknown';

function claimsOfHead(recipe: Recipe): readonly PlacedClaim[] {
  const { outline } = recipe;
  const isFood = foodsOf(recipe);
  const claims = new Claims();
  for (const { at, line } of outline.recipe === undefined ? outline.head : [outline.recipe, ...outline.head]) {
    const { statement } = line;
    const title = statement.kind === 'recipe' ? titleOf(statement).name : undefined;
    if (title !== undefined) claims.add(title, at);
    else if (statement.kind === 'tags') for (const tag of statement.tags) claims.add(tag, at);
    else if (statement.kind === 'yield' && statement.of !== undefined) claims.add(statement.of, at);
    else if (statement.kind === 'text' && PROSE.has(statement.field) && statement.value !== undefined)
      claims.add(statement.value, at, undefined, isFood);
  }
  return claims.placed;
}

/** What the names of parts claim, and what their steps tell: of the whole recipe in its last part. */
const CLAIMING = overParts((part): readonly PlacedClaim[] | undefined => {
  const { named, lines } = part.head.source;
  const { name } = named ? titleOf(lines[0]?.statement) : {};
  const claims = new Claims();
  if (name !== undefined) claims.add(name, 0, part);
  const told = part.steps.flatMap((step) => toldIn(part, step));
  if (claims.placed.length + told.length === 0) return undefined;
  return [...claims.placed, ...told];
});

/** What a step tells of the dish: `Free from nuts, so it can go in every lunchbox`. What it orders is done with something. */
function toldIn(part: Part, step: Step): readonly PlacedClaim[] {
  const text = part.head.source.lines[step.line]?.text ?? '';
  const { start, end } = step.sentence;
  return claimsToldIn(text.slice(start, end)).flatMap(({ claim, from, after, ...span }): readonly PlacedClaim[] => {
    const isOrdered = boundEvents(step).some(
      ({ event: { as, verb } }) =>
        as === 'ordered' && verb !== undefined && verb.start >= start + from && verb.start < start + span.start,
    );
    const at = { line: step.line, start: start + span.start, end: start + span.end, part: part.index };
    return isOrdered ? NOTHING : [{ claim, at, after, ...(!part.isLast && { part }) }];
  });
}

const PROSE: ReadonlySet<TextField> = new Set(['note', 'serve']);

const placed = ({ start, end }: Claimed, line: number, from: number, part: Part | undefined): Place => ({
  line,
  start: from + start,
  end: from + end,
  ...(part !== undefined && { part: part.index }),
});

/** An ingredient of what a claim is about, with the number of its part. */
interface Listed {
  readonly part: number;
  readonly ingredient: Ingredient;
}

function judged(recipe: Recipe, claims: readonly PlacedClaim[]): readonly Found<Values>[] {
  const broken = new Map<Ingredient, Found<Broken>>();
  const unsure: Found<Unsure>[] = [];
  for (const { claim, at, part } of claims) {
    const asks: [string, string][] = [];
    const unknown: string[] = [];
    let breaks = false;
    for (const head of headsOf(recipe, part)) unknown.push(...unreadOn(head));
    for (const { ingredient, part: number } of listed(recipe, part)) {
      const line = judgeLine(claim, ingredient, recipe);
      unknown.push(...line.unknown);
      asks.push(...line.asks);
      if (line.broken === undefined) continue;
      breaks = true;
      const known = broken.get(ingredient);
      const values = known?.values ?? { ...line.broken.values, claims: [], claimedAt: at };
      const { start, end } = line.broken.at;
      broken.set(ingredient, {
        at: { part: number, line: ingredient.line, start, end },
        values: { ...values, maybe: values.maybe && line.broken.values.maybe, claims: [...values.claims, claim] },
        ...(values.maybe && line.broken.values.maybe && { severity: 'warning' as const }),
      });
    }
    // What cannot stand need not be asked about.
    if (!breaks && asks.length + unknown.length > 0) {
      const values = { claim, asks: unique(asks, ([name]) => name), unknown: unique(unknown, (name) => name) };
      unsure.push({ at, values, severity: 'info' });
    }
  }
  return [...broken.values(), ...unsure];
}

/** What a claim of the recipe, or of one part, is about. */
const headsOf = ({ parts }: Recipe, only: Part | undefined): readonly PartHead[] =>
  only === undefined ? parts.map((p) => p.head) : [only.head, ...only.includes];

function listed({ parts }: Recipe, only: Part | undefined): readonly Listed[] {
  const about =
    only === undefined
      ? parts
      : [only.head, ...only.includes].flatMap((head) => parts.find((part) => part.head === head) ?? NOTHING);
  return about.flatMap(({ head, index }) => head.ingredients.map((ingredient) => ({ part: index, ingredient })));
}

interface LineJudged {
  readonly broken?: { readonly at: Span; readonly values: Pick<Broken, 'name' | 'why' | 'maybe'> };
  readonly asks: readonly [string, string][];
  readonly unknown: readonly string[];
}

const KEPT: LineJudged = { asks: [], unknown: [] };

function judgeLine(claim: Claim, ingredient: Ingredient, { parts }: Recipe): LineJudged {
  const { name, node } = ingredient;
  const { held, possible, unknown } = foodsHeld(ingredient);
  const words = [name, node.preparation?.text ?? '', node.note?.text ?? ''].join(' ');
  const own = keepsIt(claim, words);
  const asks: [string, string][] = [];
  for (const foods of own ? NOTHING : held) {
    const verdicts = foods.map((food) => verdictOn(claim, food, name));
    const first = verdicts[0];
    if (first?.kind === 'breaks' && verdicts.every(({ kind }) => kind === 'breaks'))
      return { ...KEPT, broken: { at: ingredient.nameNode, values: { name, why: first.why, maybe: false } } };
    const open = verdicts.find(({ kind }) => kind !== 'keeps');
    if (open === undefined || open.kind === 'keeps') continue;
    asks.push([name, foods.length > 1 ? 'could be one that does not keep it' : open.why]);
  }
  for (const { name: named, food } of possible) {
    const verdict = keepsIt(claim, named.text) ? undefined : verdictOn(claim, food, named.text);
    if (verdict?.kind === 'breaks')
      return { ...KEPT, broken: { at: named, values: { name: named.text, why: verdict.why, maybe: true } } };
    if (verdict?.kind === 'asks') asks.push([named.text, verdict.why]);
  }
  const unread = own ? [] : unknown.filter((word) => !parts.some((p) => sameName(p.head.name, word)));
  return { asks, unknown: unread };
}

const unique = <T>(list: readonly T[], key: (item: T) => string): readonly T[] => [
  ...new Map(list.map((item) => [key(item), item])).values(),
];

function sayBroken({ name, why, maybe, claims, claimedAt }: Broken): Said {
  const called = claims.map(({ claim }) => claim).join(' and ');
  const then = maybe
    ? `it may be taken here, and what is made with it is not ${called}: name another`
    : `what is made with it is not ${called}: take another, or take the claim out`;
  return {
    message: `\`${name}\` ${why}: ${then}. ${CAUTION}`,
    source: claims.map(({ rule }) => rule).join('; '),
    related: [{ at: claimedAt, message: `It is called ${called} here.` }],
  };
}

function sayUnsure({ claim, asks, unknown }: Unsure): Said {
  const read = asks.map(([name, why]) => `\`${name}\` (${why})`).join(', ');
  const open = unknown.map((name) => `\`${name}\``).join(', ');
  const all = [
    ...(read === '' ? [] : [`Look closer at ${read}`]),
    ...(open === ''
      ? []
      : [
          `${read === '' ? 'It' : 'it'} is not known of ${open} whether ${unknown.length > 1 ? 'they keep' : 'it keeps'} it`,
        ]),
  ];
  return {
    message: `${all.join('; ')}: nothing proves \`${claim.claim}\` until each label does. ${CAUTION}`,
    source: claim.rule,
  };
}
