import type { TextEdit, WorkspaceEdit } from 'vscode-languageserver-types';
import type { TextSplice } from '../../core/text/reading/layout.ts';
import type { Syntax } from '../../core/text/reading/syntax.ts';
import { lspRange } from './lspRange.ts';

/** The file that an answer edits. */
export interface EditedFile {
  readonly uri: string;
  /** Null for an editor that cannot check versions. */
  readonly version: number | null;
}

/** Splices as an edit of a file, held to its version where the editor can check that. */
export function workspaceEdit(
  syntax: Syntax,
  splices: readonly TextSplice[],
  { uri, version }: EditedFile,
): WorkspaceEdit {
  const edits: TextEdit[] = splices.map(({ start, end, text }) => ({
    range: lspRange(syntax, [start, end]),
    newText: text,
  }));
  if (version === null) return { changes: { [uri]: edits } };
  return { documentChanges: [{ textDocument: { uri, version }, edits }] };
}
