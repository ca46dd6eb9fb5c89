// Knows how the page reaches whoever shows it: the one place that knows an editor is around it.

import { type FromPage, type PageState, readState, readToPage, type ToPage } from '../messages.ts';

export type Transport = {
  readonly post: (message: FromPage) => void;
  readonly listen: (heard: (message: ToPage) => void) => void;
  /** What the page kept of itself when it was last here. */
  readonly kept: () => PageState | undefined;
  readonly keep: (state: PageState) => void;
};

declare function acquireVsCodeApi(): {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
};

export function editorTransport(): Transport {
  const editor = acquireVsCodeApi();
  return {
    post: (message) => editor.postMessage(message),
    listen: (heard) =>
      window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
        const message = readToPage(data);
        if (message !== undefined) heard(message);
      }),
    kept: () => readState(editor.getState()),
    keep: (state) => editor.setState(state),
  };
}
