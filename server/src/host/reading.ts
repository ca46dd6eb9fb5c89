/**
 * Knows how a file is read so that none can hold the process up: an ordinary one, of limited size.
 * Refuses to open anything else: a pipe waits for a writer, and a device may never end.
 */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';

/** More than any recipe, and any list of what to ignore. */
export const MOST_BYTES = 4 * 2 ** 20;

/** What is there cannot be read as a file; the message stands after `cannot be read: `. */
export class NotOrdinary extends Error {}

/** The bytes of an ordinary file. Throws `NotOrdinary`, or what the disk says. */
export function readOrdinary(path: string): Buffer {
  // Some devices do something when they are merely opened.
  refuse(statSync(path));
  // What was exchanged since is opened without waiting.
  const file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const stat = fstatSync(file);
    refuse(stat);
    return readWhole(file, stat.size);
  } finally {
    closeSync(file);
  }
}

function refuse(stat: Stats): void {
  if (stat.isDirectory()) throw new NotOrdinary('it is a folder');
  if (!stat.isFile()) throw new NotOrdinary('it is no ordinary file');
  if (stat.size > MOST_BYTES) throw new NotOrdinary(TOO_LARGE);
}

const TOO_LARGE = `it is larger than ${MOST_BYTES / 2 ** 20} MB`;

/** A size of 0 may be that of a file that is made as it is read, and any file may grow meanwhile. */
function readWhole(file: number, size: number): Buffer {
  let bytes = Buffer.allocUnsafe(size > 0 ? size + 1 : CHUNK);
  let length = 0;
  for (;;) {
    if (length === bytes.length) bytes = Buffer.concat([bytes, Buffer.allocUnsafe(Math.max(CHUNK, length))]);
    const read = readSync(file, bytes, length, bytes.length - length, null);
    if (read === 0) return bytes.subarray(0, length);
    length += read;
    if (length > MOST_BYTES) throw new NotOrdinary(TOO_LARGE);
  }
}

const CHUNK = 2 ** 16;
