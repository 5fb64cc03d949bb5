/** Takes the boat file out of a printed sheet that came from somebody, and opens it as an unsaved file. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { type UnpackParams, type UnpackResult, unpackRequest } from '../server/editor/protocol.ts';
import { boatLanguage } from './boatLanguage.ts';
import { chosenText } from './chosenText.ts';

export async function unpackPage(client: BaseLanguageClient): Promise<void> {
  const html = await chosenText({
    title: 'Open the boat file in which page?',
    filters: { 'Trim sheet': ['html', 'htm'] },
  });
  if (html === null) return;
  const params: UnpackParams = { html };
  const file = await client.sendRequest<UnpackResult>(unpackRequest, params);
  if (!file) {
    await vscode.window.showWarningMessage(
      'There is no boat file in this page. It has to be a trim sheet as “Print trim sheet” writes it.',
    );
    return;
  }
  const document = await vscode.workspace.openTextDocument({ language: boatLanguage, content: file.text });
  await vscode.window.showTextDocument(document);
}
