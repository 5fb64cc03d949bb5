import { type DocumentHighlight, DocumentHighlightKind, type Location } from 'vscode-languageserver-types';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { lspRange } from './lspRange.ts';
import { bayOf, namedAt, piecesIn, spansOf } from './names.ts';

/** Where the name at an offset is given; for a loose piece of lead or foam, the bay that it lies in. */
export function definitionAt(analysis: Analysis, offset: number, uri: string): Location | null {
  const { syntax } = analysis;
  const named = namedAt(syntax, offset);
  if (!named) return null;
  const bay = bayOf(analysis, named.given);
  const [span] = spansOf(syntax, [bay ? [...bay.path, 'name'] : named.given]);
  return span ? { uri, range: lspRange(syntax, span) } : null;
}

/** Everything that lies in the compartment or bay whose name is at an offset, and where else the name is used. */
export function referencesAt(
  analysis: Analysis,
  offset: number,
  { uri, withDefinition }: { readonly uri: string; readonly withDefinition: boolean },
): readonly Location[] {
  const { syntax } = analysis;
  const named = namedAt(syntax, offset);
  if (!named) return [];
  const inside = piecesIn(analysis, named.given).map(({ path }) => [...path, 'name']);
  const paths = [...(withDefinition ? [named.given] : []), ...named.uses, ...inside];
  return spansOf(syntax, paths).map(span => ({ uri, range: lspRange(syntax, span) }));
}

/** The name at an offset and its other places in the file. */
export function highlightsAt({ syntax }: Analysis, offset: number): readonly DocumentHighlight[] {
  const named = namedAt(syntax, offset);
  if (!named) return [];
  const [given] = spansOf(syntax, [named.given]);
  return spansOf(syntax, [named.given, ...named.uses]).map(span => ({
    range: lspRange(syntax, span),
    kind: span[0] === given?.[0] ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
