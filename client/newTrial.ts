import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type NewTrialParams, type NewTrialResult, newTrialRequest } from '../server/editor/protocol.ts';
import { activeBoat } from './activeBoat.ts';
import { editorRange } from './sheetEdits.ts';

/** Puts a pool trial to fill in into the boat file, and shows it. */
export async function insertNewTrial(client: BaseLanguageClient): Promise<void> {
  const boat = activeBoat();
  if (!boat) {
    await vscode.window.showInformationMessage('Open a boat file first (NAME.boat.yaml), then add a trial to it.');
    return;
  }
  const editor = await vscode.window.showTextDocument(boat);
  const { document } = editor;
  // A snippet that begins at the end of a line would take over that line's indentation.
  const last = document.lineAt(document.lineCount - 1);
  if (!last.isEmptyOrWhitespace) await editor.edit(edit => edit.insert(last.range.end, '\n'));
  const params: NewTrialParams = { uri: document.uri.toString() };
  const trial = await client.sendRequest<NewTrialResult>(newTrialRequest, params);
  if (!trial) {
    await vscode.window.showInformationMessage('“trials” is not a list here: write “- condition: surfaced” below it.');
    return;
  }
  await editor.insertSnippet(new vscode.SnippetString(trial.snippet), editorRange(trial.range));
}
