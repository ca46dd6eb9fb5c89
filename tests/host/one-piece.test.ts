import { Writable } from 'node:stream';
import { expect, it } from 'vitest';
import { StreamMessageWriter } from 'vscode-languageserver/node';
import { inOnePiece } from '../../server/src/host/one-piece.ts';

/** What is sent, call by call of the system. */
function sent() {
  const calls: string[] = [];
  const out = new Writable({
    write(chunk: Buffer, _encoding, done) {
      calls.push(chunk.toString());
      done();
    },
    writev(chunks, done) {
      calls.push(chunks.map(({ chunk }) => String(chunk)).join(''));
      done();
    },
  });
  return { calls, out };
}

it('sends a message with its header, whatever it says', async () => {
  const { calls, out } = sent();
  const writer = new StreamMessageWriter(inOnePiece(out));
  const said = ['hello', 'Content-Length: 3\r\n\r\n{}', '½ cup'];
  const messages = said.map((id) => ({ jsonrpc: '2.0', id, result: null }));
  await Promise.all(messages.map((message) => writer.write(message)));
  expect(calls).toEqual(
    messages.map((message) => {
      const body = JSON.stringify(message);
      return `Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`;
    }),
  );
});

it('tells the writer when the reader is gone', async () => {
  const { out } = sent();
  const writer = new StreamMessageWriter(inOnePiece(out));
  const failed = new Promise<Error>((resolve) => writer.onError(([error]) => resolve(error)));
  out.destroy(new Error('closed'));
  expect((await failed).message).toBe('closed');
});
