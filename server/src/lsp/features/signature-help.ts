import type { SignatureHelp, SignatureHelpParams } from 'vscode-languageserver';
import { signature } from '../../editor/signature.ts';
import { visible } from '../../publish/visible.ts';
import { readPosition } from '../convert.ts';
import { type Feature, onDocument } from '../feature.ts';

/** The protocol's kind of asking by a typed character. */
const BY_KEY = 2;

export const signatureHelpFeature: Feature = {
  capability: () => ({ signatureHelpProvider: { triggerCharacters: [' '], retriggerCharacters: [',', '.'] } }),
  requests: [
    onDocument<SignatureHelpParams, SignatureHelp | null>(
      'textDocument/signatureHelp',
      null,
      (snapshot, { position, context }) => {
        const byKey = context?.triggerKind === BY_KEY && !context.isRetrigger;
        const found = signature(snapshot, readPosition(position), byKey);
        if (found === undefined) return null;
        const { signatures, active } = found;
        return {
          signatures: signatures.map(({ label, slots, slot }) => ({
            label: visible(label),
            parameters: slots.map(({ start, end, words }) => ({ label: [start, end], documentation: words })),
            ...(slot !== undefined && { activeParameter: slot }),
          })),
          activeSignature: active,
          activeParameter: signatures[active]?.slot ?? 0,
        };
      },
    ),
  ],
};
