/**
 * Knows how a request is answered: behind the fence, and not at all where nobody waits any more.
 * Refuses to know any feature.
 */
import type { CancellationToken } from 'vscode-languageserver';
import type { Request, View } from './feature.ts';
import { type Fence, logFailure } from './fence.ts';
import { ResponseError } from './library.ts';

/** The answer to a request; its empty value where it fails, and a refusal where its sender took it back. */
export async function answer(
  request: Request,
  params: unknown,
  token: CancellationToken,
  view: View,
  fence: Fence,
): Promise<unknown> {
  if (token.isCancellationRequested) return cancelled();
  const uri = request.uriOf(params);
  const snapshot = uri === undefined ? undefined : view.snapshot(uri);
  const version = snapshot?.version;
  try {
    // What is asked of a text that was just opened waits for all of it; after an edit, only for what it asks.
    if (uri !== undefined && snapshot?.isFresh === true) await view.workedOut(uri, token);
    if (token.isCancellationRequested) return cancelled();
    const given = await request.handle(params, view, token);
    return token.isCancellationRequested ? cancelled() : given;
  } catch (error) {
    if (isRefusal(error)) throw error;
    logFailure(fence, request.method, version, error);
    if (fence.rethrow) throw error;
    return request.empty;
  }
}

/** The protocol's code for a request that its sender took back. */
const REQUEST_CANCELLED = -32800;
const cancelled = (): ResponseError<void> => new ResponseError(REQUEST_CANCELLED, 'cancelled');

/** An answer that says no with a reason, rather than a failure. */
function isRefusal(error: unknown): boolean {
  return error instanceof Error && 'code' in error && typeof error.code === 'number';
}
