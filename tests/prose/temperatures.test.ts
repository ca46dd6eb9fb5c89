/** Of what a temperature is, held against the plain sense of sentences: food, oven, what is around it, what it lies in; or nobody can say. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import type { TemperatureSaid } from '../../server/src/prose/event.ts';
import { judged } from '../../server/src/prose/points.ts';
import { read } from '../../server/src/prose/read.ts';
import { eventsOf } from '../outside/sentences/score.ts';

const MARKS = { is: '', 'at least': '≥', 'at most': '≤', change: '±' } as const;

function written({ of, celsius: { low, high }, bound, inside, meant, cannot }: TemperatureSaid): string {
  const [a, b] = [Math.round(low), Math.round(high)];
  const slip = meant ? ` meant ${meant}` : cannot ? ' cannot be' : '';
  return `${of} ${MARKS[bound]}${a}${a === b ? '' : `–${b}`}${inside ? ' inside' : ''}${slip}`;
}

const temperaturesOf = (text: string): readonly TemperatureSaid[] =>
  read(sentenceIn(text).items, []).flatMap((event) => event.temperatures);

test.each<[string, string]>([
  // ovens
  ['Bake at 180 C for 20 min.', 'oven 180'],
  ['Bake in a 325 F oven for 1 h.', 'oven 163'],
  ['Bake in a moderate oven (375 degrees F.) for 15 minutes.', 'oven 191'],
  ['Bake at 350° F. (moderate oven) until brown.', 'oven 177'],
  ['Cook slowly in a 350° (moderate) oven.', 'oven 177'],
  ['Roast at oven temperature of 325° until brown.', 'oven 163'],
  ['Bake at mark 4 for an hour.', 'oven 177'],
  ['Bake at gas 6 for 20 minutes.', 'oven 204'],
  ['Bake at gas mark 3.', 'oven 163'],
  ['Preheat oven to 425°F.', 'oven 218'],
  ['Preheat the oven to 220 C.', 'oven 220'],
  ['Heat the oven to 200 C.', 'oven 200'],
  ['Set the oven to 150 C.', 'oven 150'],
  ['Turn the oven down to 150 C.', 'oven 150'],
  ['Lower the oven to 140 C and bake for an hour more.', 'oven 140'],
  ['Reduce the heat to 160 C and bake for 30 min.', 'oven 160'],
  ['Brown in the oven at 230 C.', 'oven 230'],
  ['Put the tin on the middle shelf at 180 C for 40 min.', 'oven 180'],
  ['Grill at 230 C.', 'oven 230'],
  ['Slide it into a 250 C oven.', 'oven 250'],
  ['Bake in the oven at 60 C.', 'oven 60'],
  ['At 180 C, bake for 25 minutes.', 'oven 180'],
  ['Roast in an oven heated to 190 C.', 'oven 190'],
  // one heat in several scales
  ['Heat oven to 180C/160C fan/gas 4.', 'oven 180'],
  ['Preheat the oven to 350 F (180 C).', 'oven 177'],
  ['Bake at 350°F/175°C for 30 minutes.', 'oven 177'],
  ['Bake at 220C/200C fan for 12 minutes.', 'oven 220'],
  ['Bake at 180 C (160 C fan).', 'oven 180'],
  ['Bake at 400 F (200 C/gas 6).', 'oven 204'],
  ['Bake at 200 C or gas 6.', 'oven 200'],
  ['Bake at gas 4 (180 C) for 20 min.', 'oven 177'],
  ['Bake at 325 F. or in a 375 F. convection oven.', 'oven 163 + oven 191'],
  ['Bake at 180 C (450 F) for 20 min.', 'oven 180'],
  ['Bake at 180 C/450 F/gas 4 for 20 min.', 'oven 180'],
  ['Bake at 180°C fan-forced for 25 min.', 'oven 180'],
  ['Roast at 110 C (60 C inside) for 3 h.', 'oven 110 + food 60 inside'],
  // what no oven is on either scale, and what a fire is
  ['Bake at 1800 C for 20 min.', 'oven 1800 cannot be'],
  ['Bake at 18 C for 20 min.', 'oven 18 cannot be'],
  ['Bake the flatbread in a wood oven at 450 C for 90 s.', 'oven 450'],
  ['Roast over coals at 400 C.', 'oven 400'],
  // as it cools, each with its time
  ['It was 60 C at 0 h, 21 C at 9 h and 5 C at 14 h.', 'food 60 + food 21 + food 5'],
  ['Bake at 220 C for 10 min, 200 C for 10 min and 180 C for 20 min.', 'oven 220 + oven 200 + oven 180'],
  ['Whisk in the yolks while it is above 80 C.', 'food ≥80'],
  // in the food
  ['Roast until the centre reads 74 C.', 'food 74 inside'],
  ['Roast until the center registers 145 F.', 'food 63 inside'],
  ['Roast at 200 C until the thickest part of the thigh reads 74 C.', 'oven 200 + food 74 inside'],
  ['Roast at 200 C to an internal 74 C.', 'oven 200 + food 74 inside'],
  ['Roast (to a minimum internal temperature of 145 ºF).', 'food ≥63 inside'],
  ['Cook to an internal temperature of at least 165 F.', 'food ≥74 inside'],
  ['Internal temperature must reach 145 F. or higher for 15 seconds.', 'food ≥63 inside'],
  ['Temperature must reach 155 F. or higher for 15 seconds.', 'food ≥68'],
  ['Cook until 71 C by the bone.', 'food 71 inside'],
  ['Roast until 63 C in the centre.', 'food 63 inside'],
  ['Bake until the loaf is 96 C inside.', 'food 96 inside'],
  ['When it reads 96 C inside, it is done.', 'food 96 inside'],
  ['Roast until a probe thermometer in the middle says 68 C.', 'food 68 inside'],
  ['Cook until the custard reaches 82 C.', 'food 82'],
  ['Boil for 15 min, stirring often, until it reaches 250 C.', 'food 250 meant F'],
  ['Cook for 10 min, until the thermometer reads 428 F.', 'food 220 cannot be'],
  ['Stir over a low heat until it reads 82 C.', 'food 82'],
  ['Bake until 93 C.', 'food 93'],
  ['Roast to 63 C.', 'food 63'],
  ['Heat the milk to 82 C.', 'food 82'],
  ['Bring to 85 C.', 'food 85'],
  ['Reheat to 74 C.', 'food 74'],
  ['Heat to 165 F.', 'food 74'],
  ['Heat to simmering (185°-210° F.); stir to keep it from sticking.', 'food 85–99'],
  ['Cook to at least 74 C.', 'food ≥74'],
  ['Pull at 58 C and rest.', 'food 58'],
  ['Take it out at 60 C.', 'food 60'],
  ['Bail out when they clock 175 F.', 'food 79'],
  ['Lift them out when the thermometer shows 71 C.', 'food 71'],
  ['Cook in the skillet to 74 C.', 'food 74'],
  ['Fry the chicken to 74 C.', 'food 74'],
  ['In a bowl over simmering water, heat to 60 C.', 'food 60'],
  ['Dough temperature should be between 78 F. and 82 F.', 'food 26–28'],
  ['Mix to a dough temperature of 25 C.', 'food 25'],
  // cooling
  ['Cool to 21 C within 2 h and to 5 C within 6 h in all.', 'food 21 + food 5'],
  ['Chill to 4 C within 6 h.', 'food 4'],
  ['Chill in the fridge to 5 C.', 'food 5'],
  ['Let it cool to 40 C before adding the yeast.', 'food 40'],
  ['Rest until it falls to 50 C.', 'food 50'],
  // sugar and jam
  ['Boil to 118 C.', 'food 118'],
  ['Boil the sugar and water to 112 C.', 'food 112'],
  ['Cook to the soft ball stage, 115 C.', 'food 115'],
  ['Cook to the hard crack, 150 C.', 'food 150'],
  ['Boil until it registers 222 degrees Fahrenheit on a candy thermometer.', 'food 106'],
  ['Boil until it sets at 105 C.', 'food 105'],
  // around it
  ['Refrigerate at 41 F or lower.', 'around ≤5'],
  ['Chill at 4 C overnight.', 'around 4'],
  ['Keep in the fridge at 3 C.', 'around 3'],
  ['Raw: keep at 0-4 C and cook within 2 days.', 'around 0–4'],
  ['Pink: hold at 3 C for 2 days.', 'around 3'],
  ['Keep at or below 5 °C.', 'around ≤5'],
  ['Store below 5 C.', 'around ≤5'],
  ['Hold for service at 140 F. or higher.', 'around ≥60'],
  ['Hold at 63 C.', 'around 63'],
  ['Keep hot above 60 C.', 'around ≥60'],
  ['Keep warm at 65 C until wanted.', 'around 65'],
  ['Hold in the steam table at 75 C.', 'around 75'],
  ['Keep at not less than 60 C.', 'around ≥60'],
  ['Store in a cool place, 60 to 70 F.', 'around 16–21'],
  ['Set in a warm place (80 F.) until double.', 'around 27'],
  ['Keep it in a place as near a temperature of 56° to 60° Fahr. as possible.', 'around 13–16'],
  ['Let the dough rise at 27 C for an hour.', 'around 27'],
  ['Prove at 26-28 C.', 'around 26–28'],
  ['Ferment at 20 C for 5 days.', 'around 20'],
  ['Culture at 43 C for 8 h.', 'around 43'],
  ['Dry at 55 C for 8 h.', 'around 55'],
  ['Dry in the oven at 60 C.', 'around 60'],
  ['Smoke at 130° to 140°F for 70 hours.', 'around 54–60'],
  ['Cold-smoke below 25 C.', 'around ≤25'],
  ['Freeze at -18 C.', 'around -18'],
  ['Store at 0 F or below.', 'around ≤-18'],
  ['Leave at room temperature, about 20 C.', 'around 20'],
  ['Store at 15 C in the cellar.', 'around 15'],
  ['Hang at 12 C for three weeks.', 'around 12'],
  ['Cure in the fridge at 4 C.', 'around 4'],
  ['Keep the temperature between 60 C and 65 C.', 'around 60–65'],
  ['Display at 5 C or colder.', 'around ≤5'],
  // what it lies in
  ['Fry at 170 C for 4 minutes.', 'medium 170'],
  ['Deep-fry in oil at 190 C until golden.', 'medium 190'],
  ['Fry in deep fat at 375 F.', 'medium 191'],
  ['Fry on griddle at 350 F. 3 minutes each side.', 'medium 177'],
  ['Heat the oil to 180 C.', 'medium 180'],
  ['Heat the oil in a deep, heavy pot to 180 C.', 'medium 180'],
  ['Best on the day; baked buns freeze at -18 C for up to 2 months.', 'around -18'],
  ['Heat the sunflower oil to 350 F.', 'medium 177'],
  ['Heat oil to 90 C and add the duck.', 'medium 90'],
  ['Cook in a water bath at 57 C for 3 h.', 'medium 57'],
  ['Cook sous vide at 62 C for 2 hours.', 'medium 62'],
  ['Place beef in 190 F. water.', 'medium 88'],
  ['Poach in water at 80 C.', 'medium 80'],
  ['Poach at 75 C for 12 min.', 'medium 75'],
  ['Simmer at 95 C for 2 h.', 'medium 95'],
  ['Steam at 100 C for 10 minutes.', 'medium 100'],
  ['Confit at 85 C in duck fat for 3 h.', 'medium 85'],
  ['Add hot water (120 F.), mixing at low speed.', 'medium 49'],
  ['Dissolve the yeast in water at 38 C.', 'medium 38'],
  ['The water should be at 38 C.', 'medium 38'],
  ['Bring the water bath to 54 C.', 'medium 54'],
  ['Process in a boiling-water canner at 100 C.', 'medium 100'],
  ['Process in a pressure canner at 240 F for 25 minutes.', 'medium 116'],
  ['Do not use water above 110 F.', 'medium ≥43'],
  // smokers, as hot as ovens
  ['Smoke at 110 C for 6 h.', 'oven 110'],
  ['Set the smoker to 225 F.', 'oven 107'],
  ['Hot-smoke at 80 C until the core is 65 C.', 'oven 80 + food 65 inside'],
  // no scale, and no degrees
  ['Bake at 350 for 20 minutes.', 'oven 177'],
  ['Preheat the oven to 425.', 'oven 218'],
  ['Roast at 180 until brown.', 'oven 180'],
  ['Bake at 350 grams each.', ''],
  ['Cut to 150 squares and bake.', ''],
  ['Roast at oven temperature of 325° to desired internal temperature.', 'oven 163'],
  ['Roast at 350 degrees.', 'oven 177'],
  ['Bake at 180 degrees for 20 min.', 'oven 180'],
  ['Bake at 200 degrees for 20 min.', 'oven 93–200'],
  ['Roast to an internal temperature of 165 degrees.', 'food 74 inside'],
  ['Cook until the middle reads 75 degrees.', 'food 75 inside'],
  ['Boil to a temperature of 236 degrees.', 'food 113'],
  ['Cook until a temperature of 248 degrees will register on the thermometer.', 'food 120'],
  ['Boil until a hard ball forms or 250 degrees is reached.', 'food 121'],
  ['Keep at 40 degrees in the refrigerator.', 'around 4'],
  ['Keep at 4 degrees in the fridge.', 'around 4'],
  // in the other scale
  ['Bake at 350 C for 10 min.', 'oven 350 meant F'],
  ['Roast until the centre reads 165 C.', 'food 165 inside meant F'],
  ['Roast until the centre reads 74 F.', 'food 23 inside meant C'],
  ['Refrigerate at 40 C.', 'around 40 meant F'],
  ['Keep in the fridge at 38 C.', 'around 38 meant F'],
  ['Chill at 4 F.', 'around -16 meant C'],
  ['Prove at 80 C.', 'around 80 meant F'],
  ['Bake over the coals at 400 C.', 'oven 400'],
  // a change
  ['Reduce the oven temperature by 25 F.', 'oven ±14'],
  ['Increase the oven temperature 20 C.', 'oven ±20'],
  ['Oven temperatures should be increased 25° F. at elevations of 3500 feet or more.', 'oven ±14'],
  ['Add 20 C for a conventional oven.', 'oven ±20'],
  ['Bake 20 C hotter in a still oven.', 'oven ±20'],
  // figures of one thing beside words of another
  ['Crank the oven to 250 C and bake the loaf for 35 min.', 'oven 250'],
  ['Bake at 230 C for 10 min, then turn down to 190 C.', 'oven 230 + oven 190'],
  ['Sear in a ripping hot pan at 260 C.', 'medium 260'],
  ['Warm the milk to blood heat, 37 C.', 'food 37'],
  ['Pasteurise the yolks at 60 C for 4 min.', 'food 60'],
  ['Melt the chocolate to 45 C, cool to 27 C and rewarm to 31 C.', 'food 45 + food 27 + food 31'],
  ['Pour the syrup at 118 C over the whites.', 'food 118'],
  ['Fry at 140 C for 6 min, then again at 190 C.', 'medium 140 + medium 190'],
  ['Bring the oil up to 175 C.', 'medium 175'],
  ['Let the oil fall to 150 C.', 'medium 150'],
  ['Set the circulator to 60 C.', 'medium 60'],
  ['Stew at 90 C for 3 h.', 'medium 90'],
  ['Proof in the oven at 30 C.', 'around 30'],
  ['Stand the stock in a 25 C kitchen for 6 h.', 'around 25'],
  ['Keep on the buffet at 63 C or above.', 'around ≥63'],
  ['Keep the sauce between 60 and 65 C.', 'around 60–65'],
  ['Cool in the blast chiller to 3 C.', 'food 3'],
  ['The oven should read 180 C.', 'oven 180'],
  ['Check that the fridge is at 4 C.', 'around 4'],
  ['Turkey is done at 165 F.', 'food 74'],
  ['Cook poultry to 165 F internal.', 'food 74 inside'],
  ['Heat through until piping hot, 75 C throughout.', 'food 75 inside'],
  ['Do not heat above 60 C.', 'food ≥60'],
  ['Cover and cook at 325 F for 3 hours.', 'oven 163'],
  ['Roast the thighs at 200 C for 40 min, until the centre reads 65 C.', 'oven 200 + food 65 inside'],
  ['Grill the breasts at 230 C.', 'oven 230'],
  ['Add the cream and cool below 5 C.', 'food ≤5'],
  ['Lay it skin side down at 38 F.', 'around 3'],
  ['Wrap and bake until tender and 195 F between the bones.', 'food 91 inside'],
  ['Grill until sticky and 165 F, and serve.', 'food 74'],
  ['Fry until no pink is left in the middle of the biggest and a probe shows 75 C.', 'food 75'],
  ['Stand the bag in ice water until the middle is under 40 F.', 'food 4 inside'],
  ['Arrange the jars on the oven rack, not touching, at 250 F for one hour.', 'oven 121'],
  ['Set it on top of the boiler, near 90 F.', 'around 32'],
  ['Reheat to a full bubble, 165 F, before you ladle it.', 'food 74'],
  // what is heated to so much is what lies right before it
  ['Fry a few at a time in deep fat heated to 375 F.', 'medium 191'],
  ['Set the jars in water heated to 82 C.', 'medium 82'],
  ['Add water cooled to 40 C.', 'medium 40'],
  ['Preheat the griddle to 375 F and grill the patties.', 'medium 191'],
  ['Process at 240 F for 25 minutes.', 'medium 116'],
  ['Dry in a 60 C oven for 8 h.', 'oven 60'],
  ['Chill the soup to below 5 C.', 'food ≤5'],
  ['Do not let the butter rise above 21 C.', 'food ≥21'],
  ['Do not let the custard go above 82 C.', 'food ≥82'],
  ['Roast to 60 C for rare, 71 C for medium, or 77 C for well done.', 'food 60 + food 71 + food 77'],
  // the thing that it stands before
  ['Grill on a greased 190 C griddle for 4 minutes a side.', 'medium 190'],
  ['Fry in preheated 375 F deep fat for 2 minutes.', 'medium 191'],
  ['Steam at 5 pounds (227 F) for 10 minutes.', 'medium 108'],
  ['Dry at 45 C and finish at 60 C.', 'around 45 + around 60'],
  ['Bake in a hot oven (425 F) 15 minutes, reduce heat to 350 F and bake 25 minutes more.', 'oven 218 + oven 177'],
  ['Start in a 450 F oven and finish at 300 F.', 'oven 232 + oven 149'],
  ['Set in an oven not hotter than 325 F.', 'oven ≤163'],
  ['When the fat reaches 390 F, put in the chips.', 'medium 199'],
  ['Warm to 100 degrees, and cut the curd.', 'food 38'],
  ['Keep it above 60 C over the warm water.', 'medium ≥60'],
  // a difference, and no reading
  ['Cook to a temperature 8 F above the boiling point of water.', 'food ±4'],
  ['Let stand; the temperature will rise 10 C.', 'around ±10'],
  ['Take it out when the internal temperature is 5 degrees below where you want it.', 'food ±5 inside'],
  ['Increase the oven temperature by 25 F above 3,500 feet.', 'oven ±14'],
  // nobody can say from these words alone
  ['Cook at 57 C for 3 h.', 'nothing 57'],
  ['Serve at 12 C.', 'nothing 12'],
  ['Start at 230 C, then bake at 180 C.', 'nothing 230 + oven 180'],
])('%s', (text, want) => {
  expect(temperaturesOf(text).map(written).join(' + ')).toBe(want);
});

test.each([
  ['Churn the cream at 14 C.', 'food 14'],
  ['The butter should be at 16 C when creamed.', 'food 16'],
  ['Roast the lamb at 160 C.', 'oven 160'],
  ['Keep the milk at 4 C.', 'around 4'],
])('of a name right before it: %s', (text, want) => {
  const said = eventsOf(text).flatMap((event) => event.temperatures);
  expect(said.map(written).join(' + ')).toBe(want);
});

test('what is known of the body is added to the points of the words', () => {
  const [said] = temperaturesOf('Cook at 57 C for 3 h.');
  expect(said && judged({ ...said.points, food: said.points.food + 4 })).toBe('food');
  expect(said && judged({ ...said.points, around: said.points.around + 4 })).toBe('around');
});

test('scales beside each other are one heat, and its place is all of them', () => {
  const text = 'Heat oven to 180C/160C fan/gas 4 and bake.';
  expect(temperaturesOf(text).map(({ start, end }) => text.slice(start, end))).toEqual(['180C/160C fan/gas 4']);
});

/** Frames, of what their figure is, and from where to where in °C it may be. */
const FRAMES: readonly (readonly [string, string, number, number])[] = [
  ['Bake at % for 20 min.', 'oven', 120, 260],
  ['Slide it into a % oven.', 'oven', 120, 260],
  ['Roast until the centre reads %.', 'food', 55, 98],
  ['Cook until it reaches %.', 'food', 55, 98],
  ['Roast it to %.', 'food', 55, 70],
  ['Keep in the fridge at %.', 'around', 1, 8],
  ['Hold at % for service.', 'around', 57, 70],
  ['Let it rise at % for 1 h.', 'around', 20, 38],
  ['Fry in oil at % until brown.', 'medium', 150, 195],
  ['Cook in a water bath at % for 2 h.', 'medium', 50, 85],
];
const SCALES: readonly ((celsius: number) => string)[] = [
  (c) => `${c} C`,
  (c) => `${c}°C`,
  (c) => `${c} degrees Celsius`,
  (c) => `${fahrenheit(c)} F`,
  (c) => `${fahrenheit(c)}°F`,
  (c) => `${fahrenheit(c)}° F.`,
  (c) => `${fahrenheit(c)} degrees Fahrenheit`,
  (c) => `about ${c} C`,
];
const fahrenheit = (celsius: number): number => Math.round((celsius * 1.8 + 32) * 10) / 10;

test.each<[string, string]>([
  ['Heat oven to 180C/160C fan/gas mark 4.', '180 C, 160 C fan, gas 4'],
  ['Preheat the oven to Gas Mark 6, 200C, 400F.', 'gas 6, 200 C, 400 F'],
  ['Heat the oven to 350°F (180°C/gas mark 4).', '350 F, 180 C, gas 4'],
  ['Preheat the oven to 450.', '450 F'],
  ['Roast at 200 C to an internal 74 C.', '200 C; 74 C'],
])('every scale that a heat is written in is kept: %s', (text, want) => {
  const scales = temperaturesOf(text).map((said) =>
    said.written
      .map(({ unit, lowDegrees, fan }) =>
        unit === 'gas' ? `gas ${lowDegrees}` : `${lowDegrees} ${unit}${fan ? ' fan' : ''}`,
      )
      .join(', '),
  );
  expect(scales.join('; ')).toBe(want);
});

test('a temperature is of the same and as warm in whatever scale it is written', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...FRAMES),
      fc.constantFrom(...SCALES),
      fc.double({ min: 0, max: 1, noNaN: true }),
      ([frame, of, low, high], write, share) => {
        const celsius = Math.round(low + share * (high - low));
        const text = frame.replace('%', write(celsius));
        const [said, ...more] = temperaturesOf(text);
        expect(more, text).toEqual([]);
        expect(said?.of, text).toBe(of);
        expect(Math.abs((said?.celsius.low ?? 0) - celsius), text).toBeLessThan(0.2);
        expect(said?.meant, text).toBeUndefined();
      },
    ),
  );
});
