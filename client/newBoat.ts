import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type NewBoatParams, type NewBoatResult, newBoatRequest } from '../server/editor/protocol.ts';
import { boatLanguage } from './boatLanguage.ts';

/** Asks what the boat is called and opens an unsaved boat file of that name to fill in. */
export async function openNewBoat(client: BaseLanguageClient): Promise<void> {
  const name = await vscode.window.showInputBox({
    title: 'New boat file',
    prompt: 'What is the boat called?',
    placeHolder: 'for example: Petrel',
    validateInput: text => (text.trim() === '' ? 'Type a name; it can be changed later.' : undefined),
  });
  if (name === undefined) {
    return;
  }
  const params: NewBoatParams = { name: name.trim() };
  const { text } = await client.sendRequest<NewBoatResult>(newBoatRequest, params);
  const document = await vscode.workspace.openTextDocument({ language: boatLanguage, content: text });
  await vscode.window.showTextDocument(document);
}
