/**
 * Knows how a file is read so that none can hold the process up: an ordinary one, of limited size.
 * Refuses to open anything else: a pipe waits for a writer, and a device may never end.
 */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from 'node:fs';

/** More than any recipe, and any list of what to ignore. */
export const MOST_BYTES = 4 * 2 ** 20;

/** More than a picture of a dish takes. */
export const MOST_PICTURE_BYTES = 32 * 2 ** 20;

/** What is there cannot be read as a file; the message stands after `cannot be read: `. */
export class NotOrdinary extends Error {}

/** The bytes of an ordinary file that has no more than so many. Throws `NotOrdinary`, or what the disk says. */
export function readOrdinary(path: string, most = MOST_BYTES): Buffer {
  // Some devices do something when they are merely opened.
  refuse(statSync(path), most);
  // What was exchanged since is opened without waiting.
  const file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const stat = fstatSync(file);
    refuse(stat, most);
    return readWhole(file, stat.size, most);
  } finally {
    closeSync(file);
  }
}

function refuse(stat: Stats, most: number): void {
  if (stat.isDirectory()) throw new NotOrdinary('it is a folder');
  if (!stat.isFile()) throw new NotOrdinary('it is no ordinary file');
  if (stat.size > most) throw new NotOrdinary(tooLarge(most));
}

const tooLarge = (most: number): string => `it is larger than ${most / 2 ** 20} MB`;

/** A size of 0 may be that of a file that is made as it is read, and any file may grow meanwhile. */
function readWhole(file: number, size: number, most: number): Buffer {
  let bytes = Buffer.allocUnsafe(size > 0 ? size + 1 : CHUNK);
  let length = 0;
  for (;;) {
    if (length === bytes.length) bytes = Buffer.concat([bytes, Buffer.allocUnsafe(Math.max(CHUNK, length))]);
    const read = readSync(file, bytes, length, bytes.length - length, null);
    if (read === 0) return bytes.subarray(0, length);
    length += read;
    if (length > most) throw new NotOrdinary(tooLarge(most));
  }
}

const CHUNK = 2 ** 16;
