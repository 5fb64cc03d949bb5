import * as vscode from 'vscode';
import { boatLanguage } from './boatLanguage.ts';

/** The boat file in the active editor, else in one that can be seen, else the one opened last: behind the walkthrough none is seen. */
export function activeBoat(): vscode.Uri | null {
  const editors = [vscode.window.activeTextEditor, ...vscode.window.visibleTextEditors];
  const documents = [...editors.map(editor => editor?.document), ...[...vscode.workspace.textDocuments].reverse()];
  return documents.find(document => document?.languageId === boatLanguage)?.uri ?? null;
}
