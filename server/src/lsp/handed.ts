/**
 * Knows how the files that a client hands in become the workspace's.
 * Refuses to keep them.
 */
import type { HandedIn, ReadFault } from '../workspace/ports.ts';
import { pathOfUri } from './convert.ts';
import { type HandedFile, type HandedParams, handedNotification } from './messages.ts';
import { faultIn } from './shapes.ts';

/** What an editor says at the start; undefined where it hands nothing in, or something else. */
export function handedAtStart(value: unknown): HandedIn | undefined {
  return value === undefined || faultIn(handedNotification.method, value) !== undefined
    ? undefined
    : handedIn(value as HandedParams);
}

/** By path; what lies in no folder is left out. */
export function handedIn({ files, gone, larger }: HandedParams): HandedIn {
  return {
    files: files.flatMap(({ uri, text, fault }) => {
      const path = pathOfUri(uri);
      if (path === undefined) return [];
      return [{ path, ...(typeof text === 'string' && { text }), ...(fault && { fault: faultOf(fault) }) }];
    }),
    gone: gone.flatMap((uri) => pathOfUri(uri) ?? []),
    larger: larger.flatMap((uri) => pathOfUri(uri) ?? []),
  };
}

const faultOf = (fault: NonNullable<HandedFile['fault']>): ReadFault =>
  'encoding' in fault
    ? { kind: 'encoding', encoding: { isRead: false } }
    : { kind: 'refused', why: typeof fault.why === 'string' ? fault.why : 'nobody said why' };
