/** The command `quern`: builds the host and hands it the arguments. A worker of it checks the files it is sent. */
import { jobsOver } from './cli/check-many.ts';
import { main } from './cli/main.ts';
import { endWith, endWithOutput, nodeIo } from './host/node.ts';
import { answerJobs } from './host/workers.ts';
import { visible } from './publish/visible.ts';

declare const QUERN_VERSION: string;

// The server starts when its bundle, which lies beside this one, is loaded; no other command pays for it.
const serve = { lsp: () => void require('./server.js'), mcp: () => void require('./mcp.js') };

endWithOutput(process);
if (!answerJobs(() => jobsOver(nodeIo(__filename)))) {
  const fail = (error: unknown): void => {
    const words = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`quern failed, which is a bug of Quern: ${visible(words)}\n`);
    process.exit(2);
  };
  process.on('uncaughtException', fail);
  main(process.argv.slice(2), nodeIo(__filename), serve, QUERN_VERSION).then((exit) => {
    if (exit !== 'serving') endWith(process, exit);
    // A server has its own way to fail.
    else process.off('uncaughtException', fail);
  }, fail);
}
