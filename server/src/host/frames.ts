/**
 * Knows how messages of the protocol follow each other in a stream of bytes: a header that says how long the body is, and the body.
 * Refuses to know what they say.
 */

import type { Readable } from 'node:stream';

/** Longer than any header; what is longer is something else. */
const LONGEST_HEADER = 4096;
/** Longer than any message: a text of many million lines. */
const LONGEST_BODY = 2 ** 29;
const HEADER_END = Buffer.from('\r\n\r\n');
const FIRST = 'content-';

/** Calls `lost` once, with what is wrong, when the frame of a stream's messages is lost. Whoever reads the stream begins to in the same turn. */
export function watchFrames(stream: Readable, lost: (why: string) => void): void {
  const fault = frameWatcher();
  const watch = (bytes: Uint8Array) => {
    const why = fault(bytes);
    if (why === undefined) return;
    stream.off('data', watch);
    lost(why);
  };
  stream.on('data', watch);
}

/** Made for one stream, and given its bytes as they come, answers what is wrong once the frame of the messages is lost. */
function frameWatcher(): (bytes: Uint8Array) => string | undefined {
  let header = Buffer.alloc(0);
  let bodyLeft = 0;
  return (bytes) => {
    let at = 0;
    while (at < bytes.length) {
      if (bodyLeft > 0) {
        const taken = Math.min(bodyLeft, bytes.length - at);
        bodyLeft -= taken;
        at += taken;
        continue;
      }
      const before = header.length;
      header = Buffer.concat([header, bytes.subarray(at, at + LONGEST_HEADER + HEADER_END.length)]);
      const first = header.subarray(0, FIRST.length).toString('latin1').toLowerCase();
      if (!FIRST.startsWith(first)) return 'a message does not begin with its header';
      const end = header.indexOf(HEADER_END);
      if ((end < 0 ? header.length : end) > LONGEST_HEADER) return 'a header has no end';
      if (end < 0) return undefined;
      const length = bodyLength(header.subarray(0, end).toString('latin1'));
      if (typeof length === 'string') return length;
      bodyLeft = length;
      at += end + HEADER_END.length - before;
      header = Buffer.alloc(0);
    }
    return undefined;
  };
}

function bodyLength(header: string): number | string {
  let length: number | undefined;
  for (const line of header.split('\r\n')) {
    const [, name = '', value = ''] = /^([!-9;-~]+):[ \t]*(.*)$/.exec(line) ?? [];
    if (name === '') return 'a header has a line that is none';
    if (name.toLowerCase() !== 'content-length') continue;
    length = /^\d{1,12}$/.test(value.trim()) ? Number(value) : undefined;
    if (length === undefined) return 'a header says no length that is a number';
    if (length > LONGEST_BODY) return 'a header says a length that no message has';
  }
  return length ?? 'a header does not say how long its message is';
}
