/**
 * Knows how the bytes of a file are text: UTF-8, or UTF-16 where its mark says so.
 * Refuses to guess any other encoding: bytes that are no text for sure are none.
 */
import { isUtf8 } from 'node:buffer';
import type { Given } from '../cli/io.ts';

const UTF8_MARK = Buffer.from([0xef, 0xbb, 0xbf]);
/** The longer mark begins with the shorter one. */
const MARKS = [
  { bytes: Buffer.from([0xff, 0xfe, 0, 0]), name: 'UTF-32', as: undefined },
  { bytes: Buffer.from([0, 0, 0xfe, 0xff]), name: 'UTF-32', as: undefined },
  { bytes: Buffer.from([0xff, 0xfe]), name: 'UTF-16', as: 'utf-16le' },
  { bytes: Buffer.from([0xfe, 0xff]), name: 'UTF-16', as: 'utf-16be' },
] as const;

export function decode(bytes: Buffer): Given {
  const mark = MARKS.find((m) => startsWith(bytes, m.bytes));
  if (mark !== undefined) {
    const { name, as } = mark;
    const text = as === undefined ? undefined : strictly(bytes.subarray(mark.bytes.length), as);
    return { text, marked: true, other: { name, isRead: text !== undefined } };
  }
  const marked = startsWith(bytes, UTF8_MARK);
  const rest = marked ? bytes.subarray(UTF8_MARK.length) : bytes;
  if (!isUtf8(rest)) return { text: undefined, marked, other: { isRead: false, ...firstWrong(rest) } };
  if (isHalfZeros(rest)) return { text: undefined, marked, other: { name: 'UTF-16 without a mark', isRead: false } };
  return { text: rest.toString('utf8'), marked };
}

/** A text as the bytes of a file, which begins with a mark where it began with one. */
export const encode = (text: string, marked: boolean): Buffer =>
  Buffer.concat([...(marked ? [UTF8_MARK] : []), Buffer.from(text, 'utf8')]);

const startsWith = (bytes: Buffer, start: Buffer): boolean => bytes.subarray(0, start.length).equals(start);

function strictly(bytes: Buffer, encoding: string): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Letters of most scripts as UTF-16 have a zero in every pair or close to it; a text has none at all. */
const SHARE_OF_ZEROS = 0.25;

function isHalfZeros(bytes: Buffer): boolean {
  if (!bytes.includes(0)) return false;
  let zeros = 0;
  for (const byte of bytes) if (byte === 0) zeros++;
  return zeros > bytes.length * SHARE_OF_ZEROS;
}

const REPLACED = Buffer.from([0xef, 0xbf, 0xbd]);

/** The first byte that cannot be UTF-8, and its line, from 0. */
function firstWrong(bytes: Buffer): { readonly byte: number; readonly line: number } {
  // Each byte that cannot be read is replaced by a character, which may stand there itself as well.
  const text = bytes.toString('utf8');
  let [at, end] = [0, 0];
  for (let found = text.indexOf('\ufffd'); found >= 0; found = text.indexOf('\ufffd', end)) {
    at += Buffer.byteLength(text.slice(end, found));
    if (!bytes.subarray(at, at + REPLACED.length).equals(REPLACED)) break;
    at += REPLACED.length;
    end = found + 1;
  }
  let line = 0;
  for (const byte of bytes.subarray(0, at)) if (byte === 0x0a) line++;
  return { byte: bytes[at] ?? 0, line };
}
