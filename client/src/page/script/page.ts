// The page in the editor's panel, alive.

import { live } from './live.ts';
import { editorTransport } from './transport.ts';

live(editorTransport());
