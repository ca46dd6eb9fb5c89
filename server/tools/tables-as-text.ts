/**
 * Imports tables as their text, as the bundler and the tests do it. To be imported first; what needs it is imported dynamically.
 */
import { readFileSync } from 'node:fs';
import { registerHooks } from 'node:module';
import { fileURLToPath } from 'node:url';

registerHooks({
  load(url, context, next) {
    if (!url.endsWith('.tsv')) return next(url, context);
    const text = readFileSync(fileURLToPath(url), 'utf8');
    return { format: 'module', source: `export default ${JSON.stringify(text)};`, shortCircuit: true };
  },
});
