/**
 * Knows how a printed line of a list of ingredients becomes lines of the notation.
 * Refuses what the notation would not read back whole: such a line is not understood.
 */
import { readLine } from '../../notation/statements.ts';
import type { World } from '../../recipe/world.ts';
import { type PrintedAmount, printedAmount } from './printed-amount.ts';

/** The lines of the notation for one printed line, without indent; undefined where it is not understood. */
export function readIngredient(printed: string, world: World): readonly string[] | undefined {
  const text = clean(printed);
  if (text === '' || text.length > 400) return undefined;
  for (const read of [readEach, readSeveral, readTaken, readSized, readPlain, readInverted, readFree]) {
    const lines = read(text, world);
    if (lines?.every(isWhole)) return lines;
  }
  return undefined;
}

function clean(printed: string): string {
  return printed
    .replace(/[\u00a0\u2009\u202f\t]/g, ' ')
    .replace(/[‘’]/g, "'")
    .replace(/[“”]/g, '"')
    .replace(/⁄/g, '/')
    .replace(/^\s*(?:[-•*·▢□☐◦‣–—]|\d+[.)](?=\s))\s*/, '')
    .replace(/\[([^\]]*)\]/g, '($1)')
    .replace(/\*+$/, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[.;,]$/, '');
}

/** Read back, the line is an ingredient with nothing left over. */
function isWhole(line: string): boolean {
  const { statement, faults } = readLine(line);
  return statement.kind === 'ingredient' && statement.name !== undefined && faults.length === 0;
}

const SEASONINGS =
  /^(?:(?:coarse|fine|sea|kosher|table|freshly ground|fresh-ground|ground|black|white|cayenne) )*(?:salt|pepper|paprika|nutmeg|seasoning)$/i;

/** `Salt and pepper to taste`, `salt and pepper`: one line each. */
function readSeveral(text: string): readonly string[] | undefined {
  const bare = text
    .replace(/,?\s*(?:to (?:your )?taste|to season)\b/i, '')
    .replace(/^s ?(?:&|and|\+) ?p$/i, 'salt and pepper')
    .trim();
  const names = bare.split(/\s*(?:,|\band\b|&)\s*/i).filter((n) => n !== '');
  return names.length > 1 && names.every((n) => SEASONINGS.test(n))
    ? names.map((n) => `to taste ${lower(n)}`)
    : undefined;
}

/** `Juice of 1 lemon`, `whites of 3 eggs`, `grated rind of ½ orange`. */
function readTaken(text: string): readonly string[] | undefined {
  const match =
    /^(?:the )?((?:(?:grated|finely grated|shredded|thinly pared|thin|strained) )?(?:rind and juice|juice and rind|zest and juice|juice and zest|juice|rind|zest|peel|whites?|yolks?|(?:stiffly )?beaten whites?|(?:well-?)?beaten yolks?))(?: \((.*)\))?(?: (?:of|from))? (.+)$/i.exec(
      text,
    );
  if (match === null) return undefined;
  const what = lower(match[1] ?? '');
  const of = printedAmount(match[3] ?? '');
  if (of.amount === undefined) return undefined;
  const { name, preparation } = split(of.rest);
  const egg = /(?:^|\s)eggs?$/i.test(name);
  const half = /(white|yolk)s?$/.exec(what)?.[1];
  if (half !== undefined) {
    if (!egg) return undefined;
    const many = !/^(?:1|1\/2|½)(?!\d)/.test(of.amount);
    const beaten = /beaten/.test(what) ? what.replace(/ (?:white|yolk)s?$/, '') : undefined;
    return [written(of, `egg ${half}${many ? 's' : ''}`, joined(beaten, preparation))];
  }
  return [written(of, name, joined(what, preparation))];
}

/** `1 t. each cinnamon, cloves and nutmeg`, `carrot, turnip, onion, ½ cup each, cut in dice`. */
function readEach(text: string, world: World): readonly string[] | undefined {
  const before = /^(.{1,30}?)\beach(?: of)?:? (.+)$/i.exec(text);
  const after = /^(.+?),\s*((?:about )?[\d½⅓⅔¼¾⅛].{0,20}?) (?:of )?each(?:,\s*(.+))?$/i.exec(text);
  const [amount, list, preparation] =
    before !== null ? [before[1], before[2], undefined] : after !== null ? [after[2], after[1], after[3]] : [];
  if (amount === undefined || list === undefined) return undefined;
  const names = list.split(/\s*(?:,|\band\b|&)\s*/i).filter((n) => n !== '');
  const given = printedAmount(amount.trim());
  if (names.length < 2 || given.amount === undefined || given.rest !== '') return undefined;
  if (names.some((n) => /\d/.test(n) || world.book.findInText(n).kind === 'unknown')) return undefined;
  return names.map((name) => written(given, name, preparation));
}

/** `A four-pound fowl`: the weight of the one that is meant. */
function readSized(text: string): readonly string[] | undefined {
  const match =
    /^(?:an?|one|1) ([a-z]+(?=[- ])|\d+(?:\.\d+)?(?=-))[- ](pounds?|lb\.?|ounces?|oz\.?|kg|g) (?!can|tin|jar|pack|box|bag|bottle)(.+)$/i.exec(
      text,
    );
  if (match === null) return undefined;
  const amount = printedAmount(`${match[1] ?? ''} ${match[2] ?? ''} ${match[3] ?? ''}`);
  if (amount.amount === undefined) return undefined;
  const { name, preparation, notes } = split(amount.rest);
  return name === '' ? undefined : [written({ ...amount, notes: [...amount.notes, ...notes] }, name, preparation)];
}

/** An amount, then a name. */
function readPlain(text: string, world: World): readonly string[] | undefined {
  const { text: bare, optional } = withoutOptional(text);
  const amount = printedAmount(bare);
  if (amount.amount === undefined || amount.rest === '' || NO_MEASURE.test(amount.rest)) return undefined;
  const other = /^(.+?),? (or (?:about )?(?:\d|[½⅓⅔¼¾⅛]|one |two |half ).+)$/i.exec(amount.rest);
  if (other !== null && printedAmount((other[2] ?? '').slice(3)).amount !== undefined)
    return readPlain(
      `${bare.slice(0, bare.length - amount.rest.length)}${other[1] ?? ''} (${(other[2] ?? '').replace(/[()]/g, '')})`,
      world,
    );
  const plus = plusAnother(amount.rest);
  if (plus !== undefined) {
    const second = readIngredient(plus.more, world);
    const [first] = readPlain(`${bare.slice(0, bare.length - amount.rest.length)}${plus.name}`, world) ?? [];
    if (first !== undefined && second !== undefined) return [first, ...second];
  }
  const { name, preparation, notes } = split(amount.rest);
  if (name === '') return undefined;
  const line = written({ ...amount, notes: [...amount.notes, ...notes] }, name, preparation);
  return [optional ? `optional ${line}` : line];
}

/** What nobody measures: one of it is as much as is needed. */
const NO_MEASURE = /^(?:(?:good|big|generous) )?(?:glug|splash|drizzle|dollop|squeeze|sprinkling|bit) of /i;

/** `2 eggs plus 1 yolk`, `1 egg and 2 egg yolks`: two lines. */
function plusAnother(rest: string): { readonly name: string; readonly more: string } | undefined {
  const match =
    /^([^,(]+?),? (?:plus|and|\+|(?:dissolved|softened|soaked) in) ((?:\d|[½¼¾⅓⅔]|one |two |three ).+)$/i.exec(rest);
  if (match === null || match[1] === undefined || match[2] === undefined) return undefined;
  const done = /(dissolved|softened|soaked) in $/i.exec(rest.slice(0, rest.length - match[2].length))?.[1];
  const name = done === undefined ? match[1] : `${match[1]}, ${done}`;
  return printedAmount(match[2]).amount === undefined ? undefined : { name, more: match[2] };
}

/** A name, then an amount: `Flour, all-purpose 2 lb`, `Sugar: 1 cup`, `Butter ... 4 oz`. */
function readInverted(text: string, world: World): readonly string[] | undefined {
  const match = /^(.*?[a-z)])\s*(?:\.{2,}|:|–|—|-{2,}| - |,| )\s*((?:about )?(?:\d|[½⅓⅔¼¾⅛]).*)$/i.exec(text);
  if (match === null) return undefined;
  const amount = printedAmount(match[2] ?? '');
  if (amount.amount === undefined || amount.rest.replace(/[().,]/g, '').trim() !== '') return undefined;
  const { name, preparation, notes } = split(match[1] ?? '');
  // A bare number behind words may be a page, or a plate.
  if (/^[\d -]+$/.test(amount.amount) && world.book.findInText(name).kind === 'unknown') return undefined;
  return name === '' ? undefined : [written({ ...amount, notes: [...amount.notes, ...notes] }, name, preparation)];
}

/** No amount: `salt to taste`, `oil for frying`, `a little butter`, and seasonings alone. */
function readFree(text: string, world: World): readonly string[] | undefined {
  const { text: bare, optional } = withoutOptional(text);
  const before = optional ? 'optional ' : '';
  const taste = /,?\s*(?:or )?to (?:your )?taste\b,?/i.test(bare);
  const vague =
    /^(?:(?:a )?few (?:grains|gratings|drops|leaves)|a (?:good |big |generous )?(?:little|few|bit of|sprinkling of|squeeze of|handful of|knob of|drizzle of|splash of|glug of|dollop of|piece of)|some|enough|few|extra|additional|more) /i;
  const rest = bare
    .replace(/,?\s*(?:or )?to (?:your )?taste\b,?/i, '')
    .replace(/,?\s*as needed$/i, '')
    .replace(vague, '')
    .replace(/^(?:of )/, '')
    .trim();
  const served =
    / (for|to) ((?:dust|dusting|frying|greasing|brushing|serving|serve|garnish|sprinkling|rolling|deep|the|finish|taste|decorate|coating|kneading|board|moisten|cover|fry|make|season|glaze|bind|mix)\b.*)$/i.exec(
      rest,
    );
  const { name, preparation, notes } = split(served === null ? rest : rest.slice(0, served.index));
  if (name === '' || name.split(' ').length > 6) return undefined;
  const known = world.book.findInText(name).kind !== 'unknown';
  const said = taste || vague.test(bare) || served !== null || /as needed$/i.test(bare) || SEASONINGS.test(name);
  if (!known && !said) return undefined;
  const amount = taste || SEASONINGS.test(name) ? 'to taste' : 'as needed';
  const purpose = served === null ? preparation : joined(preparation, `${served[1] ?? ''} ${served[2] ?? ''}`);
  return [`${before}${written({ amount, rest: '', notes }, name, purpose)}`];
}

function withoutOptional(text: string): { readonly text: string; readonly optional: boolean } {
  const bare = text
    .replace(
      /\s*\(optional\)|,?\s*\(?if (?:desired|liked)\)?|,\s*optional\b|^optional:?\s+|\s+(?:[-–—]\s+)?optional$/i,
      '',
    )
    .trim();
  return { text: bare, optional: bare !== text };
}

interface NameParts {
  readonly name: string;
  readonly preparation?: string;
  readonly notes: readonly string[];
}

/** The name, what is done to it, and what stands in brackets. */
function split(rest: string): NameParts {
  const notes: string[] = [];
  const flat = rest
    .replace(/\s*\(([^()]*)\)/g, (_, note: string) => {
      notes.push(note.trim());
      return '';
    })
    .replace(/[()]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const cut = /,\s*|;\s*|\s+[-–—]\s+/.exec(flat);
  const name = tidy(cut === null ? flat : flat.slice(0, cut.index));
  const after = cut === null ? '' : tidy(flat.slice(cut.index + cut[0].length));
  const more = / (?:\+|plus|and) ((?:some |a little )?(?:more|extra)\b.*)$/i.exec(name);
  if (more !== null)
    return { name: name.slice(0, more.index), preparation: joined(after, `plus ${more[1] ?? ''}`) ?? '', notes };
  const purpose =
    cut === null
      ? / (for (?:dusting|frying|greasing|brushing|serving|garnish|sprinkling|rolling|the [a-z]+))$/i.exec(name)
      : null;
  if (purpose !== null) return { name: name.slice(0, purpose.index), preparation: purpose[1] ?? '', notes };
  const manner = MANNER_BEHIND.exec(name);
  if (manner !== null) return { name: name.slice(0, manner.index), preparation: joined(manner[1], after) ?? '', notes };
  return { name, ...(after !== '' && { preparation: after }), notes };
}

/** `suet finely chopped`: what is done to it, though no comma parts it off. */
const MANNER_BEHIND =
  / ((?:very )?(?:finely|roughly|coarsely|thinly|thickly|lightly|freshly) [a-z]+(?:ed|en|ut|ound))$/i;

const tidy = (text: string): string => text.replace(/^[\s,;:.-]+|[\s,;:-]+$/g, '').replace(/\.$/, '');

function written({ amount = '', equals, notes }: PrintedAmount, name: string, preparation?: string): string {
  const safe = (text: string) => text.replace(/[[\]]/g, '').replace(/#/g, 'no. ').replace(/\\/g, ' ').trim();
  return [
    amount,
    equals === undefined ? '' : ` = ${equals}`,
    ` ${safe(lowerFirst(name))}`,
    preparation === undefined || preparation === '' ? '' : `, ${safe(preparation)}`,
    notes.length === 0 ? '' : ` (${safe(notes.join('; '))})`,
  ].join('');
}

const joined = (...parts: readonly (string | undefined)[]): string | undefined => {
  const said = parts.filter((p): p is string => p !== undefined && p !== '');
  return said.length === 0 ? undefined : said.join(', ');
};
const lower = (text: string): string => text.toLowerCase();
/** A capital that only opens the line; `Dijon mustard` after an amount keeps its own. */
const lowerFirst = (name: string): string =>
  /^[A-Z][a-z]/.test(name) && !PROPER.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
const PROPER =
  /^(?:Dijon|Parmesan|Worcestershire|Cheddar|Gruyère|Gruyere|Madeira|Marsala|Emmental|Roquefort|Kirsch|Calvados|Angostura|Swiss|Greek|Italian|French|English|Irish|Indian|Bramley|Seville|Jamaica|Chinese|Thai|Spanish|Brussels|Graham|Indian|Philadelphia)\b/;
