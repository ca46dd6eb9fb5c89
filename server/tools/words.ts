/**
 * Knows which of the words that whoever unpacks must know (RFC 7932, appendix A) stand in what is packed: what unpacks it in a browser is
 * given those alone.
 */
import { fileURLToPath } from 'node:url';
import { brotliDecompressSync } from 'node:zlib';
import * as esbuild from 'esbuild';
import type { Effort } from './pack.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const ALL = `${root}node_modules/brotli/dec/dictionary-data.js`;
const DATA = /brotli[\\/]dec[\\/]dictionary-(?:data|browser)\.js$/;

/** Has what unpacks take the words from where they are put before it is asked. */
export const wordsGiven: esbuild.Plugin = {
  name: 'words-given',
  setup(build) {
    build.onLoad({ filter: DATA }, () => ({
      contents: `import{words}from${JSON.stringify(`${root}client/src/web/words.ts`)};export const init=()=>words`,
      resolveDir: root,
    }));
  },
};

/** All words one after the other, those that do not stand there as zeros; to look takes a second, which is not worth it in a quick build. */
export async function wordsIn(packed: Uint8Array, effort: Effort): Promise<Uint8Array> {
  const { dictionary } = (await import(ALL)) as { readonly dictionary: Uint8Array };
  if (effort === 'quick') return dictionary;
  const asked = new Uint8Array(dictionary.length);
  const watched = new Proxy(dictionary, {
    get: (all, at) => {
      const word = all[Number(at)] ?? 0;
      asked[Number(at)] = word;
      return word;
    },
  });
  const unpacked = (await unpackerWith(watched))(packed, brotliDecompressSync(packed).length);
  if (!brotliDecompressSync(packed).equals(unpacked)) throw new Error('what a browser unpacks is something else');
  return asked;
}

type Unpack = (packed: Uint8Array, bytes: number) => Uint8Array;

/** The unpacker of the browser with these words. */
async function unpackerWith(words: Uint8Array): Promise<Unpack> {
  const { outputFiles } = await esbuild.build({
    stdin: { contents: `export{decompress}from'brotli/decompress'`, resolveDir: root },
    bundle: true,
    write: false,
    format: 'iife',
    globalName: 'unpacker',
    plugins: [
      {
        name: 'words-watched',
        setup(build) {
          build.onLoad({ filter: DATA }, () => ({ contents: 'export const init=()=>words' }));
        },
      },
    ],
  });
  const make = new Function('words', `${outputFiles[0]?.text ?? ''};return unpacker.decompress`) as (
    words: Uint8Array,
  ) => Unpack;
  return make(words);
}
