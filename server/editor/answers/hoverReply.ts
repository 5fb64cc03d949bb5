import { type Hover, MarkupKind } from 'vscode-languageserver-types';
import type { Describer } from '../../../schema/describe.ts';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { pathAt } from '../../core/text/reading/pathAt.ts';
import { rangeOf } from '../../core/text/reading/rangeOf.ts';
import { hoverAt } from './hover.ts';
import { lspRange } from './lspRange.ts';

/** The hover at an offset, with the key or value that it belongs to. */
export function hoverReply(analysis: Analysis, describer: Describer, offset: number): Hover | null {
  const hover = hoverAt(analysis, describer, offset);
  if (hover === null) return null;
  const { path, on } = pathAt(analysis.syntax, offset);
  const span = rangeOf(analysis.syntax, { on: on === 'key' ? 'key' : 'value', path });
  return {
    contents: { kind: MarkupKind.Markdown, value: hover.markdown },
    range: lspRange(analysis.syntax, span),
  };
}
