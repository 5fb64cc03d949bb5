/** Writes what was done on the trim sheet into the text, one undo step each. */
import * as vscode from 'vscode';
import type { EditResult, TextRange } from '../server/editor/protocol.ts';

export const editorRange = ({ start, end }: TextRange): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);

/**
 * Asks for an edit and makes it; asks once more where the text was changed meanwhile. What is said back is for the
 * builder: null when it is done.
 */
export async function writeEdit(document: vscode.TextDocument, ask: () => Promise<EditResult>): Promise<string | null> {
  for (let tries = 0; tries < 2; tries++) {
    const result = await ask();
    if (result.status === 'refused') return result.reason;
    if (result.version !== document.version) continue;
    const edit = new vscode.WorkspaceEdit();
    for (const { range, newText } of result.edits) edit.replace(document.uri, editorRange(range), newText);
    if (result.edits.length === 0 || (await vscode.workspace.applyEdit(edit))) return null;
  }
  return 'The text was changed at the same time. Try again.';
}
