import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { watchFrames } from '../../server/src/host/frames.ts';

/** What is said of bytes that come in pieces cut at these places. */
function lostIn(bytes: Buffer, cuts: readonly number[]): string[] {
  const stream = new PassThrough();
  const lost: string[] = [];
  watchFrames(stream, (why) => lost.push(why));
  const ends = [...new Set(cuts.map((cut) => cut % (bytes.length + 1)))].sort((a, b) => a - b);
  let from = 0;
  for (const end of [...ends, bytes.length]) {
    stream.emit('data', bytes.subarray(from, end));
    from = end;
  }
  return lost;
}

const frame = (body: string, header = `Content-Length: ${Buffer.byteLength(body)}`) => `${header}\r\n\r\n${body}`;
const bodies = fc.array(fc.oneof(fc.json(), fc.string({ unit: 'grapheme' })), { maxLength: 5 });
const cuts = fc.array(fc.nat(2000), { maxLength: 8 });

describe('the frame of messages', () => {
  it('is kept through any bodies, however the bytes come', () => {
    fc.assert(
      fc.property(bodies, cuts, (all, at) => {
        expect(lostIn(Buffer.from(all.map((body) => frame(body)).join('')), at)).toEqual([]);
      }),
    );
  });

  it('is kept with other headers, and any case', () => {
    const header = 'content-type: application/vscode-jsonrpc; charset=utf-8\r\nCONTENT-LENGTH:2';
    expect(lostIn(Buffer.from(frame('{}', header)), [])).toEqual([]);
  });

  it.each([
    ['{"jsonrpc":"2.0"}\n', 'a message does not begin with its header'],
    [frame('{}', 'Content-Type: text'), 'a header does not say how long its message is'],
    [frame('{}', 'Content-Length: many'), 'a header says no length that is a number'],
    [frame('{}', 'Content-Length: -2'), 'a header says no length that is a number'],
    [frame('{}', 'Content-Length: 99999999999'), 'a header says a length that no message has'],
    [frame('{}', 'Content-Length: 2\r\nno header'), 'a header has a line that is none'],
    [`Content-Length: ${'1'.repeat(5000)}`, 'a header has no end'],
  ])('is lost with %j, and that is said once', (bytes, why) => {
    fc.assert(
      fc.property(bodies, cuts, (all, at) => {
        const before = all.map((body) => frame(body)).join('');
        expect(lostIn(Buffer.from(`${before}${bytes}${frame('{}')}`), at)).toEqual([why]);
      }),
    );
  });
});
