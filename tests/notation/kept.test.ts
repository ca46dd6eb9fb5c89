import { expect, it } from 'vitest';
import { keptOn } from '../../server/src/notation/kept.ts';

it('keeps what is worked out for an object, each thing in a place of its own', () => {
  const [grams, names] = [keptOn<object, number>(), keptOn<object, string>()];
  const [line, other] = [Object.freeze({ text: '150 g flour' }), ['150 g flour']];
  grams.set(line, 150);
  names.set(line, 'flour');
  grams.set(other, 75);
  expect([grams.get(line), names.get(line), grams.get(other), names.get(other)]).toEqual([150, 'flour', 75, undefined]);
  grams.set(line, 160);
  expect(grams.get(line)).toBe(160);
});

it('is not seen on the object and not taken over by a copy', () => {
  const grams = keptOn<object, number>();
  const line = { text: '150 g flour' };
  grams.set(line, 150);
  expect(Reflect.ownKeys(line)).toEqual(['text']);
  expect(JSON.stringify(line)).toBe('{"text":"150 g flour"}');
  expect(grams.get({ ...line })).toBeUndefined();
});
