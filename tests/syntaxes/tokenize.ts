import { readFileSync } from 'node:fs';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';

/** A run of text and the innermost of its scopes, without `.quern`; '' where nothing but the file's own scope holds. */
export type Token = readonly [text: string, scope: string];
export type Tokenizer = (text: string) => Token[][];

/** The grammars as the editor reads them: the JSON files, through the editor's own tokenizer. Blanks are left out. */
export async function loadTokenizer(scopeName = 'source.quern'): Promise<Tokenizer> {
  const { buffer, byteOffset, byteLength } = readFileSync(
    new URL('../../node_modules/vscode-oniguruma/release/onig.wasm', import.meta.url),
  );
  await oniguruma.loadWASM(new Uint8Array(buffer, byteOffset, byteLength));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (name) => {
      const file = new URL(fileOf(name), syntaxes);
      return textmate.parseRawGrammar(readFileSync(file, 'utf8'), file.pathname);
    },
  });
  const grammar = await registry.loadGrammar(scopeName);
  if (grammar === null) throw new Error('The grammar could not be read.');

  return (text) => {
    let stack = textmate.INITIAL;
    return text.split(/\r?\n/).map((line) => {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
      stack = ruleStack;
      return tokens
        .map(
          ({ startIndex, endIndex, scopes }): Token => [
            line.slice(startIndex, endIndex).trim(),
            (scopes.at(-1) ?? '').replace(/^source\.quern$|^meta\..*$/, '').replace(/\.quern$/, ''),
          ],
        )
        .filter(([word]) => word !== '');
    });
  };
}

const syntaxes = new URL('../../syntaxes/', import.meta.url);

function fileOf(scopeName: string): string {
  return scopeName === 'source.quern' ? 'quern.tmLanguage.json' : 'quern-markdown.tmLanguage.json';
}
