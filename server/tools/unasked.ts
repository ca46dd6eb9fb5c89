/**
 * Knows what of the libraries in the bundles nobody here asks for and no bundler can tell, and what stands in its place.
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'esbuild';

/** Of the protocol, what the server does not offer (`lsp/features`); the client makes each by these modules and classes. */
const UNOFFERED = {
  colorProvider: 'ColorProviderFeature',
  inlineCompletion: 'InlineCompletionItemFeature',
  inlineValue: 'InlineValueFeature',
  linkedEditingRange: 'LinkedEditingFeature',
  textDocumentContent: 'TextDocumentContentFeature',
  typeHierarchy: 'TypeHierarchyFeature',
};

/** A module of a library by the end of its path, and what it comes to where nobody asks for more. */
const INSTEAD: readonly (readonly [module: RegExp, instead: string])[] = [
  // The client asks whether the editor is new enough, which no editor installs without by `engines`.
  [/semver[\\/]functions[\\/](?:parse|satisfies)\.js$/, 'module.exports=()=>true'],
  // The editor knows no notebook of recipes, and the client tells of none.
  [
    /vscode-languageclient[\\/]lib[\\/]common[\\/]notebook\.js$/,
    `const none=()=>{},never=()=>({dispose:none}),method='notebookDocument/sync';
exports.NotebookDocumentSyncFeature=class{
static CellScheme='vscode-notebook-cell';
registrationType={method};
fillClientCapabilities=none;preInitialize=none;initialize=none;register=none;unregister=none;clear=none;
getState=()=>({kind:'document',id:method,registrations:false,matches:false});
handles=()=>false;
onOpenNotificationSent=never;onChangeNotificationSent=never;onSaveNotificationSent=never;onCloseNotificationSent=never;
}`,
  ],
  ...Object.entries(UNOFFERED).map(
    ([module, feature]) =>
      [
        new RegExp(`vscode-languageclient[\\\\/]lib[\\\\/]common[\\\\/]${module}\\.js$`),
        `const none=()=>{};exports.${feature}=class{fillClientCapabilities=none;initialize=none;clear=none;getState=()=>({kind:'static'})}`,
      ] as const,
  ),
  // The kit of the Model Context Protocol checks forms that a server has people fill in: half of its bundle goes into it.
  [/validation[\\/]ajv-provider\.js$/, 'export class AjvJsonSchemaValidator{}'],
  // Its messages are checked by schemas that nobody has written out as JSON.
  [/zod[\\/]v4[\\/]core[\\/]json-schema-processors\.js$/, 'module.exports={}'],
  [
    /zod[\\/]v4[\\/]core[\\/]to-json-schema\.js$/,
    'const none=()=>()=>({});module.exports={createToJSONSchemaMethod:none,createStandardJSONSchemaMethod:none}',
  ],
  // What is wrong with a message is told by its path.
  [/zod[\\/]v4[\\/]locales[\\/]en\.js$/, 'export default()=>({localeError:({code})=>code})'],
  // Tokens are made by `notation/scan.ts`; of the scanner of the parser's library its parsers ask for one sign alone.
  [
    /chevrotain[\\/]lib[\\/]src[\\/]scan[\\/]lexer_public\.js$/,
    'export class Lexer{static NA=/NOT_APPLICABLE/}export const LexerDefinitionErrorType={}',
  ],
  // The grammar is checked in the tests (`skipValidations` in the bundles).
  [
    /chevrotain[\\/]lib[\\/]src[\\/]parse[\\/]grammar[\\/]checks\.js$/,
    [
      'validateLookahead',
      'validateGrammar',
      'validateRuleDoesNotAlreadyExist',
      'validateRuleIsOverridden',
      'validateNoLeftRecursion',
      'validateEmptyOrAlternative',
      'validateAmbiguousAlternationAlternatives',
      'validateTooManyAlts',
      'validateSomeNonEmptyLookaheadPath',
    ]
      .map((name) => `export const ${name}=()=>[];`)
      .join(''),
  ],
];

/** What the protocol's library loads of Node for pipes, sockets and processes that it is seldom asked for. */
const LATER = /vscode-(?:jsonrpc|languageserver|languageclient)[\\/]lib[\\/]node[\\/](?:main|files|ril)\.js$/;
const LOADED = /^const (\w+) = (?:__importStar\()?require\("(child_process|crypto|net|os)"\)\)?;$/gm;

/** The text with those modules loaded where they are used. */
function loadingLater(text: string): string {
  let later = text;
  for (const [statement, name, module] of text.matchAll(LOADED))
    later = later
      .replace(statement, '')
      .replaceAll(new RegExp(`(?<![.\\w])${name}(?=\\.)`, 'g'), `require("${module}")`);
  return later;
}

/** What a module of the protocol's libraries passes on of another it passes on by a function for each name; and here by its value. */
const LIBRARY = /vscode-(?:jsonrpc|languageserver(?:-protocol)?|languageclient)[\\/]lib[\\/].*\.js$/;
const passingOn = (text: string): string => text.replace('__createBinding(exports, m, p)', 'exports[p] = m[p]');

/** What the client's library asks of patterns of files. */
const GLOBS = fileURLToPath(new URL('../../client/src/globs.ts', import.meta.url));

/** Leaves that out of a bundle, or out of its start. */
export const unasked: Plugin = {
  name: 'unasked',
  setup(build) {
    for (const [filter, contents] of INSTEAD) build.onLoad({ filter }, () => ({ contents }));
    build.onResolve({ filter: /^minimatch$/ }, () => ({ path: GLOBS }));
    build.onLoad({ filter: LIBRARY }, async ({ path }) => {
      const text = passingOn(await readFile(path, 'utf8'));
      return { contents: LATER.test(path) ? loadingLater(text) : text };
    });
  },
};
