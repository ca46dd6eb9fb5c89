/** The command `quern`: builds the host and hands it the arguments. */
import { main } from './cli/main.ts';
import { nodeIo } from './host/node.ts';

declare const QUERN_VERSION: string;

// The server starts when its module is loaded; no other command pays for it.
const serve = () => void import('./server.ts');

main(process.argv.slice(2), nodeIo(), serve, QUERN_VERSION).then(
  (exit) => {
    if (exit !== 'serving') process.exitCode = exit;
  },
  (error: unknown) => {
    process.stderr.write(`quern failed, which is a bug of Quern: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    process.exitCode = 2;
  },
);
