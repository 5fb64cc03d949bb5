import { TextDocument } from 'vscode-languageserver-textdocument';
import type { CodeAction, Diagnostic } from 'vscode-languageserver-types';
import type { Analysis } from '../../server/core/analysis/analysis.ts';
import { waits } from '../../server/core/boat/toldNow.ts';
import type { Finding } from '../../server/core/findings/finding.ts';
import type { MeshLookup } from '../../server/core/meshFiles/meshFile.ts';
import type { BoatService } from '../../server/service/service.ts';
import { URI } from './answers.ts';

/** Takes every action that is offered at a place, each by itself; what is wrong with what it leaves. */
export function* takeActions(
  service: BoatService,
  analysis: Analysis,
  offset: number,
  meshes: MeshLookup,
): Generator<string> {
  for (const action of service.codeActions(analysis, [offset, offset], { uri: URI, version: null })) {
    const text = applied(analysis.syntax.text, action);
    const after = service.analyse(text, analysis, meshes);
    if (text === analysis.syntax.text) yield `“${action.title}” changes nothing`;
    const left = (action.diagnostics ?? []).filter(each => times(after, each) >= times(analysis, each));
    for (const { message } of left) yield `“${action.title}” leaves: ${message}`;
    for (const { message } of newErrors(analysis, after)) yield `“${action.title}” brings: ${message}`;
  }
}

function applied(text: string, { edit }: CodeAction): string {
  const edits = edit?.changes?.[URI] ?? [];
  return TextDocument.applyEdits(TextDocument.create(URI, 'boat', 1, text), edits);
}

/** How often a thing is said. */
const times = ({ settled }: Analysis, about: Pick<Diagnostic, 'code' | 'message'>): number => {
  const saying = sayingOf(about);
  return settled.all().findings.filter(each => sayingOf(each) === saying).length;
};

/** Errors that were not there, nor waiting for this one. */
const newErrors = ({ file }: Analysis, after: Analysis): readonly Finding[] => {
  const before = new Set(file.findings.map(sayingOf));
  return after.file.findings.filter(each => each.severity === 'error' && !waits(each) && !before.has(sayingOf(each)));
};

/** The same thing is said of another line, and of another word to line up with, where lines came or went above it. */
const sayingOf = ({ code, message }: Pick<Diagnostic, 'code' | 'message'>): string =>
  JSON.stringify([code, String(message).replace(/(?:“[^”]*” on )?\bline \d+/g, 'line')]);
