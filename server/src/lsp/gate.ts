/**
 * Knows which messages are let in: none before `initialize` or after `shutdown`, and none whose parameters are wrong. A request that is not
 * let in is refused with the protocol's code, a notification is dropped.
 * Refuses to know what a message does.
 */
import type { Connection, ConnectionOptions } from 'vscode-languageserver';
import { visible } from '../publish/visible.ts';
import { ErrorCodes, Message, ResponseError } from './library.ts';
import { faultIn } from './shapes.ts';

/** The method that a refused request is handed on as, so that it is answered in its turn. */
const REFUSED = '$/quern/refused';

interface Refusal {
  readonly code: number;
  readonly why: string;
}

export class Gate {
  private life: 'new' | 'serving' | 'shut' = 'new';
  private log: (message: string) => void = () => undefined;

  /** For whoever makes the connection. */
  readonly options: ConnectionOptions = {
    messageStrategy: {
      handleMessage: (message, next) => {
        const passed = this.pass(message);
        return passed === undefined ? undefined : next(passed);
      },
    },
  };

  /** Says on this connection why something is not let in. */
  guard(connection: Connection): void {
    this.log = (message) => connection.console.error(visible(message));
    connection.onRequest(REFUSED, ({ code, why }: Refusal) => {
      throw new ResponseError(code, why);
    });
  }

  /** Whether the client has said that it will go. */
  get isShut(): boolean {
    return this.life === 'shut';
  }

  private pass(message: Message): Message | undefined {
    if (Message.isResponse(message)) return message;
    if (Message.isRequest(message)) {
      const refusal = this.refusal(message.method, message.params);
      if (refusal !== undefined) return { ...message, method: REFUSED, params: refusal } as Message;
      if (message.method === 'initialize') this.life = 'serving';
      if (message.method === 'shutdown') this.life = 'shut';
      return message;
    }
    if (!Message.isNotification(message)) return notOfProtocol(message);
    const { method, params } = message;
    if (method === 'exit') return message;
    if (this.life !== 'serving') return undefined;
    const fault = faultIn(method, params);
    if (fault === undefined) return message;
    this.log(`${method} has wrong parameters: ${fault}`);
    return undefined;
  }

  private refusal(method: string, params: unknown): Refusal | undefined {
    if (this.life === 'shut') return { code: ErrorCodes.InvalidRequest, why: 'the server was told to shut down' };
    if (this.life === 'new' && method !== 'initialize')
      return { code: ErrorCodes.ServerNotInitialized, why: 'the server is not initialized' };
    if (this.life === 'serving' && method === 'initialize')
      return { code: ErrorCodes.InvalidRequest, why: 'the server is initialized already' };
    const fault = faultIn(method, params);
    if (fault === undefined) return undefined;
    this.log(`${method} has wrong parameters: ${fault}`);
    return { code: ErrorCodes.InvalidParams, why: `wrong parameters: ${fault}` };
  }
}

/** Whoever asks waits for an answer; anything else is left to the protocol's library, which says so in the log. */
function notOfProtocol(message: Message): Message {
  const { id, method } = message as { readonly id?: unknown; readonly method?: unknown };
  if ((typeof id !== 'string' && typeof id !== 'number') || method === undefined) return message;
  const params: Refusal = { code: ErrorCodes.InvalidRequest, why: 'this is no request of JSON-RPC' };
  return { jsonrpc: '2.0', id, method: REFUSED, params } as Message;
}
