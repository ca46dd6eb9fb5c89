/**
 * Knows a small web server for this machine alone: what it answers is handed to it, and it only reads.
 * Refuses every name but its own in `Host`, so that no page elsewhere can have a browser ask it by another; every method but GET and HEAD; and
 * files outside the folder that the answer names.
 */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { dirname, join } from 'node:path';
import { UsageError } from '../cli/io.ts';
import type { Asked, Web, WebAnswer } from '../cli/web.ts';
import { liesIn } from '../workspace/folders.ts';
import { codeOf, diskErrorWords } from './disk-errors.ts';
import { real, stampOf } from './files.ts';
import { digest, http } from './later.ts';
import { MOST_PICTURE_BYTES, readOrdinary } from './reading.ts';

const HERE = '127.0.0.1';
const MOST_CONNECTIONS = 64;

/** Pages run the one script of this server, and load nothing from elsewhere. */
const POLICY =
  "default-src 'none'; style-src 'self'; script-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
/** A picture by itself may draw, and nothing else. */
const PICTURE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; sandbox";

/** `program` is the bundle that the script of the pages lies beside. */
export const nodeWeb = (program: string): Web => ({
  sumOf(paths) {
    return digest(paths.map((path) => `${path}\0${stampOf(path) ?? ''}\0`).join('')).slice(0, 16);
  },
  script: () => readOrdinary(join(dirname(program), 'browser.js')).toString('utf8'),
  async serve(port, served) {
    const prepare = betweenTurns(() => served.prepare());
    const server = http().createServer((request, response) => {
      respond(request, response, (asked) => served.answer(asked));
      prepare();
    });
    server.maxConnections = MOST_CONNECTIONS;
    const ended = new Promise<void>((end, fail) => {
      server.on('error', (error) =>
        fail(
          codeOf(error) === 'EADDRINUSE'
            ? new UsageError(`port ${port} is taken: give another with --port, or none to have one chosen`)
            : new UsageError(`nothing can be served on port ${port}: ${diskErrorWords(error, 'you may not use it')}`),
        ),
      );
      server.on('close', end);
    });
    const stop = (): void => {
      server.close();
      server.closeAllConnections();
    };
    process.once('SIGINT', stop);
    process.once('SIGTERM', stop);
    server.listen(port, HERE, () => {
      served.ready(`http://${HERE}:${portOf(server.address())}/`);
      prepare();
    });
    try {
      await ended;
    } finally {
      process.off('SIGINT', stop);
      process.off('SIGTERM', stop);
    }
  },
});

/** Runs pieces of work, each when what has come meanwhile is answered, until none is left. */
function betweenTurns(work: () => boolean): () => void {
  let isRunning = false;
  const turn = (): void => {
    isRunning = work();
    if (isRunning) setImmediate(turn);
  };
  return () => {
    if (isRunning) return;
    isRunning = true;
    setImmediate(turn);
  };
}

const portOf = (address: ReturnType<import('node:net').Server['address']>): number =>
  typeof address === 'object' && address !== null ? address.port : 0;

interface Reply {
  readonly status: number;
  readonly type: string;
  readonly body: string | Buffer;
  readonly policy: string;
  readonly allow?: string;
}

const refused = (status: number, words: string): Reply => ({
  status,
  type: 'text/plain',
  body: `${words}\n`,
  policy: POLICY,
});

function respond(request: IncomingMessage, response: ServerResponse, answer: (asked: Asked) => WebAnswer): void {
  const { status, type, body, policy, allow } = replyTo(request, answer);
  const bytes = typeof body === 'string' ? Buffer.from(body, 'utf8') : body;
  response.writeHead(status, {
    'Content-Type': typeof body === 'string' ? `${type}; charset=utf-8` : type,
    'Content-Length': bytes.length,
    'Content-Security-Policy': policy,
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cache-Control': 'no-store',
    ...(allow !== undefined && { Allow: allow }),
  });
  // To HEAD the body is left out by Node.
  response.end(bytes);
}

function replyTo({ method, url = '', headers, socket }: IncomingMessage, answer: (asked: Asked) => WebAnswer): Reply {
  if (!isOwnName(headers.host, socket.localPort)) return refused(421, 'This server answers to its own name alone.');
  if (method !== 'GET' && method !== 'HEAD')
    return { ...refused(405, 'This server is only read.'), allow: 'GET, HEAD' };
  const asked = askedBy(url);
  if (asked === undefined) return refused(400, 'This is no address.');
  try {
    return asReply(answer(asked));
  } catch (error) {
    process.stderr.write(`quern serve: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return refused(500, 'Quern could not make this page. What went wrong stands where it was started.');
  }
}

/** A name that a page elsewhere could have pointed here is none of ours. */
const isOwnName = (host: string | undefined, port: number | undefined): boolean =>
  host !== undefined &&
  [`${HERE}:${port}`, `localhost:${port}`, ...(port === 80 ? [HERE, 'localhost'] : [])].includes(host.toLowerCase());

/** Path and query, with their signs decoded; undefined where that cannot be done, or it is more than a path. */
function askedBy(url: string): Asked | undefined {
  if (!url.startsWith('/')) return undefined;
  const at = url.indexOf('?');
  try {
    const path = decodeURIComponent(at < 0 ? url : url.slice(0, at));
    return { path: path.slice(1), query: new Map(new URLSearchParams(at < 0 ? '' : url.slice(at + 1))) };
  } catch {
    return undefined;
  }
}

function asReply(answer: WebAnswer): Reply {
  if (answer.kind === 'text')
    return { status: answer.status ?? 200, type: answer.type, body: answer.text, policy: POLICY };
  const path = real(answer.path);
  if (!liesIn(path, real(answer.within))) return refused(404, 'There is nothing here.');
  try {
    return { status: 200, type: answer.type, body: readOrdinary(path, MOST_PICTURE_BYTES), policy: PICTURE_POLICY };
  } catch {
    return refused(404, 'This picture cannot be read.');
  }
}
