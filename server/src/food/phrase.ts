/**
 * Knows how the words of a name are cut into what names the food and what is said of it.
 * Refuses to know which foods there are.
 */
import { plainText, tokensOf, wordSet } from './names.ts';

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

/** Where the name stops and the talk about it starts: `butter for greasing`, `oil plus more`. */
export const CUTS = wordSet(`
  for to plus at in with without such like preferably cut from into about then if per each see as minus until including on than by that which either whether when
`);
