/** What modules here ask of the protocol's library as values: a bundle makes a copy of all that it has for each module that asks it. */
export { ErrorCodes, Message, ResponseError } from 'vscode-languageserver';
