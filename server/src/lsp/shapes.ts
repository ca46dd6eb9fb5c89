/**
 * Knows what the parameters of each message must hold for it to be answered, and says in words what of them is wrong.
 * Refuses to know what a message does.
 */

/** What is asked of a value. A key that ends in `?` may be missing or null; what is not named may be anything. */
export type Shape = 'string' | 'number' | 'boolean' | { readonly each: Shape } | Fields;

interface Fields {
  readonly [key: string]: Shape;
}

const DOCUMENT = { textDocument: { uri: 'string' } } as const;
const POSITION = { line: 'number', character: 'number' } as const;
const RANGE = { start: POSITION, end: POSITION } as const;
const AT = { ...DOCUMENT, position: POSITION } as const;
const URI = { uri: 'string' } as const;
const STRINGS = { each: 'string' } as const;

/** What is read of a client's abilities as more than yes or no. */
const CAPABILITIES = {
  'workspace?': { 'workspaceEdit?': { 'resourceOperations?': STRINGS } },
  'textDocument?': {
    'hover?': { 'contentFormat?': STRINGS },
    'completion?': { 'completionItem?': { 'documentationFormat?': STRINGS } },
    'codeAction?': { 'resolveSupport?': { properties: STRINGS } },
    'inlayHint?': { 'resolveSupport?': { properties: STRINGS } },
  },
} as const satisfies Shape;

const ITEM = { item: { uri: 'string', selectionRange: RANGE } } as const;
const FOLDERS = { each: URI } as const;
const HANDED = {
  files: { each: { uri: 'string', 'text?': 'string', 'fault?': { 'why?': 'string' } } },
  gone: STRINGS,
  larger: STRINGS,
} as const satisfies Shape;
const MOVES = { files: { each: { oldUri: 'string', newUri: 'string' } } } as const;

/** Of the methods that begin with `textDocument/`. */
const OF_DOCUMENT: Readonly<Record<string, Shape>> = {
  didOpen: { textDocument: { uri: 'string', version: 'number', text: 'string' } },
  didChange: {
    textDocument: { uri: 'string', 'version?': 'number' },
    contentChanges: { each: { 'range?': RANGE, text: 'string' } },
  },
  didClose: DOCUMENT,
  didSave: DOCUMENT,
  diagnostic: { ...DOCUMENT, 'previousResultId?': 'string' },
  codeAction: { ...DOCUMENT, range: RANGE, context: { diagnostics: { each: {} }, 'only?': STRINGS } },
  codeLens: DOCUMENT,
  completion: AT,
  documentSymbol: DOCUMENT,
  foldingRange: DOCUMENT,
  formatting: DOCUMENT,
  rangeFormatting: { ...DOCUMENT, range: RANGE },
  hover: AT,
  inlayHint: { ...DOCUMENT, range: RANGE },
  definition: AT,
  declaration: AT,
  implementation: AT,
  references: { ...AT, context: { includeDeclaration: 'boolean' } },
  typeDefinition: AT,
  prepareCallHierarchy: AT,
  onTypeFormatting: { ...AT, ch: 'string' },
  documentHighlight: AT,
  documentLink: DOCUMENT,
  prepareRename: AT,
  rename: { ...AT, newName: 'string' },
  signatureHelp: AT,
  selectionRange: { ...DOCUMENT, positions: { each: POSITION } },
  'semanticTokens/full': DOCUMENT,
  'semanticTokens/full/delta': { ...DOCUMENT, previousResultId: 'string' },
  'semanticTokens/range': { ...DOCUMENT, range: RANGE },
};

/** By method. Of a method that is not here nothing is asked. */
export const SHAPES: Readonly<Record<string, Shape>> = {
  initialize: { capabilities: CAPABILITIES, 'rootUri?': 'string', 'workspaceFolders?': FOLDERS },
  '$/setTrace': { value: 'string' },
  'workspace/didChangeWatchedFiles': { changes: { each: { uri: 'string', type: 'number' } } },
  'workspace/didCreateFiles': { files: FOLDERS },
  'workspace/didDeleteFiles': { files: FOLDERS },
  'workspace/didRenameFiles': MOVES,
  'workspace/didChangeConfiguration': {},
  'workspace/didChangeWorkspaceFolders': { event: { added: FOLDERS, removed: FOLDERS } },
  'workspace/willRenameFiles': MOVES,
  'workspace/executeCommand': { command: 'string' },
  'workspace/symbol': { query: 'string' },
  'workspace/diagnostic': { previousResultIds: { each: { uri: 'string', value: 'string' } } },
  'codeAction/resolve': { title: 'string' },
  'callHierarchy/incomingCalls': ITEM,
  'callHierarchy/outgoingCalls': ITEM,
  'codeLens/resolve': { range: RANGE },
  'inlayHint/resolve': { position: POSITION },
  'completionItem/resolve': { label: 'string' },
  'quern/alive': {},
  'quern/handed': HANDED,
  'quern/scale': { uri: 'string', to: 'string' },
  'quern/recordTrial': { uri: 'string', date: 'string' },
  'quern/diff': { uri: 'string', a: 'string', b: 'string', 'uriOfA?': 'string' },
  'quern/trials': URI,
  'quern/asTested': { uri: 'string', tested: STRINGS, texts: STRINGS },
  'quern/checkFolder': {},
  'quern/explain': { code: 'string', 'uri?': 'string' },
  'quern/plan': { uris: STRINGS, serve: 'string' },
  'quern/read': { uri: 'string', text: 'string' },
  'quern/begin': {},
  'quern/kitchen': {},
  'quern/publish': { uri: 'string', format: 'string', 'measures?': 'string', 'proved?': 'boolean' },
  'quern/report': { uri: 'string', format: 'string' },
  'quern/weigh': { uri: 'string', words: 'string' },
  'quern/change': { uri: 'string', verb: 'string', arg: {} },
  'quern/measures': URI,
  'quern/page': { uri: 'string', view: 'string', 'readOnly?': 'string', 'hasty?': 'boolean', 'style?': 'boolean' },
  'quern/page/act': { uri: 'string', act: 'string' },
  ...Object.fromEntries(Object.entries(OF_DOCUMENT).map(([name, shape]) => [`textDocument/${name}`, shape])),
};

/** What is wrong with a message's parameters: `position.line is not a number`; undefined where nothing is. */
export function faultIn(method: string, params: unknown): string | undefined {
  const shape = Object.hasOwn(SHAPES, method) ? SHAPES[method] : undefined;
  return shape === undefined ? undefined : faultOf(params, shape, 'params');
}

function faultOf(value: unknown, shape: Shape, name: string): string | undefined {
  if (typeof shape === 'string') return typeof value === shape ? undefined : `${name} is not a ${shape}`;
  if (isEach(shape)) {
    if (!Array.isArray(value)) return `${name} is not a list`;
    for (const [i, item] of value.entries()) {
      const fault = faultOf(item, shape.each, `${name}[${i}]`);
      if (fault !== undefined) return fault;
    }
    return undefined;
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return `${name} is not an object`;
  for (const [key, inner] of Object.entries(shape)) {
    const bare = key.replace(/\?$/, '');
    const held = (value as Readonly<Record<string, unknown>>)[bare];
    if (bare !== key && (held === undefined || held === null)) continue;
    const fault = faultOf(held, inner, name === 'params' ? bare : `${name}.${bare}`);
    if (fault !== undefined) return fault;
  }
  return undefined;
}

const isEach = (shape: Exclude<Shape, string>): shape is { readonly each: Shape } => 'each' in shape;
