import { type Diagnostic, DiagnosticSeverity } from 'vscode-languageserver-types';
import type { ToTell } from '../../core/analysis/meanwhile.ts';
import type { FindingCode } from '../../core/findings/catalogue/catalogue.ts';
import type { Finding, Severity } from '../../core/findings/finding.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';
import { lspRange } from './lspRange.ts';

const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

/** Where the documentation of a finding stands; null where there is none to open. */
export type FindingLink = (code: FindingCode) => string | null;

/** Every finding that is there, as the editor shows it, open questions last, its code a link to its documentation. */
export const diagnosticsOf = ({ syntax, findings, said }: ToTell, linkOf: FindingLink): readonly Diagnostic[] => {
  return [...findings, ...said.openQuestions].map(finding => {
    const href = linkOf(finding.code);
    return { ...diagnosticOf(syntax, finding), ...(href === null ? {} : { codeDescription: { href } }) };
  });
};

export const diagnosticOf = (syntax: Syntax, finding: Finding): Diagnostic => ({
  range: lspRange(syntax, rangeOf(syntax, finding.place)),
  severity: severities[finding.severity],
  code: finding.code,
  source: 'Trimwright',
  message: finding.message,
});
