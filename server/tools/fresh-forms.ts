/**
 * Writes the forms of the lexicon's rows (`data/prose/forms.tsv`) where they are stale. To be imported before what reads sentences; that is
 * imported dynamically.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import './tables-as-text.ts';

const { formsText } = await import('../src/prose/forms-table.ts');

const path = fileURLToPath(new URL('../data/prose/forms.tsv', import.meta.url));
const fresh = formsText();
if (readFileSync(path, 'utf8') !== fresh) writeFileSync(path, fresh);
