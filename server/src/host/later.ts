/**
 * Knows the modules of Node that take longer to load than a start can spare: each is loaded when it is first asked for.
 * Node before 20.16 loads a module for a bundle alone.
 */

export const crypto = (): typeof import('node:crypto') => load('node:crypto') as typeof import('node:crypto');

export const childProcess = (): typeof import('node:child_process') =>
  load('node:child_process') as typeof import('node:child_process');

export const http = (): typeof import('node:http') => load('node:http') as typeof import('node:http');

/** The SHA-256 of a content, in the letters of addresses. */
export const digest = (content: string | Uint8Array): string =>
  crypto().createHash('sha256').update(content).digest('base64url');

function load(name: `node:${string}`): unknown {
  return process.getBuiltinModule === undefined ? require(name) : process.getBuiltinModule(name);
}
