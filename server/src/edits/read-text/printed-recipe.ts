/**
 * Knows what each line of a printed recipe is: title, yield, heading, ingredient, step; from its headings, its bullets and its shape.
 * Refuses to know how any of them is written in the notation.
 */
import { opensWithOrder } from '../../prose/verb-named.ts';

export interface PrintedLine {
  readonly text: string;
  /** In the text, from 1. */
  readonly line: number;
}

export interface PrintedPart {
  /** Empty for what stands under no heading of its own. */
  readonly name: string;
  readonly ingredients: readonly PrintedLine[];
  readonly steps: readonly PrintedLine[];
}

export interface PrintedRecipe {
  readonly title?: PrintedLine;
  readonly by?: string;
  readonly source?: string;
  readonly yields: readonly PrintedLine[];
  /** How long it takes, as printed: `PREP 20 MINS`. */
  readonly times: readonly string[];
  readonly notes: readonly string[];
  readonly tags: readonly string[];
  readonly parts: readonly PrintedPart[];
  /** Lines that are none of these. */
  readonly unknown: readonly PrintedLine[];
}

const INGREDIENTS =
  /^(?:(?:the )?ingredients?(?: list)?|formula|ingredients?\b.*\b(?:weight|grams|amount|quantity)\b.*|(?:what )?you(?: will|'ll|’ll)? need|shopping list)\s*[:.]?(?:\s*[-—–]+\s*)?$/i;
const METHOD =
  /^(?:the )?(?:method|mode|directions?|instructions?|preparation|procedure|steps|to make|how to make(?: it)?|mode of preparation|what to do)\s*[:.]?$/i;
const NOTES = /^(?:notes?|tips?|cook's notes?)\s*[:.]?$/i;
const RUN_IN = /^(ingredients|mode|method|directions|preparation|procedure|notes?)\s*\.?\s*(?:[-—–]+|:)\s*(?=\S)/i;
const YIELD =
  /^(?:(?:makes|serves|feeds|servings?|yields?|yield|portions?|recipe yield|sufficient for|for|quantity|cuts into)\s*:?\s+(?:about |approximately |approx\.? |around |roughly )?(?:\d|one|two|three|four|five|six|eight|ten|twelve|a dozen)|\d+(?:\s*(?:-|–|to)\s*\d+)? (?:servings?|portions?|persons)\b)/i;
/** A yield below the method: a line of its own, that no step would be. */
const YIELD_BELOW =
  /^(?:makes|serves|feeds|servings?|yields?)\s*:?\s+(?:about |approx(?:imately|\.)? )?(?:\d|an? |one|two|three|four|five|six|eight|ten|twelve)[^.!,;]{0,30}[.!]?$/i;
/** Before what is said beside the method, on one line. */
const TIP = /^(?:(?:cook's |top |chef's )?tips?|variations?|storage)\s*:\s*(?=\S)/i;
const TIMES =
  /^(?:(?:prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|ready in|chill(?:ing)?|ris(?:e|ing)|active|hands-on)(?: time)?\s*[:—–-]|time\s*[:.—–-]|(?:prep(?:aration)?|cook(?:ing)?|bak(?:e|ing)|total|ready in|chill(?:ing)?)(?: time)? \d+ ?(?:m|h)|average cost|seasonable)/i;
const BY = /^(?:by|author|from the kitchen of)\s*:?\s+(.{2,80})$/i;
const SOURCE = /^(?:source|adapted from|from)\s*:\s*(.+)$/i;
const NUMBERED = /^(?:step )?\d+\s*[.):]\s+\S/i;
/** `1 Heat oven`: a number without a point. */
const COUNTED = /^(\d{1,2})\s+(?=\p{Lu}(\p{L}+)\s+\S)/u;
const AMOUNT_FIRST =
  /^(?:[-•*·▢□◦]\s*)?(?:about )?(?:\d|[½⅓⅔¼¾⅛⅜⅝⅞]|(?:an?|one|two|three|four|five|six|eight|ten|half|quarter|dozen|juice|grated rind|rind|zest|yolks?|whites?|the (?:juice|rind|yolks?|whites?))\b)/i;
const BULLET = /^[-•*·▢□◦–]\s+/;

/** Past its head, a list run on in one line has amounts that no preparation has. */
const MEASURED =
  /^(?:\d[\d.,/ ]*|[½⅓⅔¼¾⅛]) ?(?:g|kg|ml|cl|l|oz|lb|cups?|tbsp|tsp|tablespoons?|teaspoons?|pints?|ounces?|pounds?)\b/i;

type Place = 'head' | 'ingredients' | 'method' | 'notes';

/** `isIngredient` says whether a line can be read as one, where only its meaning can tell. */
export function sortLines(text: string, isIngredient: (line: string) => boolean): PrintedRecipe {
  const lines = runIns(withoutShares(text.split(/\r\n|\r|\n/)).map((t, i) => ({ text: t.trim(), line: i + 1 })));
  const headed = lines.some((l) => INGREDIENTS.test(l.text));
  const sorted = new Sorted();
  const steps = countedSteps(lines, isIngredient);
  let place: Place = 'head';
  let afterBlank = true;
  lines.forEach((printed, i) => {
    const line = steps.get(printed) ?? printed;
    const { text: t } = line;
    if (t === '' || /^[-=_*~]{3,}$/.test(t)) {
      afterBlank = true;
      return;
    }
    const blank = afterBlank;
    afterBlank = false;
    if (INGREDIENTS.test(t)) place = 'ingredients';
    else if (METHOD.test(t)) {
      place = 'method';
      sorted.close();
    } else if (NOTES.test(t)) place = 'notes';
    else if (TIMES.test(t)) sorted.times.push(t);
    else if (TIP.test(t)) sorted.notes.push(t.replace(TIP, ''));
    else if (
      place === 'head' &&
      sorted.title === undefined &&
      !NUMBERED.test(t) &&
      !(AMOUNT_FIRST.test(t) && isIngredient(t))
    )
      sorted.headline(line);
    else if ((place === 'method' ? YIELD_BELOW : YIELD).test(t)) sorted.yields.push(line);
    else if (place === 'head' && BY.test(t)) sorted.by = BY.exec(t)?.[1];
    else if (SOURCE.test(t)) sorted.source = SOURCE.exec(t)?.[1];
    else if (place === 'notes') sorted.notes.push(t);
    else if (place === 'method') {
      const heading = headingOf(t, lines[i + 1]?.text);
      if (heading !== undefined) sorted.open(heading);
      else sorted.step(line);
    } else if (place === 'ingredients' || (place === 'head' && !headed)) {
      const counted = line !== printed;
      const ends = blank || counted || (!headed && (NUMBERED.test(t) || opensMethod(t)));
      const prose = counted || NUMBERED.test(t) || isProse(t);
      const heading = headingOf(t, lines[i + 1]?.text);
      if (heading !== undefined && !isIngredient(t)) sorted.open(heading);
      else if (isIngredient(t) && !(prose && blank && !AMOUNT_FIRST.test(t))) {
        place = 'ingredients';
        sorted.ingredient(line);
      } else if ((prose || (blank && isSentence(t))) && ends && sorted.hasIngredients()) {
        place = 'method';
        sorted.close();
        sorted.step(line);
      } else if (place === 'ingredients') sorted.ingredient(line);
      else sorted.unknown.push(line);
    } else if (sorted.hasIngredients()) sorted.step(line);
    else sorted.notes.push(t);
  });
  return sorted.recipe();
}

/** A sentence: several words, a verb's end at a full stop, no amount at its head. */
const isProse = (t: string): boolean => t.split(' ').length > 6 && /[.!]$/.test(t) && !BULLET.test(t);

/** Prose right under a list: it orders something, or has no figure as an ingredient would. */
const opensMethod = (t: string): boolean => !/[\d¼-¾⅐-⅞]/.test(t) || opensWithOrder(t);

/** Lines that are counted from one on and each order something, without their numbers: `1 Heat oven`, `2 Sift the flour`. */
function countedSteps(
  lines: readonly PrintedLine[],
  isIngredient: (line: string) => boolean,
): ReadonlyMap<PrintedLine, PrintedLine> {
  const steps = new Map<PrintedLine, PrintedLine>();
  let next = 1;
  for (const line of lines) {
    const [number, digits] = COUNTED.exec(line.text) ?? [];
    if (number === undefined || (Number(digits) !== next && Number(digits) !== 1)) continue;
    const text = line.text.slice(number.length);
    if (!opensWithOrder(text) && !(isProse(text) && next > 1)) continue;
    next = Number(digits) + 1;
    steps.set(line, { ...line, text });
  }
  // `1 Mix all.` alone: it orders something, and is no food without its number.
  const [only] = steps.values();
  const orders = only !== undefined && /[.!]$/.test(only.text) && !isIngredient(only.text);
  return steps.size > 1 || orders ? steps : new Map();
}

/** What begins a paragraph as a sentence does: `Heat the oven to 220C.`, `Mix.` */
const isSentence = (t: string): boolean =>
  /^\p{Lu}\p{Ll}*(?: \S+)*[.!]$/u.test(t) && (t.split(' ').length > 2 || opensWithOrder(t));

/** `For the crust:`, `Filling:`, `GLAZE`: short, and what follows stands under it. */
function headingOf(t: string, next: string | undefined): string | undefined {
  if (t.length > 50 || next === undefined || next === '') return undefined;
  const colon = /^(?:for (?:the )?|to make (?:the )?)?([^:\d]{2,40}):$/i.exec(t);
  if (colon !== null) return plain(colon[1] ?? '');
  const alone = /^(?:for (?:the )|\*\*)([A-Za-z][^:.\d]{1,38})(?:\*\*)?$/i.exec(t);
  if (alone !== null) return plain(alone[1] ?? '');
  return /^[A-Z][A-Z &'-]{2,38}$/.test(t) ? plain(t) : undefined;
}

const plain = (name: string): string => name.replace(/\*+/g, '').trim().toLowerCase();

/** Fewer lines with a share beside a weight make no table. */
const TABLE = 3;

/** A table of a baker's percentages beside weights: the weights say the same, and stand alone. */
function withoutShares(lines: readonly string[]): readonly string[] {
  const bare = lines.map((t) => (WEIGHED.test(t) ? t.replace(SHARE, ' ').replace(/\s*\|\s*/g, ' ') : t));
  return bare.filter((t, i) => t !== lines[i]).length >= TABLE ? bare : lines;
}

const SHARE = /(?<=[\s|(])\(?\d+(?:[.,]\d+)?\s?%\)?(?=[\s|]|$)/g;
const WEIGHED = /\d\s?(?:g|kg|ml|l|oz|lb)\b/i;

/** `SERVES 10 • PREP 20 MINS • COOK 50 MINS`: each a line of its own. */
function headFacts(text: string): readonly string[] {
  const facts = text.split(/\s*[•|·]\s*/).filter((t) => t !== '');
  return facts.length > 1 && facts.every((t) => YIELD.test(t) || TIMES.test(t)) ? facts : [text];
}

/** `INGREDIENTS.—1 quart of milk, 4 eggs, 3 oz. of sugar.` becomes a heading and a line each. */
function runIns(lines: readonly PrintedLine[]): PrintedLine[] {
  const apart = lines.flatMap(({ text, line }) => headFacts(text).map((t) => ({ text: t, line })));
  return apart.flatMap(({ text, line }) => {
    const match = RUN_IN.exec(text);
    if (match === null) {
      const pieces = AMOUNT_FIRST.test(text) && !NUMBERED.test(text) ? splitList(text) : [];
      const isList =
        (pieces.length >= 4 && pieces.every((p) => AMOUNT_FIRST.test(p))) ||
        (pieces.length >= 3 && pieces.slice(1).filter((p) => MEASURED.test(p)).length >= 2);
      return isList ? pieces.map((t) => ({ text: t, line })) : [{ text, line }];
    }
    const heading = { text: match[1] ?? '', line };
    const rest = text.slice(match[0].length);
    if (!/^ingredients$/i.test(heading.text)) return [heading, { text: rest, line }];
    return [heading, ...splitList(rest).map((t) => ({ text: t, line }))];
  });
}

/** A list run on in one line: a comma, or `and`, before the next amount parts it. */
function splitList(text: string): string[] {
  const next =
    '(?=(?:about |the )?(?:\\d|[½⅓⅔¼¾⅛]|(?:an?|one|two|three|four|five|six|eight|ten|half|rather|juice|rind|grated|yolks?|whites?|salt|pepper|sugar|flavouring|nutmeg|a few|water|(?:a )?pinch|(?:a )?knob|(?:a )?handful|(?:butter|oil|flour) for)\\b|(?:[a-z]+ ){1,3}to taste\\b))';
  return text
    .replace(/\bto every (lb\.?|pound|pint|quart|oz\.?|ounce) of ([^,;]+?) allow /gi, '1 $1 of $2, ')
    .split(new RegExp(`[,;]\\s*(?:and\\s+)?${next}|,?\\s+and\\s+${next}(?!\\s*(?:a half|one-half|half))`, 'i'))
    .map((t) => t.replace(/[.;,]\s*$/, '').trim())
    .filter((t) => t !== '');
}

/** What has been sorted so far. */
class Sorted {
  title: PrintedLine | undefined;
  by: string | undefined;
  source: string | undefined;
  readonly yields: PrintedLine[] = [];
  readonly times: string[] = [];
  readonly notes: string[] = [];
  readonly unknown: PrintedLine[] = [];
  private readonly parts: { name: string; ingredients: PrintedLine[]; steps: PrintedLine[] }[] = [];
  private open_ = '';

  /** The title; a yield in brackets behind it is one. */
  headline({ text, line }: PrintedLine): void {
    const plain = text
      .replace(/^(?:(?:fwd?|re|subject)\s*:\s*)+|^#+\s*|[:.]+$/gi, '')
      .replace(/^(\*{1,2}|_{1,2})(.+)\1$/, '$2')
      .trim();
    const [, name, made] = /^(.*\S)\s*\(([^()]*)\)$/.exec(plain) ?? [];
    const isYield = name !== undefined && made !== undefined && YIELD.test(made);
    if (isYield) this.yields.push({ text: made, line });
    this.title = { text: isYield ? name : plain, line };
  }

  open(name: string): void {
    this.open_ = name;
  }

  /** The method begins under no heading. */
  close(): void {
    this.open_ = '';
  }

  ingredient(line: PrintedLine): void {
    this.part(this.open_).ingredients.push(line);
  }

  step(line: PrintedLine): void {
    this.part(this.open_).steps.push(line);
  }

  hasIngredients(): boolean {
    return this.parts.some((p) => p.ingredients.length > 0);
  }

  recipe(): PrintedRecipe {
    const { title, by, source, yields, times, notes, unknown, parts } = this;
    // Steps that stand under no heading come after the parts they speak of.
    const last = parts.filter((p) => p.name === '' && p.ingredients.length === 0);
    const rest = parts.filter((p) => !last.includes(p));
    return {
      ...(title && { title }),
      ...(by !== undefined && { by }),
      ...(source !== undefined && { source }),
      yields,
      times,
      notes,
      tags: [],
      parts: [...rest, ...last],
      unknown,
    };
  }

  private part(name: string) {
    const found = this.parts.find((p) => p.name === name);
    if (found !== undefined) return found;
    const made = { name, ingredients: [], steps: [] };
    this.parts.push(made);
    return made;
  }
}
