/**
 * What is told of how others did it is no step, unless the recipe goes on to do as they did. The recipes are invented; what may stand warm for
 * how long is FDA Food Code 2022, 3-501.16 and 3-501.19.
 */
import { describe, expect, test } from 'vitest';
import { open } from '../support/harness.ts';

const SAFETY = new Set(['safety', 'formula']);

const loud = (...steps: readonly string[]): string[] =>
  open(
    `recipe Test\n  2 kg shin of beef\n  2 l water\n  do Simmer the beef in the water for 4 h.\n${steps.map((step) => `  do ${step}\n`).join('')}`,
  ).findings.open.flatMap(({ code, severity, check }) =>
    SAFETY.has(check.family) && (severity === 'error' || severity === 'warning') ? [code] : [],
  );

const COLD = 'Cool the pot over ice to 4 C within 2 h and put it in the fridge.';

describe('told of others', () => {
  test.each([
    `Our grandmothers let the pot stand warm from one week to the next. ${COLD}`,
    `The hotel I trained in left it on the bench till evening. ${COLD}`,
    `${COLD} My aunt left hers on the dresser for a week. Eat yours in 3 days.`,
    `The old cook left the pot on the bench overnight. Half the street was sick for it. ${COLD}`,
    `I used to leave mine to cool on the stove overnight. Now: ${COLD}`,
    `${COLD} Don't clap the lid on and push it to the back of the stove overnight like my flatmate did.`,
    `${COLD} Never put the lid on and leave it on the bench overnight as the neighbour does.`,
    `${COLD} The shelf on the porch was abolished.`,
    `The old book says to leave the pot on the doorstep overnight. I do not. ${COLD}`,
    `Mrs Tarn's receipt would have it keep till Sunday upon a stone shelf. I do not: ${COLD}`,
    `Cousin Nell keeps hers on the porch for a week. Cousin Nell has also had a bad night. ${COLD}`,
    // Another time, and no more.
    `The old man used to park the whole pot on the landing; the landing was 15 C and the pot was warm at dawn. ${COLD}`,
    `Dad used to hang the kettle behind the woodstove for two days. ${COLD}`,
    `In those days the cook left it to stand on the range till Sunday. ${COLD}`,
    // What is theirs is another pot.
    `${COLD} The woman next door used to leave hers to go cold on the stove.`,
    `${COLD} Bettina kept hers on the balcony from Friday to Monday.`,
    `${COLD} My grandfather stood his overnight in the woodshed. He was lucky.`,
    `Old Henrik had his on the quay all night. ${COLD}`,
    `Gran's stood on the sill for two days. ${COLD}`,
    // When it was, and who it was, by any words.
    `When I was a child the pot stayed on the stove from Sunday to Tuesday. ${COLD}`,
    `Years ago they left it out on the veranda till supper. ${COLD}`,
    `${COLD} Before we had a fridge Mum stood it on the cold stone till Sunday.`,
    `${COLD} People used to hang the pot down the well overnight.`,
    `The neighbours swore by a night on the doorstep; I swear by the fridge. ${COLD}`,
    // The recipe has its own way.
    `My great-aunt left the pot on the bench overnight. ${COLD}`,
    `${COLD} The sous-chef where I learned left the pot on the bench overnight.`,
    // The writer does not.
    "My grandmother left the pot on the table all night and we had some stomach stories from this, so I don't.",
    'The lodger left the pot on the hob overnight. We did not eat with the lodger.',
    // What came of it.
    'My brother-in-law left it on the tailgate overnight and the whole choir was poorly.',
    'We left it on the step overnight one Easter; two of us ended in hospital.',
  ])('%s', (step) => {
    expect(loud(step)).toEqual([]);
  });
});

describe('told of others, and done here', () => {
  test.each([
    'Our grandmothers let the pot stand warm from one week to the next, and so do we.',
    'The hotel I trained in left it on the bench till evening, and I do the same.',
    'My aunt left hers on the dresser for a week. Leave yours on the dresser for a week too.',
    'The old cook left the pot on the bench overnight. Nobody was ever sick for it.',
    'My gran always left the pot on the bench overnight.',
    'Put the lid on and push it to the back of the stove till morning, like my flatmate did.',
    'We do it as my flatmate did: lid on and left on the bench overnight.',
    'Do not stir it. Leave it on the bench overnight as my gran does.',
    'Do not fuss: leave it on the bench overnight the way my mother did.',
    'The fridge was retired. The pot stands on the sideboard overnight.',
    'The cool box was retired, so the pot sits on the bench overnight.',
    "Mrs Tarn's receipt would have it stand till the morrow upon a stone shelf. I do the same.",
    'Uncle Arvid leaves his on the jetty overnight, and so do we.',
    'Leave it to cool on the stove overnight. Now put it in the fridge.',
    'Everybody here leaves the pot on the stove overnight.',
    'My neighbour, who is a nurse, says never to do this, but I leave the pot on the bench overnight.',
    'Do as the monks did and leave the pot in the cloister overnight.',
    "As in Grandma's day, it stands on the bench overnight.",
    'Dad used to hang the pot behind the woodstove for two days, and so do I.',
    'Old Henrik had his on the quay all night, and I still do.',
    'Bettina kept hers on the balcony from Friday to Monday and it never harmed a soul.',
    'As she taught me, leave it on the bench overnight.',
    'My grandfather stood it overnight in the woodshed. He lived to ninety.',
    'She kept it on the dresser all night, and not one of us was ever ill.',
    'Mum leaves it on the side all night.',
    'We left it on the step overnight.',
    'I used to fuss. Leave it on the bench overnight.',
    'Gran knew a thing or two: leave the pot on the bench overnight.',
    'My aunt said to leave the pot on the bench overnight.',
  ])('%s', (step) => {
    expect(loud(step)).toContain('cooling-too-slow');
  });
});
