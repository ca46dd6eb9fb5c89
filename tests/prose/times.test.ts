/** Times as cooks say them, each held against its plain sense: kind, least and most, of what each. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sentenceIn } from '../../server/src/notation/sentence.ts';
import { timesIn } from '../../server/src/prose/times.ts';

const UNITS: Readonly<Record<string, number>> = { s: 1 / 60, min: 1, h: 60, d: 1440, w: 10080 };
const rounded = (minutes: number): number => Number(minutes.toPrecision(4));

/** `spent 20`, `limit 2880 or`: minutes, with what the time is besides. */
function readingOf(text: string): string {
  return timesIn(sentenceIn(text).items, [])
    .map(({ time: { minutes, kind, per, orElse, before } }) => {
      const [low, high] = [rounded(minutes.low), rounded(minutes.high)];
      const range = low === high ? `${low}` : `${low}-${high}`;
      return `${kind} ${range}${per ? ` per ${per}` : ''}${orElse ? ' or' : ''}${before ? ' before' : ''}`;
    })
    .join(' + ');
}

/** `spent 1.5 h`, `spent 2-3 d per side + limit 4 h or`, `2 h-` (open), `8-16 h`: the same in minutes; kind `spent` where none is said. */
function wantedOf(want: string): string {
  return want
    .split(' + ')
    .filter((one) => one !== '')
    .map((one) => {
      const found = /^(?:([a-z]+) )?([\d.]+)(?:-([\d.]*))? (s|min|h|d|w)(.*)$/.exec(one);
      if (found === null) throw new Error(`not a time: ${one}`);
      const [, kind = 'spent', first = '', second, unit = '', rest = ''] = found;
      const low = rounded(Number(first) * (UNITS[unit] ?? 0));
      const high = second === undefined ? low : second === '' ? Infinity : rounded(Number(second) * (UNITS[unit] ?? 0));
      return `${kind} ${low === high ? low : `${low}-${high}`}${rest}`;
    })
    .join(' + ');
}

test.each<[string, string]>([
  // number and unit
  ['Cook for 20 minutes.', '20 min'],
  ['Cook about 20 minutes.', '20 min'],
  ['Cook 20 min.', '20 min'],
  ['Cook 1 hr.', '1 h'],
  ['Fry 30 secs and flip.', '30 s'],
  ['Hold for 15 seconds.', '15 s'],
  ['Cook 1.5 h.', '1.5 h'],
  ['Chill for 2 days.', '2 d'],
  ['Boil 1 h 30 min.', '90 min'],
  ['Boil 1 hour 15 minutes.', '75 min'],
  ['Age 6 weeks.', '6 w'],
  ['Mature for three months.', '120960-133920 min'],
  ['Age two years.', '1051200-1054080 min'],
  ['Leave for 3 nights.', '24-48 h'],
  ['Leave it a fortnight.', '2 w'],
  ['Leave for two fortnights.', '4 w'],
  ['Hang for 2 wks.', '2 w'],
  // ranges
  ['Bake 25-30 minutes.', '25-30 min'],
  ['Bake 25 to 30 minutes.', '25-30 min'],
  ['Bake from 25 to 30 minutes.', '25-30 min'],
  ['Bake 25–30 min.', '25-30 min'],
  ['Roast 1 to 1 1/2 hours.', '60-90 min'],
  ['Roast 1 to 1-1/2 hours.', '60-90 min'],
  ['Boil 1 1/2 to 2 hours.', '90-120 min'],
  ['Leave from 3 to 4 hours.', '3-4 h'],
  ['Rest 2-3 weeks.', '2-3 w'],
  ['Cook between 2 and 3 hours.', '2-3 h'],
  ['Cook between two and three hours.', '2-3 h'],
  ['Bake from 50 minutes to 1 hour.', '50-60 min'],
  ['Bake 20 minutes to half an hour.', '20-30 min'],
  ['Bake from half an hour to an hour.', '30-60 min'],
  ['Soak from 2 hours to overnight.', '2-16 h'],
  ['Leave three days to a week.', '3-7 d'],
  ['Keep a week to ten days in the fridge.', '7-10 d'],
  ['Leave it from 10 at night until we unlock at 7.', '9 h'],
  ['Leave it for four July days.', '4 d'],
  ['It has sat there for two summer nights.', '16-32 h'],
  ['Leave it from nine in the morning until lunch at one.', '4 h'],
  ['Roast anything from 2 to 4 hours.', '2-4 h'],
  ['Cook 1 or 2 minutes.', '1-2 min'],
  ['Cook 2 or 3 minutes longer.', '2-3 min'],
  // numbers in words
  ['Leave for three hours.', '3 h'],
  ['Leave two or three hours.', '2-3 h'],
  ['Leave for twenty or thirty minutes.', '20-30 min'],
  ['Leave ten to fifteen minutes.', '10-15 min'],
  ['Leave twenty-four hours.', '24 h'],
  ['Leave from twenty-four to thirty-six hours.', '24-36 h'],
  ['Leave forty-eight hours.', '48 h'],
  ['Leave forty eight hours.', '48 h'],
  ['Boil thirty or forty-five minutes.', '30-45 min'],
  ['Boil one hundred and eighty minutes.', '3 h'],
  ['Leave a dozen hours.', '12 h'],
  ['Leave half a dozen hours.', '6 h'],
  ['Leave for a couple of hours.', '2 h'],
  ['Leave a couple hours.', '2 h'],
  ['Boil a few minutes.', '3-5 min'],
  ['Boil several minutes.', '3-6 min'],
  ['Leave some hours.', '2-6 h'],
  ['Simmer many hours.', '4-20 h'],
  ['Leave for a number of days.', '4-20 d'],
  ['Simmer an hour.', '1 h'],
  ['Let it stand a minute.', '1 min'],
  ['Rest one day.', '1 d'],
  ['Leave for a week.', '1 w'],
  // parts of one
  ['Simmer half an hour.', '30 min'],
  ['Simmer for half of an hour.', '30 min'],
  ['Simmer a half hour.', '30 min'],
  ['Simmer a half-hour.', '30 min'],
  ['Simmer 1/2 hour.', '30 min'],
  ['Simmer ½ hour.', '30 min'],
  ['Simmer ½ an hour.', '30 min'],
  ['Simmer a quarter of an hour.', '15 min'],
  ['Simmer three quarters of an hour.', '45 min'],
  ['Simmer three-quarters of an hour.', '45 min'],
  ['Simmer 3/4 of an hour.', '45 min'],
  ['Simmer an hour and a half.', '90 min'],
  ['Simmer an hour and a quarter.', '75 min'],
  ['Simmer one hour and a half.', '90 min'],
  ['Simmer two hours and a half.', '150 min'],
  ['Simmer one and a half hours.', '90 min'],
  ['Simmer two and a half hours.', '150 min'],
  ['Simmer two and one half hours.', '150 min'],
  ['Simmer one and one-half hours.', '90 min'],
  ['Simmer 2 and a half hours.', '150 min'],
  ['Cook for one and one-half to two hours.', '90-120 min'],
  ['Leave a day and a half.', '36 h'],
  ['Boil half a minute.', '30 s'],
  ['Simmer an hour and twenty minutes.', '80 min'],
  ['Simmer one hour and ten minutes.', '70 min'],
  ['Simmer 1 hour and 10 minutes.', '70 min'],
  ['Leave a year and a day.', '527040-528480 min'],
  // nearly, more, another
  ['Simmer for nearly an hour.', '51-60 min'],
  ['Simmer almost two hours.', '102-120 min'],
  ['Simmer just under an hour.', '51-60 min'],
  ['Simmer just over an hour.', '60-72 min'],
  ['Simmer a good hour.', '1 h'],
  ['Simmer two good hours.', '2 h'],
  ['Simmer one full hour.', '1 h'],
  ['Leave two whole days.', '2 d'],
  ['Cook another 10 minutes.', '10 min'],
  ['Cook for another hour.', '1 h'],
  ['Cook for a further 10 minutes.', '10 min'],
  ['Cook 10 more minutes.', '10 min'],
  ['Cook 10 minutes more.', '10 min'],
  ['Cook ten minutes longer.', '10 min'],
  ['Cook two more hours.', '2 h'],
  ['Cook for the first 20 minutes.', '20 min'],
  ['Cook for the next hour.', '1 h'],
  ['Cook 40 minutes in all.', '40 min'],
  ['Cook roughly an hour or so.', '1 h'],
  ['Cook an hour or two.', '1-2 h'],
  ['Leave a day or two.', '1-2 d'],
  ['Leave 2 days or 3.', '2-3 d'],
  ['Bake some 20 minutes.', '20 min'],
  ['Leave for the space of an hour.', '1 h'],
  ['Leave it two long hours.', '2 h'],
  // at least, open
  ['Chill at least 2 hours.', '2- h'],
  ['Chill for at least two hours.', '2- h'],
  ['Chill a minimum of 4 hours.', '4- h'],
  ['Chill not less than 4 hours.', '4- h'],
  ['Chill 4 hours minimum.', '4- h'],
  ['Chill an hour or more.', '1- h'],
  ['Chill 2 hours or longer.', '2- h'],
  ['Cook for one and one-half hours or more.', '90- min'],
  ['Chill for more than a day.', '1- d'],
  ['Leave for over 6 hours.', '6- h'],
  ['Chill at least 2 hours and up to 24 hours.', '2-24 h'],
  ['Chill for at least 4 hours but no more than 24 hours.', '4-24 h'],
  ['Chill 2 hours or up to 2 days.', '2-48 h'],
  ['Chill for 30 minutes and up to 3 hours.', '30-180 min'],
  ['Chill at least an hour, up to a day.', '1-24 h'],
  // limits
  ['Use within 2 days.', 'limit 2 d'],
  ['Use within 1 or 2 days.', 'limit 1-2 d'],
  ['Use within a day or two.', 'limit 1-2 d'],
  ['Use within the week.', 'limit 1 w'],
  ['Use within the hour.', 'limit 1 h'],
  ['Keep up to 3 days.', 'limit 3 d'],
  ['Keep for up to a week.', 'limit 1 w'],
  ['Store for no longer than a week.', 'limit 1 w'],
  ['Store no more than 4 days.', 'limit 4 d'],
  ['Hold not more than 4 hours.', 'limit 4 h'],
  ['Hold at most two hours.', 'limit 2 h'],
  ['Hold two hours at most.', 'limit 2 h'],
  ['Hold for a maximum of 4 hours.', 'limit 4 h'],
  ['Store 2 weeks or less.', 'limit 2 w'],
  ['Cool to 21 C within 2 h and to 5 C within 6 h in all.', 'limit 2 h + limit 6 h'],
  ['Cook for under an hour.', 'limit 1 h'],
  ['Made up to 2 days ahead.', 'point 2 d'],
  // points
  ['Start checking at 20 min.', 'point 20 min'],
  ['Turn it at the 20 minute mark.', 'point 20 min'],
  ['Roast at 20 min per 500 g.', '40 min per kg'],
  // choices
  ['Leave 4 h or overnight.', '4 h + 8-16 h or'],
  ['Soak eight hours or over night.', '8 h + 8-16 h or'],
  ['Chill at least 4 hours, preferably overnight.', '4- h + 8-16 h or'],
  ['Chill 2 hours, or overnight.', '2 h + 8-16 h or'],
  ['Keeps a week or ten days.', '1 w + 10 d or'],
  ['Soak 1 hour or overnight.', '1 h + 8-16 h or'],
  ['Chill overnight or for 2 days.', '8-16 h + 2 d or'],
  ['Bake 20 minutes or until set.', '20 min'],
  // nights and days
  ['Leave overnight.', '8-16 h'],
  ['Soak over night.', '8-16 h'],
  ['Leave out all night.', '8-16 h'],
  ['Leave it the whole night.', '8-16 h'],
  ['Leave through the night.', '8-16 h'],
  ['Leave for a night.', '8-16 h'],
  ['Leave half the night.', '4-8 h'],
  ['Leave all day.', '8-24 h'],
  ['Leave the whole day.', '8-24 h'],
  ['Leave half a day.', '4-12 h'],
  ['It may be prepared a half day before it is served.', '4-12 h before'],
  ['Many winter vegetables keep better so.', ''],
  ['Leave half the day.', '4-12 h'],
  ['Leave for the best part of a day.', '5.6-24 h'],
  ['Leave most of the day.', '4.8-24 h'],
  ['Leave for the rest of the day.', '1.6-24 h'],
  ['Leave a day and a night.', '24 h'],
  ['Leave from morning till night.', '10-16 h'],
  ['Leave all morning.', '3-6 h'],
  ['Leave all afternoon.', '3-6 h'],
  ['Leave the whole afternoon.', '3-6 h'],
  ['Leave all evening.', '3-6 h'],
  ['Stand all shift on the pass.', '6-12 h'],
  ['Stand for the whole shift.', '6-12 h'],
  ['Leave for the day.', '8-24 h'],
  ['Leave over the weekend.', '2-3 d'],
  ['Leave all week.', '1 w'],
  ['Keep all winter.', '60-92 d'],
  ['Keep through the winter.', '60-92 d'],
  ['Leave for hours.', '3-24 h'],
  ['Leave for days.', '2-14 d'],
  ['Leave a while.', '10-180 min'],
  ['Leave for a long time.', '1-24 h'],
  ['Leave from Friday to Monday.', '3 d'],
  ['Leave from Saturday until Monday.', '2 d'],
  ['Leave from lunch to dinner.', '4-9 h'],
  ['Leave from breakfast until lunch.', '2-7 h'],
  ['Leave out from 9 am to 5 pm.', '8 h'],
  ['Leave from 10 pm until 7 am.', '9 h'],
  ['Leave it out from nine till five.', '8 h'],
  ['Stand it out from ten until 2.', '4 h'],
  ['Keep it warm from ten o’clock until the evening.', '7-13 h'],
  // horizons
  ['Leave until morning.', 'until 6-16 h'],
  ['Leave till the morning.', 'until 6-16 h'],
  ['Leave until the next morning.', 'until 8-16 h'],
  ['Leave until the next day.', 'until 12-24 h'],
  ['Leave until the following day.', 'until 12-24 h'],
  ['Leave until tomorrow.', 'until 12-24 h'],
  ['Leave until breakfast.', 'until 6-16 h'],
  ['Leave until lunchtime.', 'until 1-18 h'],
  ['Leave until just before lunch.', 'until 1-18 h'],
  ['Leave until the evening.', 'until 1-15 h'],
  ['Leave until bedtime.', 'until 1-14 h'],
  ['Leave until you get up.', 'until 5-11 h'],
  ['Leave until you go to bed.', 'until 1-14 h'],
  ['Leave until you get home.', 'until 4-11 h'],
  ['Leave until the guests arrive.', 'until 30-480 min'],
  ['Leave until service.', 'until 30-480 min'],
  ['Leave until the end of the shift.', 'until 2-12 h'],
  ['Leave until Monday.', 'until 1-7 d'],
  ['Leave till Christmas.', 'until 7-365 d'],
  ['Leave until Christmas Eve.', 'until 7-365 d'],
  ['Keep until spring.', 'until 7-365 d'],
  ['Leave until 6 pm.', 'until 1-24 h'],
  ['Leave until noon.', 'until 1-18 h'],
  ['It will have risen by morning.', 'until 6-16 h'],
  ['Leave till next week.', 'until 4-14 d'],
  ['Hang in the shed for an afternoon.', '3-6 h'],
  ['Good for two winters.', '120-184 d'],
  ['Leave running from Friday breakfast till Saturday supper.', '32-38 h'],
  // from one point of the clock to another
  ['Leave it on the slab from 11 p.m. until 5 a.m.', '6 h'],
  ['It stood there from 21:30 to 08:00.', '10.5 h'],
  ['Set it by from 7.15 to 7.45 a.m. and go on.', '30 min'],
  ['Hang it from seven in the evening until three in the morning.', '8 h'],
  ['Leave it from midday to eleven at night.', '11 h'],
  ['Leave it from two until ten.', '8 h'],
  ['Leave it from half past eight at night till six.', '9.5 h'],
  ['Rest from three until half past.', '30 min'],
  ['Rest from ten until a quarter past.', '15 min'],
  ['Leave from late evening until the middle of the morning.', '9-14 h'],
  ['Leave from late morning until long after midnight.', '12-18 h'],
  ['Out from the start of breakfast service to the end of lunch service.', '7-9 h'],
  ['It stands from opening time until we close.', '5-17 h'],
  ['Leave from Friday night until Saturday breakfast.', '1-14 h'],
  ['Leave from one evening to the next.', '18-30 h'],
  ['Leave from one day until the next.', '1 d'],
  ['Leave it out breakfast to lunch.', '2-7 h'],
  ['Leave from opening to closing, ten hours later.', '10 h'],
  ['Leave until dinner, five hours later.', '5 h'],
  ['Leave until supper the next day.', 'until 21-33 h'],
  ['Leave until you get up the following day.', 'until 12-24 h'],
  ['Leave until the same time tomorrow.', 'until 22-26 h'],
  ['Leave until I come home from a long day at the office.', 'until 4-11 h'],
  ['Leave for a whole nine-hour shift.', '9 h'],
  ['Leave for the whole of the 12-hour day.', '12 h'],
  ['All evening and all night it sits there.', '11-22 h'],
  ['Leave it all morning and afternoon.', '6-12 h'],
  ['Leave it through the day and on into the night.', '16-40 h'],
  ['Leave a third of a day.', '8 h'],
  ['Leave overnight, about nine hours.', '9 h'],
  ['Leave while we are out at work all day.', '8-11 h'],
  ['Leave while the kids are at school.', '3-11 h'],
  ['Leave while everyone is in bed.', '5-10 h'],
  ['Leave while they all sleep.', '5-10 h'],
  ['Leave until the day after tomorrow.', 'until 36-48 h'],
  ['Leave for the rest of the day and all night.', '9.6-40 h'],
  ['After a rest of two hours, skim it.', '2 h'],
  ['Bring it below 5 C inside an hour.', 'limit 1 h'],
  ['Leave while the house sleeps, bedtime to breakfast.', '7-10 h'],
  ['Leave until Thursday morning.', 'until 1-7 d'],
  ["Keep right up to New Year's.", 'until 7-365 d'],
  ['It only gets sweeter between now and Easter.', 'until 7-365 d'],
  ['Serve with afternoon tea, an afternoon tea.', ''],
  ['Stir in a spring onion.', ''],
  ['Leave until next Friday.', 'until 1-7 d'],
  ['Leave until Sunday lunch.', 'until 1-7 d'],
  ['Leave until half time.', 'until 1-4 h'],
  ['Keep cold until 2 hours before serving.', 'until 0- min before'],
  ['Leave it since last night.', '8-24 h'],
  ['Leave it while you sleep.', '5-10 h'],
  ['Leave on the side while you are at work.', '3-11 h'],
  ['Leave the pot right where it is, and go to bed.', '6-11 h'],
  ['Set it to low and go to work.', '3-11 h'],
  ['Soak them before you go to bed.', ''],
  ['Leave between lunch and dinner.', '4-9 h'],
  ['Leave from dusk till dawn.', '7-19 h'],
  ['Leave it out all Sunday.', '8-24 h'],
  ['Stand the whole of Sunday.', '8-24 h'],
  ['Hold it all service.', '2-6 h'],
  ['Chill 2 hours/overnight.', '2 h + 8-16 h or'],
  ['Sit at least 8 and up to 24 hours.', '8-24 h'],
  ['Roast 1h30 at 180 C.', '90 min'],
  ['Roast 1 hr 30.', '90 min'],
  ['Day 1: soak the beans.', ''],
  ['Day 2: drain and boil.', 'point 12-24 h'],
  // every
  ['Stir every 15 minutes.', 'every 15 min'],
  ['Baste every ten minutes.', 'every 10 min'],
  ['Baste every 10 or 15 minutes.', 'every 10-15 min'],
  ['Stir every half hour.', 'every 30 min'],
  ['Stir every half an hour.', 'every 30 min'],
  ['Stir every hour.', 'every 1 h'],
  ['Turn every few minutes.', 'every 3-5 min'],
  ['Feed every day.', 'every 1 d'],
  ['Feed once a day.', 'every 1 d'],
  ['Feed twice a day.', 'every 12 h'],
  ['Turn daily.', 'every 1 d'],
  ['Turn every other day.', 'every 2 d'],
  ['Stir at intervals of 10 minutes.', 'every 10 min'],
  ['Stir hourly.', 'every 1 h'],
  ['Feed every morning.', 'every 1 d'],
  // points
  ['After 10 minutes, turn it.', 'point 10 min'],
  ['After about an hour turn it.', 'point 1 h'],
  ['After an hour in the fridge, roll it.', 'point 1 h'],
  ['After a few hours fry.', 'point 3-5 h'],
  ['After a day or two strain.', 'point 1-2 d'],
  ['Ten minutes later add the rice.', 'point 10 min'],
  ['An hour later, turn it.', 'point 1 h'],
  ['The next day drain it.', 'point 12-24 h'],
  ['Next day boil them.', 'point 12-24 h'],
  ['The following morning drain it.', 'point 8-16 h'],
  ['In the morning drain it.', 'point 8-16 h'],
  ['On the third day drain it.', 'point 1-2 d'],
  ['Take it out the night before.', 'point 8-16 h'],
  ['Make it the day before.', 'point 12-24 h'],
  ['Make it a day ahead.', 'point 1 d'],
  ['Make it 2 days in advance.', 'point 2 d'],
  ['Make it a few hours beforehand.', 'point 3-5 h'],
  ['Uncover for the last 10 minutes.', 'point 10 min'],
  ['Take out 1 h before serving.', '1 h before'],
  ['Add it 10 minutes before the end.', '10 min before'],
  ['Cool 5 minutes before carving.', '5 min before'],
  ['Add it 20 minutes after the beans.', '20 min before'],
  // of what each
  ['Grill 3 minutes on each side.', '3 min per side'],
  ['Grill 3 to 4 minutes per side.', '3-4 min per side'],
  ['Grill two minutes a side.', '2 min per side'],
  ['Fry for 2 minutes on both sides.', '2 min per side'],
  ['Grill 5 minutes on one side, 4 on the other.', '5 min + 4 min'],
  ['Grill three minutes on the first side and two on the second.', '3 min + 2 min'],
  ['Fry 2 minutes a batch.', '2 min per batch'],
  ['Fry for 4 minutes each.', '4 min per piece'],
  ['Roast 40 minutes per kg.', '40 min per kg'],
  ['Roast 20 minutes per 500 g.', '40 min per kg'],
  ['Roast twenty minutes per pound.', '44.09 min per kg'],
  ['Roast 20 minutes to the pound.', '44.09 min per kg'],
  ['Roast 20 min a lb.', '44.09 min per kg'],
  ['Boil half an hour to each pound.', '66.14 min per kg'],
  ['Roast 15 minutes a pound and 15 minutes over.', '33.07 min per kg + 15 min'],
  // none
  ['Cut in minute steaks.', ''],
  ['Cook 1 minute steak.', ''],
  ['Spread a second layer.', ''],
  ['Roll a second time.', ''],
  ['Add at the last minute.', ''],
  ['Serve the Sunday roast.', ''],
  ['Add all the flour.', ''],
  ['Slice the Christmas pudding.', ''],
  ['A 3-day old loaf.', ''],
  ['Use bread 2 days old.', ''],
  ['Stir for the first time.', ''],
  ['Add half a cup of milk.', ''],
  ['Reduce the time by a third.', ''],
  ['Stir in the rest of the cream.', ''],
  ['Pour the sauce over the fish.', ''],
  ['Through a sieve.', ''],
  ['Until it is thick.', ''],
  ['Serve for lunch.', ''],
])('%s', (text, want) => {
  expect(readingOf(text)).toBe(wantedOf(want));
});

test('no time begins or goes on in a name', () => {
  const { items } = sentenceIn('Slice the minute steak and fry for 1 minute steak');
  expect(
    timesIn(items, [
      { from: 2, to: 4 },
      { from: 8, to: 9 },
    ]),
  ).toMatchObject([{ time: { minutes: { low: 1 } } }]);
});

const NUMBERS: readonly (readonly [number, string])[] = [
  [2, 'two'],
  [3, 'three'],
  [5, 'five'],
  [10, 'ten'],
  [12, 'a dozen'],
  [20, 'twenty'],
  [24, 'twenty-four'],
  [45, 'forty five'],
  [1.5, 'one and a half'],
  [2.5, 'two and a half'],
];
const NAMES = { minutes: 1, hours: 60, days: 1440, weeks: 10080, fortnights: 20160 };
/** Wordings that change neither how long nor what kind. */
const AROUND = [
  '%',
  'for %',
  'about %',
  'for about %',
  'another %',
  'a further %',
  'for roughly %',
  '% in all',
  '% or so',
];

test('a number and a unit are as long in figures as in words, whatever stands around them', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...NUMBERS),
      fc.constantFrom(...Object.entries(NAMES)),
      fc.constantFrom(...AROUND),
      fc.constantFrom('Simmer', 'Leave it on the bench', 'Cover and chill'),
      fc.boolean(),
      ([value, words], [unit, each], around, verb, figures) => {
        const number = figures ? String(value) : words;
        const text = `${verb} ${around.replace('%', `${number} ${unit}`)}.`;
        expect(readingOf(text), text).toBe(`spent ${rounded(value * each)}`);
      },
    ),
  );
});

test('any words are read, each into one time at most, in order', () => {
  const words =
    'for at least an a half two or three 4 20 hours minutes day night until the next morning , and before per pound'.split(
      ' ',
    );
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...words), { maxLength: 14 }), (some) => {
      const { items } = sentenceIn(some.join(' '));
      let last = 0;
      for (const { from, to, time } of timesIn(items, [])) {
        expect(from).toBeGreaterThanOrEqual(last);
        expect(to).toBeGreaterThan(from);
        expect(time.minutes.high).toBeGreaterThanOrEqual(time.minutes.low);
        last = to;
      }
      expect(last).toBeLessThanOrEqual(items.length);
    }),
  );
});
