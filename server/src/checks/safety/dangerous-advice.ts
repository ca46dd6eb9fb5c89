import adviceText from '../../../data/dangerous-advice.tsv';
import { once } from '../../measure/once.ts';
import { rowsIn, wordsIn } from '../../measure/table-rows.ts';
import type { Span } from '../../notation/tree.ts';
import { type Advice, adviceIn } from '../../prose/misled.ts';
import type { Recipe } from '../../recipe/model.ts';
import { defineCheck, type Found, type Place } from '../check.ts';
import { foundAgain } from '../found-again.ts';
import { overParts } from '../over-parts.ts';
import { notesOf, placeIn } from '../printed/notes.ts';
import { CAUTION } from './limits.ts';

interface Values {
  readonly say: string;
  readonly source: string;
}

interface Row extends Values {
  /** Kinds of words in its sentence, in its line, and anywhere in the recipe. */
  readonly all: readonly string[];
  readonly line: readonly string[];
  readonly recipe: readonly string[];
  readonly not: readonly string[];
}

const ROWS = once((): readonly Row[] =>
  rowsIn(adviceText).map(([all, line, recipe, not, say = '', source = '']) => ({
    all: wordsIn(all),
    line: wordsIn(line),
    recipe: wordsIn(recipe),
    not: wordsIn(not),
    say,
    source,
  })),
);

/** A row that a line fits, but for what must stand elsewhere. */
interface Fit {
  readonly row: Row;
  readonly at: Place;
}

/** What some lines advise. */
interface Told {
  readonly kinds: ReadonlySet<string>;
  readonly fits: readonly Fit[];
}

function toldIn(lines: readonly { readonly advice: readonly Advice[]; placed: (said: Span) => Place }[]): Told {
  return {
    kinds: kindsOf(lines.flatMap(({ advice }) => advice)),
    fits: lines.flatMap(({ advice, placed }) => {
      const line = kindsOf(advice);
      return ROWS().flatMap((row): readonly Fit[] => {
        if (!row.line.every((kind) => line.has(kind)) || !row.all.every((kind) => line.has(kind))) return [];
        const [at] = advice.flatMap((each) => standTogether(each, row.all, row.not) ?? []);
        return at === undefined ? [] : [{ row, at: placed(at) }];
      });
    }),
  };
}

const told = overParts((part): Told | undefined => {
  const lines = part.steps.flatMap(({ line, sentence }) => {
    const advice = adviceIn(sentence.items);
    const placed = ({ start, end }: Span): Place => ({ part: part.index, line, start, end });
    return advice.length === 0 ? [] : [{ advice, placed }];
  });
  return lines.length === 0 ? undefined : toldIn(lines);
});

const find = foundAgain<Values>((recipe: Recipe): readonly Found<Values>[] => {
  const notes = notesOf(recipe).flatMap((note) => {
    const advice = adviceIn(note.items);
    return advice.length === 0 ? [] : [{ advice, placed: (said: Span) => placeIn(note, said) }];
  });
  const all = [...told(recipe).map(({ value }) => value), toldIn(notes)];
  return all.flatMap(({ fits }) =>
    fits
      .filter(({ row }) => row.recipe.every((kind) => all.some(({ kinds }) => kinds.has(kind))))
      .map(({ at, row: { say, source } }) => ({ at, values: { say, source } })),
  );
});

const kindsOf = (all: readonly Advice[]): ReadonlySet<string> =>
  new Set(all.flatMap(({ said }) => said.map(({ kind }) => kind)));

/** From the first to the last of those words, where the sentence has all of them and neither denies nor warns. */
function standTogether(
  { said, free, warns, denials }: Advice,
  kinds: readonly string[],
  not: readonly string[],
): Span | undefined {
  if (warns || not.some((kind) => free.has(kind))) return undefined;
  const those = kinds.flatMap((kind) => said.find((each) => each.kind === kind) ?? []);
  if (those.length < kinds.length) return undefined;
  const start = Math.min(...those.map((each) => each.start));
  const last = Math.max(...those.map((each) => each.start));
  if (denials.some((denial) => denial < last)) return undefined;
  return { start, end: Math.max(...those.map(({ end }) => end)) };
}

export default defineCheck<Values>({
  code: 'dangerous-advice',
  title: 'A step or note gives advice that hurts or poisons',
  family: 'safety',
  severity: 'error',
  scope: 'recipe',
  source: {
    kind: 'from memory',
    title: 'fire services, US CPSC, USDA, FDA, CDC; each danger with its row in the data',
  },
  explain: `**What it computes.** Whether a sentence says to do what hurts: water on burning fat, bare hands in caramel, a slicer without its guard, raw dough as a treat, unsealed jars on the shelf, dead mussels, curing salt by the handful, or that salt kills worms and flames leave no alcohol.

**Why it matters.** Who reads it does it.

**What to do.** What the message says.

**Silent** where it is denied, or the harm is told: \`never throw water on burning oil\`.`,
  find: ({ recipe, house }) => find(recipe, house),
  say: ({ say, source }) => ({ message: `${say}. ${CAUTION}`, source }),
  examples: {
    good: [
      'recipe Mousse\n  yield   4 glasses\n  note    Never use cracked eggs beside it, they will do harm.\n  300 g     double cream\n  60 g      sugar\n  do Whip the cream with the sugar and chill for 1 h.\n',
      'recipe Chips\n  1 kg      potatoes\n  1 l       sunflower oil\n  do Heat the oil in a deep pan to 180 C. If it catches fire, put the lid on: never throw water on burning oil.\n  do Fry the potatoes for 6 min until golden.\n',
    ],
    bad: [
      'recipe Mousse\n  yield   4 glasses\n  300 g     double cream\n  60 g      sugar\n  do Whip the cream with the sugar and chill for 1 h. Cracked eggs will do for the custard beside it.\n# "Cracked eggs will do" dangerous-advice: through a crack\n',
      'recipe Chips\n  1 kg      potatoes\n  1 l       sunflower oil\n  do Heat the oil in a deep pan to 180 C. If it catches fire, throw a jug of water on the pan.\n# "catches fire, throw a jug of water" dangerous-advice: put the lid on\n  do Fry the potatoes for 6 min until golden.\n',
    ],
  },
});
