/**
 * Knows the singular of an English word for food.
 */

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
