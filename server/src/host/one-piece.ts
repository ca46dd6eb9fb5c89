/**
 * Knows how the protocol's messages leave in one piece. Refuses to know what they say.
 */
import { Writable } from 'node:stream';

const HEADER = Buffer.from('Content-Length: ');

/**
 * A stream for a writer that sends the header of a message apart from its body: both go on together, as every write costs
 * a call of the system here and wakes the reader there.
 */
export function inOnePiece(out: Writable): Writable {
  let header: Buffer | undefined;
  out.on('error', (error) => whole.destroy(error));
  const whole = new Writable({
    write(chunk: Buffer, _encoding, done) {
      if (header === undefined && chunk.subarray(0, HEADER.length).equals(HEADER)) {
        header = chunk;
        done();
        return;
      }
      out.cork();
      if (header !== undefined) out.write(header);
      out.write(chunk, done);
      out.uncork();
      header = undefined;
    },
  });
  return whole;
}
