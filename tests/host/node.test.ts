import { expect, test } from 'vitest';
import { nodeIo } from '../../server/src/host/node.ts';

test('a terminal that is asked for again listens no more than before', () => {
  const listening = () => [process.stdout, process.stderr].map((stream) => stream.listenerCount('error'));
  const before = listening();
  nodeIo();
  expect(listening()).toEqual(before);
});
