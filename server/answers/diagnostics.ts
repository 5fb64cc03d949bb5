import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver-types';
import type { Analysis } from '../analysis.ts';
import type { Finding, Severity } from '../findings/finding.ts';
import { rangeOf } from '../text/rangeOf.ts';
import type { Syntax } from '../text/syntax.ts';
import { lspRange } from './lspRange.ts';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Every finding as the editor shows it. */
export const diagnosticsOf = ({ syntax, findings }: Analysis): readonly Diagnostic[] =>
  findings.map(finding => diagnosticOf(syntax, finding));

export const diagnosticOf = (syntax: Syntax, finding: Finding): Diagnostic => ({
  range: lspRange(syntax, rangeOf(syntax, finding.place)),
  severity: severities[finding.severity],
  code: finding.code,
  source: 'Trimwright',
  message: finding.message,
});
