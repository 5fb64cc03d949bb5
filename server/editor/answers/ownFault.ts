import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver-types';
import type { Summary } from './summary.ts';

/** What the editor shows of a file that a fault of this tool kept from being analysed: no figure, but the reason. */
export interface OwnFault {
  readonly diagnostics: readonly Diagnostic[];
  readonly summary: Summary;
}

export function ownFault(reason: string): OwnFault {
  const message = `Trimwright failed on this file, by a fault of its own (${reason}). Nothing is computed until the file changes. Please report it, with the file.`;
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } };
  return {
    diagnostics: [{ range, severity: DiagnosticSeverity.Error, code: 'own-fault', source: 'Trimwright', message }],
    summary: { text: 'Not computed', tooltip: message, state: 'faulty' },
  };
}
