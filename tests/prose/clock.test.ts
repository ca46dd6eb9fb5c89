/** Points of the clock and of the week, each with its plain sense, written before it was tried. */
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { clocksIn } from '../../server/src/prose/clock.ts';

/** `thu 18-21`, `8/12` where morning and evening are not told apart, `+1` a day ahead, `plan 2`. */
function shown(text: string): string {
  return clocksIn(sentenceIn(text).items, [])
    .map(({ day, hours, ofTwelve }) => {
      const of = day === undefined ? '' : { week: 'weekday ', plan: 'plan ', ahead: '+' }[day.of] + String(day.day);
      const at = hours === undefined ? '' : hours.low === hours.high ? `${hours.low}` : `${hours.low}-${hours.high}`;
      return [of, `${at}${ofTwelve ? '/12' : ''}`].filter((each) => each !== '').join(' ');
    })
    .join(', ');
}

test.each<[string, string]>([
  ['Make it at eight, before anyone is down.', '8/12'],
  ['At 2 pm, leave it.', '14'],
  ['Wrap it by half past five.', '5.5/12'],
  ['Carve at quarter to six.', '5.75/12'],
  ['0700. Whisk the yolks.', '7'],
  ['The last is served around 1345.', '13.75'],
  ['Out at 8.30 am, back at 13:45.', '8.5, 13.75'],
  ['Serve at nine o’clock.', '9/12'],
  ['Serve at seven thirty.', '7.5/12'],
  ['When the coals are ready, around five, lay it on.', '5/12'],
  ['Tuesday after supper, take it out.', 'weekday 2 18-21'],
  ['Stand it there from Thursday teatime till Saturday morning.', 'weekday 4 18-21, weekday 6 6-12'],
  ['On Friday, boil the rice.', 'weekday 5'],
  ['Next morning skim it.', '+1'],
  ['By noon tomorrow it is dry.', '+1 12'],
  ['DAY 2, 8 am. Fill the trays.', 'plan 2 8'],
  ['Set it on the trestle at noon.', '12'],
  ['The early chef’s in by then; when the early chef’s in, lid off.', '4-10, 4-10'],
  ['Morning crew lifts off the fat.', '4-10'],
  ['By the time the milkman comes it is dry.', '5-10'],
  ['The tray goes out after Matins and comes in at Evensong.', '5-10, 17-23'],
  ['It sells until the shutters come down.', '16-24'],
  ['Bury it in the embers on Saturday night.', 'weekday 6 18-24'],
  ['On the Saturday bring it up to heat.', 'weekday 6'],
  ['Come the evening, skim it.', '17-23'],
])('%s', (text, clocks) => {
  expect(shown(text)).toBe(clocks);
});

test.each([
  'Cut in four and serve for two.',
  'Add a tablespoon at a time, in eight goes.',
  'Chill at 4 C.',
  'Space them at 1 inch apart.',
  'Carve the Sunday roast.',
  'Straight after the opening speech, cut it.',
  'The morning rolls are sold.',
  'Clear the breakfast things.',
  'Bake at 180 for 20 minutes.',
])('no point of the clock: %s', (text) => {
  expect(shown(text)).toBe('');
});
