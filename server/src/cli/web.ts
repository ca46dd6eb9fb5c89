/**
 * Knows what a command needs of a web server on this machine; `host/` fulfils it.
 */

/** What a browser asks for: the path without its first `/`, both decoded. */
export interface Asked {
  readonly path: string;
  readonly query: ReadonlyMap<string, string>;
}

export type WebAnswer =
  | {
      readonly kind: 'text';
      readonly type: 'text/html' | 'text/css' | 'text/javascript' | 'text/plain';
      readonly text: string;
      readonly status?: 404;
    }
  /** A picture; nothing is sent of one that lies, its links followed, outside `within`. */
  | { readonly kind: 'file'; readonly path: string; readonly within: string; readonly type: string };

export interface Served {
  answer(asked: Asked): WebAnswer;
  /** Told the address, once. */
  ready(address: string): void;
  /** Does a piece of what may be asked for next, while nobody asks; false where nothing is left. */
  prepare(): boolean;
}

export interface Web {
  /** Serves on the loopback until the command is told to end; 0 has a port chosen. */
  serve(port: number, served: Served): Promise<void>;
  /** What the pages run. */
  script(): string;
  /** A word that is another once one of the files is, or comes or goes. */
  sumOf(paths: readonly string[]): string;
}
